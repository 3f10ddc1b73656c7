import { constants, copyFileSync, existsSync, realpathSync, statSync } from 'node:fs'
import { parseDocument, serialise, sha256 } from '@sillsight/document'
import type { Request } from '../arguments.ts'
import { type ExitCode, exitCodes } from '../exit-codes.ts'
import { problemsOf } from '../judging.ts'
import { print, tell } from '../output.ts'
import { Refusal } from '../problem.ts'
import { readBeside, readText } from '../reading.ts'
import { writeWhole } from '../writing.ts'

export function migrateCommand(request: Request): ExitCode {
  const [file = ''] = request.words
  if (request.switches.has('write') && file === '-') throw new Refusal(cannotWriteStandardInput)
  const text = readText(file)
  const parsed = parseDocument(text, { readLibrary: (reference) => readBeside(file, reference), sha256 })
  if (!parsed.ok) throw new Refusal(...problemsOf({ kind: 'refused', outcome: 'bad-input', file, ...parsed }))
  const migrated = serialise(parsed.document)
  for (const note of parsed.notes) tell(`sillsight: ${file}: ${note.path}: ${note.text}\n`)
  if (!request.switches.has('write')) print(migrated)
  else if (migrated === text) tell(`sillsight: ${file} is current; nothing to do\n`)
  else replaceKeepingOld(file, migrated)
  return exitCodes.pass
}

/** The old file is safe under another name before the new one takes its place. Links stay links: the file behind them changes. */
function replaceKeepingOld(file: string, migrated: string): void {
  const real = realpathSync(file)
  const kept = freeName(`${real}.before-migration`)
  copyFileSync(real, kept, constants.COPYFILE_EXCL)
  writeWhole(real, migrated, { replace: true, mode: statSync(real).mode & 0o777 })
  tell(`sillsight: ${file} is current now; the old file is ${kept}\n`)
}

function freeName(wanted: string): string {
  for (let i = 1; ; i++) {
    const name = i === 1 ? wanted : `${wanted}-${i}`
    if (!existsSync(name)) return name
  }
}

const cannotWriteStandardInput = {
  code: 'cannot-write-standard-input',
  place: 'migrate --write',
  expected: 'a file to replace',
  got: '-',
  repair: 'name the file, or leave out --write and take the result from standard output',
}
