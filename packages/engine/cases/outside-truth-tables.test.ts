import Logic from 'logic-solver'
import { describe, expect, it } from 'vitest'
import type { SensorSwitch, WiredSensor, Wiring } from '../src/model/wiring.ts'
import { beliefsOf, faultEffects } from '../src/wiring/fault-effects.ts'
import type { Fault } from '../src/wiring/faults.ts'
import { wiringNetwork, withFaults } from '../src/wiring/network.ts'
import { type RandomNumbers, randomNumbers } from './random-numbers.ts'
import { settledNetwork } from './settled-network.ts'
import { twoRelayDoor } from './two-relay-door.ts'

// logic-solver 2.0.1 (MiniSat inside) knows nothing of volts: a contact is a variable, in series "and", side by side "or".

interface Contact {
  readonly name: string
  readonly sensor: string
  readonly closedWhen: 'clear' | 'seen'
}
type Tree = Contact | { readonly kind: 'series' | 'parallel'; readonly parts: readonly Tree[] }

function randomTree(dice: RandomNumbers, sensors: readonly string[], contacts: Contact[], depth: number): Tree {
  if (depth === 0 || dice.chance(0.25)) {
    const sensor = sensors[dice.whole(0, sensors.length - 1)] ?? ''
    const contact: Contact = { name: `K${contacts.length + 1}`, sensor, closedWhen: dice.chance(0.85) ? 'clear' : 'seen' }
    contacts.push(contact)
    return contact
  }
  const kind = dice.chance(0.7) ? 'series' : 'parallel'
  return { kind, parts: Array.from({ length: dice.whole(2, 3) }, () => randomTree(dice, sensors, contacts, depth - 1)) }
}

/** The line conducts, where `K1 closed` and `K1 open` say that the contact K1 is held so. */
function formula(tree: Tree): Operand {
  if ('name' in tree) {
    const healthy = is(tree.sensor, tree.closedWhen === 'seen')
    return Logic.or(`${tree.name} closed`, Logic.and(healthy, Logic.not(`${tree.name} open`)))
  }
  return tree.kind === 'series' ? Logic.and(...tree.parts.map(formula)) : Logic.or(...tree.parts.map(formula))
}
const is = (name: string, isTrue: boolean): Operand => (isTrue ? name : Logic.not(name))
type Operand = string | object

/** A stop line from plus through the contacts; voltage says "clear". */
function wiringOf(tree: Tree, contacts: readonly Contact[], ids: readonly string[]): Wiring {
  const door = twoRelayDoor({ isTested: false })
  const switches = new Map<string, { readonly from: string; readonly to: string }>()
  let terminals = 0
  const lay = (part: Tree, from: string, to: string): void => {
    if ('name' in part) switches.set(part.name, { from, to })
    else if (part.kind === 'parallel') for (const each of part.parts) lay(each, from, to)
    else {
      const joints = part.parts.slice(1).map(() => `between ${++terminals}`)
      for (const [i, each] of part.parts.entries()) lay(each, i === 0 ? from : (joints[i - 1] ?? ''), joints[i] ?? to)
    }
  }
  lay(tree, 'control.24V', 'control.stop')
  const sensors = ids.map((id): WiredSensor => {
    const outputs = contacts
      .filter(({ sensor }) => sensor === id)
      .map(
        ({ name, closedWhen }): SensorSwitch => ({
          ...{ name, output: name, acts: 'presence', closedIn: [closedWhen], on_ohm: 0.2, off_ohm: Infinity },
          ...{ from: '', to: '', ...switches.get(name), pulsed: undefined, rating: undefined },
        }),
      )
    const [scanner] = door.sensors as readonly [WiredSensor]
    const power = { ...scanner.power, plus: 'control.24V', minus: 'control.0V', largest_A: 0.1 }
    return { ...scanner, id, power, outputs, test: undefined }
  })
  return { ...door, sensors, cables: [], control: { ...door.control, inputs: door.control.inputs.slice(0, 1) } }
}

function randomLine(seed: number) {
  const dice = randomNumbers(seed)
  const ids = ['A', 'B', 'C'].slice(0, dice.whole(1, 3))
  const contacts: Contact[] = []
  const tree = randomTree(dice, ids, contacts, dice.whole(1, 3))
  const used = ids.filter((id) => contacts.some(({ sensor }) => sensor === id))
  const faults = contacts.flatMap(({ name }) => [`${name} open`, `${name} closed`])
  return { contacts, ids: used, faults, conducts: formula(tree), wiring: wiringOf(tree, contacts, used) }
}

const stuckFault = (of: Contact, at: 'open' | 'closed'): Fault => ({ kind: 'switch-stuck', sensor: of.sensor, switch: of.name, at })

describe('contacts in series and side by side, against logic-solver', () => {
  it('give the control what the formula says, for every set of sensors that see and every contact stuck (seeds 1 to 12)', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const { contacts, ids, wiring, conducts, faults } = randomLine(seed)
      expect(wiring.control.inputs).toHaveLength(1)
      const network = wiringNetwork(wiring)
      const solver = new Logic.Solver()
      const cases = [undefined, ...contacts.flatMap((of) => [{ of, at: 'open' } as const, { of, at: 'closed' } as const])]
      for (const stuck of cases) {
        const faulty = withFaults(network, stuck ? [stuckFault(stuck.of, stuck.at)] : [])
        const name = stuck ? `${stuck.of.name} ${stuck.at}` : ''
        for (let seen = 0; seen < 1 << ids.length; seen++) {
          const see = ids.filter((_, i) => seen & (1 << i))
          const stands = [...ids.map((id) => is(id, see.includes(id))), ...faults.map((fault) => is(fault, fault === name))]
          const settled = settledNetwork(faulty, { seenBy: new Set(see), asking: false, supply_V: 24 })
          const isClear = solver.solveAssuming(Logic.and(...stands, conducts)) !== null
          expect(beliefsOf(faulty, settled.settling)[0], `seed ${seed}`).toBe(isClear ? 'clear' : 'seen')
        }
      }
    }
  })

  it('hide a body by the contacts that the solver finds, and by none where it proves that there is none (seeds 13 to 60)', () => {
    let proved = 0
    for (let seed = 13; seed <= 60; seed++) {
      const { ids, wiring, conducts, faults } = randomLine(seed)
      const solver = new Logic.Solver()
      solver.require(Logic.exactlyOne(...faults), Logic.exactlyOne(...ids), conducts)
      const theirs: string[] = []
      for (let found = solver.solve(); found; found = solver.solve()) {
        const fault = found.getTrueVars().find((name) => faults.includes(name)) ?? ''
        theirs.push(fault)
        solver.forbid(fault)
      }
      const ours = faultEffects(wiring).flatMap(({ fault, effect }) =>
        fault.kind === 'switch-stuck' && effect === 'hidden-and-dangerous' ? [`${fault.switch} ${fault.at}`] : [],
      )
      expect(ours.sort(), `seed ${seed}`).toEqual(theirs.sort())
      if (theirs.length === 0) proved++
    }
    expect(proved).toBeGreaterThan(5)
    expect(proved).toBeLessThan(43)
  })
})
