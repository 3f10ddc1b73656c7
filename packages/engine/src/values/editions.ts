import type { OutsideValue } from '../model/source.ts'
import { doorwayDischarge, doorwayMeanHeight } from './air.ts'
import {
  conductorResistance,
  copperCoefficient,
  copperFactors,
  gaugeResistance,
  strandedResistivity,
  strandingAllowance,
} from './conductors.ts'
import { guardedHeight, presenceReferenceBody } from './doors.ts'
import { classTwoPower, classTwoVoltage, extraLowVoltage } from './extra-low.ts'
import { lastingForce, lowEnergy, peakForce, peakTime, restForce } from './forces.ts'
import { commonCauseScore, coverageBands, dangerousShare, failureBands, requiredLevel, simplifiedLevels } from './functional-safety.ts'
import { minimumGap, reachThrough } from './gaps.ts'
import { koschmiederContrast } from './optics.ts'
import { separationValues } from './separation.ts'

/** Outside values of one edition of the rule set, by the name that the rules use. */
export type ValuesOfEdition = {
  readonly guardedHeight: OutsideValue & { readonly value: number }
  readonly presenceReferenceBody: OutsideValue & { readonly value: readonly number[] }
  readonly crawlUnderHeight: OutsideValue & { readonly value: number }
  readonly koschmiederContrast: OutsideValue & { readonly value: number }
  readonly doorwayDischarge: OutsideValue & { readonly value: readonly number[] }
  readonly doorwayMeanHeight: OutsideValue & { readonly value: readonly number[] }
  readonly minimumGap: OutsideValue & { readonly value: readonly number[] }
  readonly reachThrough: OutsideValue & { readonly value: readonly number[] }
  readonly peakForce: OutsideValue & { readonly value: readonly number[] }
  readonly peakTime: OutsideValue & { readonly value: number }
  readonly lastingForce: OutsideValue & { readonly value: number }
  readonly restForce: OutsideValue & { readonly value: number }
  readonly lowEnergy: OutsideValue & { readonly value: number }
  readonly conductorResistance: OutsideValue & { readonly value: readonly number[] }
  readonly gaugeResistance: OutsideValue & { readonly value: readonly number[] }
  readonly strandedResistivity: OutsideValue & { readonly value: number }
  readonly strandingAllowance: OutsideValue & { readonly value: number }
  readonly copperFactors: OutsideValue & { readonly value: readonly number[] }
  readonly copperCoefficient: OutsideValue & { readonly value: number }
  readonly extraLowVoltage: OutsideValue & { readonly value: number }
  readonly classTwoVoltage: OutsideValue & { readonly value: number }
  readonly classTwoPower: OutsideValue & { readonly value: number }
  readonly requiredLevel: OutsideValue & { readonly value: readonly number[] }
  readonly coverageBands: OutsideValue & { readonly value: readonly number[] }
  readonly failureBands: OutsideValue & { readonly value: readonly number[] }
  readonly commonCauseScore: OutsideValue & { readonly value: number }
  readonly dangerousShare: OutsideValue & { readonly value: number }
  readonly simplifiedLevels: OutsideValue & { readonly value: readonly number[] }
  readonly approachSpeedArm: OutsideValue & { readonly value: readonly number[] }
  readonly approachSpeedWalking: OutsideValue & { readonly value: number }
  readonly armAddend: OutsideValue & { readonly value: readonly number[] }
  readonly armLeast: OutsideValue & { readonly value: readonly number[] }
  readonly coarseAddend: OutsideValue & { readonly value: number }
  readonly parallelAddend: OutsideValue & { readonly value: readonly number[] }
  readonly parallelAddend2024: OutsideValue & { readonly value: number }
  readonly parallelLowest: OutsideValue & { readonly value: readonly number[] }
  readonly singleBeamAddend: OutsideValue & { readonly value: number }
}

export interface Edition {
  readonly id: string
  readonly values: ValuesOfEdition
}

/** Newest first. A new edition adds an entry and never changes one: a saved door names the edition that judged it. */
export const EDITIONS: readonly [Edition, ...Edition[]] = [
  {
    id: '2026-11',
    values: {
      guardedHeight,
      presenceReferenceBody,
      koschmiederContrast,
      doorwayDischarge,
      doorwayMeanHeight,
      minimumGap,
      reachThrough,
      peakForce,
      peakTime,
      lastingForce,
      restForce,
      lowEnergy,
      conductorResistance,
      gaugeResistance,
      strandedResistivity,
      strandingAllowance,
      copperFactors,
      copperCoefficient,
      extraLowVoltage,
      classTwoVoltage,
      classTwoPower,
      requiredLevel,
      coverageBands,
      failureBands,
      commonCauseScore,
      dangerousShare,
      simplifiedLevels,
      ...separationValues,
    },
  },
]

/** Every outside value of the newest edition, by id. */
export const OUTSIDE_VALUES: readonly OutsideValue[] = Object.values<OutsideValue>(EDITIONS[0].values).sort(byId)

function byId(a: OutsideValue, b: OutsideValue): number {
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0
}

/**
 * The edition that a door names, or the newest one where this program has no such edition: then nothing passes (`judge/settle.ts`),
 * because limits of another edition may differ.
 */
export function editionOf(id: string): { readonly edition: Edition; readonly known: boolean } {
  const edition = EDITIONS.find((each) => each.id === id)
  return { edition: edition ?? EDITIONS[0], known: edition !== undefined }
}
