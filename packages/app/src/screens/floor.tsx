import type { ReactNode } from 'react'
import { useBegunIn } from '../entry/begun.ts'
import { Cross } from '../entry/cross.tsx'
import { Figure } from '../entry/figure.tsx'
import { putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Whole } from '../entry/whole.tsx'
import { Explained } from '../help/explained.tsx'
import { floorWish } from '../level/wish.ts'
import type { Draft } from '../store/contract.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Group } from './group.tsx'

/** The floor under and around the opening: level until somebody says otherwise. */
export function FloorGroup() {
  const words = useWords()
  const { door, snapshot } = useDoor()
  const { floor } = snapshot.file.survey
  const points = floor?.profile_mm ?? []
  const sayLevel = () =>
    door.edit({ deed: 'set', path: 'survey/floor' }, (draft) => putAt(draft, 'survey/floor', { profile_mm: [[0, 0]], slopeX_percent: 0 }))
  return (
    <Group title={words.measure.floor} holds={['survey/floor']} said={words.chapters.isKnown(floor !== undefined)}>
      {points.length === 0 ? (
        <p>
          <Explained text={words.measure.floorLevel} />
        </p>
      ) : (
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
      )}
      <FloorPoints path="survey/floor" points={points}>
        {points.length === 0 && (
          <button type="button" className="second" data-at="survey/floor" onClick={sayLevel}>
            {words.measure.floorIsLevel}
          </button>
        )}
      </FloorPoints>
    </Group>
  )
}

interface PointsProps {
  readonly path: string
  readonly points: readonly (readonly number[])[]
  /** Whose floor it is, where that is not the door's own. */
  readonly of?: string
  readonly children?: ReactNode
}

/** The points of a floor's profile, and the next. */
export function FloorPoints({ path, points, of, children }: PointsProps) {
  const words = useWords()
  const { door } = useDoor()
  const list = `${path}/profile_mm`
  const begun = useBegunIn(list)
  /** A point comes into the file at its place along y. */
  const enter = (draft: Draft, { out = 0, height = 0 }: Readonly<Record<string, number>>) =>
    putAt(
      draft,
      list,
      [...points.map((point) => [...point]), [out, height]].sort(([a = 0], [b = 0]) => a - b),
    )
  const remove = (index: number) =>
    door.edit({ deed: 'removed', path }, (draft) => {
      const left = points.filter((_, i) => i !== index).map((point) => [...point])
      putAt(draft, left.length > 0 ? list : path, left.length > 0 ? left : undefined)
    })
  const figures = { out: { label: words.measure.floorOut, signed: true }, height: { label: words.measure.floorHeight, signed: true } }
  return (
    <>
      {points.map((_, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: points of a profile have no other name
        <div className="thing" key={i}>
          <p>
            <Sentence
              text={words.measure.floorPoint}
              figures={{
                out: <Figure path={`${list}/${i}/0`} label={words.measure.floorOut} signed />,
                height: <Figure path={`${list}/${i}/1`} label={words.measure.floorHeight} signed />,
              }}
            />
          </p>
          <Cross name={`${words.measure.floorPointName(i + 1)}${of === undefined ? '' : `, ${of}`}`} onAway={() => remove(i)} />
        </div>
      ))}
      {begun.places.map((place) => (
        <Whole
          key={place}
          place={place}
          called={words.measure.floorPointName(points.length + 1)}
          text={words.measure.floorPoint}
          figures={figures}
          put={enter}
          onDone={begun.done}
        />
      ))}
      <div className="row">
        {children}
        <button
          type="button"
          className="second"
          aria-label={of === undefined ? undefined : `${words.measure.addPoint}: ${of}`}
          onClick={begun.ask}
        >
          {words.measure.addPoint}
        </button>
      </div>
    </>
  )
}
