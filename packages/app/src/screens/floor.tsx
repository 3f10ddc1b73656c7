import { useState } from 'react'
import { Figure } from '../entry/figure.tsx'
import { putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Whole } from '../entry/whole.tsx'
import { Explained } from '../help/explained.tsx'
import { floorWish } from '../level/wish.ts'
import { useAround } from '../words/around.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Group } from './group.tsx'

/** The floor under and around the opening: level until somebody says otherwise. */
export function FloorGroup() {
  const words = useWords()
  const { door, snapshot } = useDoor()
  const { floor } = snapshot.file.survey
  const points = floor?.profile_mm ?? []
  const [asked, setAsked] = useState(false)
  /** A point comes into the file at its place along y. */
  const enter = ({ out = 0, height = 0 }: Readonly<Record<string, number>>) => {
    door.edit({ deed: 'added', path: 'survey/floor' }, (draft) =>
      putAt(
        draft,
        'survey/floor/profile_mm',
        [...points.map(([y, z]) => [y, z]), [out, height]].sort(([a = 0], [b = 0]) => a - b),
      ),
    )
    setAsked(false)
  }
  const sayLevel = () =>
    door.edit({ deed: 'set', path: 'survey/floor' }, (draft) => putAt(draft, 'survey/floor', { profile_mm: [[0, 0]], slopeX_percent: 0 }))
  return (
    <Group title={words.measure.floor} path="survey/floor">
      {points.length === 0 ? (
        <p>
          <Explained text={words.measure.floorLevel} />
        </p>
      ) : (
        <>
          <p>
            <Sentence
              text={words.measure.floorWords}
              figures={{
                slope: (
                  <Figure
                    path="survey/floor/slopeX_percent"
                    label={words.measure.slope}
                    kind="percent"
                    level={floorWish(words.level, snapshot.file.sides)}
                    signed
                    optional
                  />
                ),
                tolerance: <Figure path="survey/floor/tolerance_mm" label={words.measure.floorTolerance} optional />,
              }}
            />
          </p>
          {points.map((_, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: points of a profile have no other name
            <p key={i}>
              <Sentence
                text={words.measure.floorPoint}
                figures={{
                  out: <Figure path={`survey/floor/profile_mm/${i}/0`} label={words.measure.floorOut} signed />,
                  height: <Figure path={`survey/floor/profile_mm/${i}/1`} label={words.measure.floorHeight} signed />,
                }}
              />
            </p>
          ))}
        </>
      )}
      <StateFloors />
      {asked && (
        <Whole
          text={words.measure.floorPoint}
          figures={{ out: { label: words.measure.floorOut, signed: true }, height: { label: words.measure.floorHeight, signed: true } }}
          onWhole={enter}
        />
      )}
      <div className="row">
        {points.length === 0 && (
          <button type="button" className="second" data-at="survey/floor" onClick={sayLevel}>
            {words.measure.floorIsLevel}
          </button>
        )}
        <button type="button" className="second" onClick={() => setAsked(true)}>
          {words.measure.addPoint}
        </button>
      </div>
    </Group>
  )
}

/** A state with a floor of its own has its own rise and tolerance. */
function StateFloors() {
  const words = useWords()
  const { states } = useAround()
  const { snapshot } = useDoor()
  return (snapshot.file.survey.states ?? []).map(({ id, name = id, floor }, i) =>
    floor === undefined ? null : (
      <p key={id}>
        <Sentence
          text={states.floor}
          figures={{
            state: `\u201c${name}\u201d`,
            slope: <Figure path={`survey/states/${i}/floor/slopeX_percent`} label={words.measure.slope} kind="percent" signed optional />,
            tolerance: <Figure path={`survey/states/${i}/floor/tolerance_mm`} label={words.measure.floorTolerance} optional />,
          }}
        />
      </p>
    ),
  )
}
