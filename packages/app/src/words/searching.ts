import { use } from 'react'
import { enSearching, type Searching } from './en-searching.ts'
import { SpokenContext } from './words.ts'

/** The words of searches through a wiring, in the chosen language. */
export function useSearching(): Searching {
  return use(SpokenContext).searching ?? enSearching
}
