import {
  type Door,
  type Finding,
  type Judgement,
  OUTSIDE_VALUES,
  type Pocket,
  type Step,
  type StepInput,
  type ZoneCoverage,
} from '@sillsight/engine'
import type { TextOptions } from './options.ts'
import { postureOf, postureWords } from './wording/bodies.ts'
import { causeMend, causeWords } from './wording/causes.ts'
import { count, figure, figureAgainst, worked } from './wording/figures.ts'
import { inputValue } from './wording/inputs.ts'
import { partName } from './wording/needs.ts'
import { place } from './wording/places.ts'
import { asAscii, capital, plain, wrapped } from './wording/plain.ts'
import { mend, ruleName, sentence } from './wording/sentence.ts'
import { isUnconfirmed, sourceWords } from './wording/sources.ts'
import { verdictMark, verdictWords } from './wording/verdicts.ts'

/** The arithmetic of one finding, step by step, with where each figure came from; undefined if the judgement has no finding of this id. */
export function whyText(door: Door, judgement: Judgement, findingId: string, options: TextOptions): string | undefined {
  const finding = judgement.findings.find(({ id }) => id === findingId)
  if (!finding) return undefined
  const blocks = [
    headBlock(door, finding, options),
    stepsBlock(door, finding, options),
    againstBlock(finding, options),
    ...pocketBlocks(door, judgement, finding, options),
    worstCaseBlock(door, finding, options),
    basisBlock(door, finding, options),
    closingBlock(finding, options),
  ]
  const text = blocks
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')
  return `${options.ascii ? asAscii(text) : text}\n`
}

function headBlock(door: Door, finding: Finding, options: TextOptions): readonly string[] {
  const { palette, units, width } = options
  const verdict = `${verdictMark(finding.verdict, options.ascii)} ${verdictWords[finding.verdict]}`
  const repair = mend(door, finding, { units })
  return [
    `${palette.strong(ruleName(finding.rule))}  ${palette.quiet(plain(finding.id))}`,
    palette.verdict[finding.verdict](verdict),
    ...wrapped(sentence(door, finding, { units }), width),
    ...(repair ? wrapped(`${finding.verdict === 'fail' ? 'Would mend it' : 'Would settle it'}: ${repair}`, width) : []),
  ]
}

function stepsBlock(door: Door, finding: Finding, options: TextOptions): readonly string[] {
  if (finding.steps.length === 0) return []
  return [options.palette.strong('How it was computed'), ...finding.steps.flatMap((step, i) => stepLines(door, finding, step, i, options))]
}

function stepLines(door: Door, finding: Finding, step: Step, index: number, { units, width, palette }: TextOptions): readonly string[] {
  const number = `${index + 1}. `
  const formula = step.formula === undefined ? '' : ` = ${plain(step.formula)}`
  const lines = wrapped(`${plain(step.name)}${formula} = ${worked(step.quantity, units)}`, width - number.length)
  const pad = ' '.repeat(number.length)
  const inputs = step.from.map((input) => inputWords(door, finding, input, units)).join('; ')
  const from =
    inputs === '' ? [] : wrapped(inputs, width - number.length - 5).map((line, i) => `${pad}${i === 0 ? 'from ' : '     '}${line}`)
  return [...lines.map((line, i) => `${i === 0 ? number : pad}${line}`), ...from, `${pad}${palette.quiet(`by ${plain(step.by)}`)}`]
}

function inputWords(door: Door, finding: Finding, input: StepInput, units: TextOptions['units']): string {
  if ('step' in input) {
    const number = finding.steps.findIndex(({ name }) => name === input.step) + 1
    return number > 0 ? `step ${number}, ${plain(input.step)}` : plain(input.step)
  }
  if ('value' in input) return `the value ${plain(input.value)}${valueWords(input.value, units)}`
  const value = inputValue(door, input.input, units)
  const name = value === undefined ? partName(door, input.input, units) : undefined
  return `${plain(input.input)}${value === undefined ? '' : ` = ${value}`}${name === undefined ? '' : ` (${name})`}${door.assumed.includes(input.input) ? ' (nobody entered it; a default stands in)' : ''}`
}

/** An outside value as it is printed, and as the reader measures. */
function valueWords(id: string, units: TextOptions['units']): string {
  const value = OUTSIDE_VALUES.find((each) => each.id === id)
  if (!value) return ''
  const numbers = typeof value.value === 'number' ? [value.value] : value.value
  const printed = `${numbers.join(' \u00d7 ')}${value.unit === '1' ? '' : ` ${value.unit}`}`
  const isLength = value.unit === 'mm' || value.unit === 'm'
  const measured = numbers.map((each) => figure({ value: each, unit: value.unit }, units)).join(' \u00d7 ')
  return ` = ${printed}${isLength && units === 'feet-inches' ? ` (${measured})` : ''}`
}

function againstBlock(finding: Finding, { units, palette }: TextOptions): readonly string[] {
  if (finding.verdict === 'not-applicable' || !finding.measured || !finding.limit) return []
  const worse = (finding.verdict === 'fail') === finding.measured.value > finding.limit.value ? 'larger-is-worse' : 'smaller-is-worse'
  const shown = figureAgainst(finding.measured, finding.limit, units, worse)
  return [`${palette.strong('Against the limit')}: ${shown.measured} against ${shown.limit}`]
}

/** Causes of a pocket, or of the pockets of a zone that fails. */
function pocketBlocks(door: Door, judgement: Judgement, finding: Finding, options: TextOptions): readonly (readonly string[])[] {
  const found = pocketOf(judgement, finding)
  if (!found) return []
  const { pocket, coverage } = found
  const { units, width, palette } = options
  const area = figure({ value: pocket.area_mm2, unit: 'mm2' }, units, 'larger-is-worse')
  const cells = `${count(pocket.cells)} cells of ${figure({ value: coverage.grid.pitch_mm, unit: 'mm' }, units)}`
  const lines = pocket.causes.flatMap((cause, i) => {
    const share = `${count(cause.cells)} of ${count(pocket.cells)} cells`
    return [
      ...wrapped(`${i + 1}. ${causeWords(door, cause)}: ${share} would be seen without this`, width).map((line, at) =>
        at === 0 ? line : `   ${line}`,
      ),
      ...wrapped(`Would mend it: ${causeMend(cause.kind)}.`, width - 3).map((line) => `   ${line}`),
    ]
  })
  const watching = coverage.countedFields.length > 0 ? coverage.countedFields.map(plain).join(', ') : 'none'
  return [
    [
      palette.strong(`Pocket ${pocket.letter}: ${area}, ${pocket.exact ? `exact; on the grid ${cells}` : cells}`),
      ...wrapped(`Fields that counted: ${watching}`, width),
      ...(lines.length > 0 ? ['Why it goes unseen, by cells of the grid, most first:', ...lines] : []),
    ],
  ]
}

function pocketOf(
  { coverages }: Judgement,
  { subject, state, facts }: Finding,
): { readonly pocket: Pocket; readonly coverage: ZoneCoverage } | undefined {
  const letter = subject.kind === 'pocket' ? subject.id.slice(subject.id.lastIndexOf('/') + 1) : facts['pocket']
  const zone = subject.kind === 'pocket' ? subject.id.slice(0, subject.id.lastIndexOf('/')) : subject.id
  const coverage = coverages.find((each) => each.zone === zone && (state === undefined || each.state === state))
  const pocket = coverage?.pockets.find((each) => each.letter === letter)
  return coverage && pocket ? { pocket, coverage } : undefined
}

function worstCaseBlock(door: Door, finding: Finding, { units, width, palette }: TextOptions): readonly string[] {
  if (finding.verdict === 'not-applicable' || !finding.worstCase) return []
  const worst = finding.worstCase
  const posture = postureOf(door, worst)
  const state = door.states.length > 1 ? `, ${plain(door.states.find(({ id }) => id === worst.state)?.name ?? worst.state)}` : ''
  const body = posture ? postureWords(posture, units, worst.yaw_rad) : plain(worst.body)
  return [
    palette.strong('Worst case, to try on site'),
    ...wrapped(`Test body of ${body}${state}.`, width),
    ...wrapped(`Its middle ${place(door, worst, units)}.`, width),
    palette.quiet(
      `x ${figure({ value: worst.x_mm, unit: 'mm' }, units)}, y ${figure({ value: worst.y_mm, unit: 'mm' }, units)}, underside at z ${figure({ value: worst.z_mm, unit: 'mm' }, units)}`,
    ),
  ]
}

function basisBlock(door: Door, finding: Finding, { width, palette }: TextOptions): readonly string[] {
  if (finding.basis.length === 0) return []
  const lines = finding.basis.flatMap(({ id, source, confirmed }) => {
    const open = isUnconfirmed(source.basis, confirmed) ? '. Until somebody confirms it nothing that rests on it is in order' : ''
    const note = source.note === undefined ? '' : `. ${capital(plain(source.note))}`
    return wrapped(`${subjectWords(door, id)}: ${sourceWords(source, confirmed)}${open}${note}`, width - 2).map((line, i) =>
      i === 0 ? `- ${line}` : `  ${line}`,
    )
  })
  return [palette.strong('What it rests on'), ...lines]
}

function subjectWords(door: Door, id: string): string {
  const body = door.bodies.find((each) => each.id === id)
  if (body) return `test body ${plain(id)}`
  const sensor = door.sensors.find((each) => each.id === id)
  if (sensor) return `sensor ${plain(sensor.name)}`
  const value = OUTSIDE_VALUES.find((each) => each.id === id)
  return value ? `${plain(id)} (${plain(value.means).replace(/\.$/, '')})` : `the rule ${plain(id)}`
}

function closingBlock(finding: Finding, { width, palette }: TextOptions): readonly string[] {
  const provisional = finding.provisional === 'grid' ? ' Provisional: placements between the grid points were not computed.' : ''
  return wrapped(`Judged by edition ${plain(finding.edition)} of the rules.${provisional}`, width).map((line) => palette.quiet(line))
}
