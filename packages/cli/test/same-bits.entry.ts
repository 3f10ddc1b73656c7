// What same-bits.test.ts runs in Node and in a browser: from the text of a door file to the canonical text of its judgement.
import { parseDocument, toDoor } from '@sillsight/document'
import { canonicalText, judge } from '@sillsight/engine'

export function judged(text: string): string {
  const parsed = parseDocument(text)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  return canonicalText(judge(toDoor(parsed.document, parsed.catalogue)))
}
