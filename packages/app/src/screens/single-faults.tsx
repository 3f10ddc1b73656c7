import { EFFECTS, type Fault, faultEffects, faultFacts, type Wiring } from '@sillsight/engine'
import { capital } from '@sillsight/report'
import { useMemo } from 'react'
import { useFacts } from '../words/facts.ts'
import { useReader } from '../words/reader.ts'
import { Lead } from './chapter.tsx'
import { useIsSmall } from './unfolded.ts'

/** Every single fault of a wiring by what it does, each to be played on the drawing. */
export function SingleFaults(props: {
  readonly wiring: Wiring
  readonly playing: Fault | undefined
  readonly onPlay: (fault: Fault) => void
}) {
  const { wiring, playing, onPlay } = props
  const words = useFacts().wiring
  const { wiring: said } = useReader().language
  const only = useIsSmall() ? 'faults by effect' : undefined // one list at a time: there are dozens in each
  const effects = useMemo(() => faultEffects(wiring), [wiring])
  return (
    <>
      <Lead text={words.faultsLead} />
      {EFFECTS.map((effect) => {
        const those = effects.filter((each) => each.effect === effect).map(({ fault }) => fault)
        if (those.length === 0) return null
        return (
          <details key={effect} className="chapter inner wiring-faults" data-effect={effect} name={only} open={effect === EFFECTS[0]}>
            <summary>
              <h3>
                {said.effects[effect]}: {those.length}
              </h3>
            </summary>
            <FaultButtons faults={those} playing={playing} onPlay={onPlay} />
          </details>
        )
      })}
    </>
  )
}

/** Faults that are played on the drawing when they are touched. */
export function FaultButtons(props: {
  readonly faults: readonly Fault[]
  readonly playing: Fault | undefined
  readonly onPlay: (fault: Fault) => void
}) {
  const { wiring: said } = useReader().language
  return (
    <ul className="fault-buttons">
      {props.faults.map((fault) => {
        const text = capital(said.fault(faultFacts(fault)) ?? '')
        return (
          <li key={text}>
            <button type="button" className="link" aria-pressed={isSameFault(fault, props.playing)} onClick={() => props.onPlay(fault)}>
              {text}
            </button>
          </li>
        )
      })}
    </ul>
  )
}

/** Every answer about a door brings faults of its own: they are the same by what they say. */
export function isSameFault(a: Fault | undefined, b: Fault | undefined): boolean {
  return JSON.stringify(a) === JSON.stringify(b)
}
