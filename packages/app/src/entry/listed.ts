import { useDoor } from '../screens/at-door.ts'
import { pushAt, putAt, valueAt } from './places.ts'

/** Adds to a list of the door file and takes away from it; a list that nobody began is made with its first entry. */
export function useListed(path: string) {
  const { door } = useDoor()
  return {
    add: (made: object | string, name?: string) =>
      door.edit({ deed: 'added', path, ...(name !== undefined && { name }) }, (draft) => pushAt(draft, path, made)),
    /** @param isOptional an empty list is taken away: the door file wants none or a full one */
    remove: (index: number, name?: string, isOptional = false) =>
      door.edit({ deed: 'removed', path, ...(name !== undefined && { name }) }, (draft) => {
        const list = valueAt(draft, path)
        if (!Array.isArray(list)) return
        if (isOptional && list.length === 1) putAt(draft, path, undefined)
        else list.splice(index, 1)
      }),
  }
}
