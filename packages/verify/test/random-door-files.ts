import { createHash } from 'node:crypto'
import { parseDocument, toDoor } from '@sillsight/document'
import type { Door } from '@sillsight/engine'
import { type Dice, diceOf } from './random-numbers.ts'

/** A door file with what is needed to read it. */
export interface RandomDoorFile {
  readonly text: string
  readonly readLibrary: (file: string) => string | undefined
  readonly door: Door
}

export function sha256(text: string): string {
  return createHash('sha256').update(text).digest('hex')
}

/**
 * A small door file with every feature of the method on, always the same for one seed: implied and listed obstacles, states, sloping floors, scanners,
 * rows, grids, libraries, fields with limits, boxes, cylinders, yaws and their ranges, fog, defaults, tolerances. Half of the doors have round lengths,
 * so that things touch and limits are just met. What the parser would refuse (a sensor inside of an obstacle) is thrown again.
 */
export function randomDoorFile(seed: number): RandomDoorFile {
  for (let attempt = 0; attempt < 100; attempt++) {
    const dice = diceOf(seed * 1000 + attempt)
    const library = JSON.stringify({
      sillsightLibrary: 1,
      sensors: { 'own-scanner': ranging(dice, 'scanner') },
      bodies: { 'own-body': bodyValues(dice) },
    })
    const readLibrary = (file: string) => (file === 'own.json' ? library : undefined)
    const file = doorFile(dice, sha256(library))
    const text = JSON.stringify(seed % 3 === 0 ? withOutputs(file) : file)
    const parsed = parseDocument(text, { readLibrary, sha256 })
    if (parsed.ok) return { text, readLibrary, door: toDoor(parsed.document, parsed.catalogue) }
  }
  throw new Error(`seed must give a door within 100 throws, got none with ${seed}`)
}

/** The same door, with what its fields say of their outputs listed as outputs. */
function withOutputs<F extends { readonly sensors: readonly object[] }>(file: F): F {
  const sensors = file.sensors.map((sensor) => {
    const given = (sensor as { fields?: ReturnType<typeof fields> }).fields
    if (given === undefined) return sensor
    const outputs = given.map(({ function: acts, presenceTime_s }, i) => ({
      name: `OUT ${i}`,
      function: acts,
      presenceTime_s: acts === 'presence' ? presenceTime_s : undefined,
    }))
    const own = given.map(({ function: acts, presenceTime_s, ...field }, i) => ({
      ...field,
      output: `OUT ${i}`,
      presenceTime_s: acts === 'presence' ? undefined : presenceTime_s,
    }))
    return { ...sensor, outputs, fields: own, warmUp_s: 9 }
  })
  return { ...file, sensors }
}

interface Throw extends Dice {
  readonly round: boolean
  readonly length: (low: number, high: number) => number
  readonly maybe: <T>(share: number, value: () => T) => T | undefined
}

function throwOf(dice: Dice): Throw {
  const round = dice.chance(0.5)
  return {
    ...dice,
    round,
    length: (low, high) => (round ? 25 * dice.whole(Math.ceil(low / 25), Math.floor(high / 25)) : dice.between(low, high)),
    maybe: (share, value) => (dice.chance(share) ? value() : undefined),
  }
}

const SOURCE = { basis: 'invented' }

function doorFile(dice: Dice, librarySha256: string) {
  const t = throwOf(dice)
  const [width, height] = [t.length(700, 1500), t.length(1500, 2400)]
  const own = t.chance(0.25)
  const states = t.maybe(0.35, () => [
    { id: 'first' },
    {
      id: 'second',
      floor: t.maybe(0.6, () => floor(t)),
      addObstacles: [obstacle(t, 'added', width)],
      removeObstacles: t.maybe(0.5, () => ['thing-0']),
    },
  ])
  const learnedIn = states && t.maybe(0.4, () => 'second')
  const plain = t.chance(0.1) // six values and nothing else
  if (plain)
    return {
      sillsight: 1,
      survey: { opening: { width_mm: width, height_mm: height } },
      sensors: [shortSensor(t, 'demo-single-curtain', height)],
    }
  return {
    sillsight: 1,
    survey: {
      opening: { width_mm: width, height_mm: height },
      ...implied(t, height),
      floor: t.maybe(0.6, () => floor(t)),
      obstacles: Array.from({ length: t.whole(1, 3) }, (_, i) => obstacle(t, `thing-${i}`, width)),
      states,
      visibility_m: t.maybe(0.3, () => t.between(2, 30)),
    },
    sensors: Array.from({ length: t.pick([1, 1, 2]) }, (_, i) => sensor(t, i, width, height, learnedIn, own)),
    bodies: t.maybe(0.9, () => [own && t.chance(0.5) ? { id: 'body-0', use: 'own-body' } : { id: 'body-0', ...bodyValues(dice) }]),
    zones: [zone(t, 0, width), ...(t.chance(0.15) ? [zone(t, 1, width)] : [])],
    libraries: own ? [{ file: 'own.json', sha256: librarySha256 }] : undefined,
    tolerances: t.maybe(0.6, () => tolerances(t)),
  }
}

function implied(t: Throw, height: number) {
  const faces = () => ({ yMin_mm: -t.length(100, 250), yMax_mm: t.length(25, 100) })
  return {
    walls: t.maybe(0.5, () => ({
      ...faces(),
      beyondZero_mm: t.pick([0, 500]),
      beyondWidth_mm: t.length(100, 900),
      top_mm: height + t.length(0, 500),
    })),
    lintel: t.maybe(0.3, () =>
      t.chance(0.5) ? 'none' : { ...faces(), underside_mm: t.maybe(0.5, () => height - 100), top_mm: height + 200 },
    ),
    jambs: t.maybe(0.2, () => ({ ...faces(), width_mm: 50, top_mm: t.maybe(0.5, () => t.length(500, 1500)) })),
    guides: t.maybe(0.2, () => ({ ...faces(), width_mm: 75 })),
    hood: t.maybe(0.2, () => ({ yMin_mm: -300, yMax_mm: -50, from_mm: height, to_mm: height + 300, beyond_mm: t.maybe(0.5, () => 100) })),
    leaf: t.maybe(0.2, () => ({
      travel: 'toward-width',
      thickness_mm: 40,
      parked: {
        x_mm: t.length(0, 400),
        y_mm: t.length(-300, 300),
        size_mm: [600, 40],
        yaw_deg: t.maybe(0.5, () => t.between(-90, 90)),
        from_mm: 0,
        to_mm: t.length(500, 1500),
      },
    })),
  }
}

function floor(t: Throw) {
  const profile = [[t.length(-700, -100), t.pick([0, t.length(-100, 50)])]]
  for (let more = t.whole(0, 2); more > 0; more--) {
    const [y = 0, z = 0] = profile.at(-1) ?? []
    profile.push([y + (t.chance(0.3) ? t.pick([1, 2, 10]) : t.length(100, 400)), z + t.length(-75, 75)])
  }
  return { profile_mm: profile, slopeX_percent: t.maybe(0.4, () => (t.round ? t.pick([-3.125, 6.25]) : t.between(-6, 6))) }
}

function obstacle(t: Throw, id: string, width: number) {
  const overhead = t.chance(0.3)
  const from_mm = overhead ? t.length(300, 900) : t.pick([0, -100])
  const base = { id, x_mm: t.length(-200, width + 200), y_mm: t.length(-600, 600), from_mm, to_mm: from_mm + t.length(100, 1000) }
  if (t.chance(0.35)) return { ...base, shape: 'post', radius_mm: t.length(25, 150) }
  return { ...base, shape: 'box', size_mm: [t.length(25, 500), t.length(25, 400)], yaw_deg: t.maybe(0.4, () => t.between(-90, 90)) }
}

function sensor(t: Throw, i: number, width: number, height: number, learnedIn: string | undefined, own: boolean) {
  const kind = t.pick(['scanner', 'scanner', 'scanner', 'scanner', 'downward-row', 'segments', 'segments', 'short', 'zone-only'])
  const id = t.maybe(0.7, () => `sensor-${String.fromCharCode(97 + i)}`)
  if (kind === 'short') return { id, learnedIn, ...shortSensor(t, t.pick(['demo-header-row', 'demo-single-curtain']), height) }
  if (kind === 'zone-only')
    return {
      id,
      device: kind,
      source: SOURCE,
      function: 'presence',
      output: 'o',
      covers: { xMin_mm: 0, xMax_mm: width, yMin_mm: -200, yMax_mm: 200 },
    }
  if (kind === 'segments')
    return { id, device: kind, source: SOURCE, planes: [segments(t, width)], fields: fields(t, true), spotRadius_mm: spot(t) }
  const pose = { x_mm: t.length(0, width), y_mm: t.length(-300, 300), z_mm: height - t.length(25, 500) }
  if (kind === 'scanner') {
    const turned = {
      yaw_deg: t.maybe(0.5, () => t.pick([90, 180, t.between(-180, 180)])),
      tilt_deg: t.maybe(0.6, () => t.between(-20, 20)),
      roll_deg: t.maybe(0.3, () => t.between(-15, 15)),
    }
    return own && t.chance(0.5)
      ? { id, use: 'own-scanner', learnedIn, pose: { ...pose, ...turned } }
      : { id, learnedIn, ...ranging(t, kind), pose: { ...pose, ...turned } }
  }
  return {
    id,
    learnedIn,
    ...ranging(t, 'downward-row'),
    pose: { ...pose, yaw_deg: t.maybe(0.4, () => 180), tilt_deg: t.maybe(0.4, () => t.between(-10, 10)) },
  }
}

function shortSensor(t: Throw, use: string, height: number) {
  return {
    use,
    side: t.pick(['a', 'b']),
    mountingHeight_mm: height - t.length(25, 300),
    offset_mm: t.length(150, 300),
    x_mm: t.maybe(0.3, () => t.length(100, 600)),
    tilt_deg: t.maybe(0.5, () => t.between(-5, 15)),
  }
}

function spot(dice: Dice) {
  return dice.chance(0.6) ? undefined : dice.pick([12.5, dice.between(1, 20)])
}

function ranging(dice: Dice, device: 'scanner' | 'downward-row') {
  const t = throwOf(dice)
  return {
    device,
    source: SOURCE,
    planes: Array.from({ length: t.pick([1, 1, 2, 3]) }, (_, i) => (device === 'scanner' ? fan(t, i) : row(t, i))),
    maxRange_mm: t.chance(0.7) ? 10_000 : t.length(1200, 3000),
    rangeRef_mm: t.chance(0.4) ? t.length(1000, 3000) : t.length(3000, 8000),
    reflectanceRef: t.pick([0.1, 0.05, 0.9]),
    backgroundMargin_mm: t.maybe(0.5, () => t.length(0, 120)),
    spotRadius_mm: spot(t),
    fields: t.maybe(0.9, () => fields(t, false)),
  }
}

function fan(t: Throw, i: number) {
  const offset_deg = i === 0 ? undefined : t.between(-20, 20)
  if (t.chance(0.5)) return { id: `p${i}`, offset_deg, fovMin_deg: -50, fovMax_deg: 50, beamCount: t.pick([21, 41, 51]) }
  return { id: `p${i}`, offset_deg, fovMin_deg: t.between(-60, 0), fovMax_deg: t.between(1, 60), beamCount: t.whole(1, 50) }
}

function row(t: Throw, i: number) {
  const tilt_deg = t.maybe(0.6, () => t.between(-15, 15))
  if (t.chance(0.6)) return { id: `p${i}`, tilt_deg, beamCount: t.whole(3, 14), spacing_mm: t.length(25, 100) }
  const [x, y, z] = [t.length(0, 500), t.length(-200, 200), t.length(1300, 1500)]
  return { id: `p${i}`, tilt_deg, places_mm: Array.from({ length: t.whole(1, 9) }, (_, k) => [x + k * k * 12.5 + k * 25, y, z]) }
}

function segments(t: Throw, width: number) {
  const [y, x, z, by] = [t.length(-300, 300), t.length(0, width), t.length(25, 300), t.length(25, 100)]
  const heights_mm = Array.from({ length: t.whole(1, 8) }, (_, i) => z + i * by)
  if (t.chance(0.4))
    return {
      id: 'p0',
      between_mm: [
        [0, y],
        [width, y],
      ],
      heights_mm,
    }
  if (t.chance(0.5))
    return {
      id: 'p0',
      between_mm: [
        [x, 400],
        [x + t.pick([0, 37]), -400],
      ],
      heights_mm,
    }
  const point = () => [t.between(-100, width), t.between(-500, 500), t.between(0, 600)]
  return { id: 'p0', segments_mm: Array.from({ length: t.whole(1, 6) }, () => [point(), point()]) }
}

function fields(t: Throw, isSegment: boolean) {
  return Array.from({ length: t.pick([1, 1, 1, 2]) }, (_, i) => ({
    id: `f${i}`,
    output: 'o',
    function: t.chance(0.85) ? 'presence' : 'opening',
    clusterBeams: t.pick([undefined, 1, 1, 2, 3]),
    presenceTime_s: t.pick([undefined, 'for-ever', 'for-ever', 600, 30]),
    planes: t.maybe(0.2, () => ['p0']),
    ...(isSegment
      ? {}
      : {
          xMin_mm: t.maybe(0.2, () => t.length(0, 400)),
          xMax_mm: t.maybe(0.2, () => t.length(500, 1200)),
          yMin_mm: t.maybe(0.2, () => t.length(-500, -100)),
          yMax_mm: t.maybe(0.2, () => t.length(0, 500)),
          clearance_mm: t.pick([undefined, 0, 25, 50, 100]),
          top_mm: t.pick(['open', 'open', 'open', undefined, 150, 200, 500]),
        }),
  }))
}

function bodyValues(dice: Dice) {
  const t = throwOf(dice)
  return {
    reflectance: t.pick([0.02, 0.1, 0.1, 0.4, 0.9]),
    source: SOURCE,
    postures: Array.from({ length: t.pick([1, 1, 2]) }, () => posture(t)),
  }
}

function posture(t: Throw) {
  const height = t.pick([100, 200, 500, t.length(75, 1100)])
  if (t.chance(0.3)) return { shape: 'cylinder', radius_mm: t.length(75, 250), height_mm: height }
  const yaw = t.between(-180, 180)
  const yaw_deg = t.chance(0.5) ? undefined : t.chance(0.5) ? yaw : [yaw, yaw + t.pick([3, 10, 20])]
  return { shape: 'box', size_mm: [t.length(150, 600), t.length(150, 500), height], yaw_deg }
}

function zone(t: Throw, i: number, width: number) {
  const [x, y] = [t.length(-50, width / 2), t.length(-350, 50)]
  const purpose = t.pick(['presence-at-leaf', 'presence-at-leaf', 'presence-at-leaf', 'presence-at-leaf', 'opening', 'must-not-see'])
  return {
    id: `zone-${i}`,
    purpose,
    function: purpose === 'must-not-see' ? 'presence' : undefined,
    xMin_mm: x,
    xMax_mm: x + t.length(100, 500),
    yMin_mm: y,
    yMax_mm: y + t.length(100, 400),
    pitch_mm: 50,
    longestStay_s: t.pick([undefined, undefined, 60]),
  }
}

function tolerances(t: Throw) {
  const [mm, deg] = [t.pick([0.5, 2, 5]), t.pick([0, 0.05, 0.1, 0.3])]
  return {
    length_mm: mm,
    position_mm: mm,
    tilt_deg: deg,
    roll_deg: deg,
    yaw_deg: deg,
    floor_mm: t.pick([0, 1, 5]),
    range_percent: t.pick([0, 5]),
  }
}
