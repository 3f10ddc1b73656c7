import { type Evidence, evidenceOf, judge } from '@sillsight/engine'
import { type VerifyResult, verifyEvidence } from '../src/index.ts'
import { type RandomDoorFile, sha256 } from './random-door-files.ts'

type Loose<T> = T extends readonly [unknown, ...unknown[]]
  ? { -readonly [K in keyof T]: Loose<T[K]> }
  : T extends readonly (infer U)[]
    ? Loose<U>[]
    : T extends object
      ? { -readonly [K in keyof T]: Loose<T[K]> }
      : T
/** Evidence that JSON has carried, to be changed at will. */
export type Changeable = Loose<Evidence>
export type Coverage = Changeable['coverages'][number]

/** What the engine gives out for a door file. */
export function evidenceOfFile({ door, text }: Pick<RandomDoorFile, 'door' | 'text'>): Changeable {
  const { coverages } = judge(door)
  const evidence = evidenceOf(door, sha256(text), JSON.parse(text).tolerances ?? null, (zone, state) =>
    coverages.filter((each) => each.zone === zone.id && each.state === state.id).flatMap(({ pockets }) => pockets),
  )
  return JSON.parse(JSON.stringify(evidence))
}

export function verified(file: Pick<RandomDoorFile, 'text' | 'readLibrary'>, evidenceText: string): VerifyResult {
  return verifyEvidence({ doorText: file.text, evidenceText, sha256, readLibrary: file.readLibrary })
}
