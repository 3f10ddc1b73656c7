import { type DangerKind, EXPECTED_DANGERS } from '../model/danger.ts'
import { sweepGaps } from '../motion/leaf-sweep.ts'
import { notApplicable, quantity, step, THE_DOOR } from './drafts.ts'
import { CONCEPT, DANGERS, LEAF, OBSTACLES } from './paths.ts'
import type { Draft, Rule } from './rule.ts'

/**
 * Somebody looked for every kind of danger that a leaf of this travel has besides its closing edge: each is listed, computed against an obstacle, or
 * said not to be there. Measured is how many kinds are answered. One finding, about the door.
 *
 * Facts: `travel`, `expected`, `answered` (numbers), `open` (kinds that nobody looked for, joined by a space).
 */
export const dangersListed: Rule = {
  id: 'dangers-listed',
  source: { basis: 'common practice', note: 'what a leaf does to people besides striking them with its closing edge, by how it travels' },
  judge: ({ door }) => {
    const { leaf, dangers, concept, states } = door
    if (concept?.drive === 'hold-to-run') return [notApplicable('not-required-by-concept', { drive: concept.drive })]
    const inputs = [LEAF, DANGERS, OBSTACLES, CONCEPT]
    const restsOn = { inputs, values: [], bodies: [], sensors: [] }
    if (!leaf)
      return [{ verdict: 'undetermined', reason: 'missing-input', needs: [LEAF], subject: THE_DOOR, steps: [], facts: {}, restsOn }]
    const computed = states.flatMap((state) => sweepGaps(door, state) ?? []).map(({ kind }): DangerKind => kind)
    const answers = new Set([...computed, ...(dangers?.none ?? []), ...(dangers?.points ?? []).map(({ kind }) => kind)])
    const expected = EXPECTED_DANGERS[leaf.travel]
    const open = expected.filter((kind) => !answers.has(kind))
    const measured = quantity(expected.length - open.length, '1')
    const limit = quantity(expected.length, '1')
    const frame = {
      subject: THE_DOOR,
      measured,
      limit,
      steps: [step('kinds of danger answered', measured, 'judge/dangers-listed', { inputs }, 'listed, computed, or said not to be there')],
      facts: { travel: leaf.travel, expected: limit.value, answered: measured.value, open: open.join(' ') },
      restsOn,
    }
    const draft: Draft =
      open.length > 0 ? { ...frame, verdict: 'undetermined', reason: 'missing-input', needs: [DANGERS] } : { ...frame, verdict: 'pass' }
    return [draft]
  },
}
