import { plainPalette, whyText } from '@sillsight/report'
import type { Request } from '../arguments.ts'
import { type ExitCode, exitCodes } from '../exit-codes.ts'
import { inkPalette } from '../formats.ts'
import { judgedOrRefusal } from '../judging.ts'
import { nearWords } from '../near.ts'
import { print } from '../output.ts'
import { safe } from '../plain-text.ts'
import { Refusal, shown } from '../problem.ts'
import { lookOf } from '../terminal.ts'

export function whyCommand(request: Request): ExitCode {
  const [file = '', id] = request.words
  const { colored, ...look } = lookOf(request)
  const { door, judgement } = judgedOrRefusal(file)
  const ids = judgement.findings.map((finding) => finding.id)
  const text = id === undefined ? undefined : whyText(door, judgement, id, { ...look, palette: colored ? inkPalette : plainPalette })
  if (text === undefined) throw unknownFinding(file, id, ids)
  print(safe(`${text.trimEnd()}\n`))
  return exitCodes.pass
}

function unknownFinding(file: string, id: string | undefined, ids: readonly string[]): Refusal {
  const near = id === undefined ? [] : nearWords(id, ids, 5)
  const list = (near.length > 0 ? near : ids).map((known) => `\n    ${known}`).join('')
  return new Refusal({
    code: id === undefined ? 'missing-word' : 'unknown-finding',
    place: `why ${file}`,
    expected: 'the id of a finding',
    got: id === undefined ? 'nothing' : shown(id),
    repair: near.length > 0 ? `did you mean one of these?${list}` : `write one of these:${list}`,
  })
}
