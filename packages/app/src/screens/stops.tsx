import { lazy, Suspense, useState } from 'react'
import { AskedFigure } from '../entry/asked-figure.tsx'
import { hardly, USUAL_IN_TIME } from '../entry/doubts.ts'
import { shownFigure } from '../entry/kinds.ts'
import { putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Explained } from '../help/explained.tsx'
import { useAround } from '../words/around.ts'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'

const Pad = lazy(() => import('../entry/pad.tsx').then(({ Pad }) => ({ default: Pad })))

const PATH = 'survey/drive/stopTimes'
/** Fewer say nothing about their spread. */
const LEAST = 3

interface Timed {
  readonly readings_s: readonly number[]
  readonly share_percent?: number
  readonly confidence_percent?: number
}

/** The door file wants three stops, share and confidence, or none: what is not whole yet waits here, by door, while this page lives. */
const waiting = new Map<string, Timed>()

/** Timed stops, entered one after another; with them the separation distance needs neither delay nor braking. */
export function Stops() {
  const words = useAround().stops
  const all = useWords()
  const reader = useReader()
  const { door, snapshot } = useDoor()
  const [entering, setEntering] = useState(false)
  const [, setTurn] = useState(0)
  const kept = snapshot.file.survey.drive?.stopTimes
  const timed: Timed = kept ?? waiting.get(door.id) ?? { readings_s: [] }
  const { readings_s } = timed
  const put = (next: Timed, typed?: string) => {
    const isWhole = next.readings_s.length >= LEAST && next.share_percent !== undefined && next.confidence_percent !== undefined
    if (isWhole) waiting.delete(door.id)
    else waiting.set(door.id, next)
    if (isWhole || kept)
      door.edit({ deed: isWhole ? 'set' : 'removed', path: PATH, ...(typed !== undefined && { typed }) }, (draft) =>
        putAt(draft, PATH, isWhole ? structuredClone(next) : undefined),
      )
    setTurn((turn) => turn + 1)
  }
  const question = hardly(all, USUAL_IN_TIME.stop_s, (value) => shownFigure(value, 'seconds', reader))
  const isReadOnly = snapshot.readOnly !== undefined
  const readings = readings_s.map((value, i) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: readings have no other name
    <span key={i}>
      {i > 0 && ', '}
      <AskedFigure
        readOnly={isReadOnly}
        asked={{
          label: words.reading(i + 1),
          kind: 'seconds',
          value,
          question,
          onEnter: (next, typed) => put({ ...timed, readings_s: readings_s.map((old, at) => (at === i ? next : old)) }, typed),
          onClear: () => put({ ...timed, readings_s: readings_s.filter((_, at) => at !== i) }),
        }}
      />
    </span>
  ))
  const percent = (name: 'share_percent' | 'confidence_percent', label: string) => (
    <AskedFigure
      at={`${PATH}/${name}`}
      readOnly={isReadOnly}
      asked={{
        label,
        kind: 'percent',
        value: timed[name],
        question: hardly(all, [75, 99.9], (value) => shownFigure(value, 'percent', reader)),
        onEnter: (value, typed) => value >= 75 && value <= 99.9 && put({ ...timed, [name]: value }, typed),
      }}
    />
  )
  return (
    <>
      <p>
        {readings_s.length === 0 ? (
          <Explained text={words.none} />
        ) : (
          <Sentence text={words.words} figures={{ readings: <span key="readings">{readings}</span> }} />
        )}
      </p>
      {readings_s.length > 0 && readings_s.length < LEAST && (
        <p className="entry-doubt" role="status">
          {words.more(LEAST - readings_s.length)}
        </p>
      )}
      <p>
        <Sentence
          text={words.bound}
          figures={{
            share: percent('share_percent', words.share),
            confidence: percent('confidence_percent', words.confidence),
          }}
        />
      </p>
      <div className="row">
        <button type="button" className="second" data-at={PATH} disabled={isReadOnly} onClick={() => setEntering(true)}>
          {words.add}
        </button>
      </div>
      {entering && (
        <Suspense fallback={null}>
          <Pad
            onClose={() => setEntering(false)}
            asked={{
              label: words.reading(readings_s.length + 1),
              kind: 'seconds',
              value: undefined,
              question,
              series: { next: words.next, done: words.done },
              onEnter: (value, typed) => value > 0 && put({ ...timed, readings_s: [...readings_s, value] }, typed),
            }}
          />
        </Suspense>
      )}
    </>
  )
}
