import { useState } from 'react'
import { Choose } from '../entry/choose.tsx'
import { hardly, USUAL_IN_TIME } from '../entry/doubts.ts'
import { Figure } from '../entry/figure.tsx'
import { freeId } from '../entry/free-id.ts'
import { shownFigure } from '../entry/kinds.ts'
import { Name } from '../entry/name.tsx'
import { putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Whole } from '../entry/whole.tsx'
import { Icon } from '../look/icons.tsx'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Group } from './group.tsx'

/** Where people and vehicles pass, each lane in one sentence. */
export function Lanes() {
  const words = useWords()
  const { door, snapshot } = useDoor()
  const [asked, setAsked] = useState(false)
  const lanes = snapshot.file.survey.lanes ?? []
  const path = 'survey/lanes'
  const add = (values: Readonly<Record<string, number>>) => {
    setAsked(false)
    const id = freeId(
      'lane',
      lanes.map((lane) => lane.id),
    )
    const made = { id, name: words.lanes.newLane, who: 'both', ...values }
    door.edit({ deed: 'added', path, name: made.name }, (draft) => {
      if (draft.survey.lanes === undefined) putAt(draft, path, [made])
      else (draft.survey.lanes as unknown[]).push(made)
    })
  }
  const remove = (index: number, name: string) =>
    door.edit({ deed: 'removed', path, name }, (draft) => {
      ;(draft.survey.lanes as unknown[]).splice(index, 1)
    })
  return (
    <Group title={words.lanes.title} path={path}>
      {lanes.length === 0 && <p>{words.lanes.none}</p>}
      {lanes.map((lane, i) => (
        <div className="thing" key={lane.id}>
          <LaneWords index={i} />
          <button
            type="button"
            className="quiet-button"
            aria-label={words.entry.remove(lane.name ?? lane.id)}
            onClick={() => remove(i, lane.name ?? lane.id)}
          >
            <Icon name="cross" />
          </button>
        </div>
      ))}
      {asked ? (
        <Whole
          text={words.lanes.askWords}
          figures={{ xMin_mm: { label: words.lanes.xMin, signed: true }, xMax_mm: { label: words.lanes.xMax, signed: true } }}
          onWhole={add}
        />
      ) : (
        <div className="row">
          <button type="button" className="second" onClick={() => setAsked(true)}>
            {words.lanes.add}
          </button>
        </div>
      )}
    </Group>
  )
}

function LaneWords({ index }: { readonly index: number }) {
  const words = useWords()
  const reader = useReader()
  const { door, snapshot } = useDoor()
  const path = `survey/lanes/${index}`
  const directions = snapshot.file.survey.lanes?.[index]?.directions
  const way = directions?.length === 1 ? directions[0] : 'both'
  const { a, b } = { a: 'A', b: 'B', ...snapshot.file.sides }
  const ways = { both: words.lanes.bothWays, 'from-a': words.lanes.from(a), 'from-b': words.lanes.from(b) }
  const pace = hardly(words, USUAL_IN_TIME.pace_m_per_s, (value) => shownFigure(value, 'speed', reader))
  const figures = {
    name: <Name path={`${path}/name`} label={words.measure.nameOf} />,
    who: <Choose path={`${path}/who`} label={words.lanes.who} options={words.lanes.whoNames} />,
    xMin: <Figure path={`${path}/xMin_mm`} label={words.lanes.xMin} signed />,
    xMax: <Figure path={`${path}/xMax_mm`} label={words.lanes.xMax} signed />,
    ways: (
      <Choose
        path={`${path}/way`}
        label={words.lanes.ways}
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
    slowest: <Figure path={`${path}/slowest_m_per_s`} label={words.lanes.slowest} kind="speed" question={pace} optional />,
    fastest: <Figure path={`${path}/fastest_m_per_s`} label={words.lanes.fastest} kind="speed" question={pace} optional />,
  }
  return (
    <p>
      <Sentence text={words.lanes.words} figures={figures} />
    </p>
  )
}
