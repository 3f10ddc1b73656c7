import type { Sensor } from '../model/sensor.ts'
import type { OutsideValue } from '../model/source.ts'
import type { Wiring } from '../model/wiring.ts'
import { effectOf, type FaultEffect, faultEffects } from '../wiring/fault-effects.ts'
import type { Fault } from '../wiring/faults.ts'
import { byHand } from './by-hand.ts'
import { asValue } from './control-fact.ts'
import { type Facts, NOTHING, notApplicable, quantity, step } from './drafts.ts'
import { protects } from './fields.ts'
import { CONCEPT, WIRING } from './paths.ts'
import type { Draft, Rule } from './rule.ts'

/**
 * No single fault of the wiring hides a sensor whose presence is to stop the leaf: each fault either lets the control see the body, or is found by
 * a test, or keeps the door from closing. One finding for each sensor that protects; what nobody described is not settled.
 *
 * Facts: `sensor`, [`faults`, `hidden`, `found`, `nuisance`], [`within_s`], and of the worst hidden fault `fault` with its parts; where faults hide `longest_d`
 * between tests by hand or `handMissing`, [`mostHidden_percent`, `handRemembered`].
 */
export const singleFault: Rule = {
  id: 'single-fault',
  source: { basis: 'our decision', note: 'docs/method.md, Wiring: every single fault, one at a time' },
  judge: ({ door, values }) => {
    const { sensors, wiring, concept } = door
    const protecting = sensors.filter(protects)
    if (protecting.length === 0) return [notApplicable('no-subject')]
    if (concept?.drive === 'hold-to-run') return [notApplicable('not-required-by-concept')]
    if (wiring === undefined)
      return [
        {
          verdict: 'undetermined',
          reason: 'missing-input',
          needs: [WIRING],
          subject: { kind: 'door', id: 'door' },
          facts: {},
          steps: [],
          restsOn: { ...NOTHING, inputs: [WIRING, CONCEPT] },
        },
      ]
    const effects = faultEffects(wiring)
    return protecting.map((sensor) => draftOf(sensor, wiring, effects, (hidden) => byHand(door, wiring, hidden, values.dangerousShare)))
  },
}

type Asked = (hidden: readonly Fault[]) => ReturnType<typeof byHand>

function draftOf(sensor: Sensor, wiring: Wiring, effects: readonly FaultEffect[], asked: Asked): Draft {
  const subject = { kind: 'sensor', id: sensor.id } as const
  const wired = wiring.sensors.find(({ id }) => id === sensor.id)
  const frame = { subject, restsOn: { ...NOTHING, inputs: [WIRING, CONCEPT], values: sourcesOf(wiring) } }
  if (!wired?.outputs.some(({ acts }) => acts === 'presence'))
    return {
      ...frame,
      verdict: 'undetermined',
      reason: 'missing-input',
      needs: [`${WIRING}/sensors`],
      facts: { sensor: sensor.name },
      steps: [],
    }
  const ofSensor = effects.filter(({ sensors }) => sensors.includes(sensor.id))
  const hidden = ofSensor.filter(({ effect }) => effect === 'hidden-and-dangerous')
  const found = ofSensor.filter(({ effect }) => effect === 'found-by-test')
  const nuisance = effects.filter(({ effect }) => effect === 'keeps-from-closing' || effect === 'stops-the-door')
  const unheeded = effectOf(wiring, [])
  const isDeaf = unheeded.effect === 'hidden-and-dangerous' || unheeded.effect === 'found-by-test'
  const [worst] = hidden
  const within_s = found.reduce((longest, each) => Math.max(longest, each.within_s ?? 0), 0)
  const tested = hidden.length > 0 && !isDeaf ? asked(hidden.map(({ fault }) => fault)) : undefined
  const measured = quantity(hidden.length, '1')
  const inputs = { inputs: [WIRING] }
  return {
    ...frame,
    verdict: hidden.length > 0 ? 'fail' : 'pass',
    measured,
    limit: quantity(0, '1'),
    facts: {
      sensor: sensor.name,
      faults: effects.length,
      hidden: hidden.length,
      found: found.length,
      nuisance: nuisance.length,
      ...(found.length > 0 ? { within_s } : {}),
      ...(isDeaf ? { fault: 'none' } : worst ? faultFacts(worst.fault) : {}),
      ...tested?.facts,
    },
    steps: [
      step('faults tried', quantity(effects.length, '1'), 'wiring/faults', inputs),
      ...(found.length > 0 ? [step('longest until a test finds one', quantity(within_s, 's'), 'wiring/fault-effects', inputs)] : []),
      step('found by a test', quantity(found.length, '1'), 'wiring/fault-effects', { ...inputs, steps: ['faults tried'] }),
      step('hidden and dangerous', measured, 'wiring/fault-effects', { ...inputs, steps: ['faults tried'] }),
      ...(tested?.steps ?? []),
    ],
    ...(tested && { restsOn: { ...frame.restsOn, values: [...frame.restsOn.values, ...tested.values] } }),
  }
}

/** A fault as facts: `fault` its kind, and its parts by their names in the door file. */
export function faultFacts(fault: Fault): Facts {
  const { kind, ...parts } = fault
  if (fault.kind === 'cores-shorted') return { fault: kind, core: fault.cores[0], other: fault.cores[1] }
  return { fault: kind, ...Object.fromEntries(Object.entries(parts).map(([name, value]) => [PART[name] ?? name, value])) }
}
/** The subject's own fact is called `sensor`. */
const PART: Readonly<Record<string, string>> = { sensor: 'ofSensor' }

/** So that data from memory make no pass until somebody holds them against the sheet. */
export function sourcesOf({ supply, sensors, control }: Wiring): readonly OutsideValue[] {
  return [
    asValue(`${WIRING}/supply`, supply.source),
    ...sensors.map(({ source }, i) => asValue(`${WIRING}/sensors/${i}`, source)),
    asValue(`${WIRING}/control`, control.source),
  ]
}
