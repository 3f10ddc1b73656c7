import type { Door, Judgement } from '@sillsight/engine'
import type { TextOptions } from './options.ts'
import { sentence } from './wording/sentence.ts'

/** The arithmetic of one finding, step by step; undefined if the judgement has no finding of this id. */
export function whyText(door: Door, judgement: Judgement, findingId: string, { units }: TextOptions): string | undefined {
  const finding = judgement.findings.find(({ id }) => id === findingId)
  return finding && sentence(door, finding, { units })
}
