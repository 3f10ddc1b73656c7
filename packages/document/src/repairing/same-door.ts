import type { Door, Wiring } from '@sillsight/engine'

/** A nanometre, and what it is as an angle over a kilometre. */
const CLOSE = 1e-6

/**
 * Whether two doors are judged alike: all measures within a millionth, all ids and other names the same. What was assumed or is disputed may
 * differ, for a value that was changed is neither any longer; so may what sensors and obstacles are called.
 */
export function sameDoor(a: Door, b: Door): boolean {
  const measures = (door: Door) => ({
    ...door,
    assumed: [],
    disputed: [],
    sensors: door.sensors.map(unnamed),
    states: door.states.map((state) => ({ ...state, obstacles: state.obstacles.map(unnamed) })),
  })
  return same(measures(a), measures(b))
}

/** Whether two wirings are judged alike: colours say nothing of that, nor how warm the copper gets, what tests by hand rest on, or in which order states are named. */
export function sameWiring(a: Wiring, b: Wiring): boolean {
  return same(bare(a), bare(b))
}

function bare(wiring: Wiring): Wiring {
  const cables = wiring.cables.map((cable) => ({ ...cable, cores: cable.cores.map((core) => ({ ...core, colour: undefined })) }))
  const sensors = wiring.sensors.map((sensor) => ({
    ...sensor,
    outputs: sensor.outputs.map((each) => ({ ...each, closedIn: [...each.closedIn].sort() })),
  }))
  return { ...wiring, sensors, cables, copper: undefined, handTest: undefined }
}

function unnamed<T extends { readonly name: string }>(thing: T): T {
  return { ...thing, name: '' }
}

function same(a: unknown, b: unknown): boolean {
  if (typeof a === 'number' && typeof b === 'number') return a === b || Math.abs(a - b) < CLOSE
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b
  if (Array.isArray(a) !== Array.isArray(b)) return false
  const [inA, inB] = [a as Record<string, unknown>, b as Record<string, unknown>]
  const names = new Set([...Object.keys(inA), ...Object.keys(inB)])
  return [...names].every((name) => same(inA[name], inB[name]))
}
