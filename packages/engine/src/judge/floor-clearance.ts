import { type LowestEntry, lowestEntry } from '../coverage/floor-clearance.ts'
import type { CountedField } from '../coverage/scene.ts'
import type { DoorState } from '../model/door.ts'
import type { Step } from '../model/finding.ts'
import { stateFacts } from './coverage-drafts.ts'
import { orNoSubject, quantity, step } from './drafts.ts'
import { allFields, fieldFacts, fieldSubject } from './fields.ts'
import { fieldPath, floorTolerancePath, SURROUNDINGS, SURVEY, sensorPath } from './paths.ts'
import { ROUNDING_MM } from './rounding.ts'
import type { Context, Draft, Rule } from './rule.ts'

/**
 * The floor itself does not enter a field: the lowest point at which something would be taken lies higher above the surveyed floor than the real
 * floor may. Equal is not enough, for the limits of a field belong to it. One finding for each field with a beam that takes anything, and state.
 *
 * Facts: `fieldFacts`, `stateFacts`, `height_mm` (of that lowest point above the floor), `plane`, `beam` (counted from 1), `x_mm`, `y_mm`, and if somebody
 * said `tolerance_mm`.
 */
export const floorClearance: Rule = {
  id: 'floor-clearance',
  source: { basis: 'our decision', document: 'docs/method.md', clause: '2', note: 'what a field takes, asked of the floor' },
  judge: (context) => {
    const { door } = context
    return orNoSubject(allFields(door).flatMap((counted) => door.states.flatMap((state) => draftsOf(context, counted, state))))
  },
}

function draftsOf({ door, sightOf }: Context, counted: CountedField, state: DoorState): readonly Draft[] {
  const lowest = lowestEntry(sightOf(counted, state))
  if (!lowest) return []
  const { tolerance_mm } = state.floor
  const tolerancePath = floorTolerancePath(door, state)
  const sensor = sensorPath(door, counted.sensor)
  const { height_mm, plane, beam, x_mm, y_mm } = lowest
  const frame = {
    subject: fieldSubject(counted),
    state: state.id,
    measured: quantity(height_mm, 'mm'),
    steps: stepsOf(lowest, [SURVEY, sensor, fieldPath(door, counted.sensor, counted.field)], tolerancePath, tolerance_mm),
    facts: {
      ...fieldFacts(counted),
      ...stateFacts(state),
      height_mm,
      plane,
      beam: beam + 1,
      x_mm,
      y_mm,
      ...(tolerance_mm === undefined ? {} : { tolerance_mm }),
    },
    restsOn: { inputs: [...SURROUNDINGS, tolerancePath, sensor], values: [], bodies: [], sensors: [counted.sensor] },
  }
  const limit = quantity(tolerance_mm ?? 0, 'mm')
  if (height_mm <= limit.value + ROUNDING_MM) return [{ ...frame, limit, verdict: 'fail' }]
  if (tolerance_mm === undefined) return [{ ...frame, verdict: 'undetermined', reason: 'missing-input', needs: [tolerancePath] }]
  return [{ ...frame, limit, verdict: 'pass' }]
}

function stepsOf(
  { height_mm }: LowestEntry,
  inputs: readonly string[],
  tolerancePath: string,
  tolerance_mm: number | undefined,
): readonly Step[] {
  const height = step(
    'lowest entry',
    quantity(height_mm, 'mm'),
    'coverage/floor-clearance',
    { inputs },
    'least height above the floor at which a beam takes something',
  )
  if (tolerance_mm === undefined) return [height]
  return [height, step('floor tolerance', quantity(tolerance_mm, 'mm'), 'judge/floor-clearance', { inputs: [tolerancePath] })]
}
