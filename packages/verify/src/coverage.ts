import { SPARE } from './affine.ts'
import { type Budget, spend } from './budget.ts'
import { TOLERANCES } from './door.ts'
import { type Json, listAt, numberAt, objectAt, own, refuse, textAt } from './json.ts'
import { leftOpen } from './open-tiles.ts'
import { overlapsEverywhere } from './overlap.ts'
import type { Door, Field, Obstacle, State, Tile, Zone } from './plain.ts'
import { countsFor } from './sensors.ts'
import { backgroundsOf, readingsOf, type Setting, type Sight, sightsOf, type Watch, watchOf } from './sights.ts'
import { type Slice, slicesOf, standingOf, targetOf } from './slices.ts'
import { OPEN, type Root, rootsOf, walkTree } from './tile-tree.ts'
import { AS_WRITTEN } from './tolerances.ts'
import { type ProvedCase, worstCaseOf } from './worst-case.ts'

/** What the evidence of one zone in one state shows. */
export interface Proved {
  readonly zone: string
  readonly state: string
  /** Shown for all tolerances of the door file, or for the door as written. */
  readonly tolerances: boolean
  /** At every placement each body in each posture either cannot stand or is seen. */
  readonly allSeen: boolean
  /** Area of the union of all open tiles. */
  readonly open_mm2: number
  /** At least the diameter of the largest group of open tiles that touch; 0 if there are none. */
  readonly largestOpen_mm: number
  readonly slices: number
  readonly leaves: { readonly seen: number; readonly notFree: number; readonly open: number }
  /** Placements that are blind in the door as written. */
  readonly worstCases: readonly ProvedCase[]
}

const MOST_OPEN = 1_000_000

/** Checks one coverage; refuses with the first piece that does not hold. */
export function coverageOf(given: Json, door: Door, budget: Budget, path: string): Proved {
  const zoneId = textAt(own(given, 'zone'), `${path}/zone`)
  const stateId = textAt(own(given, 'state'), `${path}/state`)
  const zone = door.zones.find(({ id }) => id === zoneId) ?? refuse('unknown-id', `${path}/zone`, 'a zone of the door', zoneId)
  const state = door.states.find(({ id }) => id === stateId) ?? refuse('unknown-id', `${path}/state`, 'a state of the door', stateId)
  if (zone.mustNotSee) refuse('wrong-zone', `${path}/zone`, 'a zone in which bodies must be seen', zoneId)
  const tolerances = sameTolerances(own(given, 'tolerances'), door, `${path}/tolerances`) ? (door.tolerances ?? AS_WRITTEN) : AS_WRITTEN
  numberAt(own(given, 'smallest_mm'), `${path}/smallest_mm`, 0)
  const fields = fieldsAt(own(given, 'fields'), door, zone, `${path}/fields`)
  const setting: Setting = { door, state, tolerances, fields }
  const obstacles = obstaclesAt(own(given, 'obstacles'), state, `${path}/obstacles`)
  const sights = sightsOf(own(given, 'sights'), fields, `${path}/sights`)
  const slices = slicesOf(own(given, 'slices'), door, zone, `${path}/slices`)
  const leaves = { seen: 0, notFree: 0, open: 0 }
  const open: Tile[] = []
  const readingAt = readingsOf(setting, (amount) => spend(budget, amount, path))
  for (const [i, slice] of slices.entries()) {
    const roots = rootsOf(zone, state.floor)
    if (slice.trees.length !== roots.length)
      refuse('missing-root', `${path}/slices/${i}/trees`, `${roots.length} trees`, slice.trees.length)
    for (const [k, root] of roots.entries()) {
      const at = `${path}/slices/${i}/trees/${k}`
      const tree = listAt(slice.trees[k], at, { least: 1, most: 40_000_000 })
      const check = leafCheck({ slice, root, setting, sights, obstacles, readingAt, budget, path: at })
      walkTree(tree, root.tile, at, (leaf, tile, index) => {
        leaves[check(leaf, tile, index)]++
        if (leaf === OPEN && open.push(tile) > MOST_OPEN) refuse('too-much', at, `at most ${MOST_OPEN} open leaves`, 'more')
      })
    }
  }
  const around = { zone, slices, setting, budget, backgrounds: backgroundsOf(setting, (amount) => spend(budget, amount, path)) }
  const cases = listAt(own(given, 'worstCases'), `${path}/worstCases`, { most: 1000 })
  const worstCases = cases.map((each, i) => worstCaseOf(objectAt(each, `${path}/worstCases/${i}`), around, `${path}/worstCases/${i}`))
  const { area_mm2, largest_mm } = leftOpen(open)
  return {
    zone: zoneId,
    state: stateId,
    tolerances: own(given, 'tolerances') !== null,
    allSeen: open.length === 0,
    open_mm2: area_mm2,
    largestOpen_mm: largest_mm,
    slices: slices.length,
    leaves,
    worstCases,
  }
}

/** True for exactly the tolerances of the door file, false for none; anything else is refused. */
function sameTolerances(given: unknown, { tolerances }: Door, path: string): boolean {
  if (given === null) return false
  const object = objectAt(given, path)
  if (tolerances === undefined) return refuse('wrong-tolerances', path, 'null, as the door file has none', 'an object')
  const { length, position, tilt, roll, yaw, floor, range } = tolerances
  const written = {
    length_mm: length,
    position_mm: position,
    tilt_deg: tilt,
    roll_deg: roll,
    yaw_deg: yaw,
    floor_mm: floor,
    range_percent: range,
  }
  for (const name of Object.keys(TOLERANCES) as (keyof typeof TOLERANCES)[])
    if (own(object, name) !== written[name])
      refuse('wrong-tolerances', `${path}/${name}`, `${written[name]}, as in the door file`, own(object, name))
  return true
}

function fieldsAt(listed: unknown, door: Door, zone: Zone, path: string): readonly Field[] {
  const names = new Set<string>()
  return listAt(listed, path, { most: 1024 }).map((each, i) => {
    const name = textAt(each, `${path}/${i}`)
    const field = door.fields.find((one) => one.name === name) ?? refuse('unknown-id', `${path}/${i}`, 'a field of the door', name)
    if (names.has(name)) refuse('duplicate-id', `${path}/${i}`, 'a field that stands once', name)
    names.add(name)
    if (!countsFor(field, zone)) refuse('wrong-field', `${path}/${i}`, 'a field that counts for the zone', name)
    return field
  })
}

function obstaclesAt(listed: unknown, { obstacles }: State, path: string): readonly Obstacle[] {
  return listAt(listed, path, { most: 1000 }).map((each, i) => {
    const id = textAt(each, `${path}/${i}`)
    return obstacles.find((one) => one.id === id) ?? refuse('unknown-id', `${path}/${i}`, 'an obstacle of the state', id)
  })
}

interface Leaves {
  readonly slice: Slice
  readonly root: Root
  readonly setting: Setting
  readonly sights: readonly Sight[]
  readonly obstacles: readonly Obstacle[]
  readonly readingAt: ReturnType<typeof readingsOf>
  readonly budget: Budget
  readonly path: string
}

/** What a leaf claims, checked on its whole tile. */
function leafCheck({ slice, root, setting, sights, obstacles, readingAt, budget, path }: Leaves) {
  const target = targetOf(slice, root.floor)
  const standing = standingOf(slice)
  const least = { length: setting.tolerances.length, floor: setting.tolerances.floor, depth: SPARE }
  const watches = new Map<number, Watch>()
  return (leaf: number, tile: Tile, index: number): 'seen' | 'notFree' | 'open' => {
    spend(budget, 1, path)
    if (leaf === OPEN) return 'open'
    if (leaf < 0) {
      const obstacle = obstacles[-3 - leaf] ?? refuse('out-of-range', `${path}/${index}`, `one of ${obstacles.length} obstacles`, leaf)
      if (overlapsEverywhere(tile, standing, root.floor, obstacle, least)) return 'notFree'
      return refuse('not-shown', `${path}/${index}`, `a body that overlaps ${obstacle.id} wherever it stands`, whereIs(tile))
    }
    const sight = sights[leaf] ?? refuse('out-of-range', `${path}/${index}`, `one of ${sights.length} sights`, leaf)
    const known = watches.get(leaf)
    spend(budget, sight.faces.length * (known === undefined ? 20 : 1), path)
    const watch = known ?? watchOf(sight, target, setting, readingAt)
    watches.set(leaf, watch)
    const failed = watch(tile)
    if (failed === undefined) return 'seen'
    return refuse(
      'not-shown',
      `${path}/${index}`,
      `${failed.fails} (beam ${failed.beam} of plane ${sight.plane.id}, ${sight.field.name})`,
      whereIs(tile),
    )
  }
}

function whereIs({ xMin, xMax, yMin, yMax }: Tile): string {
  return `x ${xMin} to ${xMax}, y ${yMin} to ${yMax}`
}
