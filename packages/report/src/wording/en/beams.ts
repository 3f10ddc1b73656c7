import { mendOr, type RuleWording, type Say, sentenceOf, unsettled } from '../rule-wording.ts'
import { count, figure } from '../figures.ts'
import { against, fieldWords, inState, length, lengthToward, limitOf, number, sensorWords, word, worstPlace, zoneWords } from '../told.ts'

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
  fail: (told) => {
    const blocked = number(told, 'blocked') ?? 1
    const thing = word(told, 'obstacleName')
    const beam = number(told, 'beam')
    const at = length(told, 'at_mm')
    return sentenceOf([
      `${count(blocked)} of ${count(number(told, 'beams') ?? blocked)} beams of ${sensorWords(told)} can never work${inState(told)}: ${thing ? `the ${thing}` : 'the floor'} is in the way`,
      beam !== undefined && ` of beam ${beam}`, word(told, 'plane') && ` of ${word(told, 'plane')}`, at && `, ${at} along it`,
    ])
  },
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
  return sentenceOf([`${fieldWords(told)} watches ${zoneWords(told)} up to ${shown?.measured ?? 'the height that is needed'}${inState(told)}`, shown && `; ${shown.limit} is needed`])
}

export const guardedHeight: RuleWording = {
  name: 'Guarded height',
  pass: heightWatched,
  fail: (told) => {
    const shown = against(told, 'smaller-is-worse')
    return sentenceOf([`${zoneWords(told)} is watched only up to ${shown?.measured ?? 'a part of its height'}${inState(told)}`, shown && `, and ${shown.limit} has to be guarded`, `. The field that reaches highest is ${fieldWords(told)}`])
  },
  undetermined: unsettled((told) => `${zoneWords(told)} is watched as far up as it has to be`, heightWatched),
  notApplicable: {
    'no-subject': () => 'No watched zone lies at the leaf, so there is no height to guard.',
    'not-required-by-concept': () => 'The protection concept does not ask for a guarded height.',
  },
  mend: mendOr(() => 'Raise the top of the field, or add a sensor that guards the rest of the height.'),
}

const lowEnough: Say = (told) => {
  const shown = against(told, 'larger-is-worse')
  return sentenceOf([`nobody crawls under ${fieldWords(told)} in ${zoneWords(told)}${inState(told)}`, shown && `: its lower edge is ${shown.measured} above the floor, at most ${shown.limit} is allowed`])
}

export const crawlUnder: RuleWording = {
  name: 'Crawling under the field',
  pass: lowEnough,
  fail: (told) => {
    const shown = against(told, 'larger-is-worse')
    return sentenceOf([`somebody may crawl under ${fieldWords(told)} in ${zoneWords(told)}${inState(told)}`, shown && `: its lower edge is ${shown.measured} above the floor, and ${shown.limit} is the most allowed`])
  },
  undetermined: unsettled((told) => `somebody may crawl under ${fieldWords(told)}`, lowEnough),
  notApplicable: {
    'no-subject': () => 'No watched zone lies at the leaf, so there is no field to crawl under.',
    'not-required-by-concept': () => 'The protection concept does not ask for a field at the leaf.',
  },
  mend: mendOr(() => 'Lower the clearance of the field, or its lowest beam, and check the clearance above the floor again.'),
}
