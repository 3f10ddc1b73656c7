import type { Door } from '@sillsight/engine'
import { onSheet, type ProjectionName, type View } from '@sillsight/report'
import { type Moment, movingSolids } from '../solid/moving-solids.ts'
import type { Shape } from '../solid/solids.ts'

/** Leaf and body at one instant, over the drawing. What they mean is said beside the slider that moves them. */
export function MovingMarks(props: {
  readonly door: Door
  readonly moment: Moment
  readonly projection: ProjectionName
  readonly view: View
}) {
  const { door, moment, projection, view } = props
  return (
    <g className="moving">
      {movingSolids(door, moment).map(({ name, at }, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: parts of one body have no names of their own
        <path key={i} className={`moving-${name}`} d={outline(at, projection, view)} />
      ))}
    </g>
  )
}

/** The outline of a box or a post: from above as it is turned, from the front and the side by what it covers. */
function outline(at: Shape, projection: ProjectionName, view: View): string {
  if (at.shape !== 'box' && at.shape !== 'post') return ''
  const [x, y, z] = at.middle
  const ring =
    at.shape === 'box'
      ? [
          [-1, -1],
          [1, -1],
          [1, 1],
          [-1, 1],
        ].map(([a = 0, b = 0]) => {
          const [along, across] = [(a * at.size_mm[0]) / 2, (b * at.size_mm[1]) / 2]
          const [cos, sin] = [Math.cos(at.yaw_rad), Math.sin(at.yaw_rad)]
          return [x + along * cos - across * sin, y + along * sin + across * cos] as const
        })
      : Array.from(
          { length: 36 },
          (_, i) => [x + at.radius_mm * Math.cos((i * Math.PI) / 18), y + at.radius_mm * Math.sin((i * Math.PI) / 18)] as const,
        )
  const half = (at.shape === 'box' ? at.size_mm[2] : at.height_mm) / 2
  const us = ring.map(([px, py]) => (projection === 'section' ? -py : px))
  const [low, high] = [Math.min(...us), Math.max(...us)]
  const corners =
    projection === 'plan'
      ? ring
      : ([
          [low, z - half],
          [high, z - half],
          [high, z + half],
          [low, z + half],
        ] as const)
  const spots = corners.map(([u_mm, v_mm]) => onSheet(view, { u_mm, v_mm }))
  return `${spots.map(({ x_mm, y_mm }, i) => `${i === 0 ? 'M' : 'L'}${x_mm.toFixed(2)} ${y_mm.toFixed(2)}`).join('')}Z`
}
