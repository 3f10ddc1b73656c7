import {
  diagnosis,
  type Meter,
  measurable,
  type Observation,
  type SensorState,
  type Standing,
  USUAL_METER,
  type Wiring,
} from '@sillsight/engine'
import { diagnosisText, wrapped } from '@sillsight/report'
import type { Request } from '../arguments.ts'
import { type ExitCode, exitCodes } from '../exit-codes.ts'
import { print } from '../output.ts'
import { safe } from '../plain-text.ts'
import { Refusal, shown } from '../problem.ts'
import { lookOf, readerOf } from '../terminal.ts'
import { wiringOf } from './connect.ts'

export function traceCommand(request: Request): ExitCode {
  const [file = '', ...words] = request.words
  const wiring = wiringOf('trace', file)
  const meter: Meter = {
    off_V: share(request, 'off', USUAL_METER.off_V),
    off_percent: share(request, 'off-percent', USUAL_METER.off_percent),
    ohm: USUAL_METER.ohm,
  }
  const observations = words.map((word) => observationOf(wiring, word))
  const found = diagnosis(wiring, observations, meter)
  if (request.switches.has('json')) print(safe(`${JSON.stringify(found, undefined, 2)}\n`))
  else {
    const look = lookOf(request)
    const lines = diagnosisText(found, observations.length, readerOf(look).language).flatMap((line) => wrapped(line, look.width))
    print(safe(`${lines.join('\n')}\n`))
  }
  return exitCodes.pass
}

function share(request: Request, name: string, otherwise: number): number {
  const typed = request.values.get(name)
  if (typed === undefined) return otherwise
  const value = Number(typed)
  if (typed.trim() !== '' && value >= 0 && value <= 100) return value
  const repair = 'take it from the data of the meter'
  throw new Refusal({ code: 'bad-option-value', place: `--${name}`, expected: 'a number from 0 to 100', got: shown(typed), repair })
}

/** `control.S1,control.0V=24.1`, `sensor:grid=seen` or `input:stop-1=clear`, and then `@grid`, `@grid+beam` or `@asking`. */
function observationOf(wiring: Wiring, typed: string): Observation {
  const [, what = '', value = '', at = ''] = /^(.*)=([^=@]*)(?:@([^@]*))?$/.exec(typed) ?? []
  const standing = standingOf(wiring, typed, at)
  const [kind, name] = [what.slice(0, what.indexOf(':')), what.slice(what.indexOf(':') + 1)]
  if (kind === 'sensor' && wiring.sensors.some(({ id }) => id === name) && isState(value))
    return { ...standing, kind: 'sensor', sensor: name, shows: value }
  if (kind === 'input' && wiring.control.inputs.some(({ id }) => id === name) && isBelief(value))
    return { ...standing, kind: 'input', input: name, shows: value }
  const terminals = new Set(measurable(wiring))
  for (let comma = what.indexOf(','); comma >= 0; comma = what.indexOf(',', comma + 1)) {
    const [plus, minus] = [what.slice(0, comma), what.slice(comma + 1)]
    if (terminals.has(plus) && terminals.has(minus) && plus !== minus && /^-?\d{1,4}(\.\d+)?$/.test(value))
      return { ...standing, kind: 'volt', plus, minus, volt: Number(value) }
  }
  throw wrongReading(wiring, typed)
}

const STATES: readonly string[] = ['clear', 'seen', 'unpowered', 'warming-up', 'fault'] satisfies readonly SensorState[]
const isState = (value: string): value is SensorState => STATES.includes(value)
const isBelief = (value: string): value is 'clear' | 'seen' | 'fault' => value === 'clear' || value === 'seen' || value === 'fault'

function standingOf(wiring: Wiring, typed: string, at: string): Standing {
  if (at === 'asking') return { seenBy: [], asking: true }
  const seenBy = at === '' ? [] : at.split('+')
  if (!seenBy.every((id) => wiring.sensors.some((sensor) => sensor.id === id))) throw wrongReading(wiring, typed)
  return { seenBy, asking: false }
}

function wrongReading({ control, sensors }: Wiring, typed: string): Refusal {
  const [input] = control.inputs
  const example = input ? `${input.plus},${input.minus}=24.1@${sensors[0]?.id ?? 'asking'}` : 'control.S1,control.0V=24.1'
  return new Refusal({
    code: 'bad-reading',
    place: 'trace',
    expected: 'TERMINAL,TERMINAL=VOLT, sensor:ID=STATE or input:ID=MEANING of this wiring, and @SENSOR or @asking after it',
    got: shown(typed),
    repair: `write for example \`${example}\``,
  })
}
