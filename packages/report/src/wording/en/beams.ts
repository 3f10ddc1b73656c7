import { mendOr, type RuleWording, type Say, sentenceOf, unsettled } from '../rule-wording.ts'
import { figure } from '../figures.ts'
import { against, flag, inState, length, lengthToward, limitOf, number, type Told, word, worstPlace, zoneWords } from '../told.ts'
import { sensorWords } from './coverage.ts'

const fieldWords = (told: Told): string => {
  const name = word(told, 'fieldName') ?? word(told, 'field')
  return name === undefined ? sensorWords(told) : `field \u201c${name}\u201d of ${sensorWords(told)}`
}

const closeEnough: Say = (told) => {
  const shown = against(told, 'larger-is-worse')
  return sentenceOf([`neighbouring beams of ${fieldWords(told)} lie close enough together${inState(told)}`, shown && `: ${shown.measured} at the widest, ${shown.limit} allowed`])
}

export const beamGapMax: RuleWording = {
  name: 'Gap between beams',
  pass: closeEnough,
  fail: (told) => {
    const shown = against(told, 'larger-is-worse')
    const where = worstPlace(told)
    return sentenceOf([
      `a gap between neighbouring beams of ${fieldWords(told)} is too wide${inState(told)}`, shown && `: ${shown.measured}, and ${shown.limit} is the most allowed`, where && `. It is widest ${where}`,
    ])
  },
  undetermined: unsettled((told) => `the beams of ${fieldWords(told)} lie close enough together`, closeEnough),
  notApplicable: {
    'no-subject': () => 'No sensor has neighbouring beams whose gap would be judged.',
    'not-required-by-concept': () => 'The protection concept sets no limit for the gap between beams here.',
  },
  mend: mendOr(() => 'Bring the sensor nearer, use one with beams closer together, or add a plane between.'),
}

const floorClear: Say = (told) => {
  const shown = against(told, 'smaller-is-worse')
  return sentenceOf([`the highest point of the floor lies ${shown?.measured ?? ''} under ${fieldWords(told)}${inState(told)}`, (limitOf(told)?.value ?? 0) > 0 && shown && `; ${shown.limit} is needed`])
}

export const floorClearance: RuleWording = {
  name: 'Clearance above the floor',
  pass: floorClear,
  fail: (told) => {
    const shown = against(told, 'smaller-is-worse')
    const where = worstPlace(told)
    const measured = told.finding.verdict === 'fail' ? told.finding.measured : undefined
    const head = measured && measured.value < 0
      ? `the floor stands ${figure({ value: -measured.value, unit: measured.unit }, told.units, 'larger-is-worse')} into ${fieldWords(told)}${inState(told)} at its highest point`
      : `the highest point of the floor lies only ${shown?.measured ?? ''} under ${fieldWords(told)}${inState(told)}, and ${shown?.limit ?? ''} is needed`
    return sentenceOf([head, ', so the sensor may take the floor for a body', where && `. That point is ${where}`])
  },
  undetermined: unsettled((told) => `the floor stays clear under ${fieldWords(told)}`, floorClear),
  notApplicable: {
    'no-subject': () => 'No field stands above the floor, so there is no clearance to judge.',
    'not-required-by-concept': () => 'The protection concept does not ask for a clearance above the floor.',
  },
  mend: mendOr(() => 'Raise the clearance of the field above the highest floor point and judge the zones again, or level the floor there.'),
}

const noFixedThing: Say = (told) => `Nothing fixed stands in a beam of ${sensorWords(told)}${inState(told)}.`

export const segmentBlocked: RuleWording = {
  name: 'Beam blocked for good',
  pass: noFixedThing,
  fail: (told) => sentenceOf([
    `a beam of ${sensorWords(told)} can never work${inState(told)}: `, word(told, 'obstacleName') ?? word(told, 'obstacle') ? `the ${word(told, 'obstacleName') ?? word(told, 'obstacle')} stands in it` : 'something fixed stands in it',
  ]),
  undetermined: unsettled((told) => `a beam of ${sensorWords(told)} is blocked for good`, noFixedThing),
  notApplicable: {
    'no-subject': () => 'No light grid or photo-eye is fitted, so no beam can be blocked for good.',
    'not-required-by-concept': () => 'The protection concept does not ask for this beam.',
  },
  mend: mendOr(() => 'Move what stands in the beam, or move both ends of the beam.'),
}

const leafUnseen: Say = (told) => `The moving leaf does not come into ${fieldWords(told)}${inState(told)} while the field acts.`

export const leafInField: RuleWording = {
  name: 'Leaf in the field',
  pass: leafUnseen,
  fail: (told) => {
    const from = length(told, 'from_mm')
    const to = length(told, 'to_mm')
    const stretch = lengthToward(told, 'unblanked_mm', 'larger-is-worse') ?? against(told, 'larger-is-worse')?.measured
    return sentenceOf([
      `the sensor sees the door's own leaf in ${fieldWords(told)}${inState(told)}`, from && to && ` while its edge is between ${from} and ${to} from closed`, stretch && `, over ${stretch} of its way`,
    ])
  },
  undetermined: unsettled((told) => `the moving leaf comes into ${fieldWords(told)}`, leafUnseen),
  notApplicable: {
    'no-subject': () => 'There is no leaf or no field that it could come into.',
    'not-required-by-concept': () => 'The protection concept does not ask for this.',
  },
  mend: mendOr(() => 'Set the field farther out from the leaf, let it rest while the leaf passes, or allow for less bulge.'),
}

const heightWatched: Say = (told) => {
  const shown = against(told, 'smaller-is-worse')
  return sentenceOf([
    `the height of the opening is guarded as far up as it has to be${inState(told)}`, shown && `: ${shown.measured}, ${shown.limit} needed`,
    flag(told, 'whole') === true && ', which is the whole opening',
  ])
}

export const guardedHeight: RuleWording = {
  name: 'Guarded height',
  pass: heightWatched,
  fail: (told) => {
    const shown = against(told, 'smaller-is-worse')
    const gap = length(told, 'from_mm')
    return sentenceOf([`the opening is guarded only up to ${shown?.measured ?? 'a part of its height'}${inState(told)}`, shown && `, and ${shown.limit} has to be`, gap && number(told, 'to_mm') !== undefined && `; nothing watches from ${gap} to ${length(told, 'to_mm')}`])
  },
  undetermined: unsettled((told) => `the opening is guarded as far up as it has to be${inState(told)}`, heightWatched),
  notApplicable: {
    'no-subject': () => 'Nothing of this door has to be guarded up to a height.',
    'not-required-by-concept': () => 'The protection concept does not ask for a guarded height.',
  },
  mend: mendOr((told) => `Raise the top of the field, or add a sensor that guards the rest of the height${word(told, 'zoneName') ? ` in ${zoneWords(told)}` : ''}.`),
}
