import type { Stance } from '../coverage/scene.ts'
import { reach_mm, type TurningLeaf } from '../motion/turning-leaf.ts'
import { extentOf, type Reached, reachedWays, solidsOf, sweptBy } from './turning-contact.ts'
import type { TurningPassage } from './turning-passage.ts'

/** Each part of a body whose middle keeps one x, past each leaf whose swing it comes into. */
export function turningPassages(
  { swings, ratio, way_mm }: TurningLeaf,
  stance: Stance,
  x_mm: number,
  from: 'a' | 'b',
  seen: Pick<TurningPassage, 'views' | 'standing'>,
): readonly TurningPassage[] {
  return solidsOf(stance, x_mm).flatMap((solid) =>
    swings.flatMap((swing): readonly TurningPassage[] => {
      const reach = reach_mm(swing, way_mm)
      const [yMin_mm, yMax_mm] = swing.side > 0 ? [-swing.half_mm, reach] : [-reach, swing.half_mm]
      const [back_mm, front_mm] = extentOf(solid)
      // middles of the body with which the solid overlaps the stretch of y that the leaf ever reaches
      const [first_mm, last_mm] = [yMin_mm - front_mm, yMax_mm - back_mm]
      const [enter_mm, leave_mm] = from === 'b' ? [first_mm, last_mm] : [-last_mm, -first_mm]
      const known = new Map<string, Reached | undefined>()
      const swept = (from_mm: number, to_mm: number) => (from === 'b' ? sweptBy(solid, from_mm, to_mm) : sweptBy(solid, -to_mm, -from_mm))
      const reached = (from_mm: number, to_mm: number) => {
        const key = `${from_mm} ${to_mm}`
        if (known.has(key)) return known.get(key)
        const found = reachedWays(swing, ratio, way_mm, swept(from_mm, to_mm))
        known.set(key, found)
        return found
      }
      if (reached(enter_mm, leave_mm) === undefined) return []
      return [{ swing, ratio, solid, from, enter_mm, leave_mm, reached, swept, ...seen }]
    }),
  )
}
