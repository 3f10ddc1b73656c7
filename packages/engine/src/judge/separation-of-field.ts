import type { CountedField } from '../coverage/scene.ts'
import type { Door } from '../model/door.ts'
import type { Approach } from '../model/sensor.ts'
import type { InputPath, OutsideValue } from '../model/source.ts'
import type { Separation } from '../passing/separation.ts'
import type { ValuesOfEdition } from '../values/editions.ts'
import { fieldPath } from './paths.ts'

export type SeparationEdition = '2010' | '2024'

/** The standard's rule for one field in one edition, or what is missing for it. */
export type FieldSeparation =
  | { readonly kind: 'missing'; readonly needs: readonly InputPath[] }
  | {
      readonly kind: 'known'
      readonly rule: Separation
      readonly approach: Approach
      readonly values: readonly OutsideValue[]
      /** The lowest that a lying zone may hang, by its detection capability; 0 for others. */
      readonly lowest_mm: number
    }

const UNBOUND = { supplement_mm: 0, least_mm: 0 }

/**
 * K, C and Z of a field. What the edition of 2024 asks of standing zones this program does not have: there, and where a resolution is coarser than what
 * is known, somebody reads the addend off the page and enters it with its source.
 */
export function separationOf(door: Door, counted: CountedField, edition: SeparationEdition, values: ValuesOfEdition): FieldSeparation {
  const path = `${fieldPath(door, counted.sensor, counted.field)}/approach`
  const { approach } = counted.field
  if (approach === undefined) return { kind: 'missing', needs: [path] }
  const needs = missingOf(approach, edition).map((name) => `${path}/${name}`)
  if (needs.length > 0) return { kind: 'missing', needs }
  const found = ruleOf(approach, edition, values)
  const given = givenBy(approach, edition, `${counted.sensor.id}-${counted.field.id}`)
  return { kind: 'known', ...found, approach, values: [...found.values, ...given] }
}

function missingOf({ way, capability_mm, height_mm, addend_mm, supplement_mm }: Approach, edition: SeparationEdition): readonly string[] {
  const needs: string[] = []
  if (capability_mm === undefined && (way === 'parallel' || (way === 'perpendicular' && addend_mm === undefined)))
    needs.push('capability_mm')
  if (way === 'parallel' && height_mm === undefined) needs.push('height_mm')
  const isTooCoarse = way === 'perpendicular' && capability_mm !== undefined && capability_mm > COARSEST_MM
  if (addend_mm === undefined && way !== 'parallel' && (edition === '2024' || isTooCoarse)) needs.push('addend_mm')
  if (edition === '2024' && supplement_mm === undefined) needs.push('supplement_mm')
  return needs
}

/** Detection capabilities up to which the addend of an arm counts, and up to which any is known: from memory, with the addends themselves. */
const FINEST_MM = 40
const COARSEST_MM = 70

type Found = { readonly rule: Separation; readonly values: readonly OutsideValue[]; readonly lowest_mm: number }

function ruleOf(approach: Approach, edition: SeparationEdition, values: ValuesOfEdition): Found {
  const { way, capability_mm = 0, height_mm = 0, addend_mm: given_mm } = approach
  const supplement_mm = edition === '2024' ? (approach.supplement_mm ?? 0) : 0
  const walking = values.approachSpeedWalking
  const walk = (addend_mm: number): Separation => ({ ...UNBOUND, speed_mm_per_s: walking.value, addend_mm, supplement_mm })
  if (way === 'parallel') {
    const [most = 0, credit = 0, least = 0] = values.parallelAddend.value
    const [perMm = 0, from = 0] = values.parallelLowest.value
    const addend = edition === '2010' ? values.parallelAddend : values.parallelAddend2024
    const addend_mm = given_mm ?? (edition === '2010' ? Math.max(least, most - credit * height_mm) : values.parallelAddend2024.value)
    const lowest_mm = Math.min(1000, Math.max(0, perMm * (capability_mm - from)))
    return { rule: walk(addend_mm), values: [walking, values.parallelLowest, ...(given_mm === undefined ? [addend] : [])], lowest_mm }
  }
  if (way === 'single-beam') {
    const addend = values.singleBeamAddend
    return { rule: walk(given_mm ?? addend.value), values: [walking, ...(given_mm === undefined ? [addend] : [])], lowest_mm: 0 }
  }
  if (capability_mm > FINEST_MM)
    return {
      rule: walk(given_mm ?? values.coarseAddend.value),
      values: [walking, ...(given_mm === undefined ? [values.coarseAddend] : [])],
      lowest_mm: 0,
    }
  const [first = 0, second = 0] = values.approachSpeedArm.value
  const [leastFirst = 0, leastSecond = 0] = values.armLeast.value
  const [perMm = 0, from = 0] = values.armAddend.value
  const addend_mm = given_mm ?? Math.max(0, perMm * (capability_mm - from))
  const beyond: Separation = { speed_mm_per_s: second, addend_mm, supplement_mm, least_mm: leastSecond }
  const rule: Separation = { speed_mm_per_s: first, addend_mm, supplement_mm, least_mm: leastFirst, beyond }
  const rests = [values.approachSpeedArm, values.armLeast, ...(given_mm === undefined ? [values.armAddend] : [])]
  return { rule, values: rests, lowest_mm: 0 }
}

/** What somebody read off the page, as an outside value of this door. */
function givenBy({ addend_mm, supplement_mm, source }: Approach, edition: SeparationEdition, field: string): readonly OutsideValue[] {
  const entries = [
    { id: `approach-addend-of-${field}`, value: addend_mm, means: 'Addend as entered for this field.' },
    {
      id: `approach-supplement-of-${field}`,
      value: edition === '2024' ? supplement_mm : undefined,
      means: 'Supplement as entered for this field.',
    },
  ]
  return entries.flatMap(({ id, value, means }) => (value === undefined ? [] : [{ id, value, unit: 'mm' as const, means, source }]))
}
