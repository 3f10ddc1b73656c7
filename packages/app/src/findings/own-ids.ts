import type { DoorFile, FileEdit } from '@sillsight/document'
import { freeId } from '../entry/free-id.ts'

/**
 * The edits of a repair with ids of their own for the sensors that it adds: the search numbers them, and two devices that take different repairs would
 * have one id twice. Who takes the same repair gets the same id, and on two devices it is one sensor. Nothing else in the edits names a new sensor; they
 * go by places.
 */
export function withOwnIds(edits: readonly FileEdit[], { sensors = [] }: DoorFile): readonly FileEdit[] {
  const taken = sensors.map(({ id }) => id ?? '')
  return edits.map((edit) => {
    if (edit.kind !== 'append' || edit.path !== 'sensors') return edit
    const made = edit.value as { readonly id: string }
    const like = made.id.replace(/-\d+$/, '')
    const id = freeId(like, [...taken, `${like}-1`], made)
    taken.push(id)
    return { ...edit, value: { ...made, id } }
  })
}
