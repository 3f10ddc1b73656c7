import { basename } from 'node:path'
import {
  type FirstValues,
  firstDoor,
  firstSensors,
  type FirstLength as Length,
  readLength,
  serialise,
  showLength,
} from '@sillsight/document'
import type { Request } from '../arguments.ts'
import { type ExitCode, exitCodes } from '../exit-codes.ts'
import { print, tell } from '../output.ts'
import { type Problem, Refusal, shown } from '../problem.ts'
import { program, shellWord } from '../program.ts'
import { Questions } from '../questions.ts'
import { type Look, lookOf } from '../terminal.ts'
import { mustBeFree, writeWhole } from '../writing.ts'

type Units = Look['units']

export async function newCommand(request: Request): Promise<ExitCode> {
  const [file = 'door.json'] = request.words
  const { units } = lookOf(request)
  if (file !== '-') mustBeFree(file)
  const text = firstDoorFile(doorName(file), await ask(units))
  if (file === '-') print(text)
  else {
    writeWhole(file, text, { replace: false })
    tell(`\nWrote ${file}. What you did not enter is named when you judge it:\n  $ ${program()} judge ${shellWord(file)}\n`)
  }
  return exitCodes.pass
}

async function ask(units: Units): Promise<FirstValues> {
  const sensors = firstSensors()
  const questions = new Questions()
  const length = (question: string, fallback_mm?: number): Promise<Length> => {
    const named = fallback_mm === undefined ? undefined : showLength(fallback_mm, units)
    return questions.ask(question, named, (typed) => lengthOf(typed, units, fallback_mm))
  }
  try {
    tell(
      units === 'metric'
        ? 'Lengths as you say them: 2400, 2.4 m, 94 1/2 in. A bare number is mm.\n'
        : 'Lengths as you say them: 94 1/2, 7\' 10 1/2", 2400 mm. A bare number is inches.\n',
    )
    const width = await length('Clear width of the opening')
    const height = await length('Clear height of the opening')
    const side = await questions.ask('Side on which the sensor hangs, as you call it (yard, hall, ...)', 'outside', sideOf)
    tell(
      `Sensors that come along, invented; put in the values of your own later:\n${sensors.map(({ name }, i) => `  ${i + 1}  ${name}\n`).join('')}`,
    )
    const sensor = await questions.ask('Sensor, by its number', '1', (typed) => sensorOf(typed, sensors))
    const mountingHeight = await length('Height of the sensor above the floor', height.mm)
    const offset = await length('From the middle of the leaf out to the sensor', 150)
    return { width, height, side, sensor, mountingHeight, offset }
  } finally {
    questions.end()
  }
}

/** The text of a first door file. @throws Refusal if the values contradict each other */
export function firstDoorFile(name: string, values: FirstValues): string {
  const otherSide = values.side === 'other side' ? 'far side' : 'other side'
  const made = firstDoor(name, values, { otherSide, offeredBy: '`sillsight new`' })
  if (made.ok) return serialise(made.document)
  const repair = 'answer again with values that fit together'
  throw new Refusal(...made.issues.map((issue) => ({ repair, ...issue, place: `new: ${issue.path}` })))
}

function lengthOf(typed: string, units: Units, fallback_mm: number | undefined): Length | Problem {
  if (typed === '' && fallback_mm !== undefined) return { mm: fallback_mm, typed: undefined }
  const read = readLength(typed, { units })
  if (!read.ok) return { repair: 'write for example 2400, 2.4 m or 94 1/2 in', ...read.issue, place: '' }
  if (read.mm > 0) return { mm: read.mm, typed: inItsUnit(read.typed.text, units) }
  return { code: 'out-of-range', place: '', expected: 'a length above 0', got: shown(typed), repair: 'measure again' }
}

/** In the file a bare number would be read as mm. */
function inItsUnit(typed: string, units: Units): string {
  return units === 'feet-inches' && /^[\d\s/.,½¼¾⅛⅜⅝⅞-]+$/.test(typed) ? `${typed} in` : typed
}

function sideOf(typed: string): string | Problem {
  if (typed === '') return 'outside'
  if (typed.length <= 40) return typed
  return { code: 'too-long', place: '', expected: 'a name of at most 40 characters', got: shown(typed), repair: 'write for example yard' }
}

interface NamedSensor {
  readonly id: string
  readonly name: string
}

function sensorOf(typed: string, sensors: readonly NamedSensor[]): string | Problem {
  const chosen = typed === '' ? sensors[0] : (sensors[Number(typed) - 1] ?? sensors.find(({ id }) => id === typed))
  if (chosen) return chosen.id
  return {
    code: 'unknown-choice',
    place: '',
    expected: `a number from 1 to ${sensors.length}`,
    got: shown(typed),
    repair: 'write the number before the sensor',
  }
}

function doorName(file: string): string {
  return file === '-'
    ? 'new door'
    : basename(file)
        .replace(/\.json$/, '')
        .slice(0, 200) || 'new door'
}
