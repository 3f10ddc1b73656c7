import { sheetSvg } from '@sillsight/report'
import type { Request } from '../arguments.ts'
import { type ExitCode, exitCodes } from '../exit-codes.ts'
import { type JudgedAnswer, judgedOrRefusal } from '../judging.ts'
import { nearWords } from '../near.ts'
import { print } from '../output.ts'
import { Refusal, shown } from '../problem.ts'
import { isTerminal, lookOf, readerOf } from '../terminal.ts'
import { mustBeFree, writeWhole } from '../writing.ts'

export function drawCommand(request: Request): ExitCode {
  const [file = ''] = request.words
  const out = request.values.get('out')
  const replace = request.switches.has('force')
  const scale = scaleOf(request.values.get('scale'))
  if (out === undefined && isTerminal(1)) throw new Refusal(wouldFillTheTerminal)
  if (out !== undefined && out !== '-' && !replace) mustBeFree(out)
  const answer = judgedOrRefusal(file)
  const { state, zone } = chosen(answer, request)
  const svg = sheetSvg(answer.door, answer.judgement, { ...readerOf(lookOf(request)), state, zone, scale })
  if (out === undefined || out === '-') print(svg)
  else writeWhole(out, svg, { replace })
  return exitCodes.pass
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
