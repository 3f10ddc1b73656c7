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
import { fieldAt } from './wording/instants.ts'
import type { Reader } from './wording/language.ts'
import { needWords, partName } from './wording/needs.ts'
import { place } from './wording/places.ts'
import { asAscii, called, capital, plain, wrapped } from './wording/plain.ts'
import { mend, ruleName, sentence } from './wording/sentence.ts'
import { isUnconfirmed, sourceWords } from './wording/sources.ts'
import { verdictMark } from './wording/verdicts.ts'

interface WhyOptions extends TextOptions {
  /** Whether each step names the module that computed it, inputs their places in the door file, and the head the finding by its id: for who looks things up in the program or the file, not for who stands at the door. Said unless it is false. */
  readonly hasModules?: boolean
}

/** The arithmetic of one finding, step by step, with where each figure came from; undefined if the judgement has no finding of this id. */
export function whyText(door: Door, judgement: Judgement, findingId: string, options: WhyOptions): string | undefined {
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

function headBlock(door: Door, finding: Finding, options: WhyOptions): readonly string[] {
  const { palette, language, width } = options
  const verdict = `${verdictMark(finding.verdict, options.ascii)} ${language.verdicts[finding.verdict]}`
  const repair = mend(door, finding, options)
  const lead = finding.verdict === 'fail' ? language.why.wouldMend : language.why.wouldSettle
  return [
    ...(options.hasModules === false ? [] : [`${palette.strong(ruleName(finding.rule, options))}  ${palette.quiet(plain(finding.id))}`]),
    palette.verdict[finding.verdict](verdict),
    ...wrapped(sentence(door, finding, options), width),
    ...(repair ? wrapped(`${lead}: ${repair}`, width) : []),
  ]
}

function stepsBlock(door: Door, finding: Finding, options: WhyOptions): readonly string[] {
  if (finding.steps.length === 0) return []
  return [
    options.palette.strong(options.language.why.computed),
    ...finding.steps.flatMap((step, i) => stepLines(door, finding, step, i, options)),
  ]
}

function stepLines(door: Door, finding: Finding, step: Step, index: number, options: WhyOptions): readonly string[] {
  const { width, palette, language } = options
  const { why } = language
  const number = `${index + 1}. `
  const formula = step.formula === undefined ? '' : ` = ${plain(language.worked(step.formula))}`
  const lines = wrapped(`${plain(language.worked(step.name))}${formula} = ${worked(step.quantity, options)}`, width - number.length)
  const pad = ' '.repeat(number.length)
  const inputs = step.from.map((input) => inputWords(door, finding, input, options)).join('; ')
  const from =
    inputs === ''
      ? []
      : wrapped(inputs, width - number.length - why.from.length - 1).map(
          (line, i) => `${pad}${i === 0 ? why.from : ' '.repeat(why.from.length)} ${line}`,
        )
  const by = options.hasModules === false ? [] : [`${pad}${palette.quiet(`${why.by} ${plain(step.by)}`)}`]
  return [...lines.map((line, i) => `${i === 0 ? number : pad}${line}`), ...from, ...by]
}

function inputWords(door: Door, finding: Finding, input: StepInput, options: WhyOptions): string {
  const { why, worked: inWords } = options.language
  if ('step' in input) {
    const number = finding.steps.findIndex(({ name }) => name === input.step) + 1
    const name = plain(inWords(input.step))
    return number > 0 ? why.step(number, name) : name
  }
  if ('value' in input) return `${why.value(plain(input.value))}${valueWords(input.value, options)}`
  const value = inputValue(door, input.input, options)
  const name = options.hasModules !== false && value === undefined ? partName(door, input.input, options) : undefined
  const place = options.hasModules === false ? needWords(door, input.input, options) : plain(input.input)
  return `${place}${value === undefined ? '' : ` = ${value}`}${name === undefined ? '' : ` (${name})`}${door.assumed.includes(input.input) ? ` (${why.assumed})` : ''}`
}

/** An outside value as it is printed, and as the reader measures. */
function valueWords(id: string, reader: Reader): string {
  const value = OUTSIDE_VALUES.find((each) => each.id === id)
  if (!value) return ''
  const numbers = typeof value.value === 'number' ? [value.value] : value.value
  const between = numbers.length === 3 ? ' \u00d7 ' : ', ' // the sides of a body, or a list
  const printed = `${numbers.map((each) => String(each).replace('.', reader.language.decimal)).join(between)}${value.unit === '1' ? '' : ` ${value.unit}`}`
  const isLength = value.unit === 'mm' || value.unit === 'm'
  const measured = numbers.map((each) => figure({ value: each, unit: value.unit }, reader)).join(between)
  return ` = ${printed}${isLength && reader.units === 'feet-inches' ? ` (${measured})` : ''}`
}

function againstBlock(finding: Finding, options: TextOptions): readonly string[] {
  const { why } = options.language
  if (finding.verdict === 'not-applicable' || !finding.measured || !finding.limit) return []
  const worse = (finding.verdict === 'fail') === finding.measured.value > finding.limit.value ? 'larger-is-worse' : 'smaller-is-worse'
  const shown = figureAgainst(finding.measured, finding.limit, options, worse)
  return [`${options.palette.strong(why.against)}: ${why.againstWords(shown.measured, shown.limit)}`]
}

/** Causes of a pocket, or of the pockets of a zone that fails. */
function pocketBlocks(door: Door, judgement: Judgement, finding: Finding, options: TextOptions): readonly (readonly string[])[] {
  const found = pocketOf(judgement, finding)
  if (!found) return []
  const { pocket, coverage } = found
  const { width, palette, language } = options
  const { why } = language
  const area = figure({ value: pocket.area_mm2, unit: 'mm2' }, options, 'larger-is-worse')
  const cells = why.cells(count(pocket.cells), figure({ value: coverage.grid.pitch_mm, unit: 'mm' }, options))
  const lines = pocket.causes.flatMap((cause, i) => {
    const words = why.cause(causeWords(door, cause, options), count(cause.cells), count(pocket.cells))
    return [
      ...wrapped(`${i + 1}. ${words}`, width).map((line, at) => (at === 0 ? line : `   ${line}`)),
      ...wrapped(`${why.wouldMend}: ${causeMend(cause.kind, options)}.`, width - 3).map((line) => `   ${line}`),
    ]
  })
  const watching =
    coverage.countedFields.length > 0 ? coverage.countedFields.map((each) => watchingWords(door, each, options)).join(', ') : why.none
  return [
    [
      palette.strong(why.pocket(pocket.letter, area, pocket.exact !== undefined, cells)),
      ...wrapped(why.fields(watching), width),
      ...(lines.length > 0 ? [why.causes, ...lines] : []),
    ],
  ]
}

/** "field “leaf” of sensor “corner”". @param field as `<sensor>/<field>` */
function watchingWords(door: Door, field: string, reader: Reader): string {
  const { things } = reader.language
  const found = fieldAt(door, field)
  return found?.field ? things.field(called(found.field.name, reader), things.sensor(called(found.sensor.name, reader))) : plain(field)
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

function worstCaseBlock(door: Door, finding: Finding, options: TextOptions): readonly string[] {
  if (finding.verdict === 'not-applicable' || !finding.worstCase) return []
  const { width, palette, language } = options
  const { why } = language
  const worst = finding.worstCase
  const posture = postureOf(door, worst)
  const state = door.states.length > 1 ? called(door.states.find(({ id }) => id === worst.state)?.name ?? worst.state, options) : undefined
  const body = posture ? postureWords(posture, options, worst.yaw_rad) : plain(worst.body)
  const [x, y, z] = [worst.x_mm, worst.y_mm, worst.z_mm].map((value) => figure({ value, unit: 'mm' }, options))
  return [
    palette.strong(why.worst),
    ...wrapped(why.body(body, state), width),
    ...wrapped(why.middle(place(door, worst, options)), width),
    palette.quiet(why.place(x ?? '', y ?? '', z ?? '')),
  ]
}

function basisBlock(door: Door, finding: Finding, options: WhyOptions): readonly string[] {
  if (finding.basis.length === 0) return []
  const { width, palette, language } = options
  const lines = finding.basis.flatMap(({ id, source, confirmed }) => {
    const open = isUnconfirmed(source.basis, confirmed) ? `. ${language.why.unconfirmed}` : ''
    const note = source.note === undefined ? '' : `. ${capital(plain(language.worked(source.note)))}`
    return wrapped(`${subjectWords(door, id, options)}: ${sourceWords(source, confirmed, options)}${open}${note}`, width - 2).map(
      (line, i) => (i === 0 ? `- ${line}` : `  ${line}`),
    )
  })
  return [palette.strong(language.why.basis), ...lines]
}

function subjectWords(door: Door, id: string, reader: WhyOptions): string {
  const { language } = reader
  const { why, worked: inWords } = language
  const body = door.bodies.find((each) => each.id === id)
  if (body) return reader.hasModules === false ? needWords(door, `confirmations/${id}`, reader) : why.testBody(plain(id))
  const sensor = door.sensors.find((each) => each.id === id)
  if (sensor) return why.sensor(called(sensor.name, reader))
  const value = OUTSIDE_VALUES.find((each) => each.id === id)
  if (id.includes('/')) return language.needs[id] ?? plain(id) // what the door file states
  return value ? `${plain(id)} (${plain(inWords(value.means)).replace(/\.$/, '')})` : why.rule(plain(id))
}

function closingBlock(finding: Finding, { width, palette, language: { why } }: TextOptions): readonly string[] {
  const provisional = finding.provisional === 'grid' ? ` ${why.provisional}` : ''
  return wrapped(`${why.edition(plain(finding.edition))}${provisional}`, width).map((line) => palette.quiet(line))
}
