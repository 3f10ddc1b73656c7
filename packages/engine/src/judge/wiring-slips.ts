import { slipsOf } from '../wiring/slips.ts'
import { NOTHING, notApplicable, quantity, step } from './drafts.ts'
import { WIRING } from './paths.ts'
import type { Rule } from './rule.ts'
import { sourcesOf } from './single-fault.ts'

/**
 * The wiring has no slip: no two transistors on one line, no input that hangs in the air, no sensor without its supply, no contact bridged by
 * copper. One finding for each slip, or one that there is none.
 *
 * Facts: [`slip`, `a`, `b`].
 */
export const wiringSlips: Rule = {
  id: 'wiring-slips',
  source: { basis: 'our decision', note: 'docs/method.md, Wiring: what cannot be meant' },
  judge: ({ door: { wiring } }) => {
    if (wiring === undefined) return [notApplicable('no-subject')]
    const slips = slipsOf(wiring)
    const restsOn = { ...NOTHING, inputs: [WIRING], values: slips.length > 0 ? [] : sourcesOf(wiring) }
    const measured = quantity(slips.length, '1')
    const steps = [step('slips', measured, 'wiring/slips', { inputs: [WIRING] })]
    const frame = { subject: { kind: 'door', id: 'door' }, measured, limit: quantity(0, '1'), steps, restsOn } as const
    if (slips.length === 0) return [{ ...frame, verdict: 'pass', facts: {} }]
    return slips.map(({ kind, a, b }) => ({ ...frame, verdict: 'fail', key: `${kind}-${a}-${b}`, facts: { slip: kind, a, b } }))
  },
}
