import { OUTSIDE_VALUES } from '@sillsight/engine'
import { DEFAULTS } from '../door/defaults.ts'
import type { LibraryBody } from '../schema/body.ts'
import { PASSING_BODIES } from './passing-bodies.ts'

const ID = 'presence-reference-body'

/** Bodies that ship with the program. The id is that of the outside value which gives the size: one confirmation serves both. */
export const BUILTIN_BODIES: ReadonlyMap<string, LibraryBody> = new Map([[ID, presenceReferenceBody()], ...Object.entries(PASSING_BODIES)])

/** Lying along the leaf, lying across and standing. Its bright and dark faces are not told apart: all count as dark. */
function presenceReferenceBody(): LibraryBody {
  const value = OUTSIDE_VALUES.find((each) => each.id === ID)
  const [long, wide, thick] = Array.isArray(value?.value) ? (value.value as readonly number[]) : []
  if (value === undefined || long === undefined || wide === undefined || thick === undefined)
    throw new Error(`outside value ${ID} must be three lengths`)
  return {
    name: `${long} x ${wide} x ${thick}`,
    reflectance: DEFAULTS.bodyReflectance,
    postures: [
      { shape: 'box', name: 'lying along the leaf', size_mm: [long, wide, thick] },
      { shape: 'box', name: 'lying across', size_mm: [wide, long, thick] },
      { shape: 'box', name: 'standing', size_mm: [wide, thick, long] },
    ],
    source: { ...value.source, note: `${value.source.note ?? ''}; the reflectance is our decision: a dark face`.replace(/^; /, '') },
  }
}
