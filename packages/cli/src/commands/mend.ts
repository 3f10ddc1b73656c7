import { applyEdits, type FileEdit, offers, serialise } from '@sillsight/document'
import { type Finding, type Repairs, repairs, type Tried } from '@sillsight/engine'
import { plainPalette, repairOutcome, repairWords, ruleName, sentence, wrapped } from '@sillsight/report'
import type { Request } from '../arguments.ts'
import { type ExitCode, exitCodes } from '../exit-codes.ts'
import { inkPalette } from '../formats.ts'
import { type JudgedAnswer, judgedOrRefusal } from '../judging.ts'
import { print, tell } from '../output.ts'
import { safe } from '../plain-text.ts'
import { Refusal, shown } from '../problem.ts'
import { isTerminal, lookOf, readerOf } from '../terminal.ts'
import { mustBeFree, writeWhole } from '../writing.ts'
import { meantBy, unknownFinding } from './why.ts'

/** What was found for one finding; only what the door file can hold is offered. */
interface Told extends Repairs {
  readonly edits: readonly (readonly FileEdit[])[]
}

export function mendCommand(request: Request): ExitCode {
  const [file = '', word] = request.words
  const out = request.values.get('out')
  const replace = request.switches.has('force')
  const take = takeOf(request, word)
  if (out !== undefined && out !== '-' && !replace) mustBeFree(out)
  const answer = judgedOrRefusal(file)
  const failing = mendable(answer.judgement.findings)
  const meant = word === undefined ? failing : [chosen(file, word, answer.judgement.findings)]
  const found = meant.map((finding) => search(answer, finding))
  if (take !== undefined) return write(answer, found[0], take, out ?? '-', replace)
  if (request.switches.has('json')) print(safe(`${JSON.stringify(found, undefined, 2)}\n`))
  else print(safe(textOf(answer, meant, found, request)))
  return found.every(({ offered }) => offered.length > 0) ? exitCodes.pass : exitCodes.undetermined
}

function takeOf(request: Request, word: string | undefined): number | undefined {
  const typed = request.values.get('take')
  if (typed === undefined) return undefined
  const take = Number(typed)
  const repair = 'run `mend` without --take first: it numbers the repairs of each finding'
  if (!Number.isInteger(take) || take < 1)
    throw new Refusal({ code: 'bad-option-value', place: '--take', expected: 'the number of a repair', got: shown(typed), repair })
  if (word === undefined)
    throw new Refusal({ code: 'missing-word', place: '--take', expected: 'the id of one finding', got: 'none', repair })
  return take
}

/** A pocket is mended with its zone. */
function mendable(findings: readonly Finding[]): readonly Finding[] {
  return findings.filter(({ verdict, rule }) => verdict === 'fail' && rule !== 'blind-pocket')
}

function chosen(file: string, word: string, findings: readonly Finding[]): Finding {
  const ids = findings.map(({ id }) => id)
  const finding = findings.find(({ id }) => id === meantBy(word, ids))
  if (finding === undefined) throw unknownFinding('mend', file, word, ids)
  const of =
    finding.rule === 'blind-pocket'
      ? findings.find(
          ({ rule, subject, state }) =>
            rule === 'zone-covered' && finding.subject.id.startsWith(`${subject.id}/`) && state === finding.state,
        )
      : finding
  if (of?.verdict === 'fail') return of
  const repair = '`sillsight judge` lists what fails'
  throw new Refusal({
    code: 'nothing-to-mend',
    place: finding.id,
    expected: 'a finding that fails',
    got: finding.verdict,
    repair,
  })
}

function search({ document, catalogue, door, judgement }: JudgedAnswer, finding: Finding): Told {
  const tried: Tried = { grid: 0, exact: 0 }
  const work = repairs(door, judgement, finding.id, tried)
  const onTerminal = isTerminal(2)
  let told_ms = performance.now()
  let step = work.next()
  while (!step.done) {
    if (onTerminal && performance.now() - told_ms > 150) {
      told_ms = performance.now()
      tell(`\r${finding.id}: ${tried.grid + tried.exact} doors judged\u001b[K`)
    }
    step = work.next()
  }
  if (onTerminal) tell('\r\u001b[K')
  const holds = offers(document, door, step.value.offered, catalogue)
  return { ...step.value, offered: holds.map(({ repair }) => repair), edits: holds.map(({ edits }) => edits) }
}

function write({ document }: JudgedAnswer, found: Told | undefined, take: number, out: string, replace: boolean): ExitCode {
  const edits = found?.edits[take - 1]
  if (edits === undefined) {
    const got = `${found?.edits.length ?? 0} repairs`
    throw new Refusal({
      code: 'no-such-repair',
      place: '--take',
      expected: `repair ${take}`,
      got,
      repair: 'run `mend` without --take to see them',
    })
  }
  const changed = structuredClone(document)
  applyEdits(changed, edits)
  const text = serialise(changed)
  if (out === '-') print(text)
  else writeWhole(out, text, { replace })
  return exitCodes.pass
}

function textOf({ door, judgement }: JudgedAnswer, meant: readonly Finding[], found: readonly Told[], request: Request): string {
  const { colored, width, ...look } = lookOf(request)
  const reader = readerOf(look)
  const palette = colored ? inkPalette : plainPalette
  if (meant.length === 0) return 'Nothing fails at this door.\n'
  const indented = (text: string, first: string) =>
    wrapped(text, width - first.length).map((line, i) => `${i === 0 ? first : ' '.repeat(first.length)}${line}`)
  const lines = meant.flatMap((finding, i) => {
    const { offered, rejected, nearest, tried } = found[i] as Told
    return [
      `${palette.strong(ruleName(finding.rule, reader))}  ${palette.quiet(finding.id)}`,
      ...wrapped(sentence(door, finding, reader), width),
      ...offered.flatMap((repair, n) => [
        ...indented(repairWords(door, repair.steps, reader), `${n + 1}  `),
        ...indented(repairOutcome(judgement.findings, repair, reader), '   '),
      ]),
      ...(offered.length === 0 ? ['No repair was found.'] : []),
      ...rejected.flatMap(({ steps, worsens }) => indented(rejectedWords(repairWords(door, steps, reader), worsens), 'not offered  ')),
      ...(nearest
        ? indented(`${repairWords(door, nearest.steps, reader)} Leaves ${Math.ceil(nearest.left * 100)} % of the shortfall.`, 'nearest  ')
        : []),
      palette.quiet(`${tried.grid} doors judged by the grid, ${tried.exact} exactly.`),
      '',
    ]
  })
  return `${lines.join('\n').trimEnd()}\n`
}

function rejectedWords(steps: string, worsens: readonly string[]): string {
  return worsens.length > 0 ? `${steps} Makes worse: ${worsens.join(', ')}.` : `${steps} By the grid it would do; not for every placement.`
}
