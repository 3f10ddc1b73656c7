import type { Affine } from './affine.ts'
import { type Budget, spend } from './budget.ts'
import { type Json, listAt, numberAt, objectAt, own, refuse, textAt } from './json.ts'
import { type Closing, closingOf } from './leaf-motion.ts'
import { type ClearOn, checkFalls, checkParts, checkStrips, type Stretch, type View } from './never-struck.ts'
import type { Door, Field } from './plain.ts'
import { type PartsSight, partSightsOf, watchOfParts } from './seen-parts.ts'
import { countsFor } from './sensors.ts'
import { shutLeaf } from './shut-leaf.ts'
import { readingsOf, type Setting, type Sight, sightsOf, type Watch, watchOf } from './sights.ts'
import { boxAt } from './slices.ts'
import { fallsOf, inPlane, type Met, metOf, placesAcross, type Stance, stancesOf, wholeWay } from './stances.ts'
import { OPEN, rootsOf, walkTree } from './tile-tree.ts'
import { AS_WRITTEN } from './tolerances.ts'
import type { Lane, Side, Traffic } from './traffic.ts'
import { type Hung, isFree, withinSweep } from './turning-leaf.ts'

/** In this lane and state nobody is struck by the closing leaf, as docs/evidence.md says it. */
export interface ProvedPassage {
  readonly lane: string
  readonly state: string
  readonly ways: number
}

const FARTHEST = 100_000

/** What the stands and falls of one entry are checked against. */
interface Around {
  readonly lane: Lane
  readonly traffic: Traffic
  readonly setting: Setting
  /** Of each field. */
  readonly sights: readonly (readonly Sight[])[]
  readonly partSights: readonly (readonly PartsSight[])[]
  readonly far: number
  readonly readingAt: ReturnType<typeof readingsOf>
  readonly closings: readonly Closing[]
  readonly budget: Budget
}

/** Checks one entry of `passages`; refuses with the first piece that does not hold. */
export function passageOf(given: Json, door: Door, traffic: Traffic, budget: Budget, path: string): ProvedPassage {
  const laneId = textAt(own(given, 'lane'), `${path}/lane`)
  const stateId = textAt(own(given, 'state'), `${path}/state`)
  const lane = traffic.lanes.find(({ id }) => id === laneId) ?? refuse('unknown-id', `${path}/lane`, 'a lane of the door', laneId)
  const state = door.states.find(({ id }) => id === stateId) ?? refuse('unknown-id', `${path}/state`, 'a state of the door', stateId)
  const { hung } = traffic.leaf
  const fields = fieldsAt(own(given, 'fields'), door, lane, `${path}/fields`)
  const byLeaf = hung && fields.find((field) => field.byLeaf)
  if (byLeaf) refuse('cannot-show', `${path}/fields`, 'fields that see alike wherever a leaf that turns is', byLeaf.name)
  const lists = (name: string, entries: unknown) => listAt(entries, `${path}/${name}`, { least: fields.length, most: fields.length })
  const ofOne = lists('sights', own(given, 'sights'))
  const ofParts = lists('partSights', own(given, 'partSights') ?? fields.map(() => []))
  const setting: Setting = { door, state, tolerances: AS_WRITTEN, fields, ...(hung ? {} : { leaf: shutLeaf(traffic, state.floor) }) }
  const whole = wholeWay(traffic, state.floor)
  const around: Around = {
    lane,
    traffic,
    setting,
    sights: fields.map((field, f) => sightsOf(ofOne[f], [field], `${path}/sights/${f}`)),
    partSights: fields.map((field, f) => partSightsOf(ofParts[f], field, `${path}/partSights/${f}`)),
    far: numberAt(own(given, 'far_mm'), `${path}/far_mm`, 0, FARTHEST),
    readingAt: readingsOf(setting, (amount) => spend(budget, amount, path)),
    closings: [whole, ...traffic.partial.filter((each) => each < whole)].map((opening) => closingOf(opening, traffic.drive)),
    budget,
  }
  const ways = inOrder(
    stancesOf(lane, door).flatMap((stance) => placesAcross(lane, stance.half[0]).map((x) => ({ stance, x }))),
    own(given, 'stands'),
    `${path}/stands`,
    (each, stand, at) => checkStand(each, stand, around, at),
  )
  const falls = inOrder(
    fallsOf(lane, door).flatMap((fall) => placesAcross(lane, fall.upright.half[0]).map((x) => ({ ...fall, x }))),
    own(given, 'falls') ?? [],
    `${path}/falls`,
    (each, fall, at) => checkFall(each, fall, around, at),
  )
  return { lane: laneId, state: stateId, ways: ways + falls }
}

/** As many entries as there must be, each checked; the sum of what they hold. */
function inOrder<T>(expected: readonly T[], given: unknown, path: string, check: (each: T, entry: Json, at: string) => number): number {
  const entries = listAt(given, path, { least: expected.length, most: expected.length })
  return expected.reduce((sum, each, i) => sum + check(each, objectAt(entries[i], `${path}/${i}`), `${path}/${i}`), 0)
}

function mustBe(given: Json, name: string, expected: string | number, path: string): void {
  const got = own(given, name)
  if (got !== expected) refuse('wrong-order', `${path}/${name}`, `${expected}`, got)
}

/** Only fields that hold a body for as long as it may stand, whose times are known and which act at every place of the leaf. */
function fieldsAt(listed: unknown, door: Door, lane: Lane, path: string): readonly Field[] {
  const names = new Set<string>()
  return listAt(listed, path, { most: 1024 }).map((each, i) => {
    const name = textAt(each, `${path}/${i}`)
    const field = door.fields.find((one) => one.name === name) ?? refuse('unknown-id', `${path}/${i}`, 'a field of the door', name)
    if (names.has(name)) refuse('duplicate-id', `${path}/${i}`, 'a field that stands once', name)
    names.add(name)
    const counts = countsFor(field, { acts: 'presence', longestStay_s: lane.longestStay_s })
    if (!counts || field.times === undefined || field.blanks)
      return refuse('wrong-field', `${path}/${i}`, 'a presence field that can be counted on', name)
    return field
  })
}

/** Who is on the way, where across the lane, and its trees of one field. */
interface Along {
  readonly stance: Stance
  readonly x: number
  readonly field: number
}

/** Where along y the body is seen, by trees over a tile without width. */
function stretchesOf(given: unknown, { stance, x, field }: Along, around: Around, path: string): readonly Stretch[] {
  const { setting, far, budget } = around
  const roots = rootsOf({ xMin: x, xMax: x, yMin: -far, yMax: far }, setting.state.floor)
  const trees = listAt(given, path, { least: roots.length, most: roots.length })
  const stretches: [number, number][] = []
  for (const [k, root] of roots.entries()) {
    const at = `${path}/${k}`
    const watches = new Map<number, Watch>()
    walkTree(listAt(trees[k], at, { least: 1, most: 1_000_000 }), root.tile, at, (leaf, tile, index) => {
      spend(budget, 1, at)
      if (leaf === OPEN) return
      const sights = stance.ofParts ? around.partSights[field] : around.sights[field]
      const sight = sights?.[leaf] ?? refuse('out-of-range', `${at}/${index}`, `one of ${sights?.length} sights`, leaf)
      const known = watches.get(leaf)
      const beams = 'seen' in sight ? sight.seen.length * stance.solids.length : sight.faces.length
      spend(budget, beams * (known === undefined ? 20 : 1), at)
      const watch = known ?? watchFor(sight, stance, root.floor, around)
      watches.set(leaf, watch)
      const failed = watch(tile)
      if (failed !== undefined)
        refuse(
          'not-shown',
          `${at}/${index}`,
          `${failed.fails} (beam ${failed.beam} of plane ${sight.plane.id})`,
          `y ${tile.yMin} to ${tile.yMax}`,
        )
      const last = stretches.at(-1)
      if (last !== undefined && tile.yMin <= last[1]) last[1] = tile.yMax
      else stretches.push([tile.yMin, tile.yMax])
    })
  }
  return stretches
}

function watchFor(sight: Sight | PartsSight, { solids }: Stance, floor: Affine, { setting, readingAt }: Around): Watch {
  if ('seen' in sight) return watchOfParts(sight, solids, floor, setting, readingAt)
  const [solid] = solids
  if (solid === undefined) throw new Error('a body must have a solid')
  const { reflectance } = solid
  if (solid.shape === 'cylinder') {
    const { radius, height } = solid
    return watchOf(sight, { reflectance, shape: (spot) => ({ cylinder: { radius, height, spot, floor } }) }, setting, readingAt)
  }
  const box = boxAt(solid.size, solid.turn_deg, floor, 0)
  return watchOf(sight, { reflectance, shape: (spot) => ({ box: { ...box, spot } }) }, setting, readingAt)
}

/** Of each field, as they lie along the way: of whoever comes from side A, y falls. */
function seenFrom(given: unknown, side: Side, stance: Stance, x: number, around: Around, path: string): readonly (readonly Stretch[])[] {
  return along(seenAlongY(given, stance, x, around, path), side)
}

function seenAlongY(given: unknown, stance: Stance, x: number, around: Around, path: string): readonly (readonly Stretch[])[] {
  const { fields } = around.setting
  const trees = listAt(given, path, { least: fields.length, most: fields.length })
  return fields.map((_, field) => stretchesOf(trees[field], { stance, x, field }, around, `${path}/${field}`))
}

function along(alongY: readonly (readonly Stretch[])[], side: Side): readonly (readonly Stretch[])[] {
  return side === 'b' ? alongY : alongY.map((each) => each.map(([y0, y1]) => [-y1, -y0] as const).reverse())
}

/** Every direction from which it looks like this, each part that is met, and every opening from which the leaf may close. */
function checkStand({ stance, x }: { readonly stance: Stance; readonly x: number }, stand: Json, around: Around, path: string): number {
  const { traffic, setting, closings, budget, lane } = around
  mustBe(stand, 'body', stance.body.id, path)
  mustBe(stand, 'posture', stance.posture, path)
  const { beside } = stance
  const named = JSON.stringify(own(stand, 'beside') ?? null)
  const expected = JSON.stringify(beside ? [beside.body.id, beside.posture, beside.where] : null)
  if (named !== expected) refuse('wrong-order', `${path}/beside`, expected, named)
  const seen = seenAlongY(own(stand, 'seen'), stance, x, around, `${path}/seen`)
  const { hung } = traffic.leaf
  if (hung) {
    const passing = stance.from.flatMap((from) => closings.map((closing) => ({ from, closing })))
    return inOrder(passing, own(stand, 'closings'), `${path}/closings`, ({ from, closing }, given, at) => {
      mustBe(given, 'from', from, at)
      checkClosing(given, closing, undefined, at)
      const views = viewsOf(setting.fields, along(seen, from))
      const way = { closing, ...withinSweep(hung, stance, from), views, cycle: traffic.cycle }
      const clearOn = clearPast(hung, { stance, x, from }, closing, budget)
      checkStrips(way, slownesses(lane), own(given, 'strips'), budget, `${at}/strips`, clearOn)
      return 1
    })
  }
  const met = metOf(traffic, setting.state.floor, stance, x)
  const ways = stance.from.flatMap((from) => met.flatMap((part) => closings.map((closing) => ({ from, part, closing }))))
  return inOrder(ways, own(stand, 'closings'), `${path}/closings`, ({ from, part, closing }, given, at) => {
    mustBe(given, 'from', from, at)
    checkClosing(given, closing, stance.ofParts ? part : undefined, at)
    const views = viewsOf(setting.fields, along(seen, from))
    const way = { closing, ...inPlane(part, from, traffic.leaf.half), clear: part.clear, views, cycle: traffic.cycle }
    checkParts(way, slownesses(lane), own(given, 'parts'), budget, `${at}/parts`)
    return 1
  })
}

interface Falling {
  readonly upright: Stance
  readonly lying: Stance
  readonly from: Side
  readonly x: number
}

/** A fall anywhere that brings the lying body into the leaf's plane, each part that is then met, and every opening. */
function checkFall({ upright, lying, from, x }: Falling, fall: Json, around: Around, path: string): number {
  const { traffic, setting, closings, budget, lane } = around
  mustBe(fall, 'body', upright.body.id, path)
  mustBe(fall, 'posture', upright.posture, path)
  mustBe(fall, 'lying', lying.posture, path)
  mustBe(fall, 'from', from, path)
  const before = viewsOf(setting.fields, seenFrom(own(fall, 'seen'), from, upright, x, around, `${path}/seen`))
  const after = seenFrom(own(fall, 'lies'), from, lying, x, around, `${path}/lies`)
  const views = before.map((view, f) => ({ ...view, lying: after[f] ?? [] }))
  const { hung } = traffic.leaf
  if (hung)
    return inOrder(closings, own(fall, 'closings'), `${path}/closings`, (closing, given, at) => {
      checkClosing(given, closing, undefined, at)
      const way = { closing, ...withinSweep(hung, lying, from), clear: closing.from, views, cycle: traffic.cycle }
      const clearOn = clearPast(hung, { stance: lying, x, from }, closing, budget)
      checkFalls(way, slownesses(lane), own(given, 'stretches'), budget, `${at}/stretches`, clearOn)
      return 1
    })
  const ways = metOf(traffic, setting.state.floor, lying, x).flatMap((part) => closings.map((closing) => ({ part, closing })))
  return inOrder(ways, own(fall, 'closings'), `${path}/closings`, ({ part, closing }, given, at) => {
    checkClosing(given, closing, lying.ofParts ? part : undefined, at)
    const way = { closing, ...inPlane(part, from, traffic.leaf.half), clear: part.clear, views, cycle: traffic.cycle }
    checkFalls(way, slownesses(lane), own(given, 'stretches'), budget, `${at}/stretches`)
    return 1
  })
}

/** Down to which way a leaf that turns is free on a stretch, as the entry says: checked. */
function clearPast(
  hung: Hung,
  { stance, x, from }: { readonly stance: Stance; readonly x: number; readonly from: Side },
  closing: Closing,
  budget: Budget,
): ClearOn {
  return (entry, begin, end, path) => {
    const given = own(entry, 'clear_mm')
    const written = given === null ? null : numberAt(given, `${path}/clear_mm`, 0, closing.from + 1e-6)
    const clear = written !== null && written > closing.from - 1e-6 ? closing.from : written
    const y = from === 'b' ? ([begin, end] as const) : ([-begin, -end] as const)
    if (clear !== closing.from && !isFree(hung, { stance, x, y }, [clear ?? 0, closing.from], budget, path))
      refuse('not-shown', `${path}/clear_mm`, 'a leaf that meets nobody down to this way', `the body from ${begin} to ${end}`)
    return clear
  }
}

function checkClosing(given: Json, closing: Closing, part: Met | undefined, path: string): void {
  const written = numberAt(own(given, 'opening_mm'), `${path}/opening_mm`)
  if (Math.abs(written - closing.from) > 1e-6) refuse('wrong-order', `${path}/opening_mm`, `${closing.from}`, written)
  if (part !== undefined) mustBe(given, 'met', part.index, path)
}

function viewsOf(fields: readonly Field[], visible: readonly (readonly Stretch[])[]): readonly View[] {
  return fields.map(({ times }, f) => ({ visible: visible[f] ?? [], response: times?.response ?? Infinity, hold: times?.hold ?? 0 }))
}

function slownesses({ slowest, fastest }: Lane): readonly [number, number] {
  return [1 / fastest, 1 / slowest]
}
