import { useDoor } from '../screens/at-door.ts'
import { pushAt, takeAt } from './places.ts'

/** Adds to a list of the door file and takes away from it; a list that nobody began is made with its first entry. */
export function useListed(path: string) {
  const { door } = useDoor()
  return {
    add: (made: object | string, name?: string) =>
      door.edit({ deed: 'added', path, ...(name !== undefined && { name }) }, (draft) => pushAt(draft, path, made)),
    remove: (index: number, name?: string) =>
      door.edit({ deed: 'removed', path, ...(name !== undefined && { name }) }, (draft) => takeAt(draft, path, index)),
  }
}
