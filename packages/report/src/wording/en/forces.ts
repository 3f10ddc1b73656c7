import { figure } from '../figures.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { against, lengthToward, number, type Told, word } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

/** "“middle of the bottom edge”, 50 mm left". */
function where(told: Told): string {
  const place = word(told, 'place')
  const gap = lengthToward(told, 'gap_mm', 'nearest')
  return `${place === undefined ? 'the closing edge' : told.language.quoted(place)}${gap ? ` with ${gap} left` : ''}`
}

const WHAT: Readonly<Record<string, string>> = {
  peak: 'the peak of the force',
  time: 'the time for which the force stays high',
  mean: 'the force that lasts',
  rest: 'the force left after 5 s',
}

const gentle: Say = (told) => {
  const found = against(told, 'larger-is-worse')
  return sentenceOf([`at ${where(told)} the leaf touches gently enough`, found && `: ${found.measured} measured, ${found.limit} allowed`])
}

export const contactForce: RuleWording = {
  name: 'Force on contact',
  pass: gentle,
  fail: (told) => {
    const found = against(told, 'larger-is-worse')
    const what = WHAT[word(told, 'exceeds') ?? ''] ?? 'the force'
    return sentenceOf([`at ${where(told)} ${what} is too large`, found && `: ${found.measured} measured, ${found.limit} allowed`])
  },
  undetermined: unsettled((told) => `the leaf touches gently enough at ${where(told)}`, gentle),
  notApplicable: {
    'no-subject': () => 'No leaf touches anybody.',
    'not-required-by-concept': () => 'The closing edge is not meant to touch anybody, so no forces have to be measured.',
  },
  mend: mendOr(
    () =>
      'Slow the leaf down, let the edge give way farther, or set the drive to stop and open again sooner; then measure again. Measure with the instrument against a support, never against a person.',
  ),
}

const little: Say = (told) => {
  const found = against(told, 'larger-is-worse')
  return sentenceOf(['the closing leaf has little enough energy', found && `: at most ${found.measured}; ${found.limit} is allowed`])
}

export const contactEnergy: RuleWording = {
  name: 'Energy on contact',
  pass: little,
  fail: (told) => {
    const found = against(told, 'larger-is-worse')
    const mass = number(told, 'mass_kg')
    const speed = number(told, 'speed_mm_per_s')
    return sentenceOf([
      'the closing leaf has too much energy',
      found && `: ${found.measured}; ${found.limit} is allowed`,
      mass !== undefined &&
        speed !== undefined &&
        `. It is ${mass} kg at ${figure({ value: speed, unit: 'mm_per_s' }, told, 'larger-is-worse')}`,
    ])
  },
  undetermined: unsettled(() => 'the closing leaf has little enough energy', little),
  notApplicable: {
    'no-subject': () => 'No leaf closes.',
    'not-required-by-concept': () =>
      'The door does not rest on touching with little energy, and the limit for doors that do is applied to no other.',
  },
  mend: mendOr(() => 'Close more slowly, or take a lighter leaf.'),
}
