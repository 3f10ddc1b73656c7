import { use } from 'react'
import { enFacts, type Facts } from './en-facts.ts'
import { SpokenContext } from './words.ts'

/** The words of what is asked beside opening and sensors, in the chosen language. */
export function useFacts(): Facts {
  return use(SpokenContext).facts ?? enFacts
}
