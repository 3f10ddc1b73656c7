import { useBegunIn } from '../entry/begun.ts'
import { Cross } from '../entry/cross.tsx'
import { hardly, USUAL_IN_TIME } from '../entry/doubts.ts'
import { Figure } from '../entry/figure.tsx'
import { freeId } from '../entry/free-id.ts'
import { shownFigure } from '../entry/kinds.ts'
import { useListed } from '../entry/listed.ts'
import { Name } from '../entry/name.tsx'
import { pushAt, putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Whole } from '../entry/whole.tsx'
import { useAround } from '../words/around.ts'
import { useFacts } from '../words/facts.ts'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { ChosenBodies } from './chosen-bodies.tsx'

const PATH = 'survey/crossings'
const AIR = 'survey/air'

/** Who passes by without wanting through, each way in two sentences, and what air that costs. */
export function PassingBy() {
  const words = useFacts().passingBy
  const { snapshot } = useDoor()
  const listed = useListed(PATH)
  const begun = useBegunIn(PATH)
  const crossings = snapshot.file.survey.crossings ?? []
  const id = freeId(
    'way',
    crossings.map((crossing) => crossing.id),
  )
  return (
    <>
      {crossings.length === 0 && begun.places.length === 0 && <p>{words.none}</p>}
      {crossings.map(({ id, name = id }, i) => (
        <div className="thing" key={id}>
          <CrossingWords path={`${PATH}/${i}`} />
          <Cross name={name} onAway={() => listed.remove(i, name)} />
        </div>
      ))}
      {begun.places.map((place) => (
        <Whole
          key={place}
          place={place}
          called={words.made}
          text={words.ask}
          figures={{ yMin_mm: { label: words.yMin, signed: true }, yMax_mm: { label: words.yMax, signed: true } }}
          put={(draft, values) => pushAt(draft, PATH, { id, name: words.made, ...values })}
          onDone={begun.done}
        />
      ))}
      {begun.places.length === 0 && (
        <div className="row">
          <button type="button" className="second" data-at={PATH} onClick={begun.ask}>
            {words.add}
          </button>
        </div>
      )}
      <AirWords />
    </>
  )
}

function CrossingWords({ path }: { readonly path: string }) {
  const words = useFacts().passingBy
  const lanes = useAround().lanes
  const all = useWords()
  const reader = useReader()
  const pace = hardly(all, USUAL_IN_TIME.pace_m_per_s, (value) => shownFigure(value, 'speed', reader))
  const many = hardly(all, USUAL_PER_DAY, (value) => shownFigure(value, 'count', reader))
  const { snapshot } = useDoor()
  const { crossings = [] } = snapshot.file.survey
  const crossing = crossings.find((_, i) => path === `${PATH}/${i}`)
  const figures = {
    name: <Name path={`${path}/name`} label={all.measure.nameOf} />,
    yMin: <Figure path={`${path}/yMin_mm`} label={words.yMin} signed />,
    yMax: <Figure path={`${path}/yMax_mm`} label={words.yMax} signed />,
    perDay: <Figure path={`${path}/perDay`} label={words.perDay} kind="count" missing={words.nobodyCounted} question={many} optional />,
    slowest: <Figure path={`${path}/slowest_m_per_s`} label={lanes.slowest} kind="speed" question={pace} optional />,
    fastest: <Figure path={`${path}/fastest_m_per_s`} label={lanes.fastest} kind="speed" question={pace} optional />,
    mostPerDay: <Figure path={`${path}/mostPerDay`} label={words.mostPerDay} kind="count" missing={words.howMany} optional />,
  }
  return (
    <div>
      <p>
        <Sentence text={words.words} figures={figures} />
      </p>
      <p>
        <Sentence text={words.bearable} figures={figures} />
      </p>
      <ChosenBodies path={`${path}/bodies`} of={crossing?.name ?? words.made} chosen={crossing?.bodies ?? []} all={words.bodies} />
    </div>
  )
}

/** Common practice, no source: only the question hangs on it. */
const USUAL_PER_DAY = [1, 20_000] as const
const USUAL_DEGC = [-35, 45] as const

/** Both temperatures come in together: the door file has no air with one of them. */
function AirWords() {
  const words = useFacts().passingBy
  const all = useWords()
  const reader = useReader()
  const { snapshot } = useDoor()
  const { a, b } = { a: 'A', b: 'B', ...snapshot.file.sides }
  const text = words.air(a, b)
  const degrees = { sideA_degC: words.degrees(a), sideB_degC: words.degrees(b) }
  const usual = hardly(all, USUAL_DEGC, (value) => shownFigure(value, 'temperature', reader))
  if (snapshot.file.survey.air === undefined)
    return (
      <Whole
        text={text}
        place={AIR}
        called={words.airName}
        figures={Object.fromEntries(
          Object.entries(degrees).map(([name, label]) => [name, { label, kind: 'temperature' as const, signed: true, question: usual }]),
        )}
        put={(draft, values) => putAt(draft, AIR, values)}
      />
    )
  return (
    <>
      <p>
        <Sentence
          text={text}
          figures={Object.fromEntries(
            Object.entries(degrees).map(([name, label]) => [
              name,
              <Figure key={name} path={`${AIR}/${name}`} label={label} kind="temperature" signed question={usual} />,
            ]),
          )}
        />
      </p>
      <p>
        <Sentence
          text={words.lost}
          figures={{ most: <Figure path={`${AIR}/mostPerDay_m3`} label={words.mostLost} kind="volume" missing={words.howMany} optional /> }}
        />
      </p>
    </>
  )
}
