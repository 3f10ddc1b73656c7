import type { Door, Finding, Judgement, Verdict } from '@sillsight/engine'
import type { TextOptions } from './options.ts'
import { type FindingGroup, grouped } from './wording/groups.ts'
import { asAscii, plain, wrapped } from './wording/plain.ts'
import { mend, ruleName, sentence, sentenceOfPass, waitingWords } from './wording/sentence.ts'
import { inventedNote } from './wording/sheet-words.ts'
import { tally } from './wording/tally.ts'
import { verdictMark } from './wording/verdicts.ts'

const INDENT = '    '

/** The findings of one door as text for a terminal: name, count, then sentences, worst first. Ends in a line feed. */
export function findingsText(door: Door, judgement: Judgement, options: TextOptions): string {
  const groups = grouped(judgement.findings)
  const of = (verdict: Verdict): readonly FindingGroup[] => groups.filter(({ findings }) => findings[0].verdict === verdict)
  const blocks = [
    headBlock(door, judgement, options),
    ...of('fail').map(({ findings }) => findingLines(door, findings[0], options)),
    ...of('undetermined').map((group) =>
      group.waitsFor === undefined ? findingLines(door, group.findings[0], options) : waitingLines(door, group, options),
    ),
    ...crashBlocks(judgement, options),
    of('pass').flatMap(({ findings }) => passLines(door, findings[0], options)),
    notApplicableLines(
      of('not-applicable').map(({ findings }) => findings[0]),
      options,
    ),
    closingLines(judgement.findings, options),
  ]
  return `${blocks
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`
}

function headBlock(door: Door, judgement: Judgement, options: TextOptions): readonly string[] {
  const note = inventedNote(door, options)
  return [
    ...lines(plain(door.name), options, '').map(options.palette.strong),
    ...(note === undefined ? [] : lines(note, options, '').map(options.palette.quiet)),
    ...lines(tally(judgement, options), options, ''),
  ]
}

/** Mark and sentence, what would mend or settle it, and the id for `why`. */
function findingLines(door: Door, finding: Finding, options: TextOptions): readonly string[] {
  const { palette } = options
  const repair = mend(door, finding, options)
  return [
    ...led(sentence(door, finding, options), finding.verdict, options),
    ...(repair === '' ? [] : lines(repair, options, INDENT)),
    ...lines(plain(finding.id), options, INDENT).map(palette.quiet),
  ]
}

/** Passes that wait for the same grounds: the grounds once, then what each would say. */
function waitingLines(door: Door, group: FindingGroup, options: TextOptions): readonly string[] {
  return [
    ...led(waitingWords(door, group, options), 'undetermined', options),
    ...lines(mend(door, group.findings[0], options), options, INDENT),
    ...group.findings.flatMap((finding) => withId(sentenceOfPass(door, finding, options), finding, options, `${INDENT}- `)),
  ]
}

function passLines(door: Door, finding: Finding, options: TextOptions): readonly string[] {
  const lead = `${verdictMark('pass', options.ascii)} ${options.language.verdicts.pass}: `
  return withId(sentence(door, finding, options), finding, options, lead).map((line, i) =>
    i === 0 ? paintedLead(line, 'pass', options) : line,
  )
}

/** A sentence with its id behind it, the first line after `start`, the others set in. */
function withId(text: string, finding: Finding, options: TextOptions, start: string): readonly string[] {
  const id = shown(`[${plain(finding.id)}]`, options)
  const inset = ' '.repeat(start.startsWith(INDENT) ? start.length : INDENT.length)
  const all = wrapped(`${shown(`${start.trimStart()}${text}`, options)} ${id}`, options.width - inset.length)
  const set = all.map((line, i) => (i === 0 ? `${start.startsWith(INDENT) ? INDENT : ''}${line}` : `${inset}${line}`))
  return set.map((line, i) => (i === set.length - 1 && line.endsWith(id) ? line.slice(0, -id.length) + options.palette.quiet(id) : line))
}

function led(text: string, verdict: Verdict, options: TextOptions): readonly string[] {
  const all = wrapped(
    shown(`${verdictMark(verdict, options.ascii)} ${options.language.verdicts[verdict]}: ${text}`, options),
    options.width - INDENT.length,
  )
  return all.map((line, i) => (i === 0 ? paintedLead(line, verdict, options) : `${INDENT}${line}`))
}

function paintedLead(line: string, verdict: Verdict, { palette, ascii, language }: TextOptions): string {
  const words = `${verdictMark(verdict, ascii)} ${language.verdicts[verdict]}`
  return line.startsWith(words) ? palette.verdict[verdict](words) + line.slice(words.length) : line
}

function crashBlocks({ crashes }: Judgement, options: TextOptions): readonly (readonly string[])[] {
  return crashes.map(({ rule, message }) => lines(options.language.findings.crashed(plain(rule), plain(message)), options, ''))
}

/** What does not apply is no news: one paragraph of ids. */
function notApplicableLines(findings: readonly Finding[], options: TextOptions): readonly string[] {
  if (findings.length === 0) return []
  return led(findings.map(({ id }) => plain(id)).join(', '), 'not-applicable', options).map(options.palette.quiet)
}

function closingLines(findings: readonly Finding[], options: TextOptions): readonly string[] {
  const names = [...new Set(findings.filter(({ provisional }) => provisional === 'grid').map(({ rule }) => ruleName(rule, options)))]
  const { findings: words, listed } = options.language
  const provisional = names.length > 0 ? `${words.provisional(listed(names))} ` : ''
  return lines(`${provisional}${words.notCertified}`, options, '').map(options.palette.quiet)
}

function lines(text: string, options: TextOptions, indent: string): readonly string[] {
  return wrapped(shown(text, options), options.width - indent.length).map((line) => indent + line)
}

function shown(text: string, { ascii }: TextOptions): string {
  return ascii ? asAscii(text) : text
}
