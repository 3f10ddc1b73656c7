import { fstatSync, statSync } from 'node:fs'
import { english, german, type Reader } from '@sillsight/report'
import { type Request, wholeNumber } from './arguments.ts'

/** How text may look where it goes. Plain data, so that a worker thread can be told. */
export interface Look {
  readonly width: number
  readonly colored: boolean
  readonly ascii: boolean
  readonly units: 'metric' | 'feet-inches'
  /** Of findings and drawings; the program itself speaks English. */
  readonly language: 'en' | 'de'
}

/** Whom the report speaks to. */
export function readerOf({ units, language }: Pick<Look, 'units' | 'language'>): Reader {
  return { units, language: language === 'de' ? german : english }
}

/** From the options, the environment and the terminal, in this order. */
export function lookOf(request: Request): Look {
  return {
    width: wholeNumber(request, 'width', 40, 400) ?? terminalWidth(),
    colored: !request.switches.has('no-color') && wantsColor(),
    ascii: request.switches.has('ascii'),
    units: request.values.get('units') === 'ft-in' ? 'feet-inches' : 'metric',
    language: request.values.get('language') === 'de' ? 'de' : 'en',
  }
}

/** Columns of the terminal, or what COLUMNS says, or 80. */
export function terminalWidth(): number {
  const columns = isTerminal(1) ? process.stdout.columns : Number(process.env['COLUMNS'])
  return Number.isInteger(columns) && columns >= 40 ? Math.min(columns, 400) : 80
}

function wantsColor(): boolean {
  const { NO_COLOR, FORCE_COLOR, TERM } = process.env
  if (NO_COLOR) return false
  if (FORCE_COLOR !== undefined) return FORCE_COLOR !== '0'
  return isTerminal(1) && TERM !== 'dumb'
}

/** Whether a person looks at it. Files, pipes and the null device are told apart first: the module that knows terminals takes 3 ms to load. */
export function isTerminal(stream: 0 | 1 | 2): boolean {
  try {
    const stats = fstatSync(stream)
    if (!stats.isCharacterDevice() || stats.rdev === statSync('/dev/null', { throwIfNoEntry: false })?.rdev) return false
    return process.getBuiltinModule('node:tty').isatty(stream)
  } catch {
    return false // a closed stream
  }
}
