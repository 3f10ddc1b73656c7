import type { SensorSwitch, Wiring } from '../src/model/wiring.ts'
import { effectIn } from '../src/wiring/fault-effects.ts'
import type { Fault } from '../src/wiring/faults.ts'
import { wiringNetwork } from '../src/wiring/network.ts'
import { twoRelayDoor } from './two-relay-door.ts'

/** A fault tree without "not": an event, or a gate over others. */
export type Tree = string | { readonly any: readonly Tree[] } | { readonly all: readonly Tree[] }

export const any = (...any: readonly Tree[]): Tree => ({ any })
export const all = (...all: readonly Tree[]): Tree => ({ all })

export function eventsOf(tree: Tree): readonly string[] {
  if (typeof tree === 'string') return [tree]
  return [...new Set(('any' in tree ? tree.any : tree.all).flatMap(eventsOf))]
}

/**
 * A stop line that is fed where a body is seen, through the contacts of a fault tree: what any of several events cuts lies in series, what takes all of
 * them side by side. An event that stands in several places is a relay with as many contacts. The top event is that nothing feeds the line.
 */
export function circuitOf(tree: Tree): Wiring {
  const door = twoRelayDoor({ isTested: false })
  const [scanner] = door.sensors
  const [input] = door.control.inputs
  if (!scanner || !input) throw new Error('the case has no sensor')
  const outputs: SensorSwitch[] = []
  let terminals = 0
  const lay = (part: Tree, from: string, to: string): void => {
    if (typeof part === 'string') {
      const name = `${part}/${outputs.length}`
      const contact = { name, output: part, acts: 'presence', from, to, closedIn: ['seen'], on_ohm: 0.2, off_ohm: Infinity } as const
      outputs.push({ ...contact, pulsed: undefined, rating: undefined })
    } else if ('all' in part) for (const each of part.all) lay(each, from, to)
    else {
      const joints = part.any.slice(1).map(() => `between ${++terminals}`)
      for (const [i, each] of part.any.entries()) lay(each, i === 0 ? from : (joints[i - 1] ?? ''), joints[i] ?? to)
    }
  }
  lay(tree, 'control.24V', 'control.stop')
  const power = { ...scanner.power, plus: 'control.24V', minus: 'control.0V', largest_A: 0 }
  return {
    ...door,
    supply: { ...door.supply, largest_V: door.supply.least_V },
    sensors: [{ ...scanner, outputs, test: undefined, power }],
    cables: [],
    control: {
      ...door.control,
      inputs: [
        {
          ...input,
          bands: [
            { from_V: -50, to_V: 5, means: 'clear' },
            { from_V: 11, to_V: 50, means: 'seen' },
          ],
        },
      ],
    },
  }
}

type Events = ReadonlySet<string>

/**
 * All least sets of events that together hide a body, by nothing but what the network answers. Sets that hide one and sets that suffice to show one are
 * found in turn, each made least; there are no more when nothing is left that holds none of either (the sets are those of dual functions).
 */
export function cutSetsOf(tree: Tree): readonly (readonly string[])[] {
  const wiring = circuitOf(tree)
  const network = wiringNetwork(wiring)
  const events = eventsOf(tree)
  const contacts = wiring.sensors[0]?.outputs ?? []
  const hides = (failed: Events) => {
    const faults = contacts.filter(({ output }) => failed.has(output))
    const stuck = faults.map(({ name }): Fault => ({ kind: 'switch-stuck', sensor: 'scanner', switch: name, at: 'open' }))
    return effectIn(network, stuck).effect === 'hidden-and-dangerous'
  }
  const without = (set: Events, event: string) => new Set([...set].filter((each) => each !== event))
  const others = (set: Events) => new Set(events.filter((event) => !set.has(event)))
  const least = (set: Events, isEnough: (set: Events) => boolean) =>
    [...set].reduce((now, event) => (isEnough(without(now, event)) ? without(now, event) : now), set)
  const [cuts, paths]: [Events[], Events[]] = [[], []]
  for (;;) {
    const failed = leftOver(cuts, paths, new Set())
    if (failed === undefined) break
    if (hides(failed)) cuts.push(least(failed, hides))
    else paths.push(least(others(failed), (working) => !hides(others(working))))
  }
  return cuts.map((set) => [...set].sort()).sort((a, b) => a.length - b.length || (a.join() < b.join() ? -1 : 1))
}

/** A set that meets every path and holds no cut, or undefined where there is none. */
function leftOver(cuts: readonly Events[], paths: readonly Events[], failed: Events): Events | undefined {
  if (cuts.some((cut) => [...cut].every((event) => failed.has(event)))) return undefined
  const open = paths.filter((path) => [...path].every((event) => !failed.has(event)))
  const [first] = open.sort((a, b) => a.size - b.size)
  if (first === undefined) return failed
  const tried = new Set<string>()
  for (const event of first) {
    const found = leftOver(cuts, paths, new Set([...failed, event]))
    if (found) return found
    tried.add(event)
  }
  return undefined
}

/** The probability that all events of some set happen; events are independent. Exact, by taking one event after the other as happened and as not. */
export function topEvent(sets: readonly (readonly string[])[], probability: (event: string) => number): number {
  const known = new Map<string, number>()
  const top = (now: readonly (readonly string[])[]): number => {
    if (now.some(({ length }) => length === 0)) return 1
    const [event] = mostFrequent(now)
    if (event === undefined) return 0
    const key = now.map((set) => set.join(' ')).join(',')
    const p = probability(event)
    const value =
      known.get(key) ??
      p * top(now.map((set) => set.filter((each) => each !== event))) + (1 - p) * top(now.filter((set) => !set.includes(event)))
    known.set(key, value)
    return value
  }
  return top(sets)
}

function mostFrequent(sets: readonly (readonly string[])[]): readonly string[] {
  const counts = new Map<string, number>()
  for (const event of sets.flat()) counts.set(event, (counts.get(event) ?? 0) + 1)
  return [...counts].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1)).map(([event]) => event)
}
