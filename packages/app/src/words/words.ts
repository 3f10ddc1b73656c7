import { createContext, useContext } from 'react'
import { en, type Words } from './en.ts'

export const WordsContext = createContext<Words>(en)

/** The words of the chosen language. */
export function useWords(): Words {
  return useContext(WordsContext)
}
