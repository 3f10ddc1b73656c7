import type { Door } from '@sillsight/engine'
import { tape } from './figures.ts'
import type { Reader } from './language.ts'
import { called } from './plain.ts'

export type Side = 'a' | 'b'

/** The side on which a point lies. The mid-plane of the leaf counts to side A. */
export function sideOf(y_mm: number): Side {
  return y_mm < 0 ? 'b' : 'a'
}

/** "the yard", but "side A" without an article. */
export function sideName(door: Door, side: Side, reader: Reader): string {
  return reader.language.places.side(called(door.sides[side], reader))
}

/**
 * The hand on which the jamb at x = 0 (or at x = width) lies for a person who faces the door. On side A that person has x = 0 at the
 * right hand, on side B at the left (docs/method.md, section 1).
 */
export function handOf(end: 'zero' | 'width', viewer: Side): 'left' | 'right' {
  return (end === 'zero') === (viewer === 'a') ? 'right' : 'left'
}

/** A point of the plan by tape from the nearer jamb edge and from the leaf face: "3.55 m from the left jamb edge, 640 mm out from the leaf face, seen from the yard". */
export function place(door: Door, { x_mm, y_mm }: { readonly x_mm: number; readonly y_mm: number }, reader: Reader): string {
  const viewer = sideOf(y_mm)
  const seen = reader.language.places.seenFrom(sideName(door, viewer, reader))
  return `${alongTheLeaf(door, x_mm, viewer, reader)}, ${outFromTheLeaf(door, y_mm, reader)}, ${seen}`
}

/** "3.55 m from the left jamb edge", or "200 mm beyond the right jamb edge" for a place outside of the opening. */
export function alongTheLeaf(door: Door, x_mm: number, viewer: Side, reader: Reader): string {
  const { from, beyond, jamb } = reader.language.places
  const width_mm = door.opening.width_mm
  const end = x_mm > width_mm / 2 ? 'width' : 'zero'
  const inside_mm = end === 'width' ? width_mm - x_mm : x_mm
  const edge = jamb[handOf(end, viewer)]
  return inside_mm < 0 ? beyond(tape(-inside_mm, reader), edge) : from(tape(inside_mm, reader), edge)
}

/** "640 mm out from the leaf face", or "in the way of the leaf". A door without a leaf is measured from the middle of the opening's depth. */
export function outFromTheLeaf(door: Door, y_mm: number, reader: Reader): string {
  const { outFromOpening, outFromLeaf, inTheWay } = reader.language.places
  if (!door.leaf) return outFromOpening(tape(Math.abs(y_mm), reader))
  const out_mm = Math.abs(y_mm) - door.leaf.thickness_mm / 2
  return out_mm < 0 ? inTheWay : outFromLeaf(tape(out_mm, reader))
}
