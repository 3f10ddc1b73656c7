import { contactsOf, doorOfFile, isStruck, type PassingFile, passagesOf, passingFile, verifiedPassages } from './passing-doors.ts'
import { type Dice, diceOf } from './random-numbers.ts'

/** Doors of the kinds that the evidence of lanes has words of its own for: each made of a plain one of the same seed. */
export const KINDS: Readonly<Record<string, (file: PassingFile, dice: Dice) => void>> = {
  'weak brakes': ({ survey: { drive } }, dice) => {
    drive['stopDecel_m_per_s2'] = (drive['closeAccel_m_per_s2'] as number) * dice.pick([0.3, 0.6, 0.9])
  },
  'no brakes': ({ survey: { drive } }, dice) => {
    drive['brake'] = 'none'
    delete drive['stopDecel_m_per_s2']
    const speed = drive['closeSpeed_m_per_s'] as number
    if (dice.chance(0.5)) drive['coastWay_mm'] = 1000 * speed * dice.pick([0.1, 0.3])
    else drive['coastDecel_m_per_s2'] = dice.pick([0.4, 1.5])
  },
  'measured stopping curves': ({ survey: { drive } }, dice) => {
    const speed = 1000 * (drive['closeSpeed_m_per_s'] as number)
    const lasts = dice.pick([0.04, 0.15])
    drive['stoppingCurve'] = [1, 2, 3].map((k) => [lasts * k, speed * lasts * (k - (k * k) / 8)])
    delete drive['stopDelay_s']
    delete drive['stopDecel_m_per_s2']
  },
  'bodies of several parts': (file, dice) => ofParts(file, dice),
  'bodies of several parts before scanners': (file, dice) => {
    ofParts(file, dice)
    scanners(file, dice)
  },
  followers: (file, dice) => {
    const [body] = file.bodies
    if (body) body.postures = body.postures.slice(0, 1)
    for (const lane of file.survey.lanes) lane['followGap_mm'] = dice.pick([0, 150, 600])
    if (dice.chance(0.5)) scanners(file, dice)
  },
  'a leaf that hides': (file, dice) => {
    if (dice.chance(0.7)) scanners(file, dice)
    const follows =
      dice.chance(0.5) && 'offset_mm' in (file.sensors[0] ?? {}) ? { leafBlanking: { beside_mm: dice.pick([0, 40]), before_mm: 50 } } : {}
    for (const { fields } of file.sensors) for (const field of fields) Object.assign(field, { leafHides: 'bodies' }, follows)
  },
  falls: (file, dice) => {
    const [body] = file.bodies
    if (body) body.postures = [...body.postures.slice(0, 1), { shape: 'box', size_mm: [400, dice.pick([300, 900]), 250], how: 'fallen' }]
    for (const lane of file.survey.lanes) lane['falls'] = 'anywhere'
    if (dice.chance(0.7)) scanners(file, dice)
    else lowGrids(file)
  },
}

function ofParts({ bodies }: PassingFile, dice: Dice): void {
  const [body] = bodies
  if (!body) return
  const long = dice.pick([300, 700])
  const mast = dice.chance(0.5)
    ? { shape: 'box', size_mm: [300, 100, dice.pick([900, 1700])], at_mm: [0, long / 2 + 60], reflectance: dice.pick([0.01, 0.2]) }
    : { shape: 'cylinder', radius_mm: 120, height_mm: 1200, at_mm: [60, long / 2 + 130] }
  const low = { shape: 'box', size_mm: [400, long, 300], at_mm: [0, 0], from_mm: dice.pick([0, 0, 60]) }
  body.postures = [{ shape: 'parts', parts: [low, mast], yaw_deg: dice.pick([0, 0, 20]) }]
}

/** Scanners over both sides of the leaf in place of the grids, with the times of the first. */
function scanners(file: PassingFile, dice: Dice): void {
  const { width_mm = 1000, height_mm = 2000 } = file.survey.opening
  const { response_s, hold_s } = file.sensors[0]?.fields[0] ?? {}
  const field = { id: 'f', output: 'OUT', function: 'presence', presenceTime_s: 'for-ever', response_s, hold_s, clearance_mm: 60 }
  const open = { xMin_mm: 'open', xMax_mm: 'open', top_mm: 'open' }
  const cluster = dice.pick([1, 2])
  const scanner = (side: 'a' | 'b') => ({
    id: `scanner-${side}`,
    device: 'scanner',
    side,
    mountingHeight_mm: height_mm + 150,
    offset_mm: dice.pick([60, 120]),
    tilt_deg: 0,
    planes: [-2, 4, 14, 26].map((offset_deg, i) => ({
      id: `p${i}`,
      offset_deg,
      fovMin_deg: -60,
      fovMax_deg: 60,
      beamCount: Math.round(width_mm / 30),
    })),
    fields: [{ ...field, ...open, clusterBeams: cluster }],
    maxRange_mm: 9000,
    rangeRef_mm: 8000,
    reflectanceRef: 0.07,
    backgroundMargin_mm: 50,
    spotRadius_mm: 5,
  })
  file.sensors = [scanner('a'), scanner('b')] as unknown as PassingFile['sensors']
}

/** Beams that somebody lying interrupts. */
function lowGrids({ sensors }: PassingFile): void {
  for (const { planes } of sensors) for (const plane of planes) plane.heights_mm = [60, 180, ...plane.heights_mm.slice(1)]
}

export function fileOfKind(kind: string, seed: number): PassingFile {
  const file = passingFile(diceOf(seed))
  KINDS[kind]?.(file, diceOf(seed + 1e6))
  // no zone that takes long to judge
  return Object.assign(file, { zones: [{ id: 'small', purpose: 'call', xMin_mm: 0, xMax_mm: 10, yMin_mm: 0, yMax_mm: 10 }] })
}

/** What is wrong with the evidence of doors of one kind, and how much of it there was. */
export function holdKind(kind: string, seeds: readonly number[], fileOf = fileOfKind) {
  const wrong: string[] = []
  let [passages, contacts] = [0, 0]
  for (const seed of seeds) {
    const file = fileOf(kind, seed)
    const door = doorOfFile(file)
    if (door === undefined) continue
    const [clear, struck] = [passagesOf(door) as unknown[], contactsOf(door)]
    const result = verifiedPassages(file, clear, struck)
    if (!result.ok) wrong.push(`seed ${seed}: ${JSON.stringify(result.issues[0])}`)
    if (clear.length > 0 && isStruck(door)) wrong.push(`seed ${seed} is struck`)
    passages += clear.length
    contacts += struck.length
  }
  return { wrong, passages, contacts }
}
