import type { Finding, NotApplicableReason, Step, StepInput, Subject } from '../model/finding.ts'
import type { InputPath, OutsideValue, Quantity, Unit } from '../model/source.ts'
import type { Draft, RestsOn } from './rule.ts'

export type Facts = Finding['facts']

export const THE_DOOR: Subject = { kind: 'door', id: 'door' }
export const NOTHING: RestsOn = { inputs: [], values: [], bodies: [], sensors: [] }

export function quantity(value: number, unit: Unit): Quantity {
  return { value, unit }
}

/** One line of arithmetic. `from` names earlier steps and places in the door file; outside values come as they are. */
export function step(
  name: string,
  result: Quantity,
  by: string,
  from: { readonly inputs?: readonly InputPath[]; readonly values?: readonly OutsideValue[]; readonly steps?: readonly string[] },
  formula?: string,
): Step {
  const sources: StepInput[] = [
    ...(from.inputs ?? []).map((input) => ({ input })),
    ...(from.values ?? []).map(({ id }) => ({ value: id })),
    ...(from.steps ?? []).map((earlier) => ({ step: earlier })),
  ]
  return { name, quantity: result, from: sources, by, ...(formula === undefined ? {} : { formula }) }
}

/** The rule found nothing on this door that it could be about, and says so once. */
export function notApplicable(reason: NotApplicableReason, facts: Facts = {}, subject: Subject = THE_DOOR): Draft {
  return { verdict: 'not-applicable', reason, subject, steps: [], facts, restsOn: NOTHING }
}

/** The drafts, or one that says that there is no subject. */
export function orNoSubject(drafts: readonly Draft[]): readonly Draft[] {
  return drafts.length > 0 ? drafts : [notApplicable('no-subject')]
}
