import type { DoorFile } from '@sillsight/document'
import type { ReactNode } from 'react'
import { AskedFigure } from '../entry/asked-figure.tsx'
import { asBegun, useBegun, useBegunIn } from '../entry/begun.ts'
import { Cross } from '../entry/cross.tsx'
import { AskedDay, Day } from '../entry/day.tsx'
import { hardly, USUAL_IN_TIME, USUAL_MM } from '../entry/doubts.ts'
import { Figure } from '../entry/figure.tsx'
import { freeId } from '../entry/free-id.ts'
import { type Kind, shownFigure } from '../entry/kinds.ts'
import { useListed } from '../entry/listed.ts'
import { AskedName, Name } from '../entry/name.tsx'
import { pushAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Leave } from '../entry/whole.tsx'
import type { Begun } from '../store/contract.ts'
import { useFacts } from '../words/facts.ts'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Cautions } from './cautions.tsx'
import { Group } from './group.tsx'

const PATH = 'forceRecords'
type ForceRecord = NonNullable<DoorFile['forceRecords']>[number]

const FIGURES = {
  gap_mm: { word: 'gap', kind: 'length', usual: USUAL_MM.forceGap },
  peak_N: { word: 'peak', kind: 'force', usual: USUAL_IN_TIME.force_N },
  time_s: { word: 'time', kind: 'seconds', usual: USUAL_IN_TIME.forceTime_s },
  mean_N: { word: 'mean', kind: 'force', usual: USUAL_IN_TIME.force_N },
  after5s_N: { word: 'after5s', kind: 'force', usual: USUAL_IN_TIME.force_N },
} as const satisfies Record<string, { word: string; kind: Kind; usual: readonly [number, number] }>
type FigureName = keyof typeof FIGURES
const NEEDED = ['place', 'gap_mm', 'peak_N', 'time_s', 'mean_N', 'instrument', 'on', 'by'] as const

/** Forces as they were measured: three sentences for each, with the instrument, the day and the name. */
export function ForceRecords() {
  const words = useFacts().forces
  const { chapters } = useWords()
  const { snapshot } = useDoor()
  const listed = useListed(PATH)
  const begun = useBegunIn(PATH)
  const records = snapshot.file.forceRecords ?? []
  return (
    <Group title={words.title} holds={[PATH]} said={chapters.listed(records.length)} isFirst>
      {records.length === 0 && begun.places.length === 0 && <p>{words.none}</p>}
      {records.map((record, i) => (
        <div className="thing record" key={record.id}>
          <RecordWords path={`${PATH}/${i}`} of={record.place} />
          <Cross name={words.name(record.place)} onAway={() => listed.remove(i, words.name(record.place))} />
        </div>
      ))}
      {begun.places.map((place) => (
        <NewRecord key={place} place={place} records={records} onDone={begun.done} />
      ))}
      {begun.places.length === 0 && (
        <div className="row">
          <button type="button" className="second" data-at={PATH} disabled={snapshot.readOnly !== undefined} onClick={begun.ask}>
            {words.add}
          </button>
        </div>
      )}
      <Cautions lines={words.cautions} />
    </Group>
  )
}

function useQuestions() {
  const all = useWords()
  const reader = useReader()
  return (name: FigureName) => hardly(all, FIGURES[name].usual, (value) => shownFigure(value, FIGURES[name].kind, reader))
}

function RecordWords({ path, of }: { readonly path: string; readonly of: string }) {
  const words = useFacts().forces
  const question = useQuestions()
  const figure = (name: FigureName) => (
    <Figure
      path={`${path}/${name}`}
      label={`${words[FIGURES[name].word]}: ${of}`}
      kind={FIGURES[name].kind}
      question={question(name)}
      {...(name === 'after5s_N' && { missing: words.notRead, optional: true })}
    />
  )
  const name = (place: 'place' | 'instrument' | 'by') => <Name path={`${path}/${place}`} label={`${words[place]}: ${of}`} />
  const day = (place: 'on' | 'calibratedUntil') => (
    <Day path={`${path}/${place}`} label={`${words[place]}: ${of}`} {...(place === 'calibratedUntil' && { optional: true })} />
  )
  return (
    <div>
      <ForceWords {...{ figure, name, day }} />
    </div>
  )
}

/** What is said of one force, whether it stands in the file or is still being entered. */
function ForceWords(props: {
  readonly figure: (name: FigureName) => ReactNode
  readonly name: (place: 'place' | 'instrument' | 'by') => ReactNode
  readonly day: (place: 'on' | 'calibratedUntil') => ReactNode
}) {
  const { figure, name, day } = props
  const words = useFacts().forces
  return (
    <>
      <p>
        <Sentence text={words.where} figures={{ place: name('place'), gap: figure('gap_mm'), peak: figure('peak_N') }} />
      </p>
      <p>
        <Sentence text={words.lasting} figures={{ time: figure('time_s'), mean: figure('mean_N'), after5s: figure('after5s_N') }} />
      </p>
      <p>
        <Sentence
          text={words.how}
          figures={{ instrument: name('instrument'), calibratedUntil: day('calibratedUntil'), on: day('on'), by: name('by') }}
        />
      </p>
    </>
  )
}

/** All of one force before it comes into the file. Instrument, day and name go on from the force before it, and stand there to be changed. */
function NewRecord(props: { readonly place: string; readonly records: readonly ForceRecord[]; readonly onDone: () => void }) {
  const { place, records, onDone } = props
  const words = useFacts().forces
  const question = useQuestions()
  const begun = useBegun(place)
  const before = records[records.length - 1]
  const offered = ['instrument', 'calibratedUntil', 'on', 'by'] as const
  const goingOn = offered.flatMap((each): [string, Begun][] => (before?.[each] === undefined ? [] : [[each, { value: before[each] }]]))
  const said: Readonly<Record<string, Begun>> = begun.isAny ? begun.values : Object.fromEntries(goingOn)
  /** With the first value what is offered is kept too: it stands there as it was seen, whatever becomes of the force before. */
  const say = (name: string, label: string, value: Begun | undefined) =>
    begun.say(label, { [name]: value, ...(!begun.isAny && { ...Object.fromEntries(goingOn), [name]: value }) })
  const text = (name: string) => String(said[name]?.value ?? '')
  const figure = (name: FigureName) => {
    const { word, kind } = FIGURES[name]
    const { value, typed } = said[name] ?? {}
    return (
      <AskedFigure
        at={`${place}/${name}`}
        missing={name === 'after5s_N' ? words.notRead : undefined}
        asked={{
          ...{ label: words[word], kind, typed, value: typeof value === 'number' ? value : undefined, question: question(name) },
          onEnter: (entered, as) => say(name, words[word], asBegun(entered, as, kind)),
        }}
      />
    )
  }
  const name = (each: 'place' | 'instrument' | 'by') => (
    <AskedName label={words[each]} value={text(each)} onName={(value) => say(each, words[each], { value })} />
  )
  const day = (each: 'on' | 'calibratedUntil') => (
    <AskedDay
      label={words[each]}
      value={text(each)}
      onDay={(value) => say(each, words[each], value === undefined ? undefined : { value })}
    />
  )
  const keep = () => {
    const id = freeId(
      'force',
      records.map((record) => record.id),
    )
    const made = Object.fromEntries(Object.entries(said).map(([key, { value }]) => [key, value]))
    begun.whole({ deed: 'added', path: PATH, name: words.name(text('place')) }, (draft) => pushAt(draft, PATH, { id, ...made }))
    onDone()
  }
  return (
    <div className="new-record">
      <ForceWords {...{ figure, name, day }} />
      <div className="row">
        <button type="button" className="primary" disabled={NEEDED.some((each) => text(each) === '')} onClick={keep}>
          {words.keep}
        </button>
        <Leave place={place} called={words.add} onDone={onDone} />
      </div>
    </div>
  )
}
