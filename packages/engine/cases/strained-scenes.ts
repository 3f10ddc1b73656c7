import type { Door } from '../src/model/door.ts'
import type { RangingSensor } from '../src/model/sensor.ts'
import { atan2, PI } from '../src/space/trigonometry.ts'
import { shifted, withBodies, withFields, withRanging, withStates } from './door-changes.ts'
import { randomNumbers } from './random-numbers.ts'

/** A scene on a slope of up to 40 % with a sensor near the floor, whose beams all but follow the slope: where a beam meets much or nothing at once. */
export function steepened(door: Door, seed: number): Door {
  const dice = randomNumbers(seed + 500_000_000)
  const slopeX = dice.chance(0.3) ? 0 : dice.between(-0.4, 0.4)
  const along = atan2(slopeX, 1)
  const pose = ({ pose: asIs }: RangingSensor) => ({
    ...asIs,
    tilt_rad: dice.chance(0.5) ? asIs.tilt_rad : PI / 2 - along * dice.between(-1, 1),
    roll_rad: dice.chance(0.5) ? asIs.roll_rad : PI / 2 + along + dice.between(-0.05, 0.05),
    z_mm: dice.chance(0.5) ? asIs.z_mm : dice.between(20, 800),
  })
  const sloped = withStates(door, (state) => ({ ...state, floor: { ...state.floor, slopeX } }))
  return withRanging(sloped, (sensor) => ({ ...sensor, pose: pose(sensor) }))
}

/** A scene with numbers that no door has, but a file may: bodies of a micrometre and of half a kilometre, no range, thick fog, limits that leave nothing. */
export function extreme(door: Door, seed: number): Door {
  const dice = randomNumbers(seed + 700_000_000)
  const length = () => dice.pick([1e-3, 1, 1e3, 1e5, 5e5])
  let changed = door
  if (dice.chance(0.3)) changed = { ...changed, extinction_per_mm: dice.pick([1e-20, 1e-12, 1e-3, 1, 100]) }
  if (dice.chance(0.3))
    changed = withBodies(changed, (body) => ({
      ...body,
      reflectance: dice.pick([1e-6, 1e-3, 1]),
      postures: body.postures.map((p) => (p.shape === 'box' ? { ...p, a_mm: length(), c_mm: length() } : { ...p, radius_mm: length() })),
    }))
  if (dice.chance(0.3))
    changed = withRanging(changed, (sensor) => ({
      ...sensor,
      maxRange_mm: length(),
      rangeRef_mm: length(),
      backgroundMargin_mm: length(),
      spotRadius_mm: dice.pick([0, 1e-6, 1, 1e4]),
    }))
  if (dice.chance(0.3)) {
    const limits = {
      xMin_mm: dice.pick([-Infinity, 5e5, 0]),
      top_mm: dice.pick([Infinity, 0, -5, 1e9]),
      clearance_mm: dice.pick([-Infinity, 0, 1e9]),
    }
    changed = withFields(changed, (field) => ({ ...field, ...limits, clusterBeams: dice.pick([1, 2, 7, 100]) }))
  }
  if (dice.chance(0.3)) {
    const y_mm = dice.between(-100, 100)
    const profile = [
      { y_mm, z_mm: 0 },
      { y_mm: y_mm + dice.pick([1e-9, 1e-3, 1]), z_mm: dice.pick([0, 1e-9, 5e3]) },
    ]
    changed = withStates(changed, (state) => ({ ...state, floor: { profile, slopeX: dice.pick([0, 1e-12, 0.5, -1]), tolerance_mm: 0 } }))
  }
  return dice.chance(0.2) ? shifted(changed, { x_mm: 5e5, y_mm: -5e5, z_mm: 0 }) : changed
}
