import type { Obstacle, ZoneCoverage } from '@sillsight/engine'
import { turnedCorners, upright } from './pen.ts'
import { halfExtents, type Scene, sensorSpots } from './scene.ts'
import { isInside, type Place, type Window, windowAround } from './view.ts'

/** Of wall beside the opening, and of ground on the far side of the leaf. */
export const STUB_MM = 260
const ROOM_FOR_THINGS_MM = 600 // the plan is widened by so much at most to show a thing whole

/** What of the survey's list shows in the plan. */
export function thingsInPlan(scene: Omit<Scene, 'things'>): readonly Obstacle[] {
  const window = planWindow(scene)
  return scene.state.obstacles.filter((obstacle) => !obstacle.implied && outlineOf(obstacle).some((place) => isInside(window, place)))
}

/** What the plan shows: opening, zone, sensors, worst cases, and whole things that begin among them. */
export function planWindow({ door, state, zone, coverage, bodies }: Omit<Scene, 'things'>): Window {
  const width_mm = door.opening.width_mm
  const places: Place[] = upright(-STUB_MM, width_mm + STUB_MM, -STUB_MM, STUB_MM).slice()
  if (zone) places.push(...upright(zone.xMin_mm, zone.xMax_mm, zone.yMin_mm, zone.yMax_mm))
  if (coverage) places.push(...gridCorners(coverage.grid)) // the last strip of cells may reach past the zone
  for (const { x_mm, y_mm } of sensorSpots(door)) places.push({ u_mm: x_mm, v_mm: y_mm })
  for (const body of bodies) {
    const half = halfExtents(body)
    const { x_mm, y_mm } = body.worstCase
    places.push(...upright(x_mm - half.x_mm, x_mm + half.x_mm, y_mm - half.y_mm, y_mm + half.y_mm))
  }
  return widenedForThings(windowAround(places), state.obstacles)
}

function gridCorners({ x0_mm, y0_mm, pitch_mm, columns, rows }: ZoneCoverage['grid']): readonly Place[] {
  return upright(x0_mm, x0_mm + columns * pitch_mm, y0_mm, y0_mm + rows * pitch_mm)
}

function widenedForThings(window: Window, obstacles: readonly Obstacle[]): Window {
  const room = grownWindow(window, ROOM_FOR_THINGS_MM)
  const whole = obstacles
    .filter(({ implied }) => !implied)
    .map(outlineOf)
    .filter((ring) => ring.some((place) => isInside(window, place)) && ring.every((place) => isInside(room, place)))
  return whole.length === 0
    ? window
    : windowAround([{ u_mm: window.uMin_mm, v_mm: window.vMin_mm }, { u_mm: window.uMax_mm, v_mm: window.vMax_mm }, ...whole.flat()])
}

function grownWindow({ uMin_mm, uMax_mm, vMin_mm, vMax_mm }: Window, by_mm: number): Window {
  return { uMin_mm: uMin_mm - by_mm, uMax_mm: uMax_mm + by_mm, vMin_mm: vMin_mm - by_mm, vMax_mm: vMax_mm + by_mm }
}

/** An obstacle from above; a post by the square around it. */
export function outlineOf(obstacle: Obstacle): readonly Place[] {
  const middle = { u_mm: obstacle.x_mm, v_mm: obstacle.y_mm }
  if (obstacle.shape === 'box') return turnedCorners(middle, obstacle.size_mm, obstacle.yaw_rad)
  return turnedCorners(middle, [2 * obstacle.radius_mm, 2 * obstacle.radius_mm], 0)
}
