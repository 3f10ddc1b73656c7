import { building, drive, lanes } from './de-around.ts'
import { control, dangers, passingBy } from './de-known.ts'
import type { Facts } from './en-facts.ts'

export const deFacts: Facts = { building, lanes, drive, control, dangers, passingBy }
