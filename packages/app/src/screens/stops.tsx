import { LEAST_STOPS } from '@sillsight/engine'
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
/** Timed stops, entered one after another and kept one by one; with them the separation distance needs neither delay nor braking. */
export function Stops() {
  const words = useAround().stops
  const all = useWords()
  const reader = useReader()
  const { door, snapshot } = useDoor()
  const [entering, setEntering] = useState(false)
  const timed = snapshot.file.survey.drive?.stopTimes ?? { readings_s: [] }
  const { readings_s } = timed
  const put = (next: Partial<typeof timed>, typed?: string) => {
    const { readings_s: readings, share_percent, confidence_percent } = { ...timed, ...next }
    const isAny = readings.length > 0 || share_percent !== undefined || confidence_percent !== undefined
    door.edit({ deed: isAny ? 'set' : 'removed', path: PATH, ...(typed !== undefined && { typed }) }, (draft) => {
      if (!isAny) return putAt(draft, PATH, undefined)
      putAt(draft, `${PATH}/readings_s`, [...readings])
      putAt(draft, `${PATH}/share_percent`, share_percent)
      putAt(draft, `${PATH}/confidence_percent`, confidence_percent)
    })
  }
  const question = hardly(all, USUAL_IN_TIME.stop_s, (value) => shownFigure(value, 'seconds', reader))
  const isReadOnly = snapshot.readOnly !== undefined
  const readings = readings_s.map((value, i) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: readings have no other name
    <span key={i}>
      {i > 0 && ', '}
      <AskedFigure
        at={`${PATH}/readings_s/${i}`}
        readOnly={isReadOnly}
        asked={{
          label: words.reading(i + 1),
          kind: 'seconds',
          value,
          question,
          onEnter: (next, typed) => put({ readings_s: readings_s.map((old, at) => (at === i ? next : old)) }, typed),
          onClear: () => put({ readings_s: readings_s.filter((_, at) => at !== i) }),
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
        onEnter: (value, typed) => value >= 75 && value <= 99.9 && put({ [name]: value }, typed),
        ...(timed[name] !== undefined && { onClear: () => put({ [name]: undefined }) }),
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
      {readings_s.length > 0 && readings_s.length < LEAST_STOPS && (
        <p className="entry-doubt" role="status">
          {words.more(LEAST_STOPS - readings_s.length)}
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
        <button type="button" className="second" data-at={`${PATH}/readings_s`} disabled={isReadOnly} onClick={() => setEntering(true)}>
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
              onEnter: (value, typed) => value > 0 && put({ readings_s: [...readings_s, value] }, typed),
            }}
          />
        </Suspense>
      )}
    </>
  )
}
