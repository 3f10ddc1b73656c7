import { use } from 'react'
import { around } from './en-around.ts'
import { SpokenContext } from './words.ts'

/** The words of what is measured around the opening, in the chosen language. */
export function useAround(): typeof around {
  return use(SpokenContext).facts?.around ?? around
}
