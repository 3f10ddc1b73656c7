import { quantity, step, THE_DOOR } from './drafts.ts'
import { CONCEPT } from './paths.ts'
import type { Draft, Rule } from './rule.ts'

/**
 * Somebody has said who passes, how the door is driven and what protects the closing edge; other rules follow from that.
 *
 * Facts where it is stated: `people`, `drive`, `closingEdge` (words of the door file).
 */
export const conceptStated: Rule = {
  id: 'concept-stated',
  source: { basis: 'common practice', note: 'a protection concept comes before the choice of devices' },
  judge: ({ door: { concept } }) => {
    const restsOn = { inputs: [CONCEPT], values: [], bodies: [], sensors: [] }
    const frame = { subject: THE_DOOR, facts: { ...concept }, restsOn }
    if (!concept) return [{ ...frame, verdict: 'undetermined', reason: 'missing-input', needs: [CONCEPT], steps: [] }]
    const stated = quantity(3, '1')
    const steps = [step('stated', stated, 'judge/concept-stated', { inputs: [CONCEPT] }, 'people, drive and closing edge')]
    return [{ ...frame, verdict: 'pass', measured: stated, limit: quantity(3, '1'), steps } satisfies Draft]
  },
}
