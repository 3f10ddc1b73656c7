import type { Fault, NextMeasurement, Wiring } from '@sillsight/engine'
import { capital, faultName, standingWords } from '@sillsight/report'
import { lazy, Suspense, useEffect, useMemo, useState } from 'react'
import { Explained } from '../help/explained.tsx'
import type { FromSearching, ToSearching } from '../judging/messages.ts'
import { useSearch } from '../judging/use-search.ts'
import { asHandedOut } from '../store/twins.ts'
import { useReader } from '../words/reader.ts'
import { useSearching } from '../words/searching.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Lead } from './chapter.tsx'
import { FaultButtons } from './single-faults.tsx'
import { keepReadings, keptReadings, type OnSite, observationOf } from './site-readings.ts'
import { TakenReadings } from './taken-readings.tsx'
import type { Leads } from './wiring-board.tsx'

const Pad = lazy(() => import('../entry/pad.tsx').then(({ Pad }) => ({ default: Pad })))

/** So many suspects are named before somebody asks for more. */
const MOST_NAMED = 12

interface Props {
  readonly wiring: Wiring
  readonly playing: Fault | undefined
  readonly onPlay: (fault: Fault | undefined) => void
  /** Where the leads of the meter go next, to be drawn. */
  readonly onLeads: (leads: Leads | undefined) => void
  readonly onShow: (leads: Leads) => void
}

type Traced = Extract<FromSearching, { kind: 'traced' }>

/** The search for the fault behind what a meter shows: where to measure next, what can be wrong, and what was measured. */
export function Tracing({ wiring, playing, onPlay, onLeads, onShow }: Props) {
  const words = useSearching().trace
  const { findings } = useWords()
  const { door, snapshot } = useDoor()
  const file = asHandedOut(snapshot.file)
  const [onSite, setOnSite] = useState(() => keptReadings(door.id))
  const change = (by: (now: OnSite) => OnSite) => {
    const next = by(onSite)
    keepReadings(door.id, next)
    setOnSite(next)
  }
  const question = useMemo((): ToSearching => {
    const observations = onSite.readings.flatMap((reading) => observationOf(wiring, reading) ?? [])
    return { kind: 'trace', file, disputed: [], observations, meter: onSite.meter }
  }, [file, wiring, onSite])
  const said = useSearch(question)
  // until the next answer is there the last one stands, or the sheet would jump under the hand
  const [traced, setTraced] = useState<Traced>()
  if (said?.kind === 'traced' && said !== traced) setTraced(said)
  const next = traced?.diagnosis.next
  useEffect(() => {
    onLeads(next)
    return () => onLeads(undefined)
  }, [next, onLeads])
  const enter = (at: NextMeasurement, volt: number) => {
    const { plus, minus, seenBy, asking } = at
    change((now) => ({ ...now, readings: [...now.readings, { kind: 'volt', plus, minus, seenBy, asking, volt }] }))
  }
  if (said?.kind === 'crashed')
    return (
      <p className="trouble" role="alert">
        {findings.crashed} {said.message}
      </p>
    )
  return (
    <>
      <Lead text={words.lead} />
      <div className="tracing" aria-busy={said === undefined}>
        {traced ? <Next of={traced} onEnter={enter} onShow={onShow} /> : <p role="status">{words.working}</p>}
        {traced && traced.readings > 0 && <Suspects of={traced} playing={playing} onPlay={onPlay} />}
        <TakenReadings wiring={wiring} onSite={onSite} onChange={change} />
      </div>
    </>
  )
}

interface OfNext {
  readonly of: Traced
  readonly onEnter: (at: NextMeasurement, volt: number) => void
  readonly onShow: (leads: Leads) => void
}

function Next({ of, onEnter, onShow }: OfNext) {
  const words = useSearching().trace
  const { language } = useReader()
  const [open, setOpen] = useState(false)
  const { next, suspects } = of.diagnosis
  const left = suspects.filter(({ explains }) => explains === of.readings).length
  const standing = next && standingWords(next, language)
  return (
    <>
      <p role="status" className="next-measurement">
        {next && standing !== undefined ? (
          <Explained text={words.next(next.plus, next.minus, standing)} />
        ) : (
          <Explained text={left === 1 ? words.alone : words.enough} />
        )}
      </p>
      {next && standing !== undefined && (
        <div className="row">
          <button type="button" className="primary" aria-label={words.enterAt(next.plus, next.minus)} onClick={() => setOpen(true)}>
            {words.enter}
          </button>
          <button type="button" className="link" aria-label={words.showFor(next.plus, next.minus)} onClick={() => onShow(next)}>
            {words.show}
          </button>
        </div>
      )}
      {open && next && standing !== undefined && (
        <Suspense fallback={null}>
          <Pad
            onClose={() => setOpen(false)}
            asked={{
              label: words.next(next.plus, next.minus, standing),
              hint: words.hint(next.plus, next.minus, standing),
              kind: 'volt',
              value: undefined,
              signed: true,
              onEnter: (volt) => onEnter(next, volt),
            }}
          />
        </Suspense>
      )}
    </>
  )
}

interface OfSuspects {
  readonly of: Traced
  readonly playing: Fault | undefined
  readonly onPlay: (fault: Fault | undefined) => void
}

/** The faults that explain most of what was measured, in the order of the wiring. */
function Suspects({ of: { diagnosis, readings }, playing, onPlay }: OfSuspects) {
  const words = useSearching().trace
  const { language } = useReader()
  const { connecting } = language
  const most = diagnosis.suspects[0]?.explains ?? 0
  const best = diagnosis.suspects.filter(({ explains }) => explains === most).map(({ fault }) => fault)
  const faults = best.filter((fault) => fault !== undefined)
  const rest = faults.slice(MOST_NAMED)
  return (
    <section aria-label={words.suspects}>
      <h3>{words.suspects}</h3>
      <p role="status">
        <Explained text={most === readings ? connecting.explainsAll(readings) : connecting.explainsMost(most, readings)} />
      </p>
      {best.includes(undefined) && <p>{capital(faultName(undefined, language))}.</p>}
      <FaultButtons faults={faults.slice(0, MOST_NAMED)} playing={playing} onPlay={onPlay} />
      {rest.length > 0 && (
        <details className="apart">
          <summary>{words.more(rest.length)}</summary>
          <FaultButtons faults={rest} playing={playing} onPlay={onPlay} />
        </details>
      )}
    </section>
  )
}
