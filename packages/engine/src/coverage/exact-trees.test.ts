import { describe, expect, it } from 'vitest'
import { alone, disturbed, firstCell } from '../../cases/built-doors.ts'
import { bodyOf, box, downward, plainDoor, plainZone } from '../../cases/plain-door.ts'
import { randomDoor } from '../../cases/random-doors.ts'
import { type RandomNumbers, randomNumbers } from '../../cases/random-numbers.ts'
import { slowTwin } from '../../cases/slow-twin.ts'
import type { Door, DoorState, Tolerances } from '../model/door.ts'
import type { Zone } from '../model/zone.ts'
import { radians } from '../space/trigonometry.ts'
import { isBlindForAll } from './blind-for-all.ts'
import { blindOutlines } from './blind-outline.ts'
import { type ExactTrees, exactTrees } from './exact-trees.ts'
import { gridCoverage } from './grid-coverage.ts'
import { coverageMaps } from './maps.ts'
import { eachLeaf, openArea } from './open-region.ts'
import { countedFields } from './scene.ts'
import { OPEN, type Rectangle, type TileTree } from './tile-tree.ts'

const tolerances: Tolerances = {
  length_mm: 3,
  position_mm: 4,
  tilt_rad: radians(0.3),
  roll_rad: radians(0.2),
  yaw_rad: radians(0.3),
  floor_mm: 2,
  range: 0.04,
}

function pairsOf(door: Door): { zone: Zone; state: DoorState }[] {
  return door.zones.filter((z) => z.purpose !== 'must-not-see').flatMap((zone) => door.states.map((state) => ({ zone, state })))
}

function leavesOf(trees: ExactTrees, slice: number): { leaf: number; tile: Rectangle }[] {
  const leaves: { leaf: number; tile: Rectangle }[] = []
  for (const [r, root] of trees.roots.entries())
    eachLeaf(trees.slices[slice]?.trees[r] as TileTree, root, (leaf, tile) => leaves.push({ leaf, tile }))
  return leaves
}

describe('exact trees', () => {
  it('claim nothing that the slow twin denies at a grid centre, and prove most of what is seen (120 random doors, seeds 1 to 120)', () => {
    let proved = 0
    let seen = 0
    for (let seed = 1; seed <= 120; seed++) {
      const door = randomDoor(seed)
      for (const { zone, state } of pairsOf(door)) {
        const trees = exactTrees(door, zone, state)
        const twin = slowTwin(door, zone.id, state.id)
        for (const [s, slice] of trees.slices.entries()) {
          const leaves = leavesOf(trees, s)
          for (const [p, tried] of twin.postures.entries()) {
            if (tried.body.id !== slice.body || tried.posture !== slice.posture) continue
            if (tried.yaw_rad < slice.yawFrom_rad || tried.yaw_rad > slice.yawTo_rad) continue
            for (const cell of twin.cells) {
              if (cell.seen[p] && cell.free[p]) seen++
              const at = leaves.find(({ tile }) => isIn(tile, cell.x_mm, cell.y_mm))
              if (at === undefined || at.leaf === OPEN) continue
              if (at.leaf >= 0) expect(cell.seen[p], `seed ${seed} ${slice.body} at ${cell.x_mm}, ${cell.y_mm}`).toBe(true)
              else expect(cell.free[p], `seed ${seed} ${slice.body} at ${cell.x_mm}, ${cell.y_mm}`).toBe(false)
              if (at.leaf >= 0 && cell.free[p]) proved++
            }
          }
        }
      }
    }
    expect(seen).toBeGreaterThan(1000)
    expect(proved / seen).toBeGreaterThan(0.6)
  })

  it('cut the zone into leaves without holes or overlaps: areas add up and halves meet (seeds 1 to 40)', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const door = randomDoor(seed)
      for (const { zone, state } of pairsOf(door)) {
        const trees = exactTrees(door, zone, state)
        for (const s of trees.slices.keys()) {
          const area = leavesOf(trees, s).reduce((sum, { tile }) => sum + (tile.xMax - tile.xMin) * (tile.yMax - tile.yMin), 0)
          const whole = (zone.xMax_mm - zone.xMin_mm) * (zone.yMax_mm - zone.yMin_mm)
          expect(area / whole).toBeCloseTo(1, 9)
        }
      }
    }
  })

  it('leave open what one beam straight down does not see: all but a x b for a box, all but pi r^2 for a cylinder (closed form)', () => {
    const zones = [plainZone({ xMin_mm: 0, xMax_mm: 1000, yMin_mm: -500, yMax_mm: 500, pitch_mm: 25 })]
    const sensors = [downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }])]
    const openOf = (door: Door) => openArea(blindOutlines(exactTrees(door, door.zones[0] as Zone, door.states[0] as DoorState)))
    const boxOpen = openOf(plainDoor({ zones, sensors, bodies: [bodyOf([box(300, 420, 500)])] }))
    const missing = 1e6 - 300 * 420
    expect(boxOpen).toBeGreaterThanOrEqual(missing)
    expect(boxOpen).toBeLessThan(missing + 2 * (300 + 420) * 3.125 + 100) // the rim is at most one smallest tile wide
    const turned = openOf(plainDoor({ zones, sensors, bodies: [bodyOf([box(300, 420, 500, [31, 31])])] }))
    expect(turned).toBeGreaterThanOrEqual(missing)
    expect(turned).toBeLessThan(missing + 2 * (300 + 420) * 3.125 * Math.sqrt(2) + 100)
    const round = plainDoor({ zones, sensors, bodies: [bodyOf([{ shape: 'cylinder', name: 'round', radius_mm: 200, height_mm: 500 }])] })
    const roundMissing = 1e6 - Math.PI * 200 * 200
    expect(openOf(round)).toBeGreaterThanOrEqual(roundMissing)
    expect(openOf(round)).toBeLessThan(roundMissing + 2 * Math.PI * 200 * 3.125 * Math.sqrt(2) + 100)
  })

  it('hold between the grid points too: random placements in seen leaves are seen (60 random doors, seeds 1 to 60, by maps of one cell)', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const random = randomNumbers(seed)
      const door = randomDoor(seed)
      for (const { zone, state } of pairsOf(door)) contradict(door, zone, state, exactTrees(door, zone, state), random, `seed ${seed}`)
    }
  })

  it('hold over tolerances: no random door within them contradicts a leaf (60 doors, seeds 1 to 60, several poses each)', () => {
    let claims = 0
    for (let seed = 1; seed <= 60; seed++) {
      const random = randomNumbers(seed)
      const door = { ...randomDoor(seed), tolerances }
      for (const { zone, state } of pairsOf(door)) {
        const trees = exactTrees(door, zone, state, tolerances)
        for (let k = 0; k < 4; k++) {
          const built = disturbed(door, tolerances, random)
          const same = built.states.find((s) => s.id === state.id) as DoorState
          claims += contradict(built, zone, same, trees, random, `seed ${seed} pose ${k}`)
        }
      }
    }
    expect(claims).toBeGreaterThan(300)
  })
})

describe('a worst case that is blind for all tolerances', () => {
  it('is blind in every random door within them (80 doors, seeds 1 to 80)', () => {
    let shown = 0
    for (let seed = 1; seed <= 80; seed++) {
      const random = randomNumbers(seed)
      const door = randomDoor(seed)
      for (const { zone, state } of pairsOf(door))
        for (const { worstCase } of gridCoverage(door, zone, state).pockets) {
          if (!isBlindForAll(door, state, countedFields(door, zone), worstCase, tolerances)) continue
          shown++
          for (let k = 0; k < 4; k++) {
            const built = disturbed(door, tolerances, random)
            const { x_mm, y_mm, body, posture, yaw_rad } = worstCase
            const one = alone(built, zone, body, posture, yaw_rad, x_mm, y_mm)
            const maps = coverageMaps(one.door, one.zone, built.states.find((s) => s.id === state.id) as DoorState)
            expect([firstCell(maps.free), firstCell(maps.seen)], `seed ${seed} at ${x_mm}, ${y_mm}`).toEqual([1, 0])
          }
        }
    }
    expect(shown).toBeGreaterThan(40)
  })
})

function isIn({ xMin, xMax, yMin, yMax }: Rectangle, x: number, y: number): boolean {
  return x >= xMin && x <= xMax && y >= yMin && y <= yMax
}

/** Asks the door about random placements of leaves that claim something; returns how many were asked. */
function contradict(door: Door, zone: Zone, state: DoorState, trees: ExactTrees, random: RandomNumbers, told: string): number {
  let asked = 0
  for (const [s, slice] of trees.slices.entries()) {
    const claiming = leavesOf(trees, s).filter(({ leaf }) => leaf !== OPEN)
    for (let k = 0; k < Math.min(3, claiming.length); k++) {
      const { leaf, tile } = claiming[random.whole(0, claiming.length - 1)] as { leaf: number; tile: Rectangle }
      const x = random.between(tile.xMin, tile.xMax)
      const y = random.between(tile.yMin, tile.yMax)
      const one = alone(door, zone, slice.body, slice.posture, random.between(slice.yawFrom_rad, slice.yawTo_rad), x, y)
      const maps = coverageMaps(one.door, one.zone, state)
      if (leaf >= 0) expect(firstCell(maps.seen), `${told} ${slice.body} at ${x}, ${y}`).toBe(1)
      else expect(firstCell(maps.free), `${told} ${slice.body} at ${x}, ${y}`).toBe(0)
      asked++
    }
  }
  return asked
}
