import { isOfParts } from '../model/body.ts'
import type { Door } from '../model/door.ts'
import type { Finding } from '../model/finding.ts'
import type { Confirmation, InputPath, Source } from '../model/source.ts'
import { bodyPath, confirmationPath, EDITION, overlaps } from './paths.ts'
import type { Draft, RestsOn, Rule } from './rule.ts'

type BasisEntry = Finding['basis'][number]

/**
 * Turns a rule's draft into a finding. Here, and only here, a pass is taken back: when this program does not have the edition that the door
 * names, when the pass rests on something that nobody entered, or when a figure that it rests on is from memory and nobody held it against
 * its page. A fail stands in all three cases: to doubt it would err toward covered. Pass and fail alike are taken back when they rest on a
 * place that holds two values: either of them may be the right one. No pass about a zone holds for a body of several parts, which shades itself.
 */
export function settle(draft: Draft, rule: Rule, door: Door, edition: { readonly id: string; readonly known: boolean }): Finding {
  const { key, restsOn, ...rest } = draft
  const basis = basisOf(rule, restsOn, door)
  const frame = { id: idOf(draft, rule.id, door), rule: rule.id, edition: edition.id, basis }
  const disputed = (door.disputed ?? []).filter((path) => restsOn.inputs.some((input) => overlaps(input, path)))
  if (disputed.length > 0 && (rest.verdict === 'pass' || rest.verdict === 'fail'))
    return { ...rest, ...frame, verdict: 'undetermined', reason: 'two-values', needs: unique(disputed) }
  if (rest.verdict !== 'pass') return { ...rest, ...frame }
  const shading = draft.subject.kind === 'lane' ? [] : restsOn.bodies.filter(isOfParts)
  if (shading.length > 0)
    return { ...rest, ...frame, verdict: 'undetermined', reason: 'several-parts', needs: shading.map((body) => bodyPath(door, body)) }
  const doubts = doubtsAbout(restsOn, basis, door, edition.known)
  const [first] = doubts
  if (first === undefined) return { ...rest, ...frame }
  return { ...rest, ...frame, verdict: 'undetermined', reason: first.reason, needs: unique(doubts.flatMap(({ needs }) => needs)) }
}

/** `<rule>:<key>`, and `@<state>` where the door has several states and the draft depends on one. */
function idOf({ key, subject, state }: Draft, rule: string, door: Door): string {
  const name = `${rule}:${key ?? subject.id}`
  return state !== undefined && door.states.length > 1 ? `${name}@${state}` : name
}

/** The rule itself first, then outside values, bodies and sensors, each with its source and the user's confirmation if there is one. */
function basisOf(rule: Rule, { values, bodies, sensors }: RestsOn, door: Door): readonly BasisEntry[] {
  const grounds = [{ id: rule.id, source: rule.source }, ...values, ...bodies, ...sensors]
  const firsts = grounds.filter(({ id }, i) => grounds.findIndex((other) => other.id === id) === i)
  return firsts.map(({ id, source }) => entry(id, source, door.confirmations))
}

function entry(id: string, source: Source, confirmations: readonly Confirmation[]): BasisEntry {
  const confirmed = source.basis === 'from memory' ? confirmations.find(({ value }) => value === id) : undefined
  return confirmed === undefined ? { id, source } : { id, source, confirmed }
}

interface Doubt {
  readonly reason: 'missing-input' | 'rests-on-assumption' | 'limit-from-memory'
  readonly needs: readonly InputPath[]
}

/** Why a pass is none, gravest first. */
function doubtsAbout({ inputs }: RestsOn, basis: readonly BasisEntry[], door: Door, editionKnown: boolean): readonly Doubt[] {
  const assumed = door.assumed.filter((path) => inputs.some((input) => overlaps(input, path)))
  const remembered = basis.filter(({ source, confirmed }) => source.basis === 'from memory' && confirmed === undefined)
  const doubts: readonly Doubt[] = [
    { reason: 'missing-input', needs: editionKnown ? [] : [EDITION] },
    { reason: 'rests-on-assumption', needs: assumed },
    { reason: 'limit-from-memory', needs: remembered.map(({ id }) => confirmationPath(id)) },
  ]
  return doubts.filter(({ needs }) => needs.length > 0)
}

function unique(paths: readonly InputPath[]): readonly InputPath[] {
  return [...new Set(paths)]
}
