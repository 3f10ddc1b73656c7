import { figure, type Toward } from '../figures.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { against, flag, inState, lengthToward, nameIn, number, type Told, word, worstBody } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

function laneWords(told: Told): string {
  const name = nameIn(told, 'laneName', 'lane')
  return name === undefined ? 'the lane' : told.language.things.lane(name)
}

function speed(told: Told, key: string, toward: Toward): string | undefined {
  const value = number(told, key)
  return value === undefined ? undefined : figure({ value, unit: 'mm_per_s' }, told, toward)
}

/** Another body close by, at the least distance of the lane. */
function companyWords(told: Told): string {
  const company = word(told, 'company')
  const gap = lengthToward(told, 'followGap_mm', 'nearest')
  if (gap === undefined || company === undefined) return ''
  return company === 'ahead' ? `, ${gap} behind another` : `, another ${gap} behind it`
}

/** What else was tried in this lane. */
function alsoWords(told: Told): string {
  const gap = lengthToward(told, 'followGap_mm', 'nearest')
  return `${gap === undefined ? '' : `, also with another ${gap} ahead or behind`}${flag(told, 'falls') === true ? ', also where somebody falls and stays' : ''}`
}

/** When the control begins a closing at all, as far as somebody said. */
function startWords(told: Told): string {
  const after = number(told, 'commandedAfter_s')
  const warning = number(told, 'warning_s')
  const attempts = number(told, 'attempts')
  const time = (value: number) => figure({ value, unit: 's' }, told, 'smaller-is-worse')
  return [
    after !== undefined && after > 0 ? `, commanded at the earliest ${time(after)} after outputs let go` : '',
    warning === undefined ? '' : `, after a warning of ${time(warning)}`,
    attempts === undefined || attempts === 0 ? '' : `, at first or tried again after a reversal`,
  ].join('')
}

/** Who comes, how fast, and what the output has done until then. */
function howItComes(told: Told): string {
  const part = word(told, 'part')
  const body = `${part === undefined ? '' : `“${part}” of `}${worstBody(told) ?? 'a body'}`
  const from = word(told, 'from')
  const side = from === 'a' || from === 'b' ? told.language.places.side(told.door.sides[from]) : undefined
  const pace = speed(told, 'body_mm_per_s', 'nearest')
  if (flag(told, 'stands') === true) return `${body} that stands in ${laneWords(told)}${inState(told)}`
  return `${body} in ${laneWords(told)}${side ? `, coming from ${side}` : ''}${pace ? ` at ${pace}` : ''}${companyWords(told)}${inState(told)}`
}

/** Nobody is struck, and yet somebody runs into the leaf: no gap is left, and the other finding says so. */
function touchesNone({ finding }: Told): boolean {
  return finding.verdict !== 'not-applicable' && finding.measured?.value === 0
}

/** Where a leaf that turns stands then. */
function angleWords(told: Told): string | undefined {
  const angle = number(told, 'angle_deg')
  return angle === undefined ? undefined : figure({ value: angle, unit: 'deg' }, told, 'nearest')
}

/** Where what is seen depends on the leaf, only what is surely seen was counted on. */
function behindLeaf(undetermined: RuleWording['undetermined']): RuleWording['undetermined'] {
  const open: Say = (told) =>
    `It is not settled how the leaf meets ${howItComes(told)}: the leaf on its way changes what is seen, and what is surely seen, wherever it is, does not settle it.`
  return { ...undetermined, 'not-proved': (told) => (flag(told, 'leafMatters') === true ? open(told) : undetermined['not-proved'](told)) }
}

const notStruck: Say = (told) => {
  const gap = against(told, 'smaller-is-worse')
  return sentenceOf([
    `no body in ${laneWords(told)} is struck by the closing leaf${inState(told)}, whenever it begins to close${startWords(told)}${alsoWords(told)}`,
    gap &&
      !touchesNone(told) &&
      `; at least ${gap.measured} are left${flag(told, 'asWritten') === true ? ' with every figure as entered, tolerances not taken off' : ''}`,
  ])
}

const faster: Say = () =>
  'See the body earlier (a field that reaches farther out), make the output faster, or close more slowly and brake harder.'

export const struckByLeaf: RuleWording = {
  name: 'Struck by the closing leaf',
  pass: notStruck,
  fail: (told) => {
    const found = against(told, 'larger-is-worse')
    const leaf = speed(told, 'leaf_mm_per_s', 'larger-is-worse')
    const energy = number(told, 'energy_J')
    return sentenceOf([
      `the closing leaf strikes ${howItComes(told)}`,
      found && `: ${found.measured} between the two`,
      angleWords(told) && `, at a leaf angle of ${angleWords(told)}`,
      leaf && `, the leaf itself moves at ${leaf}`,
      energy !== undefined && ` with ${figure({ value: energy, unit: 'J' }, told, 'larger-is-worse')}`,
      flag(told, 'whileHeld') === true
        ? '. It is seen, but the control tries to close while the output still forbids it'
        : flag(told, 'isSeen') === true
          ? '. It is seen, but too late'
          : '. No output stops this closing',
    ])
  },
  undetermined: behindLeaf(unsettled((told) => `the closing leaf strikes nobody in ${laneWords(told)}`, notStruck)),
  notApplicable: {
    'no-subject': () => 'No lane is entered, so nothing is judged in time.',
    'not-required-by-concept': () => 'The protection concept does not ask for the closing leaf to miss everybody.',
  },
  mend: mendOr(faster),
}

const nobodyWalksInto: Say = (told) => `Nothing in ${laneWords(told)} runs into a leaf that rests or opens${inState(told)}.`

export const walkedInto: RuleWording = {
  name: 'Leaf not out of the way at arrival',
  pass: nobodyWalksInto,
  fail: (told) => {
    const found = against(told, 'larger-is-worse')
    const way = lengthToward(told, 'way_mm', 'smaller-is-worse')
    return sentenceOf([
      `the leaf is not out of the way of ${howItComes(told)}`,
      way && `: its edge has only ${way}${angleWords(told) ? ` (${angleWords(told)})` : ''} to go until it is shut`,
      found && `, and they meet at ${found.measured}`,
    ])
  },
  undetermined: behindLeaf(unsettled((told) => `the leaf is out of the way of whatever passes in ${laneWords(told)}`, nobodyWalksInto)),
  notApplicable: {
    'no-subject': () => 'No lane is entered, so nothing is judged in time.',
    'not-required-by-concept': (told) => `Only people pass in ${laneWords(told)}: that they meet a leaf at rest is not judged.`,
  },
  mend: mendOr(() => 'See the vehicle earlier, open faster, slow the vehicles down, or open higher.'),
}

/** What passes under the leaf while nothing is seen. */
function gapWords(told: Told): string {
  const part = word(told, 'part')
  const body = worstBody(told) ?? 'a body'
  const what = part === undefined ? body : `“${part}” of ${body}`
  const from = word(told, 'from')
  const side = from === 'a' || from === 'b' ? told.language.places.side(told.door.sides[from]) : undefined
  return `${what} in ${laneWords(told)}${side ? `, coming from ${side}` : ''}${inState(told)}`
}

const seenThrough: Say = (told) => {
  const gap = against(told, 'larger-is-worse')
  const length = lengthToward(told, 'gap_mm', 'larger-is-worse')
  if (gap === undefined || length === undefined) return `Vehicles in ${laneWords(told)} are seen from first part to last${inState(told)}.`
  return sentenceOf([
    `the longest gap in sight of ${gapWords(told)} lasts ${gap.measured} at the slowest pace, and an output holds for ${gap.limit}`,
  ])
}

export const passageGap: RuleWording = {
  name: 'Gap in sight of what passes',
  pass: seenThrough,
  fail: (told) => {
    const gap = against(told, 'larger-is-worse')
    const length = lengthToward(told, 'gap_mm', 'larger-is-worse')
    return sentenceOf([
      `under the leaf ${gapWords(told)} is out of sight`,
      length && `: over ${length} of its way`,
      gap && `, for ${gap.measured} at the slowest pace, and outputs hold for ${gap.limit} only`,
      '. The leaf may begin to close on it',
    ])
  },
  undetermined: unsettled((told) => `vehicles in ${laneWords(told)} are seen, or held, from first part to last`, seenThrough),
  notApplicable: {
    'no-subject': () => 'No lane is entered, so nothing is judged in time.',
    'not-required-by-concept': (told) => `Only people pass in ${laneWords(told)}: gaps between parts of a vehicle are not judged.`,
  },
  mend: mendOr(
    () => 'See the thin part too (lower beams, a field deeper along the way), or let the output hold for longer than the gap lasts.',
  ),
}
