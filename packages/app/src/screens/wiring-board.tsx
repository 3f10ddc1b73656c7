import { EFFECTS, type Fault, faultEffects, faultFacts, played, type Wiring } from '@sillsight/engine'
import { capital, drawWiring, leastWiringWidth_mm } from '@sillsight/report'
import { useMemo, useState } from 'react'
import { Marks } from '../drawing/marks.tsx'
import { PX_PER_MM, useRoom } from '../drawing/use-room.ts'
import { Explained } from '../help/explained.tsx'
import { useFacts } from '../words/facts.ts'
import { useReader } from '../words/reader.ts'
import { useDoor } from './at-door.ts'
import { Chapter, Lead } from './chapter.tsx'
import { CoreEnds } from './core-ends.tsx'

interface Standing {
  readonly seenBy: readonly string[]
  readonly asking: boolean
  readonly said: string
}

/** The wiring drawn, as it stands with nobody there, with somebody, or while the control tests; any fault can be played on it. */
export function WiringBoard({ wiring }: { readonly wiring: Wiring }) {
  const words = useFacts().wiring
  const reader = useReader()
  const { answers } = useDoor()
  const [standing, setStanding] = useState('nobody')
  const [fault, setFault] = useState<Fault>()
  const [room, { width }] = useRoom<HTMLDivElement>()
  const situations = useMemo((): ReadonlyMap<string, Standing> => {
    const seen = wiring.sensors.map(({ id }): [string, Standing] => [
      `seen ${id}`,
      { seenBy: [id], asking: false, said: words.somebody(id) },
    ])
    const asked: [string, Standing][] = wiring.control.test ? [['asking', { seenBy: [], asking: true, said: words.asking }]] : []
    return new Map([['nobody', { seenBy: [], asking: false, said: words.nobody }], ...seen, ...asked])
  }, [wiring, words])
  const situation = situations.get(standing) ?? situations.get('nobody')
  const playing = useMemo(() => situation && { fault, played: played(wiring, fault ? [fault] : [], situation) }, [wiring, fault, situation])
  const width_mm = Math.max(width / PX_PER_MM, leastWiringWidth_mm(wiring, reader, playing))
  const drawn = useMemo(() => drawWiring(wiring, width_mm, reader, playing), [wiring, width_mm, reader, playing])
  const hidden = (answers.shown?.judgement.findings ?? [])
    .filter(({ rule }) => rule === 'single-fault')
    .reduce((sum, { facts }) => sum + Number(facts['hidden'] ?? 0), 0)
  const told = fault && reader.language.wiring.fault(faultFacts(fault))
  return (
    <section className="wiring-board" aria-label={words.diagram}>
      <p>
        <label>
          {words.situation}{' '}
          <select className="choose" value={standing} onChange={(event) => setStanding(event.target.value)}>
            {[...situations].map(([key, { said }]) => (
              <option key={key} value={key}>
                {said}
              </option>
            ))}
          </select>
        </label>
      </p>
      <p aria-live="polite" className={fault ? 'wiring-wrong' : undefined}>
        {told === undefined ? words.right : words.wrong(told)}{' '}
        {fault && (
          <button type="button" className="link" onClick={() => setFault(undefined)}>
            {words.undo}
          </button>
        )}
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by the keyboard */}
      <div className="wiring-drawing" ref={room} tabIndex={0} role="group" aria-label={words.diagram}>
        <svg
          className="drawing"
          width={width_mm * PX_PER_MM}
          height={drawn.height_mm * PX_PER_MM}
          viewBox={`0 0 ${width_mm} ${drawn.height_mm}`}
          role="img"
          aria-label={words.diagram}
        >
          <Marks marks={drawn.marks} />
          <CoreEnds drawn={drawn} />
        </svg>
      </div>
      <p className="quiet">
        <Explained text={words.reads} />
      </p>
      <Chapter title={words.faults} holds={['faults']} said={words.faultsSaid(hidden)}>
        <Faults wiring={wiring} playing={fault} onPlay={setFault} />
      </Chapter>
    </section>
  )
}

function Faults(props: { readonly wiring: Wiring; readonly playing: Fault | undefined; readonly onPlay: (fault: Fault) => void }) {
  const { wiring, playing, onPlay } = props
  const words = useFacts().wiring
  const { wiring: said } = useReader().language
  const effects = useMemo(() => faultEffects(wiring), [wiring])
  return (
    <>
      <Lead text={words.faultsLead} />
      {EFFECTS.map((effect) => {
        const those = effects.filter((each) => each.effect === effect)
        if (those.length === 0) return null
        return (
          <details key={effect} className="chapter inner wiring-faults" data-effect={effect} open={effect === EFFECTS[0]}>
            <summary>
              <h3>
                {said.effects[effect]}: {those.length}
              </h3>
            </summary>
            <ul>
              {those.map(({ fault }) => {
                const text = capital(said.fault(faultFacts(fault)) ?? '')
                return (
                  <li key={text}>
                    <button type="button" className="link" aria-pressed={fault === playing} onClick={() => onPlay(fault)}>
                      {text}
                    </button>
                  </li>
                )
              })}
            </ul>
          </details>
        )
      })}
    </>
  )
}
