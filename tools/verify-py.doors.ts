import { type RandomNumbers, randomNumbers } from '../packages/engine/cases/random-numbers.ts'

type Json = Record<string, unknown>

/** A small door file with whatever evidence has to deal with: slopes, steps, states, fog, yaw ranges, cylinders, rows, grids, tolerances. */
export function randomDoorFile(seed: number): Json {
  const random = randomNumbers(seed)
  const { between, chance } = random
  const width_mm = Math.round(between(800, 1500))
  const height_mm = Math.round(between(1900, 2500))
  return {
    sillsight: 1,
    survey: {
      opening: { width_mm, height_mm },
      walls: chance(0.5) ? 'none' : { yMin_mm: -150, yMax_mm: -20, beyondZero_mm: 500, beyondWidth_mm: 500, top_mm: 3000 },
      floor: randomFloor(random),
      ...(chance(0.25) ? { states: [{ id: 'usual' }, { id: 'other', floor: randomFloor(random) }] } : {}),
      obstacles: Array.from({ length: random.whole(0, 2) }, (_, i) => randomObstacle(`thing-${i}`, width_mm, random)),
      visibility_m: chance(0.3) ? between(8, 40) : 'clear',
    },
    sensors: Array.from({ length: chance(0.3) ? 2 : 1 }, (_, i) => randomSensor(`sensor-${i}`, width_mm, height_mm, random)),
    bodies: [
      { id: 'body', reflectance: between(0.05, 0.5), postures: [randomPosture(random), ...(chance(0.3) ? [randomPosture(random)] : [])] },
    ],
    zones: [randomZone(width_mm, random)],
    ...(chance(0.5) ? { tolerances: randomTolerances(random) } : {}),
  }
}

function randomFloor({ between, chance, whole }: RandomNumbers): Json {
  const ys = Array.from({ length: whole(1, 3) }, (_, i) => Math.round(-600 + 500 * i + between(0, 400)))
  const flat = chance(0.4)
  return { profile_mm: ys.map((y) => [y, flat ? 0 : Math.round(between(-40, 40))]), slopeX_percent: chance(0.5) ? 0 : between(-3, 3) }
}

function randomObstacle(id: string, width_mm: number, { between, chance, pick }: RandomNumbers): Json {
  const from_mm = chance(0.6) ? -100 : between(0, 900)
  const place = { id, x_mm: between(-200, width_mm + 200), y_mm: between(200, 1200), from_mm, to_mm: from_mm + between(200, 1500) }
  return chance(0.5)
    ? { ...place, shape: 'post', radius_mm: between(20, 120) }
    : { ...place, shape: 'box', size_mm: [between(40, 300), between(40, 300)], yaw_deg: pick([0, 90, between(-90, 90)]) }
}

const OPEN = { xMin_mm: 'open', xMax_mm: 'open', top_mm: 'open' }
const SOURCE = { source: { basis: 'invented' } }

function randomSensor(id: string, width_mm: number, height_mm: number, random: RandomNumbers): Json {
  const { between, chance, pick, whole } = random
  const output = { id: 'field', output: 'OUT 1', function: 'presence', clusterBeams: whole(1, 3) }
  const outputs = whole(0, 2) > 0 ? undefined : [{ name: 'OUT 1', function: 'presence', presenceTime_s: 'for-ever' }]
  if (outputs) Reflect.deleteProperty(output, 'function')
  const spotRadius_mm = pick([0, 0, between(0, 8)])
  if (chance(0.2)) {
    const y = between(150, 700)
    const heights_mm = Array.from({ length: whole(3, 12) }, (_, i) => 120 + 110 * i)
    const plane = { id: 'grid', between_mm: [[-60, y], [width_mm + 60, y + pick([0, 0, between(-80, 80)])]], heights_mm } // biome-ignore format: one place each
    return { id, device: 'segments', planes: [plane], fields: [output], outputs, spotRadius_mm, ...SOURCE }
  }
  const limits = {
    ...OPEN,
    ...(chance(0.3) ? { yMax_mm: between(700, 1200) } : {}),
    ...(chance(0.2) ? { top_mm: between(900, 2500) } : {}),
  }
  const ranging = {
    maxRange_mm: between(3000, 9000),
    rangeRef_mm: between(3000, 9000),
    reflectanceRef: between(0.05, 0.2),
    backgroundMargin_mm: pick([0, between(0, 100)]),
    spotRadius_mm,
    outputs,
    fields: [{ ...output, ...limits, clearance_mm: pick([0, between(0, 120)]) }],
    ...SOURCE,
  }
  const pose = { x_mm: between(0, width_mm), y_mm: between(20, 200), z_mm: height_mm + between(0, 400) }
  if (chance(0.3)) {
    const planes = [0, 1].map((i) => ({
      id: `row-${i}`,
      beamCount: whole(6, 16),
      spacing_mm: between(60, 120),
      tilt_deg: between(2, 14) + 8 * i,
    }))
    return { id, device: 'downward-row', pose: { ...pose, x_mm: width_mm / 2 }, planes, ...ranging }
  }
  const fan = { fovMin_deg: -between(25, 45), fovMax_deg: between(25, 45), beamCount: whole(50, 140) }
  const planes = Array.from({ length: whole(2, 4) }, (_, i) => ({ id: `plane-${i}`, offset_deg: 5 * i, ...fan }))
  return { id, device: 'scanner', pose: { ...pose, tilt_deg: between(0, 8), yaw_deg: pick([0, 0, between(-6, 6)]) }, planes, ...ranging }
}

function randomPosture({ between, chance, pick }: RandomNumbers): Json {
  if (chance(0.35)) return { shape: 'cylinder', radius_mm: between(80, 250), height_mm: between(200, 1500) }
  const yaw = pick([0, 90, between(-180, 180)])
  const size_mm = [between(200, 700), between(200, 500), between(200, 1300)]
  return { shape: 'box', size_mm, yaw_deg: chance(0.3) ? [yaw, yaw + between(1, 12)] : yaw }
}

function randomZone(width_mm: number, { between, whole }: RandomNumbers): Json {
  const xMin_mm = whole(0, 300)
  const yMin_mm = whole(60, 400)
  const xMax_mm = Math.min(width_mm, xMin_mm + whole(200, 600))
  return { id: 'zone', purpose: 'presence-at-leaf', xMin_mm, xMax_mm, yMin_mm, yMax_mm: yMin_mm + between(100, 400), longestStay_s: 60 }
}

function randomTolerances({ between, pick }: RandomNumbers): Json {
  const upTo = (most: number) => pick([0, between(0, most)])
  return {
    length_mm: upTo(6),
    position_mm: upTo(6),
    tilt_deg: upTo(0.4),
    roll_deg: upTo(0.4),
    yaw_deg: upTo(0.4),
    floor_mm: upTo(5),
    range_percent: upTo(6),
  }
}
