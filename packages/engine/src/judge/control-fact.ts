import type { Control } from '../model/control.ts'
import type { ProtectionConcept } from '../model/door.ts'
import type { OutsideValue } from '../model/source.ts'
import { NOTHING, notApplicable, quantity, step } from './drafts.ts'
import { CONCEPT, CONTROL } from './paths.ts'
import type { Draft, Rule } from './rule.ts'

type Fact = keyof Control
type Answer = 'good' | 'bad' | 'by-concept'

/** What each fact means for people; `by-concept`: only where the edge may touch nobody it is bad. */
const MEANS: { readonly [F in Fact]: Readonly<Record<NonNullable<Control[F]>['does'], Answer>> } = {
  sensorFault: { 'hold-to-run': 'good', stays: 'good', closes: 'bad' },
  powerReturn: { waits: 'good', 'moves-guarded': 'good', moves: 'bad' },
  fire: { none: 'good', 'presence-first': 'good', 'fire-first': 'by-concept' },
  escape: { none: 'good', 'escape-first': 'good', 'other-first': 'bad' },
  interlock: { none: 'good', 'reversal-first': 'good', 'interlock-first': 'bad' },
}
const FACTS = Object.keys(MEANS) as readonly Fact[]

/**
 * What the control does endangers nobody: with a presence sensor faulted, when power returns, when a function for fire or escape acts, and when a
 * neighbour interlocks with it. The door file states each with its source; what nobody stated is not settled. One finding for each fact.
 *
 * Facts: `fact`, [`does`].
 */
export const controlFact: Rule = {
  id: 'control-fact',
  source: {
    basis: 'common practice',
    note: 'what a control does with a fault, after a loss of power, in a fire, for escape, and with a neighbour',
  },
  judge: ({ door: { control, concept } }) => FACTS.map((fact) => draftOf(fact, control?.[fact], concept)),
}

function draftOf(fact: Fact, stated: Control[Fact], concept: ProtectionConcept | undefined): Draft {
  const path = `${CONTROL}/${fact}`
  const subject = { kind: 'control', id: fact } as const
  if (fact === 'sensorFault' && concept?.drive === 'hold-to-run') return notApplicable('not-required-by-concept', { fact }, subject)
  const facts = { fact, ...(stated ? { does: stated.does } : {}) }
  const frame = { subject, facts, restsOn: { ...NOTHING, inputs: [path, CONCEPT], values: stated ? [asValue(path, stated.source)] : [] } }
  if (!stated) return { ...frame, verdict: 'undetermined', reason: 'missing-input', needs: [path], steps: [] }
  const answer = (MEANS[fact] as Readonly<Record<string, Answer>>)[stated.does]
  if (answer === 'by-concept' && !concept)
    return { ...frame, verdict: 'undetermined', reason: 'missing-input', needs: [CONCEPT], steps: [] }
  const isGood = answer === 'good' || (answer === 'by-concept' && concept?.closingEdge === 'force-limited-edge')
  const measured = quantity(isGood ? 1 : 0, '1')
  const steps = [step('endangers nobody', measured, 'judge/control-fact', { inputs: [path, CONCEPT] })]
  return { ...frame, verdict: isGood ? 'pass' : 'fail', measured, limit: quantity(1, '1'), steps }
}

/** So that a statement from memory makes no pass until somebody holds it against the manual or the door. */
export function asValue(path: string, source: OutsideValue['source']): OutsideValue {
  return { id: path, value: 1, unit: '1', means: 'What the control does, as it was stated.', source }
}
