import { around } from './de-around.ts'
import { declares } from './de-declares.ts'
import { differing } from './de-differing.ts'
import { forces } from './de-forces.ts'
import { control, dangers, passingBy } from './de-known.ts'
import { bodies, leaving, sensing, source, zones } from './de-sensing.ts'
import { sheets } from './de-sheets.ts'
import { wiring } from './de-wiring.ts'
import type { Facts } from './en-facts.ts'

export const deFacts: Facts = {
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
