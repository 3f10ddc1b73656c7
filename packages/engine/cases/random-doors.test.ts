import { describe, expect, it } from 'vitest'
import type { Door } from '../src/model/door.ts'
import { randomDoor } from './random-doors.ts'
import { slowTwin } from './slow-twin.ts'

const doors = Array.from({ length: 300 }, (_, i) => randomDoor(i + 1))
const ranging = (door: Door) => door.sensors.filter((sensor) => sensor.kind === 'ranging')
const fields = (door: Door) => door.sensors.flatMap((sensor) => (sensor.kind === 'zone-only' ? [] : sensor.fields))
const obstacles = (door: Door) => door.states.flatMap((state) => state.obstacles)
const postures = (door: Door) => door.bodies.flatMap((body) => body.postures)

describe('random doors (seeds 1 to 300)', () => {
  it('a seed always gives the same door', () => {
    expect(randomDoor(17)).toEqual(randomDoor(17))
    expect(randomDoor(17)).not.toEqual(randomDoor(18))
  })

  it.each<[string, (door: Door) => boolean]>([
    ['yawed boxes', (door) => obstacles(door).some((each) => each.shape === 'box' && each.yaw_rad !== 0)],
    ['posts', (door) => obstacles(door).some((each) => each.shape === 'post')],
    ['obstacles overhead', (door) => obstacles(door).some((each) => each.from_mm > 250)],
    ['floors with kinks', (door) => door.states.some(({ floor }) => floor.profile.length > 2)],
    ['floors that slope across', (door) => door.states.some(({ floor }) => floor.slopeX !== 0)],
    ['a second state', (door) => door.states.length > 1],
    ['tilt, roll and yaw', (door) => ranging(door).some(({ pose }) => pose.tilt_rad !== 0 && pose.roll_rad !== 0 && pose.yaw_rad !== 0)],
    ['several planes', (door) => ranging(door).some((sensor) => sensor.planes.length > 1)],
    ['rows of beams', (door) => ranging(door).some((sensor) => sensor.planes.some((plane) => plane.kind === 'row'))],
    ['segments', (door) => door.sensors.some((sensor) => sensor.kind === 'segment')],
    ['devices that are not computed', (door) => door.sensors.some((sensor) => sensor.kind === 'zone-only')],
    ['fields of several functions', (door) => new Set(fields(door).map((field) => field.function)).size > 1],
    ['clusters', (door) => fields(door).some((field) => field.clusterBeams > 1)],
    ['limits on all sides', (door) => fields(door).some((field) => field.xMin_mm > -Infinity && field.yMax_mm < Infinity)],
    [
      'fields that let go',
      (door) => fields(door).some((field) => field.presenceTime_s === 30) && door.zones.some((zone) => zone.longestStay_s === 60),
    ],
    ['blanking windows', (door) => fields(door).some((field) => field.blanking.length > 0)],
    ['fog', (door) => door.extinction_per_mm > 0],
    ['spots', (door) => ranging(door).some((sensor) => sensor.spotRadius_mm > 0)],
    ['margins', (door) => ranging(door).some((sensor) => sensor.backgroundMargin_mm > 0)],
    ['dark bodies', (door) => door.bodies.some((body) => body.reflectance < 0.05)],
    ['cylinders', (door) => postures(door).some((posture) => posture.shape === 'cylinder')],
    ['ranges of yaw', (door) => postures(door).some((posture) => posture.shape === 'box' && posture.yawTo_rad > posture.yawFrom_rad)],
    [
      'zones that are no multiple of the pitch',
      (door) => door.zones.some((zone) => ((zone.xMax_mm - zone.xMin_mm) / zone.pitch_mm) % 1 > 0),
    ],
  ])('have %s in at least one of twenty', (_, hasFeature) => {
    expect(doors.filter(hasFeature).length).toBeGreaterThanOrEqual(15)
  })

  it('have maps with both seen and blind cells in at least one of six', () => {
    const isMixed = (door: Door) =>
      door.zones.some((zone) => {
        const verdicts = slowTwin(door, zone.id, 'state 0').cells.map((cell) => cell.verdict)
        return verdicts.includes('seen') && verdicts.includes('blind')
      })
    expect(doors.filter(isMixed).length).toBeGreaterThanOrEqual(50)
  })
})
