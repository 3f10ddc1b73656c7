import { lazy } from 'react'
import { useBegunIn } from '../entry/begun.ts'
import { Choose } from '../entry/choose.tsx'
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
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Chapter } from './chapter.tsx'
import { Group } from './group.tsx'

const LaneMore = lazy(() => import('./lane-more.tsx').then(({ LaneMore }) => ({ default: LaneMore })))

const path = 'survey/lanes'

/** Where people and vehicles pass, each lane in one sentence. */
export function Lanes() {
  const words = useWords()
  const said = useAround().lanes
  const { snapshot } = useDoor()
  const listed = useListed(path)
  const begun = useBegunIn(path)
  const lanes = snapshot.file.survey.lanes ?? []
  const id = freeId(
    'lane',
    lanes.map((lane) => lane.id),
  )
  return (
    <Group title={said.title} holds={[path]} said={words.chapters.named(lanes.map(({ name, id }) => name ?? id))}>
      {lanes.length === 0 && <p>{said.none}</p>}
      {lanes.map((lane, i) => (
        <div className="thing" key={lane.id}>
          <div>
            <LaneWords index={i} />
            <Chapter
              title={words.chapters.lane}
              said={words.chapters.laneSaid}
              holds={['bodies', 'falls', 'followGap_mm', 'braking'].map((name) => `${path}/${i}/${name}`)}
              isInner
            >
              <LaneMore index={i} />
            </Chapter>
          </div>
          <Cross name={lane.name ?? lane.id} onAway={() => listed.remove(i, lane.name ?? lane.id)} />
        </div>
      ))}
      {begun.places.map((place) => (
        <Whole
          key={place}
          text={said.askWords}
          called={said.newLane}
          figures={{ xMin_mm: { label: said.xMin, signed: true }, xMax_mm: { label: said.xMax, signed: true } }}
          put={(draft, values) => pushAt(draft, path, { id, name: said.newLane, who: 'both', ...values })}
          place={place}
          onDone={begun.done}
        />
      ))}
      {begun.places.length === 0 && (
        <div className="row">
          <button type="button" className="second" data-at={path} onClick={begun.ask}>
            {said.add}
          </button>
        </div>
      )}
    </Group>
  )
}

function LaneWords({ index }: { readonly index: number }) {
  const words = useWords()
  const said = useAround().lanes
  const reader = useReader()
  const { door, snapshot } = useDoor()
  const path = `survey/lanes/${index}`
  const directions = snapshot.file.survey.lanes?.[index]?.directions
  const way = directions?.length === 1 ? directions[0] : 'both'
  const { a, b } = { a: 'A', b: 'B', ...snapshot.file.sides }
  const ways = { both: said.bothWays, 'from-a': said.from(a), 'from-b': said.from(b) }
  const pace = hardly(words, USUAL_IN_TIME.pace_m_per_s, (value) => shownFigure(value, 'speed', reader))
  const figures = {
    name: <Name path={`${path}/name`} label={words.measure.nameOf} />,
    who: <Choose path={`${path}/who`} label={said.who} options={said.whoNames} />,
    xMin: <Figure path={`${path}/xMin_mm`} label={said.xMin} signed />,
    xMax: <Figure path={`${path}/xMax_mm`} label={said.xMax} signed />,
    ways: (
      <Choose
        path={`${path}/way`}
        at={`${path}/directions`}
        label={said.ways}
        options={ways}
        waiting={way}
        onChoose={(chosen) =>
          door.edit({ deed: 'set', path: `${path}/directions`, typed: ways[chosen] }, (draft) =>
            putAt(draft, `${path}/directions`, chosen === 'both' ? ['from-a', 'from-b'] : [chosen]),
          )
        }
      />
    ),
    stay: <Figure path={`${path}/longestStay_s`} label={words.place.longestStay} kind="seconds" optional />,
    slowest: <Figure path={`${path}/slowest_m_per_s`} label={said.slowest} kind="speed" question={pace} optional />,
    fastest: <Figure path={`${path}/fastest_m_per_s`} label={said.fastest} kind="speed" question={pace} optional />,
  }
  return (
    <p>
      <Sentence text={said.words} figures={figures} />
    </p>
  )
}
