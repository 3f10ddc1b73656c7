import type { Body } from '../model/body.ts'
import type { Door, DoorState } from '../model/door.ts'
import type { SizeFamily, Zone } from '../model/zone.ts'
import { countCells } from './grid.ts'
import { coverageMaps } from './maps.ts'

export interface SmallestBody {
  /** Sizes tried, largest first; it ends with the first one at which something goes unseen. */
  readonly tried_mm: readonly number[]
  /** Every size tried from this one up is seen everywhere; undefined if not even the largest is. */
  readonly smallest_mm: number | undefined
  /** The largest size tried at which a free placement goes unseen; undefined if there is none. */
  readonly unseen_mm: number | undefined
  /** At some size tried there was a free placement: without one there was nothing to see. */
  readonly anythingFree: boolean
}

/**
 * The smallest size of a family of similar boxes such that this one and every larger one tried is seen everywhere in the zone. Sizes are
 * tried from the largest down in the family's step, and the required one besides; those between are not computed, nor are placements between
 * the grid points. A box of size s measures s times the proportions along x, along y and in height, at yaw 0.
 *
 * A smaller body is not always harder to see (it enters the beam elsewhere), so sizes below the first unseen one are not tried: they could not
 * count. A size at which nothing is free neither ends the search nor shows anything.
 */
export function smallestBody(door: Door, zone: Zone, state: DoorState, family: SizeFamily): SmallestBody {
  const tried_mm: number[] = []
  let smallest_mm: number | undefined
  let anythingFree = false
  for (const size_mm of sizesOf(family)) {
    tried_mm.push(size_mm)
    const { free, blind } = placements(door, zone, state, bodyOfSize(family, size_mm))
    if (free > 0) anythingFree = true
    if (blind > 0) return { tried_mm, smallest_mm, unseen_mm: size_mm, anythingFree }
    if (free > 0) smallest_mm = size_mm
  }
  return { tried_mm, smallest_mm, unseen_mm: undefined, anythingFree }
}

/** Largest first: largest - k * step down to above 0, and the required size in its place. */
export function sizesOf({ largest_mm, step_mm, required_mm }: SizeFamily): readonly number[] {
  const sizes: number[] = []
  for (let k = 0; largest_mm - k * step_mm > 1e-9 * largest_mm; k++) sizes.push(largest_mm - k * step_mm)
  if (required_mm !== undefined && !sizes.includes(required_mm)) sizes.push(required_mm)
  return sizes.sort((a, b) => b - a)
}

function bodyOfSize({ proportions: [a, b, c], reflectance }: SizeFamily, size_mm: number): Body {
  const box = {
    shape: 'box',
    name: 'of the family',
    a_mm: a * size_mm,
    b_mm: b * size_mm,
    c_mm: c * size_mm,
    yawFrom_rad: 0,
    yawTo_rad: 0,
  } as const
  return { id: 'family', name: 'family', reflectance, postures: [box], source: { basis: 'our decision' } }
}

function placements(door: Door, zone: Zone, state: DoorState, body: Body): { readonly free: number; readonly blind: number } {
  const { grid, blind, notFree } = coverageMaps({ ...door, bodies: [body] }, { ...zone, bodies: [body.id] }, state)
  return { free: grid.rows * grid.columns - countCells(notFree), blind: countCells(blind) }
}
