import { expect, it } from 'vitest'
import { downward, plainDoor, plainState } from '../../cases/plain-door.ts'
import { randomNumbers } from '../../cases/random-numbers.ts'
import { fieldSight } from '../coverage/scene.ts'
import { turningLeaf } from '../motion/turning-leaf.ts'
import { turningInField } from './turning-in-field.ts'

// A slow twin: the leaf at 400 ways, and points 3 mm apart along each beam asked whether they lie in a panel, with plain vectors
it('meets a beam nowhere else than where a point of the beam lies in a panel, and surely there (20 leaves that swing or fold, seeds 1 to 20)', () => {
  const wrong: string[] = []
  let met = 0
  for (let seed = 1; seed <= 20; seed++) {
    const random = randomNumbers(seed)
    const [first, second] = random.chance(0.5) ? [1900, undefined] : [900, random.between(900, 1050)]
    const hinged = { hinge: 'at-zero', opensTo: 'a', length_mm: first, secondPanel_mm: second, openAngle_rad: 1.4 } as const
    const door = plainDoor({ leaf: { travel: 'turning', thickness_mm: 40, bulge_mm: 10, hinged } })
    const [x, y, tilt] = [random.between(0, 1900), random.between(-300, 1500), random.between(-40, 40)]
    const sensor = downward([{ x_mm: x, y_mm: y, z_mm: 2700 }], {}, { yMin_mm: -1500, yMax_mm: 3000, xMin_mm: -500, xMax_mm: 3000 }, tilt)
    const [field] = sensor.fields
    const leaf = turningLeaf(door)
    if (!field || !leaf) throw new Error('the door must have a field and a leaf')
    const sight = fieldSight(door, plainState(), { sensor, field })
    const { mayMeet, meets } = turningInField(sight, leaf, [0, 2500])
    const [, dy, dz] = [0, Math.sin((tilt * Math.PI) / 180), -Math.cos((tilt * Math.PI) / 180)]
    const inLeaf = (way: number): boolean => {
      const angle = way / first
      const joint = [first * Math.cos(angle), first * Math.sin(angle)] as const
      const dip = second === undefined ? 0 : Math.asin((first * Math.sin(angle)) / second)
      type Bar = readonly [x: number, y: number, alongX: number, alongY: number, length: number]
      const bars: readonly Bar[] = [
        [0, 0, Math.cos(angle), Math.sin(angle), first],
        ...(second === undefined ? [] : [[joint[0], joint[1], Math.cos(dip), -Math.sin(dip), second] as const]),
      ]
      for (let t = 0; t < 4000; t += 3) {
        const [py, pz] = [y + t * dy, 2700 + t * dz]
        if (pz <= 5 || pz >= 2500 || py < -1500 || py > 3000) continue
        for (const [ax, ay, ux, uy, length] of bars) {
          const [u, v] = [(x - ax) * ux + (py - ay) * uy, (py - ay) * ux - (x - ax) * uy]
          if (u > 0 && u < length && Math.abs(v) < 30) return true
        }
      }
      return false
    }
    const holds = (list: typeof meets, way: number) => list.some(({ from_mm, to_mm }) => from_mm <= way && way <= to_mm)
    for (let i = 0; i < 400; i++) {
      const way = (leaf.way_mm * (i + 0.5)) / 400
      const isIn = inLeaf(way)
      if (isIn) met++
      if (isIn && !holds(mayMeet, way)) wrong.push(`seed ${seed}: meets at ${way}`)
      if (!isIn && [-4, 0, 4].every((off) => holds(meets, way + off)) && !inLeaf(way + 4) && !inLeaf(way - 4))
        wrong.push(`seed ${seed}: meets not at ${way}`)
    }
  }
  expect(wrong).toEqual([])
  expect(met).toBeGreaterThan(200)
})
