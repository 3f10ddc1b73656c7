import { building, drive, lanes } from './en-around.ts'
import { control, dangers, passingBy } from './en-known.ts'

/** What is asked about a door beside its opening and its sensors. Comes with the screens that ask it: the first sheet needs none of it. */
export const enFacts = { building, lanes, drive, control, dangers, passingBy }

export type Facts = typeof enFacts
