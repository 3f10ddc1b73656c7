import { describe, expect, it } from 'vitest'
import { countCells } from '../src/coverage/grid.ts'
import { coverageMaps } from '../src/coverage/maps.ts'
import type { Door, PostObstacle } from '../src/model/door.ts'
import { backgrounds } from '../src/seeing/background.ts'
import { beamsOf } from '../src/seeing/beams.ts'
import { withBodies, withFields, withRanging, withStates } from './door-changes.ts'
import { randomDoor } from './random-doors.ts'
import { slowTwin } from './slow-twin.ts'

/** A level floor, and a body just as high as the named limit of every field: whatever meets its top meets the limit, which is included. */
function justMet(seed: number, limit: 'top_mm' | 'clearance_mm'): Door {
  const door = randomDoor(seed)
  const posture = door.bodies[0]?.postures[0] ?? expect.fail(`seed ${seed} has no posture`)
  const height_mm = posture.shape === 'box' ? posture.c_mm : posture.height_mm
  const level = withStates(door, (state) => ({ ...state, floor: { profile: [{ y_mm: 0, z_mm: 0 }], slopeX: 0, tolerance_mm: undefined } }))
  const sharp = withRanging(level, (sensor) => ({ ...sensor, spotRadius_mm: 0 }))
  return withFields(
    withBodies(sharp, (body) => ({ ...body, postures: [posture] })),
    (field) => ({ ...field, [limit]: height_mm }),
  )
}

describe('a limit that is just met is included, however the beam slants (random doors, seeds 1 to 600)', () => {
  it.each(['top_mm', 'clearance_mm'] as const)('%s', (limit) => {
    let seen = 0
    const differing: number[] = []
    for (let seed = 1; seed <= 600; seed++) {
      const door = justMet(seed, limit)
      const [zone, state] = [door.zones[0], door.states[0]]
      if (zone === undefined || state === undefined) continue
      const blind = slowTwin(door, zone.id, state.id).cells.filter(({ verdict }) => verdict === 'blind').length
      if (countCells(coverageMaps(door, zone, state).blind) !== blind) differing.push(seed)
      seen += slowTwin(door, zone.id, state.id).cells.filter(({ verdict }) => verdict === 'seen').length
    }
    expect(differing).toEqual([])
    expect(seen).toBeGreaterThan(1000)
  })
})

describe('a beam that only touches a post', () => {
  it('passes it, at every angle of a fan that hangs parallel to the leaf (hand calculation: its plane is tangent to the post)', () => {
    const post: PostObstacle = {
      shape: 'post',
      id: 'post',
      name: 'post',
      x_mm: 362.5,
      y_mm: -100,
      from_mm: 0,
      to_mm: 1500,
      implied: false,
      radius_mm: 200,
    }
    for (let seed = 1; seed <= 200; seed++) {
      const fan = randomDoor(seed).sensors.find((sensor) => sensor.kind === 'ranging')
      if (fan === undefined) continue
      const pose = { ...fan.pose, y_mm: 100, tilt_rad: 0, yaw_rad: 0 }
      const planes = fan.planes.filter((plane) => plane.kind === 'fan').map((plane) => ({ ...plane, offset_rad: 0 }))
      const [state] = randomDoor(seed).states
      if (state === undefined) continue
      const beams = beamsOf({ ...fan, pose, planes })
      expect(backgrounds(beams, { ...state, obstacles: [post] }), `seed ${seed}`).toEqual(backgrounds(beams, { ...state, obstacles: [] }))
    }
  })
})
