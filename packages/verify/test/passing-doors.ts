import { parseDocument, toDoor } from '@sillsight/document'
import { type Door, judge, lanesEvidence } from '@sillsight/engine'
import { type VerifyResult, verifyEvidence } from '../src/index.ts'
import { sha256 } from './random-door-files.ts'
import { type Dice, diceOf } from './random-numbers.ts'

/** A door file as JSON holds it, to be changed at will. */
export interface PassingFile {
  survey: {
    opening: Record<string, number>
    leaf: Record<string, unknown>
    drive: Record<string, unknown>
    floor: { profile_mm: [number, number][]; slopeX_percent: number }
    lanes: Record<string, unknown>[]
  }
  sensors: { planes: { between_mm: [[number, number], [number, number]]; heights_mm: number[] }[]; fields: Record<string, unknown>[] }[]
  bodies: { id: string; reflectance: number; postures: Record<string, unknown>[] }[]
}

/** In a third of the doors the control says when it closes. */
function cycleOf(dice: Dice): object {
  if (!dice.chance(0.35)) return {}
  const preWarning_s = dice.pick([0, 0.3, 1.5])
  return {
    holdOpen_s: dice.pick([2, 5]),
    cycle: {
      holdOpenFrom: dice.pick(['clear', 'opened']),
      closesOnlyByTimer: dice.pick(['yes', 'yes', 'no']),
      preWarning_s,
      outputInWarning: dice.pick(['cancels', 'waits']),
    },
  }
}

/** A door with light grids on both sides of its leaf, one lane and a drive; seen soon enough in about half of the cases. */
export function passingFile(dice: Dice): PassingFile {
  const file = plainFile(dice)
  Object.assign(file.survey.drive, cycleOf(dice)) // drawn last, so that all else stays what it was
  return file
}

function plainFile(dice: Dice): PassingFile {
  const [width, height] = [dice.whole(8, 40) * 100, dice.whole(12, 30) * 100]
  const travel = dice.pick(['down', 'down', 'toward-zero', 'toward-width', 'both-inward'])
  const accel = dice.pick([0.5, 1, 2])
  const grid = (y: number) => ({
    id: `grid${y}`,
    device: 'segments',
    planes: [
      {
        id: 'p',
        between_mm: [
          [-50, y],
          [width + 50, y],
        ] as [[number, number], [number, number]],
        heights_mm: Array.from({ length: 8 }, (_, i) => 120 + i * 150),
      },
    ],
    fields: [
      {
        id: 'f',
        output: 'OUT',
        function: 'presence',
        presenceTime_s: 'for-ever',
        response_s: dice.pick([0, 0.03, 0.08, 0.15]),
        hold_s: dice.pick([0, 0.1, 0.5, 2]),
      },
    ],
  })
  const far = dice.whole(40, 900)
  const ys = [far, -far, ...(dice.chance(0.5) ? [0] : []), ...(dice.chance(0.5) ? [2 * far, -2 * far] : [])]
  const box = () => ({
    shape: 'box',
    size_mm: [dice.whole(2, 6) * 100, dice.whole(2, 15) * 100, dice.whole(4, 20) * 100],
    yaw_deg: dice.pick([0, 0, 30, 90]),
  })
  return {
    sillsight: 1,
    name: 'passages',
    sides: { a: 'yard', b: 'hall' },
    survey: {
      opening: { width_mm: width, height_mm: height },
      leaf: { travel, thickness_mm: dice.whole(1, 8) * 10, bulge_mm: dice.whole(0, 3) * 10, parked: 'none' },
      drive: {
        closeSpeed_m_per_s: dice.pick([0.2, 0.5, 1]),
        closeAccel_m_per_s2: accel,
        ...(dice.chance(0.3) ? { closeJerk_m_per_s3: dice.pick([2, 20]) } : {}),
        stopDelay_s: dice.pick([0, 0.05, 0.1]),
        stopDecel_m_per_s2: accel * dice.pick([1, 2, 4]),
        ...(dice.chance(0.5)
          ? { afterStop: 'stay' }
          : { afterStop: 'reverse', reverseDelay_s: 0.2, openSpeed_m_per_s: 0.5, openAccel_m_per_s2: 1 }),
        ...(dice.chance(0.3) ? { partialOpenings_mm: [Math.round(0.4 * Math.min(width / 2, height))] } : {}),
      },
      floor: {
        profile_mm: dice.chance(0.3)
          ? [
              [-300, -20],
              [300, 10],
            ]
          : [[0, 0]],
        slopeX_percent: dice.pick([0, 0, 1]),
      },
      lanes: [
        {
          id: 'lane',
          who: 'people',
          xMin_mm: 100,
          xMax_mm: width - 100,
          slowest_m_per_s: 0.1,
          fastest_m_per_s: dice.pick([0.3, 1, 2]),
          longestStay_s: 60,
          ...(dice.chance(0.3) ? { directions: ['from-a'] } : {}),
        },
      ],
    },
    sensors: ys.map(grid),
    bodies: [
      {
        id: 'box',
        reflectance: 0.1,
        postures: dice.chance(0.5) ? [box()] : [box(), { shape: 'cylinder', radius_mm: 200, height_mm: 1000 }],
      },
    ],
  } as PassingFile
}

/** Undefined where the parser refuses the file. */
export function doorOfFile(file: PassingFile): Door | undefined {
  const parsed = parseDocument(JSON.stringify(file))
  return parsed.ok ? toDoor(parsed.document, parsed.catalogue) : undefined
}

export function passagesOf(door: Door): unknown {
  return JSON.parse(JSON.stringify(lanesEvidence(door).passages))
}

export function contactsOf(door: Door): Record<string, unknown>[] {
  return JSON.parse(JSON.stringify(lanesEvidence(door).contacts))
}

export function verifiedPassages(file: PassingFile, passages: unknown, contacts: unknown = []): VerifyResult {
  const doorText = JSON.stringify(file)
  const evidenceText = JSON.stringify({ sillsightEvidence: 1, doorSha256: sha256(doorText), coverages: [], passages, contacts })
  return whole(verifyEvidence({ doorText, evidenceText, sha256 }))
}

/** Where anything cannot be shown, as if it were refused. */
export function whole(result: VerifyResult): VerifyResult {
  return result.ok && result.notShown.length > 0 ? { ok: false, issues: result.notShown } : result
}

/** What the rule says, by the search for the fastest contact: another way than the trees of the evidence. */
export function isStruck(door: Door): boolean {
  const { findings } = judge(door)
  return findings.some((finding) => finding.rule === 'struck-by-leaf' && finding.verdict === 'fail')
}

/** A change of the door that evidence which was written before may have to notice. */
function changeFile(file: PassingFile, seed: number): PassingFile {
  const dice = diceOf(seed)
  const changed = structuredClone(file)
  const { drive, lanes, opening, leaf } = changed.survey
  const scale = (of: Record<string, unknown>, name: string, by: number) => {
    if (typeof of[name] === 'number') of[name] = (of[name] as number) * by
  }
  const lane = lanes[0] as Record<string, unknown>
  const field = dice.pick(changed.sensors).fields[0] as Record<string, unknown>
  const body = changed.bodies[0]?.postures[0] as { size_mm?: number[] | undefined }
  const by = dice.pick([0.7, 0.98, 1.02, 1.3, 3])
  const ways: (() => void)[] = [
    () => scale(drive, 'closeSpeed_m_per_s', by),
    () => scale(drive, 'closeAccel_m_per_s2', Math.min(1, by)),
    () => scale(drive, 'stopDecel_m_per_s2', Math.max(1, by)),
    () => (drive['stopDelay_s'] = ((drive['stopDelay_s'] ?? 0) as number) + dice.pick([0.01, 0.1, 0.5])),
    () => (field['response_s'] = (field['response_s'] as number) + dice.pick([0.01, 0.1, 0.5, 5])),
    () => (field['hold_s'] = dice.pick([0, 0.05, 1])),
    () => (field['function'] = 'opening'),
    () => scale(lane, 'fastest_m_per_s', Math.max(1, by)),
    () => (lane['directions'] = dice.pick([['from-b'], ['from-a', 'from-b']])),
    () => (lane['xMax_mm'] = (lane['xMax_mm'] as number) - 10),
    () => scale(opening, 'height_mm', by),
    () => scale(leaf, 'thickness_mm', by),
    () => (drive['partialOpenings_mm'] = [Math.round(300 * by)]),
    () => (body.size_mm = body.size_mm?.map((size) => size * by)),
    () => {
      for (const { planes } of changed.sensors) for (const end of planes[0]?.between_mm ?? []) end[1] *= by
      for (const sensor of changed.sensors as unknown as Record<string, unknown>[]) scale(sensor, 'offset_mm', by)
    },
    () => (changed.survey.floor.slopeX_percent += 1),
    () => (drive['closeJerk_m_per_s3'] = 5),
    ...changesOfKind(changed, dice, by),
  ]
  dice.pick(ways)()
  return changed
}

/** Of what only some kinds of doors have; none for a plain one. */
function changesOfKind({ survey: { drive, lanes, leaf }, bodies, sensors }: PassingFile, dice: Dice, by: number): (() => void)[] {
  const ways: (() => void)[] = []
  const hidden = sensors.flatMap(({ fields }) => fields).filter((field) => field['leafHides'] === 'bodies')
  if (hidden.length > 0) {
    const follows = () => {
      for (const field of hidden) field['leafBlanking'] = { beside_mm: dice.pick([10, 100, 400]), before_mm: dice.pick([0, 300, 3000]) }
    }
    ways.push(
      follows,
      follows,
      () => (leaf['bulge_mm'] = dice.pick([50, 200, 400])),
      () => dice.pick(hidden) && Object.assign(dice.pick(hidden), { blanking: [{ from_mm: 0, to_mm: 300 }] }),
    )
  }
  const curve = drive['stoppingCurve'] as [number, number][] | undefined
  if (curve)
    ways.push(
      () => (drive['stoppingCurve'] = curve.map(([time, way]) => [time, way * by])),
      () => (drive['stoppingCurve'] = curve.map(([time, way]) => [time * Math.min(by, 1.3), way])),
      () => (drive['stoppingCurve'] = curve.map(([time, way], i) => [time, i === curve.length - 1 ? way + dice.pick([1, 30, 200]) : way])),
    )
  if (drive['brake'] === 'none')
    for (const name of ['coastDecel_m_per_s2', 'coastWay_mm'])
      if (typeof drive[name] === 'number') ways.push(() => (drive[name] = (drive[name] as number) * by))
  const hinged = leaf['hinged'] as Record<string, unknown> | undefined
  if (hinged)
    for (const name of ['length_mm', 'secondPanel_mm', 'openAngle_deg']) {
      const value = hinged[name]
      if (typeof value === 'number') for (const k of [0.8, 0.97, 1.03, 1.2]) ways.push(() => (hinged[name] = value * k))
    }
  if (hinged)
    ways.push(
      () => (hinged['opensTo'] = dice.pick(['a', 'b'])),
      () => (hinged['hinge'] = dice.pick(['at-zero', 'at-width'])),
      () => (leaf['bulge_mm'] = dice.pick([0, 60, 200])),
    )
  for (const posture of bodies.flatMap(({ postures }) => postures)) {
    const parts = posture['parts'] as Record<string, unknown>[] | undefined
    const part = parts && dice.pick(parts)
    const size = (part ?? posture)['size_mm'] as number[] | undefined
    const isLast = posture['how'] === 'fallen'
    if (size && (part || isLast)) for (const k of [0, 1, 2]) ways.push(() => (size[k] = (size[k] ?? 0) * by))
    if (!part) continue
    const [x, y] = part['at_mm'] as [number, number]
    ways.push(
      () => (part['at_mm'] = [x, y + dice.pick([-200, -20, 20, 200])]),
      () => (part['at_mm'] = [x + dice.pick([-200, -20, 20, 200]), y]),
      () => (part['from_mm'] = dice.pick([0, 100, 500])),
      () => (part['reflectance'] = dice.pick([0.001, 0.9])),
      () =>
        parts.push({ shape: 'box', size_mm: [100, 100, dice.pick([500, 2000])], at_mm: [0, dice.pick([-900, 900])], reflectance: 0.001 }),
    )
  }
  for (const lane of lanes)
    if (typeof lane['followGap_mm'] === 'number') ways.push(() => (lane['followGap_mm'] = dice.pick([0, 10, 300, 2000])))
  return ways
}

/** The same door with bodies as fast as its leaf and sensors only just allow: what is changed then matters. Undefined where no pace is allowed. */
export function onlyJust(file: PassingFile): PassingFile | undefined {
  const at = (fastest_m_per_s: number): PassingFile => {
    const copy = structuredClone(file)
    for (const lane of copy.survey.lanes) lane['fastest_m_per_s'] = fastest_m_per_s
    return copy
  }
  const isShown = (fastest: number) => {
    const door = doorOfFile(at(fastest))
    return door !== undefined && lanesEvidence(door).passages.length > 0
  }
  let [low, high] = [0.1, 0.12]
  if (!isShown(low)) return undefined
  while (high < 20 && isShown(high)) [low, high] = [high, high * 1.5]
  for (let k = 0; k < 6; k++) {
    const middle = (low + high) / 2
    if (isShown(middle)) low = middle
    else high = middle
  }
  return at(low)
}

/** Doors that were changed after evidence about them was written, each with that evidence. */
export function changedDoors(seeds: readonly number[], changes: number, fileOf = (seed: number) => passingFile(diceOf(seed))) {
  return seeds.flatMap((seed) => {
    const file = onlyJust(fileOf(seed))
    const written = file && doorOfFile(file)
    if (file === undefined || written === undefined) return []
    const passages = passagesOf(written)
    return Array.from({ length: changes }).flatMap((_, k) => {
      const changed = changeFile(file, seed * 100 + k)
      const door = doorOfFile(changed)
      return door === undefined ? [] : [{ name: `seed ${seed}, change ${k}`, file: changed, door, passages }]
    })
  })
}

/** Has evidence verified against doors that were changed after it was written; what is accepted must be so. */
export function holdChanges(seeds: readonly number[], changes: number, fileOf?: (seed: number) => PassingFile) {
  const all = changedDoors(seeds, changes, fileOf)
  const shown = all.filter(({ file, passages }) => verifiedPassages(file, passages).ok)
  const accepted = shown.filter(({ door }) => isStruck(door)).map(({ name }) => name)
  return { accepted, stillShown: shown.length, refused: all.length - shown.length }
}
