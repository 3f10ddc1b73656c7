import { type Catalogue, type DoorFile, type Issue, type Note, parseDocument, sha256, toDoor } from '@sillsight/document'
import { canonicalText, type Door, type Judgement, judge } from '@sillsight/engine'
import type { Outcome } from './exit-codes.ts'
import { type Problem, Refusal } from './problem.ts'
import { readBeside, readText, standardInput } from './reading.ts'

/** What became of one file. `file` is the name that messages and results use. */
export type Answer = JudgedAnswer | RefusedAnswer | CrashedAnswer

export interface JudgedAnswer {
  readonly kind: 'judged'
  readonly file: string
  readonly outcome: Outcome
  readonly document: DoorFile
  /** What the file may use: what is built in and its own libraries. */
  readonly catalogue: Catalogue
  readonly door: Door
  readonly judgement: Judgement
  /** SHA-256 of the judgement's canonical text: the same on every machine. */
  readonly sha256: string
  readonly notes: readonly Note[]
  /** SHA-256 of the door file's own bytes: evidence names the file by it. */
  readonly textSha256: string
}
export interface RefusedAnswer {
  readonly kind: 'refused'
  readonly file: string
  readonly outcome: 'bad-input'
  readonly issues: readonly Issue[]
  /** May be more than are listed. */
  readonly issueCount: number
}
/** The program threw where it should have answered. */
export interface CrashedAnswer {
  readonly kind: 'crashed'
  readonly file: string
  readonly outcome: 'crash'
  readonly message: string
}

/** Reads and judges one file. Always answers: what is wrong with the file, or with the program, is an answer too. */
export function judgeFile(file: string, text?: string): Answer {
  const called = file === '-' ? standardInput : file
  try {
    return judgeText(file, called, text ?? readText(file))
  } catch (problem) {
    if (problem instanceof Refusal) return refused(called, problem.problems.map(issueOf))
    return { kind: 'crashed', file: called, outcome: 'crash', message: crashMessage(problem) }
  }
}

/** The judged door of one file. @throws Refusal if there is none to explain or draw */
export function judgedOrRefusal(file: string): JudgedAnswer {
  const answer = judgeFile(file)
  if (answer.kind === 'judged') return answer
  if (answer.kind === 'refused') throw new Refusal(...problemsOf(answer))
  throw new Error(answer.message)
}

function judgeText(file: string, called: string, text: string): Answer {
  const parsed = parseDocument(text, { readLibrary: (reference) => readBeside(file, reference), sha256 })
  if (!parsed.ok) return refused(called, parsed.issues, parsed.issueCount)
  const door = toDoor(parsed.document, parsed.catalogue)
  const judgement = judge(door)
  const { document, catalogue, notes } = parsed
  return {
    kind: 'judged',
    file: called,
    outcome: outcomeOf(judgement),
    document,
    catalogue,
    door,
    judgement,
    sha256: sha256(canonicalText(judgement)),
    notes,
    textSha256: sha256(text),
  }
}

/** A crashed rule outweighs all, for nobody knows what it would have said. Where nothing was judged, nothing passes. */
export function outcomeOf({ findings, crashes }: Pick<Judgement, 'findings' | 'crashes'>): Outcome {
  if (crashes.length > 0) return 'crash'
  const verdicts = new Set(findings.map(({ verdict }) => verdict))
  if (verdicts.has('fail')) return 'fail'
  return verdicts.has('pass') && !verdicts.has('undetermined') ? 'pass' : 'undetermined'
}

/** The issues of a file as the problems that a person reads, each with its place and a repair. */
export function problemsOf({ file, issues, issueCount }: RefusedAnswer): readonly Problem[] {
  const listed = issues.map((issue) => ({
    ...issue,
    place: placeIn(file, issue.path),
    repair: issue.repair ?? 'change it in the file; `sillsight schema` says what fits',
  }))
  if (issueCount <= issues.length) return listed
  const more = {
    code: 'more-issues',
    place: file,
    expected: 'no issues',
    got: `${issueCount - issues.length} more`,
    repair: 'mend these first, then judge again',
  }
  return [...listed, more]
}

function placeIn(file: string, path: string): string {
  return path === 'file' || path === file || path === '' ? file : `${file}: ${path}`
}

function issueOf({ code, place, expected, got, repair }: Problem): Issue {
  return { code, path: place, expected, got, repair }
}

function refused(file: string, issues: readonly Issue[], issueCount = issues.length): RefusedAnswer {
  return { kind: 'refused', file, outcome: 'bad-input', issues, issueCount }
}

export function crashMessage(problem: unknown): string {
  return problem instanceof Error ? (problem.stack ?? problem.message) : String(problem)
}
