import { basename } from 'node:path'
import { builtinSensors, parseDocument, readLength, serialise, showLength } from '@sillsight/document'
import type { Request } from '../arguments.ts'
import { type ExitCode, exitCodes } from '../exit-codes.ts'
import { print, tell } from '../output.ts'
import { type Problem, Refusal, shown } from '../problem.ts'
import { program, shellWord } from '../program.ts'
import { Questions } from '../questions.ts'
import { type Look, lookOf } from '../terminal.ts'
import { mustBeFree, writeWhole } from '../writing.ts'

type Units = Look['units']

/** What the six questions yield. A value that Enter alone gave is marked: nobody measured it. */
export interface FirstValues {
  readonly width: Length
  readonly height: Length
  readonly side: string
  readonly sensor: string
  readonly mountingHeight: Length
  readonly offset: Length
}
interface Length {
  readonly mm: number
  readonly typed: string | undefined
}

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
  const sensors = usableSensors()
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
  const { width, height, side, sensor, mountingHeight, offset } = values
  const readings = { ...reading('widths', width), ...reading('heights', height) }
  const offered = [...(mountingHeight.typed === undefined ? ['mounting height'] : []), ...(offset.typed === undefined ? ['offset'] : [])]
  const note = `${offered.join(' and ')}: offered by \`sillsight new\`, not measured`
  const file = {
    sillsight: 1,
    name,
    sides: { a: side, b: side === 'other side' ? 'far side' : 'other side' },
    survey: { opening: { width_mm: width.mm, height_mm: height.mm, ...(Object.keys(readings).length > 0 && { readings }) } },
    sensors: [
      {
        use: sensor,
        side: 'a',
        mountingHeight_mm: mountingHeight.mm,
        offset_mm: offset.mm,
        ...(offered.length > 0 && { source: { basis: 'our decision', note } }),
      },
    ],
  }
  const parsed = parseDocument(JSON.stringify(file))
  if (parsed.ok) return serialise(parsed.document)
  const repair = 'answer again with values that fit together'
  throw new Refusal(...parsed.issues.map((issue) => ({ repair, ...issue, place: `new: ${issue.path}` })))
}

/** A length that was not typed in mm is kept as it was read off the tape, beside its value in mm. */
function reading(of: 'widths' | 'heights', { typed }: Length): object {
  return typed === undefined || /^\d+(?:\.\d+)?(?: ?mm)?$/.test(typed) ? {} : { [of]: [{ reading: typed }] }
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

/** Those for which six values suffice. A light beam, for one, needs the places of both its ends. */
function usableSensors(): readonly NamedSensor[] {
  const length = { mm: 2400, typed: undefined }
  return builtinSensors().filter(({ id }) => {
    try {
      firstDoorFile('trial', {
        width: length,
        height: length,
        side: 'outside',
        sensor: id,
        mountingHeight: length,
        offset: { mm: 150, typed: undefined },
      })
      return true
    } catch (problem) {
      if (problem instanceof Refusal) return false
      throw problem
    }
  })
}

function doorName(file: string): string {
  return file === '-'
    ? 'new door'
    : basename(file)
        .replace(/\.json$/, '')
        .slice(0, 200) || 'new door'
}
