import { type SheetOptions, sheetSvg, type TimedFinding, timedFindings, timelineSvg, wiringSvg } from '@sillsight/report'
import type { Request } from '../arguments.ts'
import { type ExitCode, exitCodes } from '../exit-codes.ts'
import { type JudgedAnswer, judgedOrRefusal } from '../judging.ts'
import { nearWords } from '../near.ts'
import { print } from '../output.ts'
import { Refusal, shown } from '../problem.ts'
import { isTerminal, lookOf, readerOf } from '../terminal.ts'
import { mustBeFree, writeWhole } from '../writing.ts'
import { meantBy, unknownFinding } from './why.ts'

export function drawCommand(request: Request): ExitCode {
  const [file = ''] = request.words
  const out = request.values.get('out')
  const replace = request.switches.has('force')
  const scale = scaleOf(request.values.get('scale'))
  if (out === undefined && isTerminal(1)) throw new Refusal(wouldFillTheTerminal)
  if (out !== undefined && out !== '-' && !replace) mustBeFree(out)
  const answer = judgedOrRefusal(file)
  const { state, zone } = chosen(answer, request)
  const svg = drawn(file, answer, request, { ...readerOf(lookOf(request)), state, zone, scale })
  if (out === undefined || out === '-') print(svg)
  else writeWhole(out, svg, { replace })
  return exitCodes.pass
}

function drawn(file: string, answer: JudgedAnswer, request: Request, options: SheetOptions): string {
  const { door, judgement } = answer
  const view = request.values.get('view')
  if (view === 'timeline') return timelineSvg(door, judgement, timed(file, answer, request.values.get('finding')), options)
  refuseFinding(request)
  if (view !== 'wiring') return sheetSvg(door, judgement, options)
  if (door.wiring) return wiringSvg(door, door.wiring, judgement, options)
  throw new Refusal({
    code: 'no-wiring',
    place: `${file}: wiring`,
    expected: 'a wiring to draw',
    got: 'nothing',
    repair: 'docs/door-file.md says how one is described',
  })
}

function refuseFinding(request: Request): void {
  const typed = request.values.get('finding')
  if (typed === undefined) return
  const repair = 'add `--view timeline`, or leave the finding out'
  throw new Refusal({ code: 'needless-option', place: '--finding', expected: 'a view that shows one finding', got: shown(typed), repair })
}

/** The finding that is meant, or the worst of those that have a course in time. */
function timed(file: string, { judgement }: JudgedAnswer, typed: string | undefined): TimedFinding {
  const findings = timedFindings(judgement)
  const ids = findings.map(({ id }) => id)
  const meant = typed === undefined ? ids[0] : meantBy(typed, ids)
  const finding = findings.find(({ id }) => id === meant)
  if (finding) return finding
  if (ids.length > 0) throw unknownFinding('draw', file, typed, ids)
  throw new Refusal({
    code: 'nothing-in-time',
    place: file,
    expected: 'a finding in time (struck-by-leaf, walked-into) with a closing that meets or nears a body',
    got: 'none',
    repair: 'give the door lanes with paces, a drive, and sensors with response and hold; `sillsight judge` says what is missing',
  })
}

const wouldFillTheTerminal = {
  code: 'would-fill-the-terminal',
  place: 'draw',
  expected: 'a file or a pipe for the drawing',
  got: 'a terminal',
  repair: 'add `--out door.svg`; `--out -` prints it here all the same',
}

/** `1:25` and `25` are the same scale. */
function scaleOf(typed: string | undefined): number | undefined {
  if (typed === undefined) return undefined
  const scale = Number(/^\s*(?:1\s*:\s*)?(\d{1,4}(?:\.\d+)?)\s*$/.exec(typed)?.[1] ?? Number.NaN)
  if (scale >= 1 && scale <= 1000) return scale
  const repair = 'write for example `--scale 1:25`, or leave it out for the largest that fits'
  throw new Refusal({ code: 'bad-option-value', place: '--scale', expected: 'a scale from 1:1 to 1:1000', got: shown(typed), repair })
}

function chosen({ door }: JudgedAnswer, request: Request): { readonly state: string | undefined; readonly zone: string | undefined } {
  const state = request.values.get('state')
  const zone = request.values.get('zone')
  mustBeOneOf(
    'state',
    state,
    door.states.map(({ id }) => id),
  )
  mustBeOneOf(
    'zone',
    zone,
    door.zones.map(({ id }) => id),
  )
  return { state, zone }
}

function mustBeOneOf(what: string, wanted: string | undefined, ids: readonly string[]): void {
  if (wanted === undefined || ids.includes(wanted)) return
  const near = nearWords(wanted, ids)
  const repair = near.length > 0 ? `did you mean ${near.join(' or ')}?` : `this door has ${ids.join(', ') || 'none'}`
  throw new Refusal({ code: `unknown-${what}`, place: `--${what}`, expected: `a ${what} of this door`, got: shown(wanted), repair })
}
