import type { Door } from '@sillsight/engine'
import type { Place, ProjectionName } from '@sillsight/report'
import { putAt, valueAt } from '../entry/places.ts'
import type { Draft } from '../store/contract.ts'

/** What can be taken hold of in a drawing. `index` counts in the door file and in the door alike; obstacles of one state only are not held. */
export type Hold =
  | { readonly kind: 'sensor'; readonly index: number }
  | { readonly kind: 'obstacle'; readonly id: string }
  | { readonly kind: 'zone-edge'; readonly index: number; readonly edge: 'xMin' | 'xMax' | 'yMin' | 'yMax' }
  | { readonly kind: 'opening'; readonly side: 'width' | 'height' }

/** A grip in a projection: where it lies, which ways it can go, and what it moves. */
export interface Grip {
  readonly hold: Hold
  readonly id: string
  readonly name: string
  readonly at: Place
  readonly along: boolean // may move along u
  readonly up: boolean // may move along v
}

/** Half of a grip's mark along a way that it can go, in mm of paper. */
export const GRIP_ARM_MM = 2.8

/** Hands and tapes work in such steps. */
export const STEP_MM = 10
export const FINE_STEP_MM = 1

/** Which way the arrow keys go, along u and v. */
export const ARROWS: ReadonlyMap<string, readonly [number, number]> = new Map([
  ['ArrowLeft', [-1, 0]],
  ['ArrowRight', [1, 0]],
  ['ArrowUp', [0, 1]],
  ['ArrowDown', [0, -1]],
])

/**
 * Everything in a projection that can be moved by hand. Implied obstacles (walls, guides) follow from measures and are not gripped.
 *
 * @param zone id of the zone that the drawing shows: the edges of others are not there to be taken hold of
 * @param names what zones' edges and the opening are called, as people say it
 */
export function gripsOf(
  door: Door,
  { projection, zone: shown }: { readonly projection: ProjectionName; readonly zone: string | undefined },
  names: (hold: Hold) => string = () => '',
): readonly Grip[] {
  const grip = (hold: Hold, id: string, name: string, at: Place, along = true, up = true): Grip => ({ hold, id, name, at, along, up })
  const place = ({ x_mm, y_mm, z_mm }: { x_mm: number; y_mm: number; z_mm: number }): Place =>
    projection === 'plan'
      ? { u_mm: x_mm, v_mm: y_mm }
      : projection === 'elevation'
        ? { u_mm: x_mm, v_mm: z_mm }
        : { u_mm: -y_mm, v_mm: z_mm }
  const sensors = door.sensors.flatMap((sensor, index) =>
    sensor.kind === 'ranging' && sensor.planes.every(({ kind }) => kind === 'fan')
      ? [grip({ kind: 'sensor', index }, `sensor/${sensor.id}`, sensor.name, place(sensor.pose))]
      : [],
  )
  if (projection === 'section') return sensors
  const { width_mm, height_mm } = door.opening
  if (projection === 'elevation') {
    const edge = (side: 'width' | 'height', at: Place) =>
      grip({ kind: 'opening', side }, `opening/${side}`, names({ kind: 'opening', side }), at, side === 'width', side === 'height')
    return [...sensors, edge('width', { u_mm: width_mm, v_mm: height_mm * 0.4 }), edge('height', { u_mm: width_mm * 0.5, v_mm: height_mm })]
  }
  const listed = door.states[0]?.obstacles.filter(({ implied }) => !implied) ?? []
  const obstacles = listed.map((obstacle) =>
    grip({ kind: 'obstacle', id: obstacle.id }, `obstacle/${obstacle.id}`, obstacle.name, { u_mm: obstacle.x_mm, v_mm: obstacle.y_mm }),
  )
  const zones = door.zones.flatMap((zone, index) =>
    (zone.id === shown ? (['xMin', 'xMax', 'yMin', 'yMax'] as const) : []).map((edge) => {
      const hold: Hold = { kind: 'zone-edge', index, edge }
      const middle = { u_mm: (zone.xMin_mm + zone.xMax_mm) / 2, v_mm: (zone.yMin_mm + zone.yMax_mm) / 2 }
      const at = edge.startsWith('x') ? { ...middle, u_mm: zone[`${edge}_mm`] } : { ...middle, v_mm: zone[`${edge}_mm`] }
      return grip(hold, `zone/${zone.id}/${edge}`, names(hold), at, edge.startsWith('x'), edge.startsWith('y'))
    }),
  )
  return [...zones, ...obstacles, ...sensors]
}

/** The least a length may shrink to by hand. */
const LEAST_MM = 100

/**
 * Moves what is held by so many mm along u and v of the projection. `false` where the file does not hold it as its own (a sensor whose
 * place comes from elsewhere): then nothing changes.
 */
export function move(draft: Draft, hold: Hold, projection: ProjectionName, by: Place): boolean {
  if (hold.kind === 'opening') {
    const path = `survey/opening/${hold.side}_mm`
    const size = hold.side === 'width' ? by.u_mm : by.v_mm
    return add(draft, path, size, LEAST_MM)
  }
  if (hold.kind === 'zone-edge') {
    return add(draft, `zones/${hold.index}/${hold.edge}_mm`, hold.edge.startsWith('x') ? by.u_mm : by.v_mm)
  }
  const { x_mm, y_mm, z_mm } = inDoorway(projection, by)
  if (hold.kind === 'obstacle') {
    const index = draft.survey.obstacles?.findIndex(({ id }) => id === hold.id) ?? -1
    const path = `survey/obstacles/${index}`
    return add(draft, `${path}/x_mm`, x_mm) && add(draft, `${path}/y_mm`, y_mm)
  }
  return moveSensor(draft, `sensors/${hold.index}`, x_mm, y_mm, z_mm)
}

function moveSensor(draft: Draft, path: string, x_mm: number, y_mm: number, z_mm: number): boolean {
  if (valueAt(draft, `${path}/pose`) !== undefined) {
    return add(draft, `${path}/pose/x_mm`, x_mm) && add(draft, `${path}/pose/y_mm`, y_mm) && add(draft, `${path}/pose/z_mm`, z_mm)
  }
  if (typeof valueAt(draft, `${path}/mountingHeight_mm`) !== 'number') return false
  const outward = valueAt(draft, `${path}/side`) === 'b' ? -1 : 1
  if (x_mm !== 0 && valueAt(draft, `${path}/x_mm`) === undefined) {
    const width_mm = valueAt(draft, 'survey/opening/width_mm')
    if (typeof width_mm === 'number') putAt(draft, `${path}/x_mm`, width_mm / 2) // the middle is what an absent x stands for
  }
  return (
    (x_mm === 0 || add(draft, `${path}/x_mm`, x_mm)) &&
    add(draft, `${path}/offset_mm`, outward * y_mm, 0) &&
    add(draft, `${path}/mountingHeight_mm`, z_mm, LEAST_MM)
  )
}

function inDoorway(projection: ProjectionName, { u_mm, v_mm }: Place): { x_mm: number; y_mm: number; z_mm: number } {
  if (projection === 'plan') return { x_mm: u_mm, y_mm: v_mm, z_mm: 0 }
  if (projection === 'elevation') return { x_mm: u_mm, y_mm: 0, z_mm: v_mm }
  return { x_mm: 0, y_mm: -u_mm, z_mm: v_mm }
}

/** Whole tenths of a millimetre: what binary arithmetic leaves would stand in the file for ever. */
function add(draft: Draft, path: string, by_mm: number, least_mm = Number.NEGATIVE_INFINITY): boolean {
  const value = valueAt(draft, path)
  if (typeof value !== 'number') return false
  if (by_mm !== 0) putAt(draft, path, Math.max(least_mm, Math.round((value + by_mm) * 10) / 10))
  return true
}
