import { NO_TOLERANCES } from '../src/coverage/off.ts'
import { boxTile, cylinderTile, newTileScratch, SEES } from '../src/coverage/tile-rule.kernel.ts'
import { type TolerantField, tileBeams, tileBody, windowsAsWritten } from '../src/coverage/tile-scene.ts'
import { enterBox, enterCylinder } from '../src/seeing/entry.kernel.ts'
import { beamSees, type Sight } from '../src/seeing/sees.ts'
import type { Shape } from '../src/seeing/shape.ts'
import { floorPieces } from '../src/space/floor.ts'
import { direction, exactOf, placementsOf, shape, slip, type Tile, tileAt, type Vector } from './near-degenerate-parts.ts'
import { plainField, ranging } from './plain-door.ts'
import { type RandomNumbers, randomNumbers } from './random-numbers.ts'
import {
  asLength,
  asTurn,
  type ExactBody,
  type ExactLimits,
  type ExactLine,
  exactLength,
  exactTurn,
  seesExactly,
  type Verdict,
} from './rational-sight.ts'
import { touchingObstacle } from './touching-obstacle.ts'

/** What the engine said of near-degenerate cases, and where whole-number arithmetic says otherwise. */
export interface SignCount {
  cases: number
  /** Tiles claimed seen, tiles claimed not free: each checked at its corners and at a placement inside. */
  seenTiles: number
  blockedTiles: number
  /** Placements that the predicate sees, and those that it does not. */
  seenPlacements: number
  unseenPlacements: number
  /** Comparisons so close that doubles cannot tell: the predicate differs, within 1e-9 mm of a limit. */
  closerThanDoubles: number
  readonly wrong: string[]
}

const SURE_MM = 1e-9
const SURE = exactLength(asLength(SURE_MM))
const FAR_MM = 8000
const FAINT = 2 ** -58 // a reflectance reference so low that a cylinder's grazing side is never too dark: its reach has a root of a root

/** Beams that graze bodies and limits, bodies that touch obstacles, each off by nothing up to 1e-4 mm; `count` seeds from `first`. */
export function signsOf(first: number, count: number): SignCount {
  const signs: SignCount = {
    cases: 0,
    seenTiles: 0,
    blockedTiles: 0,
    seenPlacements: 0,
    unseenPlacements: 0,
    closerThanDoubles: 0,
    wrong: [],
  }
  for (let seed = first; seed < first + count; seed++) {
    const dice = randomNumbers(seed)
    signs.cases++
    if (dice.chance(0.2)) {
      const told = touchingObstacle(dice)
      if (told !== 'not claimed') signs.blockedTiles++
      if (told === 'claimed wrongly') signs.wrong.push(`seed ${seed}: a tile is claimed not free, and is`)
    } else grazingBeam(signs, dice, seed)
  }
  return signs
}

function grazingBeam(signs: SignCount, dice: RandomNumbers, seed: number): void {
  const body = shape(dice)
  const along = direction(dice)
  const origin = [asLength(dice.between(-3000, 3000)), asLength(dice.between(-3000, 3000)), asLength(dice.between(200, 4000))] as const
  const t = dice.between(50, 4000)
  const strikes = origin.map((o, axis) => o + t * (along[axis] as number)) as [number, number, number]
  // where on the body the beam passes: on a face, an edge or a corner, but for a slip
  const [u, v] = spotOnPlan(dice, body)
  const height = dice.chance(0.5) ? dice.pick([body.low, body.high]) + slip(dice) : dice.between(body.low, body.high)
  const x = asLength(strikes[0] - u * body.cosYaw + v * body.sinYaw)
  const y = asLength(strikes[1] - u * body.sinYaw - v * body.cosYaw)
  const slopes = dice.chance(0.5) ? ([0, 0] as const) : ([asTurn(dice.between(-0.2, 0.2)), asTurn(dice.between(-0.2, 0.2))] as const)
  const z0 = asLength(strikes[2] - height - slopes[0] * x - slopes[1] * y)
  const floor = floorPieces({
    profile: [
      { y_mm: 0, z_mm: z0 },
      { y_mm: 1, z_mm: z0 },
    ],
    slopeX: slopes[0],
    tolerance_mm: 0,
  })
  const ground = { ...floor, slope: floor.slope.map(() => slopes[1]), y: floor.y.map(() => 0), z: floor.z.map(() => z0) }
  const limits = limitsNear(dice, body, origin, along, x, y, z0 + slopes[0] * x + slopes[1] * y, slopes, z0)
  const sight = sightOf(origin, along, ground, limits)
  const [line, exactBody, exactGround, exact] = [
    exactLine(origin, along),
    exactOf(body),
    { z0: exactLength(z0), slopeX: exactTurn(slopes[0]), slopeY: exactTurn(slopes[1]) },
    exactLimits(limits),
  ]
  const verdict = (px: number, py: number, spare = 0n, grown = 0n) =>
    seesExactly(line, grownBy(exactBody, grown), exactGround, exactLength(px), exactLength(py), exact, spare)
  const sees = (px: number, py: number) => verdict(px, py) === 'seen'
  const say = (what: string) => signs.wrong.push(`seed ${seed}: ${what}`)

  const tile = tileAt(dice, x, y)
  if (claims(sight, body, slopes, z0, tile)) {
    signs.seenTiles++
    if (!placementsOf(tile, dice).every(([px, py]) => sees(px, py))) say('a tile is claimed seen, and is not')
  }
  const seen = beamSees(sight, 0, body, x, y, new Float64Array(3))
  if (seen) signs.seenPlacements++
  else signs.unseenPlacements++
  if (seen === sees(x, y)) return
  signs.closerThanDoubles++
  const close = seen ? someSizeIsSeen((by) => verdict(x, y, -SURE, by)) : [-SURE, 0n, SURE].some((by) => verdict(x, y, SURE, by) !== 'seen')
  if (!close) say(`the placement is ${seen ? 'seen' : 'unseen'}, and is not by more than ${SURE_MM} mm`)
}

/**
 * Whether a body that is larger or smaller all round by at most `SURE` is seen. Where a beam all but runs along a face, the entry moves by much more
 * than the body grows: always toward the start, so that the size is found by halving.
 */
function someSizeIsSeen(verdictAt: (grown: bigint) => Verdict): boolean {
  let [low, high] = [-SURE, SURE]
  if (verdictAt(low) === 'seen' || verdictAt(high) === 'seen') return true
  while (high - low > 1n) {
    const middle = (low + high) / 2n
    const verdict = verdictAt(middle)
    if (verdict === 'seen') return true
    if (verdict === 'early') high = middle
    else low = middle
  }
  return false
}

function spotOnPlan(dice: RandomNumbers, { round, halfA, halfB }: Shape): readonly [number, number] {
  if (round) {
    const angle = dice.between(0, 2 * Math.PI)
    const away = dice.chance(0.7) ? halfA + slip(dice) : dice.between(0, halfA)
    return [away * Math.cos(angle), away * Math.sin(angle)]
  }
  const one = (half: number) => (dice.chance(0.5) ? (dice.chance(0.5) ? half : -half) + slip(dice) : dice.between(-half, half))
  return [one(halfA), one(halfB)]
}

interface Limits {
  readonly end: number
  readonly maxRange: number
  readonly rangeRef: number
  readonly reflectanceRef: number
  readonly xMin: number
  readonly xMax: number
  readonly clearance: number
  readonly top: number
}

/** Limits that the entry point just meets or just misses, some of them; the others far away. */
function limitsNear(
  dice: RandomNumbers,
  body: Shape,
  origin: Vector,
  along: Vector,
  x: number,
  y: number,
  under: number,
  slopes: readonly [number, number],
  z0: number,
): Limits {
  const out = new Float64Array(3)
  const { halfA, halfB, low, high, cosYaw, sinYaw } = body
  const hit = body.round
    ? enterCylinder(out, ...origin, ...along, x, y, under, halfA, low, high)
    : enterBox(out, ...origin, ...along, x, y, under, halfA, halfB, low, high, cosYaw, sinYaw)
  const [t = 0, cosine = 0] = out
  const near = (likely: number) => hit && t > 1 && t < FAR_MM && dice.chance(likely)
  const px = origin[0] + t * along[0]
  const height = origin[2] + t * along[2] - z0 - slopes[0] * px - slopes[1] * (origin[1] + t * along[1])
  const within = (value: number) => asLength(Math.max(-FAR_MM, Math.min(FAR_MM, value)))
  const reflectanceRef = body.round ? FAINT : asTurn(0.1)
  const justBright = (t + slip(dice)) / Math.sqrt((body.reflectance * cosine) / reflectanceRef)
  return {
    end: near(0.2) ? within(t + slip(dice)) : FAR_MM,
    maxRange: near(0.1) ? within(t + slip(dice)) : FAR_MM,
    rangeRef: !body.round && cosine > 1e-6 && near(0.2) ? within(justBright) : FAR_MM,
    reflectanceRef: asTurn(reflectanceRef),
    xMin: near(0.1) ? within(px + slip(dice)) : -FAR_MM,
    xMax: near(0.1) ? within(px + slip(dice)) : FAR_MM,
    clearance: near(0.1) ? within(height + slip(dice)) : -FAR_MM,
    top: near(0.1) ? within(height + slip(dice)) : FAR_MM,
  }
}

function sightOf(origin: Vector, along: Vector, floor: Sight['floor'], limits: Limits): Sight {
  const one = (value: number) => Float64Array.of(value)
  return {
    beams: {
      count: 1,
      originX: one(origin[0]),
      originY: one(origin[1]),
      originZ: one(origin[2]),
      directionX: one(along[0]),
      directionY: one(along[1]),
      directionZ: one(along[2]),
      length: one(Infinity),
      planes: [{ id: 'p0', first: 0, end: 1 }],
    },
    floor,
    limits: {
      xMin_mm: limits.xMin,
      xMax_mm: limits.xMax,
      yMin_mm: -Infinity,
      yMax_mm: Infinity,
      clearance_mm: limits.clearance,
      top_mm: limits.top,
    },
    ends_mm: one(limits.end),
    reach: { maxRange_mm: limits.maxRange, rangeRef_mm: limits.rangeRef, reflectanceRef: limits.reflectanceRef, extinction_per_mm: 0 },
    segments: false,
  }
}

const SENSOR = ranging([{ kind: 'row', id: 'p0', places: [{ x_mm: 0, y_mm: 0, z_mm: 0 }], tilt_rad: 0 }])
const NOTHING = () => new Float64Array(1)

/** Whether the tile rule claims that the beam sees the whole tile. */
function claims(sight: Sight, body: Shape, slopes: readonly [number, number], z0: number, { x, y, halfX, halfY }: Tile): boolean {
  const { beams } = sight
  const windows = windowsAsWritten(sight)
  const field: TolerantField = {
    counted: { sensor: SENSOR, field: plainField() },
    nominal: { sight, windows, planes: beams.planes, clusterBeams: 1 },
    off: { x: NOTHING(), y: NOTHING(), z: NOTHING(), directionX: NOTHING(), directionY: NOTHING(), directionZ: NOTHING() },
    windows,
  }
  const strip = { firstRow: 0, lastRow: -1, z0, slopeX: slopes[0], slopeY: slopes[1], lowest: 0, highest: 0 }
  const turned = tileBeams(field, body, NO_TOLERANCES, 0)
  return (body.round ? cylinderTile : boxTile)(turned, 0, tileBody(body, strip), x, y, halfX, halfY, newTileScratch()) === SEES
}

const exactLine = (origin: Vector, along: Vector): ExactLine => ({
  origin: [exactLength(origin[0]), exactLength(origin[1]), exactLength(origin[2])],
  along: [exactTurn(along[0]), exactTurn(along[1]), exactTurn(along[2])],
})

const grownBy = (body: ExactBody, by: bigint): ExactBody => ({
  ...body,
  halfA: body.halfA + by,
  halfB: body.halfB + by,
  low: body.low - by,
  high: body.high + by,
})

const exactLimits = (limits: Limits): ExactLimits => ({
  end: exactLength(limits.end),
  maxRange: exactLength(limits.maxRange),
  rangeRef: exactLength(limits.rangeRef),
  reflectanceRef: exactTurn(limits.reflectanceRef),
  xMin: exactLength(limits.xMin),
  xMax: exactLength(limits.xMax),
  clearance: exactLength(limits.clearance),
  top: exactLength(limits.top),
})
