import type { RangingSensor } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { doorOf } from '../src/door.ts'
import { directionOffOf, offOf } from '../src/tolerances.ts'
import { linesOf, pointAt } from './oracle.ts'
import { randomDoorFile, sha256 } from './random-door-files.ts'
import { diceOf } from './random-numbers.ts'

describe('how far a beam can be off', () => {
  it('is never less than what turned and moved sensors show (random doors, seeds 1 to 200, 40 turns each)', () => {
    let tried = 0
    const wrong: object[] = []
    for (let seed = 1; seed <= 200; seed++) {
      const dice = diceOf(seed)
      const { text, readLibrary, door } = randomDoorFile(seed)
      const most = {
        length: 0,
        position: 3,
        tilt: dice.between(0, 5),
        roll: dice.between(0, 5),
        yaw: dice.between(0, 5),
        floor: 0,
        range: 0,
      }
      const [field] = doorOf(text, { sha256, readLibrary }).fields.filter(({ sensor }) => !sensor.segments)
      const sensor = door.sensors.find(({ id, kind }) => id === field?.sensor.id && kind === 'ranging') as RangingSensor | undefined
      if (field === undefined || sensor === undefined) continue
      for (let i = 0; i < 40; i++) {
        const p = dice.whole(0, sensor.planes.length - 1)
        const at = (degrees: number) => (degrees * dice.pick([-1, 1, dice.between(-1, 1)]) * Math.PI) / 180
        const turned = linesOf(sensor, p, { yaw: at(most.yaw), tilt: at(most.tilt), roll: at(most.roll) })
        const asWritten = linesOf(sensor, p)
        const b = dice.whole(0, asWritten.length - 1)
        const [plane, one, other] = [field.sensor.planes[p], asWritten[b], turned[b]]
        const beam = plane?.beams[b]
        if (plane === undefined || beam === undefined || one === undefined || other === undefined)
          throw new Error('both must have the beam')
        const far = dice.between(0, 5000)
        const [off, directionOff] = [offOf(most, field.sensor, plane, beam, far), directionOffOf(most, field.sensor, plane, beam)]
        const t = far * dice.next()
        for (const axis of [0, 1, 2] as const) {
          const moved = Math.abs(pointAt(other, t)[axis] - pointAt(one, t)[axis]) + most.position
          const turnedBy = Math.abs(other.along[axis] - one.along[axis])
          if (moved > off[axis] + 1e-9 || turnedBy > directionOff[axis] + 1e-12) wrong.push({ seed, p, b, axis, moved, turnedBy })
        }
        tried++
      }
    }
    expect(wrong).toEqual([])
    expect(tried).toBeGreaterThan(4000)
  })
  it('is what the turns make of one beam that hangs straight down (hand calculation)', () => {
    const sensors = [{ use: 'demo-single-curtain', side: 'a', mountingHeight_mm: 2000, offset_mm: 100, tilt_deg: 0 }]
    const text = JSON.stringify({ sillsight: 1, survey: { opening: { width_mm: 1500, height_mm: 2100 } }, sensors })
    const [field] = doorOf(text, { sha256 }).fields
    const plane = field?.sensor.planes[0]
    const beam = plane?.beams[81] // of 163, from -61 to 61 degrees
    if (field === undefined || plane === undefined || beam === undefined) throw new Error('the curtain must have its middle beam')
    const one = Math.PI / 180
    const most = { length: 7, position: 5, tilt: 1, roll: 0.5, yaw: 2, floor: 7, range: 7 }
    // 1000 mm down: tilt moves the end by 1000 * 1 degree along y, roll by half of it along x, yaw not at all; the rest is S^2 / 2 * 1000
    const rest = ((3.5 * one) ** 2 / 2) * 1000
    const expected = [5 + 1000 * 0.5 * one + rest, 5 + 1000 * one + rest, 5 + rest]
    expect(offOf(most, field.sensor, plane, beam, 1000).map((each) => each.toFixed(9))).toEqual(expected.map((each) => each.toFixed(9)))
  })
})
