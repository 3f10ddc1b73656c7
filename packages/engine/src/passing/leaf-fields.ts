import type { CountedField } from '../coverage/scene.ts'
import type { Along } from '../coverage/seen-along.ts'
import type { TimedField } from './lane-verdict.ts'

/** Sights of a field between the open leaf and the lowest at which it acts. */
const SIGHTS = 3

/**
 * A field whose sight the leaf changes, as several that each see less and act longer: with the leaf at some way still to go, and above it. While the leaf
 * is as high as that or higher, each sees no more than the field does; below, it counts as blind. The first is that of the open leaf: whoever stands is held by it, or
 * not at all. In a window of the edge (`blanking`) the field does not act, and what it does below a window is not counted on. None where a window
 * holds the opening itself.
 *
 * @param along where the field sees a body with the leaf there
 */
export function fieldsAboveLeaf(
  timed: TimedField,
  opening_mm: number,
  along: (counted: CountedField, way_mm: number) => Along,
): readonly TimedField[] {
  const { counted } = timed
  const { blanking } = counted.field
  if (blanking.some(({ from_mm, to_mm }) => from_mm <= opening_mm && opening_mm <= to_mm)) return []
  const lowest_mm = Math.max(0, ...blanking.map(({ to_mm }) => to_mm).filter((to_mm) => to_mm < opening_mm))
  return Array.from({ length: SIGHTS + 1 }, (_, k) => {
    const way_mm = k === 0 ? opening_mm : lowest_mm + ((opening_mm - lowest_mm) * (SIGHTS - k)) / SIGHTS
    return {
      ...timed,
      along: along(counted, way_mm),
      holds: timed.holds && k === 0,
      actsFrom_mm: way_mm > 0 ? way_mm : undefined,
    }
  })
}
