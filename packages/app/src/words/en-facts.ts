import { around } from './en-around.ts'
import { declares } from './en-declares.ts'
import { differing } from './en-differing.ts'
import { forces } from './en-forces.ts'
import { control, dangers, passingBy } from './en-known.ts'
import { bodies, leaving, sensing, source, zones } from './en-sensing.ts'
import { sheets } from './en-sheets.ts'
import { wiring } from './en-wiring.ts'

/** What is asked about a door beside its opening and where its sensors hang. Comes with the screens that ask it: the first sheet needs none of it. */
export const enFacts = {
  around,
  control,
  dangers,
  passingBy,
  sensing,
  bodies,
  forces,
  leaving,
  source,
  zones,
  wiring,
  declares,
  sheets,
  differing,
}

export type Facts = typeof enFacts
