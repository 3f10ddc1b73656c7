import { type PassingFile, passingFile } from './passing-doors.ts'
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
}

export function fileOfKind(kind: string, seed: number): PassingFile {
  const file = passingFile(diceOf(seed))
  KINDS[kind]?.(file, diceOf(seed + 1e6))
  return file
}
