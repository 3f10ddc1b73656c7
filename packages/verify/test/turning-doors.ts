import type { PassingFile } from './passing-doors.ts'
import { fileOfKind, KINDS } from './passing-kinds.ts'
import { type Dice, diceOf } from './random-numbers.ts'

/** Doors whose leaf swings or folds, before light grids that watch the sweep from some way on; each of a kind made of a plain one of the same seed. */
export const TURNING: Readonly<Record<string, (file: PassingFile, dice: Dice) => void>> = {
  'leaves that swing': (file, dice) => hang(file, dice, false),
  'leaves that fold': (file, dice) => hang(file, dice, true),
  'leaves that turn, with weak brakes': (file, dice) => {
    hang(file, dice, dice.chance(0.5))
    KINDS['weak brakes']?.(file, dice)
  },
  'leaves that turn, and bodies of several parts': (file, dice) => {
    KINDS['bodies of several parts']?.(file, dice)
    hang(file, dice, dice.chance(0.5))
  },
  'leaves that turn, and followers': (file, dice) => {
    for (const body of file.bodies) body.postures = body.postures.slice(0, 1)
    for (const lane of file.survey.lanes) lane['followGap_mm'] = dice.pick([150, 600])
    hang(file, dice, dice.chance(0.5))
  },
  'leaves that turn, and falls': (file, dice) => {
    const [body] = file.bodies
    if (body) body.postures = [...body.postures.slice(0, 1), { shape: 'box', size_mm: [400, dice.pick([300, 900]), 250], how: 'fallen' }]
    for (const lane of file.survey.lanes) lane['falls'] = 'anywhere'
    hang(file, dice, dice.chance(0.5))
  },
}

function hang({ survey, sensors, bodies }: PassingFile, dice: Dice, folds: boolean): void {
  const { opening } = survey
  const width = dice.whole(9, 24) * 100
  opening['width_mm'] = width
  const hinge = dice.pick(['at-zero', 'at-width', 'both'])
  const one = hinge === 'both' ? width / 2 : width
  const length_mm = folds ? one / 2 : one
  survey.leaf = {
    travel: 'turning',
    thickness_mm: dice.whole(2, 6) * 10,
    bulge_mm: dice.pick([0, 10]),
    parked: 'none',
    hinged: {
      hinge,
      opensTo: dice.pick(['a', 'b']),
      length_mm,
      ...(folds ? { secondPanel_mm: length_mm + dice.pick([0, 30]) } : {}),
      openAngle_deg: folds ? dice.pick([75, 90]) : dice.pick([80, 90, 105]),
    },
  }
  const { drive } = survey
  delete drive['cycle']
  if (drive['partialOpenings_mm']) drive['partialOpenings_mm'] = [Math.round(length_mm * 0.9)]
  for (const lane of survey.lanes) Object.assign(lane, { xMin_mm: 100, xMax_mm: width - 100 })
  for (const posture of bodies.flatMap(({ postures }) => postures)) {
    const size = posture['size_mm'] as number[] | undefined
    if (size) size[0] = Math.min(size[0] ?? 0, width - 300)
  }
  const [grid] = sensors
  if (grid === undefined) throw new Error('the door must have a grid')
  const [plane] = grid.planes
  const far = Math.round(length_mm * dice.pick([0.3, 0.8, 1])) + dice.whole(1, 12) * 100
  const apart = dice.pick([120, 180])
  const count = Math.ceil((2 * far) / apart)
  grid.planes = Array.from({ length: count + 1 }, (_, i) => ({
    ...plane,
    id: `p${i}`,
    between_mm: [
      [-50, i * apart - far],
      [width + 50, i * apart - far],
    ] as [[number, number], [number, number]],
    heights_mm: [150, 600],
  }))
  const [field] = grid.fields
  if (field) field['response_s'] = dice.pick([0, 0.05, 0.1])
  sensors.splice(1)
}

export function fileOfTurning(kind: string, seed: number): PassingFile {
  const file = fileOfKind('plain', seed)
  TURNING[kind]?.(file, diceOf(seed + 1e6))
  return file
}
