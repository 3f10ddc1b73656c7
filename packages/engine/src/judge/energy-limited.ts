import type { OutsideValue, Quantity } from '../model/source.ts'
import type { Wiring } from '../model/wiring.ts'
import { asValue } from './control-fact.ts'
import { NOTHING, notApplicable, quantity, step, THE_DOOR } from './drafts.ts'
import { WIRING } from './paths.ts'
import type { Context, Draft, Rule } from './rule.ts'

const SUPPLY = `${WIRING}/supply`

/**
 * The source is what it is declared to be: of extra-low voltage and safely separated, or energy-limited of class 2, and within the limits of that. Both
 * limits are from memory and make no pass. One that is declared to be neither is no matter for this program: its circuit is judged like one of mains.
 *
 * Facts: [`limited` (`class-2`, `extra-low`, `no`)], [`exceeds` (`voltage`, `power`, `nothing`)].
 */
export const energyLimited: Rule = {
  id: 'energy-limited',
  source: { basis: 'common practice', note: 'cables of sensors are laid as circuits of a source that is limited' },
  judge: ({ door: { wiring }, values }) => [wiring === undefined ? notApplicable('no-subject') : draftOf(wiring, values)],
}

interface Part {
  readonly what: 'voltage' | 'power'
  readonly measured: Quantity
  readonly limit: Quantity
  readonly value: OutsideValue
}

function draftOf({ supply }: Wiring, values: Context['values']): Draft {
  const { limited, largest_V, largest_A } = supply
  const stated = asValue(SUPPLY, supply.source)
  const frame = { subject: THE_DOOR, steps: [], restsOn: { ...NOTHING, inputs: [SUPPLY], values: [stated] } } as const
  if (limited === undefined) return { ...frame, verdict: 'undetermined', reason: 'missing-input', needs: [`${SUPPLY}/limited`], facts: {} }
  if (limited === 'no') return { ...frame, verdict: 'undetermined', reason: 'not-computable', needs: [], facts: { limited } }
  const part = (what: Part['what'], measured: Quantity, value: OutsideValue & { readonly value: number }): Part => ({
    what,
    measured,
    limit: quantity(value.value, value.unit),
    value,
  })
  const voltage = part('voltage', quantity(largest_V, 'V'), limited === 'class-2' ? values.classTwoVoltage : values.extraLowVoltage)
  const power =
    limited === 'class-2' && largest_A !== undefined ? [part('power', quantity(largest_V * largest_A, 'VA'), values.classTwoPower)] : []
  const parts = [voltage, ...power]
  const exceeded = parts.find(({ measured, limit }) => measured.value > limit.value)
  const { measured, limit } = exceeded ?? voltage
  const judged = {
    ...frame,
    measured,
    limit,
    facts: { limited, exceeds: exceeded?.what ?? 'nothing' },
    steps: parts.map(({ what, measured: found, value }) =>
      step(`largest ${what}`, found, 'judge/energy-limited', { inputs: [SUPPLY], values: [value] }),
    ),
    restsOn: { ...frame.restsOn, values: [stated, ...parts.map(({ value }) => value)] },
  }
  if (exceeded) return { ...judged, verdict: 'fail' }
  if (limited === 'class-2' && largest_A === undefined)
    return { ...judged, verdict: 'undetermined', reason: 'missing-input', needs: [`${SUPPLY}/largest_A`] }
  return { ...judged, verdict: 'pass' }
}
