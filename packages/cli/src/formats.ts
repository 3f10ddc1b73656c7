import type { Verdict } from '@sillsight/engine'
import { type FileResult, findingsText, type Palette, plainPalette, sentence, terminalPlan } from '@sillsight/report'
import type { Outcome } from './exit-codes.ts'
import { type Answer, type JudgedAnswer, problemsOf } from './judging.ts'
import { bold, dim, safe } from './plain-text.ts'
import { problemText } from './problem.ts'
import { program, shellWord } from './program.ts'
import { standardInput } from './reading.ts'
import { crashText } from './reported.ts'
import { type Look, readerOf } from './terminal.ts'

export const formats = ['text', 'brief', 'json', 'jsonl', 'sarif', 'junit'] as const
export type Format = (typeof formats)[number]

/** What one file adds to the output, made where it was judged. Plain data: it comes back from a worker thread as it is. */
export interface Written {
  readonly outcome: Outcome
  /** For standard output. */
  readonly result: string
  /** For standard error. */
  readonly remarks: string
  /** For formats that are written from all files at once. */
  readonly whole?: FileResult
}

/** Turns the answer for one file into text. */
export function written(answer: Answer, format: Format, look: Look): Written {
  const base = { outcome: answer.outcome, remarks: remarksOf(answer, format) }
  if (format === 'text')
    return { ...base, result: answer.kind === 'judged' ? safe(`${doorText(answer, look)}${whyHint(answer, look)}\n`) : '' }
  if (format === 'brief') return { ...base, result: safe(briefLine(answer)) }
  if (format === 'json' || format === 'jsonl') return { ...base, result: JSON.stringify(record(answer, look)) }
  return { ...base, result: '', whole: fileResult(answer) }
}

/** Everything about one file for programs to read: docs/command-line.md describes it. */
export function record(answer: Answer, look: Look): object {
  const { kind, file, outcome } = answer
  if (kind === 'refused') return { file, ok: false, outcome, issueCount: answer.issueCount, issues: answer.issues }
  if (kind === 'crashed') return { file, ok: false, outcome, crashes: [{ rule: 'sillsight', message: answer.message }] }
  const { door, judgement, sha256, notes } = answer
  const findings = judgement.findings.map((finding) => ({ ...finding, sentence: sentence(door, finding, readerOf(look)) }))
  const { edition, crashes, coverages } = judgement
  return { file, ok: true, outcome, door: judgement.door, edition, sha256, counts: countsOf(answer), findings, crashes, coverages, notes }
}

/** One door for a person: plan, findings, the hash of the result. */
export function doorText({ file, door, judgement, sha256 }: JudgedAnswer, { width, colored, ascii, ...look }: Look): string {
  const reader = readerOf(look)
  const palette = colored ? inkPalette : plainPalette
  const parts = [
    palette.quiet(file),
    terminalPlan(door, judgement, { ...reader, width, ascii, palette }).trimEnd(),
    findingsText(door, judgement, { ...reader, width, palette, ascii }).trimEnd(),
    palette.quiet(`result ${sha256}`),
  ]
  return `${parts.join('\n\n')}\n`
}

/** How to ask about the worst finding, where one is not in order. */
function whyHint({ file, judgement }: JudgedAnswer, { colored }: Look): string {
  const worst =
    judgement.findings.find(({ verdict }) => verdict === 'fail') ?? judgement.findings.find(({ verdict }) => verdict === 'undetermined')
  if (!worst || file === standardInput) return ''
  return `${(colored ? dim : plain)(`why?   ${program()} why ${shellWord(file)} ${worst.id}`)}\n`
}

function briefLine(answer: Answer): string {
  const word = { pass: 'in order', fail: 'fails', undetermined: 'not settled', 'bad-input': 'bad input', crash: 'crashed' }[answer.outcome]
  const rest =
    answer.kind === 'judged' ? countsText(answer) : answer.kind === 'refused' ? `${answer.issueCount} to mend` : 'please report it'
  return `${word.padEnd(11)}  ${answer.file}  ${rest}\n`
}

const verdictWords: readonly (readonly [Verdict, one: string, many: string])[] = [
  ['fail', 'fails', 'fail'],
  ['undetermined', 'not settled', 'not settled'],
  ['pass', 'in order', 'in order'],
  ['not-applicable', 'does not apply', 'do not apply'],
]

function countsOf({ judgement }: JudgedAnswer): Readonly<Record<Verdict, number>> {
  const count = (wanted: Verdict): number => judgement.findings.filter(({ verdict }) => verdict === wanted).length
  return { fail: count('fail'), undetermined: count('undetermined'), pass: count('pass'), 'not-applicable': count('not-applicable') }
}

function countsText(answer: JudgedAnswer): string {
  const counts = countsOf(answer)
  const parts = verdictWords
    .filter(([verdict]) => counts[verdict] > 0)
    .map(([verdict, one, many]) => `${counts[verdict]} ${counts[verdict] === 1 ? one : many}`)
  return parts.length > 0 ? parts.join(', ') : 'nothing was judged'
}

function remarksOf(answer: Answer, format: Format): string {
  if (answer.kind === 'refused') return safe(problemText(problemsOf(answer)))
  if (answer.kind === 'crashed') return safe(crashText(`${answer.file}: `, answer.message))
  const crashes = answer.judgement.crashes.map(({ rule, message }) => crashText(`${answer.file}: rule ${rule} `, message))
  const notes = format === 'text' ? answer.notes.map(({ path, text }) => `sillsight: ${answer.file}: ${path}: ${text}\n`) : []
  return safe([...crashes, ...notes].join(''))
}

function fileResult(answer: Answer): FileResult {
  const { file } = answer
  if (answer.kind === 'judged') return { file, door: answer.door, judgement: answer.judgement }
  if (answer.kind === 'refused') return { file, issues: answer.issues }
  return { file, issues: [{ code: 'crash', path: file, expected: 'a judgement', got: answer.message }] }
}

/** Weights of ink, no traffic-light colours: the word and its mark say the verdict, bold only draws the eye to it. */
export const inkPalette: Palette = {
  verdict: { fail: bold, undetermined: bold, pass: plain, 'not-applicable': dim },
  strong: bold,
  quiet: dim,
}

function plain(text: string): string {
  return text
}
