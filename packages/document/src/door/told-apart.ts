import type { Door } from '@sillsight/engine'

interface Thing {
  readonly id: string
  readonly name: string
}

/**
 * Things of one kind that people named alike, as two devices may that met later, are called by their ids as well: whoever reads of one must know which
 * one is meant, and can give it another name.
 */
export function namesToldApart(door: Door): Door {
  const { sensors, zones, lanes, crossings, dangers, states } = door
  return {
    ...door,
    sensors: toldApart(sensors),
    zones: toldApart(zones),
    lanes: lanes && toldApart(lanes),
    crossings: crossings && toldApart(crossings),
    dangers: dangers && { ...dangers, points: toldApart(dangers.points) },
    states: toldApart(states).map((state) => ({ ...state, obstacles: toldApart(state.obstacles) })),
  }
}

function toldApart<T extends Thing>(things: readonly T[]): readonly T[] {
  const count = new Map<string, number>()
  for (const { name } of things) count.set(name, (count.get(name) ?? 0) + 1)
  return things.map((thing) =>
    (count.get(thing.name) ?? 0) > 1 && thing.name !== thing.id ? { ...thing, name: `${thing.name} (${thing.id})` } : thing,
  )
}
