import { type Fault, faultFacts, played, type Standing, singleFaults, type Wiring } from '@sillsight/engine'
import { drawWiring, leastNarrowWidth_mm } from '@sillsight/report'
import { lazy, useCallback, useMemo, useState } from 'react'
import { Marks } from '../drawing/marks.tsx'
import { PX_PER_MM, useRoom } from '../drawing/use-room.ts'
import { Wide } from '../drawing/wide.tsx'
import { Explained } from '../help/explained.tsx'
import { useFacts } from '../words/facts.ts'
import { useReader } from '../words/reader.ts'
import { useDoor } from './at-door.ts'
import { Chapter } from './chapter.tsx'
import { CoreEnds } from './core-ends.tsx'
import { MeterLeads } from './meter-leads.tsx'
import { isSameFault, SingleFaults } from './single-faults.tsx'

const Proposals = lazy(() => import('./proposals.tsx').then(({ Proposals }) => ({ default: Proposals })))
const Tracing = lazy(() => import('./tracing.tsx').then(({ Tracing }) => ({ default: Tracing })))

interface Said extends Standing {
  readonly said: string
}

/** A wiring that is drawn in the place of the door's own, and what is said of that. */
export interface Proposed {
  readonly wiring: Wiring
  readonly said: string
}

/** Two terminals and how the door is to stand while a meter lies between them. */
export interface Leads extends Standing {
  readonly plus: string
  readonly minus: string
}

/** What stands on the drawing besides the wiring of the door. */
export interface OnBoard {
  readonly fault?: Fault | undefined
  readonly proposed?: Proposed | undefined
}

/** The wiring drawn, as it stands with nobody there, with somebody, or while the control tests; any fault can be played on it. */
export function WiringBoard({ wiring: own }: { readonly wiring: Wiring }) {
  const words = useFacts().wiring
  const reader = useReader()
  const { answers } = useDoor()
  const [standing, setStanding] = useState('nobody')
  const [on, setOn] = useState<OnBoard>({})
  const [leads, setLeads] = useState<Leads>()
  const [room, { width }] = useRoom<HTMLDivElement>()
  const wiring = on.proposed?.wiring ?? own
  // a core that was taken away meanwhile takes its faults along
  const fault = useMemo(() => singleFaults(wiring).find((each) => isSameFault(each, on.fault)), [wiring, on.fault])
  const situations = useMemo((): ReadonlyMap<string, Said> => {
    const seen = wiring.sensors.map(({ id }): [string, Said] => [`seen ${id}`, { seenBy: [id], asking: false, said: words.somebody(id) }])
    const asked: [string, Said][] = wiring.control.test ? [['asking', { seenBy: [], asking: true, said: words.asking }]] : []
    return new Map([['nobody', { seenBy: [], asking: false, said: words.nobody }], ...seen, ...asked])
  }, [wiring, words])
  const situation = situations.get(standing) ?? situations.get('nobody')
  const playing = useMemo(() => situation && { fault, played: played(wiring, fault ? [fault] : [], situation) }, [wiring, fault, situation])
  const width_mm = Math.max(width / PX_PER_MM, leastNarrowWidth_mm(wiring, reader))
  const drawn = useMemo(() => drawWiring(wiring, width_mm, reader, playing), [wiring, width_mm, reader, playing])
  const hidden = (answers.shown?.judgement.findings ?? [])
    .filter(({ rule }) => rule === 'single-fault')
    .reduce((sum, { facts }) => sum + Number(facts['hidden'] ?? 0), 0)
  const told = fault && reader.language.wiring.fault(faultFacts(fault))
  const play = useCallback((next: Fault | undefined) => setOn({ fault: next }), [])
  const showLeads = useCallback(
    ({ plus, seenBy: [sensor], asking }: Leads) => {
      setOn((now) => (now.proposed ? {} : now))
      setStanding(asking ? 'asking' : sensor === undefined ? 'nobody' : `seen ${sensor}`)
      const at = drawn.terminals.find(({ terminal }) => terminal === plus)?.at
      room.current?.scrollIntoView({ block: 'nearest' })
      if (at) room.current?.scrollTo({ left: at.x_mm * PX_PER_MM - room.current.clientWidth / 2 })
    },
    [drawn, room],
  )
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
        {on.proposed && `${on.proposed.said} `}
        {told === undefined ? words.right : words.wrong(told)}{' '}
        {fault && (
          <button type="button" className="link" onClick={() => setOn((now) => ({ ...now, fault: undefined }))}>
            {words.undo}
          </button>
        )}
      </p>
      <Wide label={words.diagram} more={words.more} room={room}>
        <svg
          className="drawing"
          width={width_mm * PX_PER_MM}
          height={drawn.height_mm * PX_PER_MM}
          viewBox={`0 0 ${width_mm} ${drawn.height_mm}`}
          role="img"
          aria-label={words.diagram}
        >
          <Marks marks={drawn.marks} />
          {!on.proposed && <CoreEnds drawn={drawn} />}
          {!on.proposed && leads && <MeterLeads leads={leads} drawn={drawn} />}
        </svg>
      </Wide>
      <p className="quiet">
        <Explained text={`${words.reads} ${words.drag}`} />
      </p>
      <Chapter title={words.faults} part="fit" holds={['faults']} said={words.faultsSaid(hidden)}>
        <SingleFaults wiring={own} playing={on.proposed ? undefined : fault} onPlay={play} />
      </Chapter>
      <Chapter title={words.trace} part="fit" holds={['trace']} said={words.traceSaid}>
        <Tracing wiring={own} playing={on.proposed ? undefined : fault} onPlay={play} onLeads={setLeads} onShow={showLeads} />
      </Chapter>
      <Chapter title={words.connect} part="fit" holds={['connections']} said={words.connectSaid}>
        <Proposals playing={fault} proposed={on.proposed} onBoard={setOn} />
      </Chapter>
    </section>
  )
}
