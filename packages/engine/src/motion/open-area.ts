import type { Door, Leaf } from '../model/door.ts'
import { sin } from '../space/trigonometry.ts'
import { slabsAt, turningLeaf } from './turning-leaf.ts'

/**
 * Width and height that are open with so much way to go. A leaf that swings leaves as much as its edge is away from where it shuts, which errs toward more
 * air while it is hardly open; of one that folds, the end that is guided has left so much of the opening free. Never more than the opening.
 */
export function openArea(
  { leaf, opening }: { readonly leaf: Leaf; readonly opening: Door['opening'] },
  way_mm: number,
): (way: number) => readonly [width_mm: number, height_mm: number] {
  const { width_mm, height_mm } = opening
  const turning = turningLeaf({ leaf, opening })
  if (turning === undefined) return (way) => (leaf.travel === 'down' ? [width_mm, way] : [(width_mm * way) / way_mm, height_mm])
  const [swing] = turning.swings
  if (swing === undefined) throw new Error('a leaf that turns must hang on a hinge')
  const { arm_mm, second_mm } = swing
  const freeBy = (way: number) => {
    if (second_mm === undefined) return 2 * arm_mm * sin(way / arm_mm / 2)
    const [first, second] = slabsAt(swing, way)
    return arm_mm * (1 - Math.abs(first?.alongX ?? 1)) + second_mm * (1 - Math.abs(second?.alongX ?? 1))
  }
  return (way) => [Math.min(width_mm, turning.swings.length * freeBy(way)), height_mm]
}
