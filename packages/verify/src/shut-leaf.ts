import type { Floor, Obstacle } from './plain.ts'
import type { ShutLeaf } from './sights.ts'
import { highest } from './stances.ts'
import type { Traffic } from './traffic.ts'
import type { Box, Range } from './windows.ts'

/** Beyond anything of a doorway, mm. */
const FAR = 1e6

/** The leaf where it is shut, thickness and bulge included: it fills whatever it fills on its way (docs/evidence.md, "The leaf in the field"). */
export function shutLeaf({ leaf, width, height }: Traffic, floor: Floor): ShutLeaf {
  const y = (beside: number): Range => [-leaf.half - beside, leaf.half + beside]
  if (leaf.travel === 'down') {
    const shut = highest(floor, [0, width], leaf.half)
    return {
      solids: solidsOf([{ x: [0, width], y: y(0), z: [shut, height] }]),
      ignored: ({ beside, before }) => [{ x: [-FAR, FAR], y: y(beside), z: [shut - before, FAR] }],
    }
  }
  const ends = (before: number): readonly Range[] => {
    if (leaf.travel === 'toward-zero') return [[-before, width]]
    if (leaf.travel === 'toward-width') return [[0, width + before]]
    return [
      [width / 2 - before, width],
      [0, width / 2 + before],
    ]
  }
  return {
    solids: solidsOf(ends(0).map((x) => ({ x, y: y(0), z: [-FAR, height] }))),
    ignored: ({ beside, before }) => ends(before).map((x) => ({ x, y: y(beside), z: [-FAR, FAR] })),
  }
}

function solidsOf(boxes: readonly Box[]): readonly Obstacle[] {
  return boxes.map(({ x, y, z }, i) => ({
    shape: 'box',
    id: `leaf-${i}`,
    x: (x[0] + x[1]) / 2,
    y: (y[0] + y[1]) / 2,
    half: [(x[1] - x[0]) / 2, (y[1] - y[0]) / 2],
    yaw_deg: 0,
    from: z[0],
    to: z[1],
  }))
}
