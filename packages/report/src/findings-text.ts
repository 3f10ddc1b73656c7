import type { Door, Finding, Judgement, Verdict } from '@sillsight/engine'
import type { Palette, TextOptions } from './options.ts'
import { asAscii, plain, wrapped } from './wording/plain.ts'
import { mend, sentence } from './wording/sentence.ts'
import { tally } from './wording/tally.ts'
import { VERDICTS_WORST_FIRST, verdictMark, verdictWords } from './wording/verdicts.ts'
import { isInvented } from './wording/sheet-words.ts'

const INDENT = 4

/** The findings of one door as text for a terminal: name, count, then sentences, worst first. Ends in a line feed. */
export function findingsText(door: Door, judgement: Judgement, options: TextOptions): string {
  const { palette } = options
  const heading = [plain(door.name), isInvented(door) ? ' (invented for the demonstration)' : ''].join('')
  const findings = worstFirst(judgement.findings)
  const told = findings.filter(({ verdict }) => verdict !== 'not-applicable')
  const blocks = [
    [palette.strong(shown(heading, options)), shown(tally(judgement), options)],
    ...told.map((finding) => findingBlock(door, finding, options)),
    ...crashBlocks(judgement, options),
    notApplicableBlock(findings.filter(({ verdict }) => verdict === 'not-applicable'), options),
    closing(findings, options),
  ]
  return `${blocks.filter((lines) => lines.length > 0).map((lines) => lines.join('\n')).join('\n\n')}\n`
}

/** Fails first, then what is not settled, then the rest; findings of one verdict keep their order. */
export function worstFirst(findings: readonly Finding[]): readonly Finding[] {
  return VERDICTS_WORST_FIRST.flatMap((verdict) => findings.filter((finding) => finding.verdict === verdict))
}

/** Mark and sentence, then what would mend it, then the id for `why`. */
function findingBlock(door: Door, finding: Finding, options: TextOptions): readonly string[] {
  const { palette, units, ascii } = options
  const mark = verdictMark(finding.verdict, ascii)
  const lead = `${mark} ${verdictWords[finding.verdict]}: `
  const [first = '', ...rest] = linesOf(`${lead}${sentence(door, finding, { units })}`, options)
  const repair = finding.verdict === 'pass' ? '' : mend(door, finding, { units })
  return [
    paintedLead(first, lead, finding.verdict, palette),
    ...rest.map(indented),
    ...(repair ? linesOf(repair, options).map(indented) : []),
    indented(palette.quiet(shown(plain(finding.id), options))),
  ]
}

function paintedLead(line: string, lead: string, verdict: Verdict, palette: Palette): string {
  const words = lead.trimEnd().replace(/:$/, '')
  return line.startsWith(words) ? palette.verdict[verdict](words) + line.slice(words.length) : line
}

function crashBlocks({ crashes }: Judgement, { width, ascii }: TextOptions): readonly (readonly string[])[] {
  const say = (text: string): string => (ascii ? asAscii(text) : text)
  return crashes.map(({ rule, message }) => wrapped(say(`! Rule ${plain(rule)} broke down and gave no answer: ${plain(message)}. This is a fault of the program, please report it.`), width))
}

/** What does not apply is said in one paragraph: it is no news. */
function notApplicableBlock(findings: readonly Finding[], options: TextOptions): readonly string[] {
  if (findings.length === 0) return []
  const ids = findings.map(({ id }) => plain(id)).join(', ')
  return linesOf(`${verdictMark('not-applicable', options.ascii)} ${verdictWords['not-applicable']}: ${ids}`, options).map((line, i) => options.palette.quiet(i === 0 ? line : indented(line)))
}

function closing(findings: readonly Finding[], options: TextOptions): readonly string[] {
  const provisional = findings.some((finding) => finding.provisional === 'grid')
  const words = provisional ? 'Provisional: placements between the grid points were not computed. ' : ''
  return wrapped(shown(`${words}Computed, not certified: a competent person decides, and local rules apply.`, options), options.width).map((line) => options.palette.quiet(line))
}

function linesOf(text: string, options: TextOptions): readonly string[] {
  return wrapped(shown(text, options), options.width - INDENT)
}

function indented(line: string): string {
  return `${' '.repeat(INDENT)}${line}`
}

function shown(text: string, { ascii }: TextOptions): string {
  return ascii ? asAscii(text) : text
}
