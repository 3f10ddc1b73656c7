import { existsSync, mkdirSync, readFileSync } from 'node:fs'
import { basename, join, relative } from 'node:path'
import { sheetSvg } from '@sillsight/report'
import type { Request } from '../arguments.ts'
import { demoDoors, demoFolder } from '../demo-doors.ts'
import { type ExitCode, exitCodes } from '../exit-codes.ts'
import { doorText, record } from '../formats.ts'
import { judgedOrRefusal } from '../judging.ts'
import { print, tell } from '../output.ts'
import { safe } from '../plain-text.ts'
import { Refusal } from '../problem.ts'
import { program, shellWord } from '../program.ts'
import { type Look, lookOf, readerOf } from '../terminal.ts'
import { writeWhole } from '../writing.ts'

export function demoCommand(request: Request): ExitCode {
  const look = lookOf(request)
  const out = request.values.get('out') ?? 'sillsight-demo'
  const doors = demoDoors()
  if (doors.length === 0) throw new Error(`no demonstration doors in ${demoFolder}`)
  makeFolder(out)
  print('These doors are invented: places, people and sensors do not exist.\n\n')
  const fails = doors.map((door) => showDoor(door, out, look))
  print(
    whatNext(
      doors.map((door) => basename(door)),
      fails.find((id) => id !== undefined) ?? 'FINDING',
      out,
    ),
  )
  return exitCodes.pass
}

/** @returns the id of a finding worth asking about, the worst first */
function showDoor(file: string, out: string, look: Look): string | undefined {
  const answer = judgedOrRefusal(file)
  const name = basename(file, '.json')
  const { door, judgement } = answer
  print(safe(`${doorText({ ...answer, file: basename(file) }, look)}\n\n`))
  writeWhole(join(out, `${name}.svg`), sheetSvg(door, judgement, readerOf(look)), { replace: true })
  writeWhole(join(out, `${name}.result.json`), `${JSON.stringify(record({ ...answer, file: basename(file) }, look), undefined, 1)}\n`, {
    replace: true,
  })
  leaveCopy(file, join(out, basename(file)))
  return judgement.findings.find(({ verdict }) => verdict === 'fail')?.id
}

/** The door files are there to be played with: one that somebody changed stays as it is. */
function leaveCopy(from: string, to: string): void {
  const text = readFileSync(from, 'utf8')
  if (!existsSync(to)) writeWhole(to, text, { replace: false })
  else if (readFileSync(to, 'utf8') !== text) tell(`sillsight: ${to} is not the door that comes along any more; it stays as it is\n`)
}

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true })
  } catch (problem) {
    const got = (problem as NodeJS.ErrnoException).code ?? String(problem)
    throw new Refusal({
      code: 'cannot-make-folder',
      place: folder,
      expected: 'a folder to write to',
      got,
      repair: 'name another with --out',
    })
  }
}

function whatNext([first = 'door.json', ...others]: readonly string[], finding: string, out: string): string {
  const place = relative('.', out) || '.'
  const inPlace = (name: string): string => shellWord(join(place, name))
  const other = inPlace(others[0] ?? first)
  return [
    `Written to ${place}, for each door: the drawing (.svg), the result (.result.json) and the door file (.json).`,
    '',
    'What next',
    `  Look at a drawing: open ${inPlace(first.replace('.json', '.svg'))} in a browser.`,
    `  Ask why:           ${program()} why ${inPlace(first)} ${finding}`,
    `  Change something:  edit ${other}, then ${program()} judge ${other}`,
    `  Your own door:     ${program()} new my-door.json`,
    '',
  ].join('\n')
}
