import { plainPalette, whyText } from '@sillsight/report'
import type { Request } from '../arguments.ts'
import { type ExitCode, exitCodes } from '../exit-codes.ts'
import { inkPalette } from '../formats.ts'
import { judgedOrRefusal } from '../judging.ts'
import { nearWords } from '../near.ts'
import { print } from '../output.ts'
import { safe } from '../plain-text.ts'
import { Refusal, shown } from '../problem.ts'
import { lookOf, readerOf } from '../terminal.ts'

export function whyCommand(request: Request): ExitCode {
  const [file = '', id] = request.words
  const look = lookOf(request)
  const { door, judgement } = judgedOrRefusal(file)
  const ids = judgement.findings.map((finding) => finding.id)
  const meant = id === undefined ? undefined : meantBy(id, ids)
  const text = meant && whyText(door, judgement, meant, { ...look, ...readerOf(look), palette: look.colored ? inkPalette : plainPalette })
  if (text === undefined) throw unknownFinding('why', file, id, ids)
  print(safe(`${text.trimEnd()}\n`))
  return exitCodes.pass
}

/** An id, or a part of one that only one finding has: a rule, the letter of a pocket. */
export function meantBy(typed: string, ids: readonly string[]): string | undefined {
  if (ids.includes(typed)) return typed
  const [only, ...others] = ids.filter((id) => id.split(/[:/@]/).includes(typed))
  return others.length === 0 ? only : undefined
}

export function unknownFinding(command: string, file: string, id: string | undefined, ids: readonly string[]): Refusal {
  const part = ids.filter((known) => id !== undefined && known.split(/[:/@]/).includes(id))
  const near = id === undefined ? [] : part.length > 0 ? part : nearWords(id, ids, 5)
  const list = (near.length > 0 ? near : ids).map((known) => `\n    ${known}`).join('')
  return new Refusal({
    code: id === undefined ? 'missing-word' : 'unknown-finding',
    place: `${command} ${file}`,
    expected: 'the id of a finding',
    got: id === undefined ? 'nothing' : shown(id),
    repair: near.length > 0 ? `did you mean one of these?${list}` : `write one of these:${list}`,
  })
}
