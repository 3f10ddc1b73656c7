import type { Body, Posture } from '../src/model/body.ts'
import type { Door, DoorState, Floor, Obstacle } from '../src/model/door.ts'
import type { BeamPlane, Field, RangingSensor, SegmentSensor, Sensor, ZoneOnlySensor } from '../src/model/sensor.ts'
import type { Source } from '../src/model/source.ts'
import type { SensingFunction, Zone } from '../src/model/zone.ts'
import { radians } from '../src/space/trigonometry.ts'
import { type RandomNumbers, randomNumbers } from './random-numbers.ts'

/**
 * A small random door with every feature of the method on, always the same for one seed.
 *
 * Two thirds of the doors have round lengths and slopes, all exact in binary, so that ties really happen: bodies that touch obstacles, beams along a
 * face, limits and reaches that are just met. Their angles are 0 or awkward, never round: the sines of 30 or 90 degrees are not exact, and where a tie
 * hangs on them, the last bit decides and nobody is right. The other doors are awkward altogether. Some doors are simple (one sensor, one plane,
 * one posture), so that no second beam covers up what the first one gets wrong.
 */
export function randomDoor(seed: number): Door {
  const dice = diceOf(seed)
  const width_mm = dice.length(800, 1600)
  const height_mm = dice.length(1600, 2600)
  const extent = { width_mm, height_mm }
  const zones = Array.from({ length: dice.count([1, 1, 1, 2]) }, (_, i) => randomZone(dice, i, extent))
  const functions = zones.map((zone) => zone.function)
  return {
    name: `random door ${seed}`,
    sides: { a: 'A', b: 'B' },
    opening: extent,
    leaf: undefined,
    states: randomStates(dice, extent),
    sensors: Array.from({ length: dice.count([1, 2, 2, 3]) }, (_, i) => randomSensor(dice, i, extent, functions)),
    bodies: [randomBody(dice, 0), randomBody(dice, 1)],
    zones,
    concept: undefined,
    extinction_per_mm: dice.chance(0.3) ? 3.912 / (1000 * dice.between(2, 30)) : 0,
    edition: 'none',
    confirmations: [],
    assumed: [],
  }
}

interface Dice extends RandomNumbers {
  readonly round: boolean
  /** In mm: a multiple of 50 (sometimes of 12.5) in round doors. */
  readonly length: (low_mm: number, high_mm: number) => number
  /** One of the numbers; 1 in a simple door. */
  readonly count: (choices: readonly [number, ...number[]]) => number
  /** 0 or an awkward angle. */
  readonly angle_rad: (largest_deg: number) => number
}

function diceOf(seed: number): Dice {
  const dice = randomNumbers(seed)
  const round = dice.chance(0.67)
  const simple = dice.chance(0.4)
  const step = () => dice.pick([50, 50, 50, 100, 25, 12.5])
  const roundLength = (low: number, high: number, by: number) =>
    Math.ceil(low / by) * by + by * dice.whole(0, Math.floor((high - low) / by))
  return {
    ...dice,
    round,
    length: (low, high) => (round ? roundLength(low, high, step()) : dice.between(low, high)),
    count: (choices) => (simple ? 1 : dice.pick(choices)),
    angle_rad: (largest_deg) => (dice.chance(round ? 0.7 : 0.2) ? 0 : radians(dice.between(-largest_deg, largest_deg))),
  }
}

interface Extent {
  readonly width_mm: number
  readonly height_mm: number
}

const invented: Source = { basis: 'invented' }

function randomZone(dice: Dice, index: number, { width_mm }: Extent): Zone {
  const pitch_mm = dice.round ? dice.pick([50, 100, 100, 100, 75, 62.5]) : dice.between(60, 130)
  const xMin_mm = dice.length(-100, width_mm / 2)
  const yMin_mm = dice.length(-400, -100)
  return {
    id: `zone ${index}`,
    name: `zone ${index}`,
    function: dice.pick(['presence', 'presence', 'opening', 'call']),
    purpose: dice.pick(['presence-at-leaf', 'opening', 'call', 'must-not-see']),
    xMin_mm,
    xMax_mm: xMin_mm + dice.length(300, 800),
    yMin_mm,
    yMax_mm: yMin_mm + dice.length(300, 600),
    pitch_mm,
    bodies:
      dice.count([1, 2, 2]) === 1
        ? ['body 0']
        : dice.pick([
            ['body 0', 'body 1'],
            ['body 1', 'body 0'],
          ]),
    allowedPocket_mm: 0,
    longestStay_s: dice.pick([undefined, undefined, 60, 600]),
    family: undefined,
  }
}

function randomBody(dice: Dice, index: number): Body {
  return {
    id: `body ${index}`,
    name: `body ${index}`,
    source: invented,
    reflectance: dice.pick([0.02, 0.1, 0.1, 0.1, 0.2, 0.4, 0.9]),
    postures: Array.from({ length: dice.count([1, 1, 2, 3]) }, (_, i) => randomPosture(dice, `posture ${i}`)),
  }
}

/** Heights of bodies and limits of fields: often one of a few in round doors, so that bodies are just as high as a limit. */
function randomHeight(dice: Dice): number {
  if (dice.round && dice.chance(0.5)) return dice.pick([50, 100, 200, 500])
  return dice.chance(0.5) ? dice.length(50, 200) : dice.length(200, 1100)
}

function randomPosture(dice: Dice, name: string): Posture {
  const height_mm = randomHeight(dice)
  if (dice.chance(0.3)) return { shape: 'cylinder', name, radius_mm: dice.length(50, 250), height_mm }
  const yawFrom_rad = dice.angle_rad(180)
  const span_rad = dice.chance(0.25) ? radians(dice.between(1, 23)) : 0
  return {
    shape: 'box',
    name,
    a_mm: dice.length(100, 600),
    b_mm: dice.length(100, 500),
    c_mm: height_mm,
    yawFrom_rad,
    yawTo_rad: yawFrom_rad + span_rad,
  }
}

function randomStates(dice: Dice, extent: Extent): readonly DoorState[] {
  const floor = randomFloor(dice)
  const obstacles = Array.from({ length: dice.pick([0, 1, 2, 3, 4]) }, (_, i) => randomObstacle(dice, `obstacle ${i}`, extent))
  const first = { id: 'state 0', name: 'state 0', floor, obstacles }
  if (dice.chance(0.6)) return [first]
  const more = [...obstacles.slice(1), randomObstacle(dice, 'obstacle of state 1', extent)]
  return [first, { id: 'state 1', name: 'state 1', floor: dice.chance(0.5) ? floor : randomFloor(dice), obstacles: more }]
}

function randomFloor(dice: Dice): Floor {
  const slopeX = dice.chance(0.65) ? 0 : dice.round ? dice.pick([1 / 64, -1 / 32, 1 / 16]) : dice.between(-0.08, 0.08)
  const start = { y_mm: dice.length(-900, 0), z_mm: dice.chance(0.5) ? 0 : dice.length(-100, 100) }
  const profile = [start]
  for (let more = dice.pick([0, 0, 1, 2, 3]); more > 0; more--) {
    const last = profile.at(-1) ?? start
    const steep = dice.chance(0.3) // a dock edge or threshold
    const run_mm = steep ? dice.pick([1, 2, 4]) : dice.round ? dice.pick([128, 256, 512]) : dice.between(100, 500)
    const rise_mm = dice.round ? 16 * dice.whole(-5, 5) : dice.between(-80, 80)
    profile.push({ y_mm: last.y_mm + run_mm, z_mm: last.z_mm + rise_mm })
  }
  return { profile, slopeX, tolerance_mm: dice.pick([undefined, 0, 10]) }
}

function randomObstacle(dice: Dice, id: string, { width_mm, height_mm }: Extent): Obstacle {
  const overhead = dice.chance(0.3)
  const from_mm = overhead ? dice.length(300, 1200) : dice.pick([0, 0, -200])
  const to_mm = overhead ? from_mm + dice.length(50, 600) : dice.length(50, height_mm)
  const base = {
    id,
    name: id,
    x_mm: dice.length(-200, width_mm + 200),
    y_mm: dice.length(-800, 800),
    from_mm,
    to_mm,
    implied: dice.chance(0.3),
  }
  if (dice.chance(0.35)) return { ...base, shape: 'post', radius_mm: dice.length(25, 150) }
  return { ...base, shape: 'box', size_mm: [dice.length(25, 700), dice.length(25, 500)], yaw_rad: dice.angle_rad(90) }
}

function randomSensor(dice: Dice, index: number, extent: Extent, functions: readonly SensingFunction[]): Sensor {
  const kind = dice.pick<'fan' | 'row' | 'segment' | 'zone-only'>([
    'fan',
    'fan',
    'fan',
    'fan',
    'fan',
    'row',
    'row',
    'segment',
    'segment',
    'zone-only',
  ])
  if (kind === 'segment') return randomSegmentSensor(dice, `sensor ${index}`, extent, functions)
  if (kind === 'zone-only') return zoneOnlySensor(dice, `sensor ${index}`, functions)
  return randomRangingSensor(dice, `sensor ${index}`, extent, functions, kind)
}

function randomRangingSensor(
  dice: Dice,
  id: string,
  extent: Extent,
  functions: readonly SensingFunction[],
  kind: 'fan' | 'row',
): RangingSensor {
  const count = kind === 'row' ? dice.count([1, 1, 2]) : dice.count([1, 2, 3, 4])
  const planes = Array.from({ length: count }, (_, i) =>
    kind === 'row' ? randomRow(dice, `plane ${i}`, extent) : randomFan(dice, `plane ${i}`, i),
  )
  const maxRange_mm = dice.chance(0.7) ? 10_000 : dice.length(1200, 3000)
  return {
    kind: 'ranging',
    id,
    name: id,
    source: invented,
    planes,
    maxRange_mm,
    pose: {
      x_mm: dice.length(0, extent.width_mm),
      y_mm: dice.length(-200, 200),
      z_mm: extent.height_mm - dice.length(0, 600),
      yaw_rad: dice.angle_rad(dice.chance(0.2) ? 180 : 15),
      tilt_rad: dice.angle_rad(20),
      roll_rad: dice.angle_rad(20),
    },
    rangeRef_mm: dice.chance(0.4) ? dice.length(1000, 3000) : dice.length(3000, 8000),
    reflectanceRef: dice.pick([0.1, 0.1, 0.05, 0.2, 0.9]),
    backgroundMargin_mm: dice.chance(0.5) ? 0 : dice.length(0, 120),
    spotRadius_mm: dice.chance(0.6) ? 0 : dice.round ? 12.5 : dice.between(1, 20),
    fields: randomFields(
      dice,
      planes.map((plane) => plane.id),
      extent,
      functions,
    ),
    learnedIn: 'state 0',
  }
}

/** Half of the fans are even on both sides with one beam exactly along the middle: their steps are whole 2048ths of a radian. */
function randomFan(dice: Dice, id: string, index: number): BeamPlane {
  const base = { kind: 'fan', id, offset_rad: index === 0 ? dice.angle_rad(5) : dice.angle_rad(20) } as const
  if (dice.chance(0.5)) {
    const side = dice.whole(1, 18)
    const half_rad = (side * Math.round(dice.between(600, 1700) / side)) / 2048
    return { ...base, fovMin_rad: -half_rad, fovMax_rad: half_rad, beamCount: 2 * side + 1 }
  }
  return { ...base, fovMin_rad: radians(dice.between(-60, 0)), fovMax_rad: radians(dice.between(1, 60)), beamCount: dice.whole(1, 36) }
}

function randomRow(dice: Dice, id: string, { width_mm, height_mm }: Extent): BeamPlane {
  const spacing_mm = dice.length(25, 125)
  const [x_mm, y_mm] = [dice.length(0, width_mm / 2), dice.length(-200, 200)]
  const places = Array.from({ length: dice.whole(1, 12) }, (_, i) => ({ x_mm: x_mm + i * spacing_mm, y_mm, z_mm: height_mm }))
  return { kind: 'row', id, places, tilt_rad: dice.angle_rad(25) }
}

function randomFields(dice: Dice, planes: readonly string[], extent: Extent, functions: readonly SensingFunction[]): readonly Field[] {
  return Array.from({ length: dice.count([1, 1, 1, 2]) }, (_, i) => randomField(dice, `field ${i}`, planes, extent, functions))
}

function randomField(
  dice: Dice,
  id: string,
  planes: readonly string[],
  { width_mm, height_mm }: Extent,
  functions: readonly SensingFunction[],
): Field {
  const [some] = functions
  const limit = (low: number, high: number, open: number) => (dice.chance(0.75) ? open : dice.length(low, high))
  const xMin_mm = limit(0, width_mm / 2, -Infinity)
  const yMin_mm = limit(-600, 0, -Infinity)
  const xMax_mm = limit(Math.max(xMin_mm, width_mm / 2), width_mm, Infinity)
  const chosen = planes.filter(() => dice.chance(0.8))
  return {
    id,
    name: id,
    planes: chosen.length === 0 ? planes : chosen,
    xMin_mm,
    xMax_mm,
    yMin_mm,
    yMax_mm: limit(25, 700, Infinity),
    clearance_mm: dice.pick([-Infinity, 0, 0, 50, randomHeight(dice)]),
    top_mm: dice.chance(0.7) ? Infinity : randomHeight(dice),
    clusterBeams: dice.pick([1, 1, 1, 1, 2, 3]),
    output: `output of ${id}`,
    function: some !== undefined && dice.chance(0.85) ? some : dice.pick(['presence', 'opening', 'call']),
    presenceTime_s: dice.pick([undefined, Infinity, Infinity, Infinity, 600, 60, 30]),
    blanking: dice.chance(0.2) ? [{ from_mm: 0, to_mm: height_mm / 2 }] : [],
  }
}

/** A light grid across the opening, or single eyes anywhere. Slanted ones are awkward in every door: their directions are as inexact as sines. */
function randomSegmentSensor(dice: Dice, id: string, extent: Extent, functions: readonly SensingFunction[]): SegmentSensor {
  const count = dice.whole(1, 8)
  const place = dice.chance(0.6) ? gridSegment(dice, extent) : () => slantedSegment(dice, extent)
  const planes = [{ id: 'plane 0', segments: Array.from({ length: count }, (_, i) => place(i)) }]
  const spotRadius_mm = dice.chance(0.6) ? 0 : dice.round ? 12.5 : dice.between(1, 20)
  return {
    kind: 'segment',
    id,
    name: id,
    source: invented,
    planes,
    spotRadius_mm,
    fields: randomFields(dice, ['plane 0'], extent, functions),
  }
}

type Segment = SegmentSensor['planes'][number]['segments'][number]

/** Segments one above the other, along x or y. */
function gridSegment(dice: Dice, { width_mm }: Extent): (index: number) => Segment {
  const [x_mm, y_mm, lowest_mm, spacing_mm] = [dice.length(0, width_mm), dice.length(-300, 300), dice.length(25, 500), dice.length(25, 200)]
  const alongX = dice.chance(0.7)
  return (index) => {
    const z_mm = lowest_mm + index * spacing_mm
    return alongX
      ? { from_mm: [0, y_mm, z_mm], to_mm: [width_mm, y_mm, z_mm] }
      : { from_mm: [x_mm, 500, z_mm], to_mm: [x_mm, y_mm - 300, z_mm] }
  }
}

function slantedSegment(dice: Dice, { width_mm }: Extent): Segment {
  const point = () => [dice.between(-100, width_mm), dice.between(-500, 500), dice.between(0, 700)] as const
  return { from_mm: point(), to_mm: point() }
}

function zoneOnlySensor(dice: Dice, id: string, functions: readonly SensingFunction[]): ZoneOnlySensor {
  const [some] = functions
  return {
    kind: 'zone-only',
    id,
    name: id,
    source: invented,
    function: some ?? 'presence',
    output: 'output',
    xMin_mm: 0,
    xMax_mm: dice.length(500, 1000),
    yMin_mm: -500,
    yMax_mm: 500,
    needs: 'a metal part that moves',
  }
}
