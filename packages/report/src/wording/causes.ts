import type { Cause, Door } from '@sillsight/engine'
import type { Reader } from './language.ts'
import { called } from './plain.ts'

type Kind = Cause['kind']

/** Why a body goes unseen: "hidden behind the bollard", "between two beams". */
export function causeWords(
  door: Door,
  { kind, obstacle }: { readonly kind: Kind; readonly obstacle?: string | undefined },
  reader: Reader,
): string {
  const { causes, hiddenBehind } = reader.language
  return kind === 'hidden-behind' ? hiddenBehind(obstacle === undefined ? undefined : obstacleName(door, obstacle, reader)) : causes[kind]
}

/** What hands can do about a cause. Not judged against the other findings. */
export function causeMend(kind: Kind, { language }: Reader): string {
  return language.mends[kind]
}

export function isCause(word: string | undefined, { language }: Reader): word is Kind {
  return word !== undefined && Object.hasOwn(language.mends, word)
}

export function obstacleName(door: Door, id: string, reader: Reader): string {
  const found = door.states.flatMap(({ obstacles }) => obstacles).find((obstacle) => obstacle.id === id)
  return called(found?.name ?? id, reader)
}
