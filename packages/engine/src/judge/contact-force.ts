import type { Leaf, ProtectionConcept } from '../model/door.ts'
import type { InputPath, OutsideValue, Quantity } from '../model/source.ts'
import type { ForceRecord } from '../model/test-record.ts'
import { NOTHING, notApplicable, quantity, step, THE_DOOR } from './drafts.ts'
import { CONCEPT, FORCE_RECORDS, LEAF } from './paths.ts'
import type { Context, Draft, Rule } from './rule.ts'

const BY = 'judge/contact-force'

/**
 * Where the closing edge may touch somebody because its force is limited, what was measured stays within the limits: peak by travel and gap, time above
 * what may act for longer, mean after it, and what is left 5 s later. Forces are measured, never computed: without a record it is not settled. How many
 * records at which places are needed stands in the standard. One finding for each record. Measured is the first of these that is too large, else the peak.
 *
 * Facts: `record`, `place`, `gap_mm`, `instrument`, `on`, `by`, `exceeds` (`peak`, `time`, `mean`, `rest`, or `nothing`), [`calibratedUntil`]; without records none.
 */
export const contactForce: Rule = {
  id: 'contact-force',
  source: { basis: 'common practice', note: 'forces on contact are measured with an instrument that is calibrated' },
  judge: (context) => {
    const { concept, leaf, forceRecords = [] } = context.door
    const missing = (needs: readonly InputPath[]): readonly Draft[] => [
      {
        verdict: 'undetermined',
        reason: 'missing-input',
        needs,
        subject: THE_DOOR,
        steps: [],
        facts: {},
        restsOn: { ...NOTHING, inputs: [CONCEPT, LEAF, FORCE_RECORDS] },
      },
    ]
    if (!concept) return missing([CONCEPT])
    if (!mayTouch(concept)) return [notApplicable('not-required-by-concept', { closingEdge: concept.closingEdge, drive: concept.drive })]
    if (!leaf) return missing([LEAF])
    if (forceRecords.length === 0) return missing([FORCE_RECORDS])
    return forceRecords.map((record, i) => draftOf(context, leaf, record, `${FORCE_RECORDS}/${i}`))
  },
}

export function mayTouch({ drive, closingEdge }: ProtectionConcept): boolean {
  return drive !== 'hold-to-run' && closingEdge === 'force-limited-edge'
}

/** The table ends here: with less left nothing is known. */
const LEAST_GAP_MM = 50
const WIDE_GAP_MM = 500

/** For a leaf that turns too, as it closes along the floor: whether the table says so was not seen. */
function peakLimit_N([down = 0, near = 0, far = 0]: readonly number[], travel: Leaf['travel'], gap_mm: number): number {
  if (travel === 'down') return down
  return gap_mm > WIDE_GAP_MM ? far : near
}

interface Part {
  readonly what: 'peak' | 'time' | 'mean' | 'rest'
  readonly name: string
  readonly measured: Quantity
  readonly limit: Quantity
  readonly input: string
  readonly value: OutsideValue
}

function partsOf({ values }: Context, { travel }: Leaf, record: ForceRecord): readonly Part[] {
  const { peakForce, peakTime, lastingForce, restForce } = values
  const part = (
    what: Part['what'],
    name: string,
    unit: 'N' | 's',
    measured: number,
    limit: number,
    input: string,
    value: OutsideValue,
  ): Part => ({
    what,
    name,
    measured: quantity(measured, unit),
    limit: quantity(limit, unit),
    input,
    value,
  })
  return [
    part('peak', 'peak of the force', 'N', record.peak_N, peakLimit_N(peakForce.value, travel, record.gap_mm), 'peak_N', peakForce),
    part('time', 'time above what may act for longer', 's', record.time_s, peakTime.value, 'time_s', peakTime),
    part('mean', 'mean force after that', 'N', record.mean_N, lastingForce.value, 'mean_N', lastingForce),
    ...(record.after5s_N === undefined
      ? []
      : [part('rest', 'force left after 5 s', 'N', record.after5s_N, restForce.value, 'after5s_N', restForce)]),
  ]
}

function draftOf(context: Context, leaf: Leaf, record: ForceRecord, path: InputPath): Draft {
  const { id, place, gap_mm, instrument, on, by, calibratedUntil, after5s_N } = record
  const parts = partsOf(context, leaf, record)
  const exceeded = parts.find(({ measured, limit }) => measured.value > limit.value)
  const shown = exceeded ?? (parts[0] as Part)
  const frame = {
    subject: { kind: 'record', id } as const,
    measured: shown.measured,
    limit: shown.limit,
    steps: parts.flatMap(({ name, measured, limit, input, value }) => [
      step(name, measured, BY, { inputs: [`${path}/${input}`] }),
      step(`limit: ${name}`, limit, BY, { inputs: value === context.values.peakForce ? [LEAF, `${path}/gap_mm`] : [], values: [value] }),
    ]),
    facts: {
      record: id,
      place,
      gap_mm,
      instrument,
      on,
      by,
      exceeds: exceeded?.what ?? 'nothing',
      ...(calibratedUntil === undefined ? {} : { calibratedUntil }),
    },
    restsOn: { ...NOTHING, inputs: [path, LEAF, CONCEPT], values: parts.map(({ value }) => value) },
  }
  const isCalibrated = calibratedUntil !== undefined && on <= calibratedUntil // days as 2026-11-25 sort as texts do
  const needs = [
    ...(gap_mm < LEAST_GAP_MM ? [`${path}/gap_mm`] : []),
    // too much by an instrument that may be off stays too much
    ...(isCalibrated || exceeded ? [] : [`${path}/calibratedUntil`]),
    ...(after5s_N === undefined && exceeded === undefined ? [`${path}/after5s_N`] : []),
  ]
  if (needs.length > 0) return { ...frame, verdict: 'undetermined', reason: 'missing-input', needs }
  return { ...frame, verdict: exceeded ? 'fail' : 'pass' }
}
