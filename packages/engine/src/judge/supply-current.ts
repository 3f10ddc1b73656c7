import { supplyLoad } from '../wiring/supply.ts'
import { NOTHING, notApplicable, quantity, step, THE_DOOR } from './drafts.ts'
import { WIRING } from './paths.ts'
import type { Rule } from './rule.ts'
import { COPPER, copperOf, groundsOf } from './wiring-grounds.ts'

/**
 * The source gives what all devices draw at their largest current (heaters included) and what their outputs feed, and its fuse carries that. What they
 * draw for a moment when power comes is told and not judged. Whether the fuse is small enough for the cables is a question to whoever knows how they lie.
 *
 * Facts: `largest_A`, [`inrush_A` (where any device says so), `source_A`, `fuse_A`], `limitedBy` (`source`, `fuse`).
 */
export const supplyCurrent: Rule = {
  id: 'supply-current',
  source: { basis: 'common practice', note: 'a source is not loaded beyond what it can give, a fuse not beyond what it carries' },
  judge: ({ door: { wiring } }) => {
    if (wiring === undefined) return [notApplicable('no-subject')]
    const { largest_A: source_A, fuse_A } = wiring.supply
    const load = supplyLoad(wiring, copperOf(wiring) ?? { coldest: 1, hottest: 1 })
    const measured = quantity(load.largest_A, 'A')
    const isFuse = fuse_A !== undefined && fuse_A < (source_A ?? Infinity)
    const limit_A = isFuse ? fuse_A : source_A
    const frame = {
      subject: THE_DOOR,
      measured,
      facts: {
        largest_A: load.largest_A,
        ...(wiring.sensors.some(({ power }) => power.inrush_A !== undefined) ? { inrush_A: load.inrush_A } : {}),
        ...(source_A === undefined ? {} : { source_A }),
        ...(fuse_A === undefined ? {} : { fuse_A }),
        limitedBy: isFuse ? 'fuse' : 'source',
      },
      steps: [
        step('largest current', measured, 'wiring/supply', { inputs: wiring.copper ? [WIRING, COPPER] : [WIRING] }),
        step('largest current when power comes', quantity(load.inrush_A, 'A'), 'wiring/supply', { inputs: [WIRING] }),
      ],
      restsOn: { ...NOTHING, inputs: [WIRING], values: groundsOf(wiring) },
    }
    if (limit_A !== undefined && load.largest_A > limit_A) return [{ ...frame, verdict: 'fail', limit: quantity(limit_A, 'A') }]
    const needs = source_A === undefined ? [`${WIRING}/supply/largest_A`] : wiring.copper === undefined ? [COPPER] : []
    if (needs.length > 0 || limit_A === undefined) return [{ ...frame, verdict: 'undetermined', reason: 'missing-input', needs }]
    return [{ ...frame, verdict: 'pass', limit: quantity(limit_A, 'A') }]
  },
}
