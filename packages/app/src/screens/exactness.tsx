import { type ReactNode, useMemo } from 'react'
import { Figure } from '../entry/figure.tsx'
import { putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Explained } from '../help/explained.tsx'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Group } from './group.tsx'

/** How far one sees in the worst air that the door works in. */
export function AirGroup() {
  const words = useWords()
  const { visibility_m } = useDoor().snapshot.file.survey
  return (
    <Group title={words.measure.air} holds={['survey/visibility_m']} said={words.chapters.isKnown(visibility_m !== undefined)}>
      <p>
        <Sentence
          text={words.measure.airWords}
          figures={{
            visibility: (
              <Figure
                path="survey/visibility_m"
                label={words.measure.visibility}
                kind="metres"
                missing={words.measure.clear}
                optional
                put={(draft, value) => putAt(draft, 'survey/visibility_m', value ?? 'clear')}
              />
            ),
          }}
        />
      </p>
    </Group>
  )
}

const USUAL_TOLERANCES = { length_mm: 5, position_mm: 5, tilt_deg: 0.3, roll_deg: 0.3, yaw_deg: 0.3, floor_mm: 5, range_percent: 0 }

/** How far what is built may be off from what is written. */
export function TolerancesGroup() {
  const words = useWords()
  const { door, snapshot } = useDoor()
  const figures = useMemo(() => {
    const of = (name: keyof typeof USUAL_TOLERANCES): ReactNode => (
      <Figure
        path={`tolerances/${name}`}
        label={words.measure.tolerance}
        kind={name.endsWith('_deg') ? 'angle' : name.endsWith('_percent') ? 'percent' : 'length'}
      />
    )
    return {
      length: of('length_mm'),
      position: of('position_mm'),
      tilt: of('tilt_deg'),
      roll: of('roll_deg'),
      yaw: of('yaw_deg'),
      floor: of('floor_mm'),
      range: of('range_percent'),
    }
  }, [words])
  return (
    <Group title={words.measure.tolerances} holds={['tolerances']} said={words.chapters.isKnown(snapshot.file.tolerances !== undefined)}>
      {snapshot.file.tolerances === undefined ? (
        <>
          <p>
            <Explained text={words.measure.tolerancesNone} />
          </p>
          <button
            type="button"
            className="second"
            data-at="tolerances"
            onClick={() => door.edit({ deed: 'added', path: 'tolerances' }, (draft) => putAt(draft, 'tolerances', { ...USUAL_TOLERANCES }))}
          >
            {words.measure.tolerancesAdd}
          </button>
        </>
      ) : (
        <p>
          <Sentence text={words.measure.tolerancesWords} figures={figures} />
        </p>
      )}
    </Group>
  )
}
