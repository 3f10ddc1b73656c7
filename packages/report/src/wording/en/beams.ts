import { postureOf, postureWords } from '../bodies.ts'
import { count } from '../figures.ts'
import { place } from '../places.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import {
  against,
  fieldWords,
  inState,
  length,
  lengthToward,
  limitOf,
  needsWords,
  number,
  sensorWords,
  type Told,
  word,
  zoneWords,
} from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

/** "the top of a body 700 x 300 x 200 mm, lying along": the face and posture that leave least room. */
function facedBody(told: Told): string {
  const posture = postureOf(told.door, { body: word(told, 'body') ?? '', posture: number(told, 'posture') ?? 0 })
  const face = word(told, 'face') === 'top' ? 'the top' : 'a side'
  return posture ? `${face} of a body of ${postureWords(posture, told, number(told, 'yaw_rad'))}` : `${face} of the body`
}

function neighbours(told: Told): string {
  const cluster = number(told, 'cluster') ?? 1
  return cluster > 1 ? ` (${count(cluster)} neighbours have to agree)` : ''
}

/** Where a figure was found by tape, from the facts `x_mm` and `y_mm`. */
function placeOf(told: Told): string | undefined {
  const x_mm = number(told, 'x_mm')
  const y_mm = number(told, 'y_mm')
  return x_mm === undefined || y_mm === undefined ? undefined : place(told.door, { x_mm, y_mm }, told)
}

const closeEnough: Say = (told) => {
  const shown = against(told, 'larger-is-worse')
  return sentenceOf([
    `neighbouring beams of ${fieldWords(told)} lie close enough together in ${zoneWords(told)}${inState(told)}${neighbours(told)}`,
    shown && `: ${shown.measured} at most on ${facedBody(told)}, under ${shown.limit} is needed`,
  ])
}

export const beamGapMax: RuleWording = {
  name: 'Gap between beams',
  pass: closeEnough,
  fail: (told) => {
    const shown = against(told, 'larger-is-worse')
    const where = placeOf(told)
    return sentenceOf([
      `a body may lie between neighbouring beams of ${fieldWords(told)} in ${zoneWords(told)}${inState(told)}${neighbours(told)}`,
      shown && `: they are ${shown.measured} apart on ${facedBody(told)}, and less than ${shown.limit} is needed`,
      where && `. They are farthest apart ${where}`,
    ])
  },
  undetermined: unsettled((told) => `the beams of ${fieldWords(told)} lie close enough together in ${zoneWords(told)}`, closeEnough),
  notApplicable: {
    'no-subject': (told) =>
      word(told, 'field') === undefined
        ? 'No field counts for a zone that has to be covered, so no gap is judged.'
        : `No two neighbouring beams of ${fieldWords(told)} meet a body in ${zoneWords(told)}${inState(told)}, so no gap is judged.`,
    'not-required-by-concept': () => 'The protection concept sets no limit for the gap between beams here.',
  },
  mend: mendOr(() => 'Bring the sensor nearer, use one with beams closer together, or ask for fewer neighbours that agree.'),
}

const floorClear: Say = (told) => {
  const shown = against(told, 'smaller-is-worse')
  return sentenceOf([
    `the floor stays out of ${fieldWords(told)}${inState(told)}`,
    shown &&
      `: the lowest point at which something is taken lies ${shown.measured} above the surveyed floor, which may be ${shown.limit} off`,
  ])
}

export const floorClearance: RuleWording = {
  name: 'Clearance above the floor',
  pass: floorClear,
  fail: (told) => {
    const shown = against(told, 'smaller-is-worse')
    const where = placeOf(told)
    const off = (limitOf(told)?.value ?? 0) > 0 ? `, and the real floor may stand ${shown?.limit ?? ''} higher` : ''
    return sentenceOf([
      `${sensorWords(told)} may take the floor for a body${inState(told)}: ${fieldOnly(told)} takes whatever lies ${shown?.measured ?? 'so little'} above the surveyed floor${off}`,
      where && `. That is ${where}`,
    ])
  },
  undetermined: {
    ...unsettled((told) => `the floor stays out of ${fieldWords(told)}`, floorClear),
    'missing-input': (told) => {
      const height = lengthToward(told, 'height_mm', 'smaller-is-worse')
      if (height === undefined)
        return `It is not known whether the floor stays out of ${fieldWords(told)}. What is missing: ${needsWords(told) || 'something'}.`
      return `The lowest point at which ${fieldWords(told)} takes something lies ${height} above the surveyed floor${inState(told)}. Nobody has said how far the real floor may stand off the survey.`
    },
  },
  notApplicable: {
    'no-subject': () => 'No field takes anything near the floor, so there is no clearance to judge.',
    'not-required-by-concept': () => 'The protection concept does not ask for a clearance above the floor.',
  },
  mend: mendOr(() => 'Raise the clearance of the field and judge the zones again, or level the floor there.'),
}

function fieldOnly(told: Told): string {
  const name = word(told, 'fieldName') ?? word(told, 'field')
  return name === undefined ? 'its field' : `its field \u201c${name}\u201d`
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
      `${sensorWords(told)} can never work as it is${inState(told)}, with ${count(blocked)} of ${count(number(told, 'beams') ?? blocked)} beams blocked for good: ${thing ? `the ${thing}` : 'the floor'} is in the way`,
      beam !== undefined && ` of beam ${beam}`,
      word(told, 'plane') && ` of ${word(told, 'plane')}`,
      at && `, ${at} along it`,
    ])
  },
  undetermined: unsettled((told) => `a beam of ${sensorWords(told)} is blocked for good`, noFixedThing),
  notApplicable: {
    'no-subject': () => 'No light grid or photo-eye is fitted, so no beam can be blocked for good.',
    'not-required-by-concept': () => 'The protection concept does not ask for this beam.',
  },
  mend: mendOr(() => 'Move what stands in the beam, or move both ends of the beam.'),
}

const leafUnseen: Say = (told) => {
  const blanked = number(told, 'blanked_mm') ?? 0
  const windows = blanked > 0 ? ` outside of its blanking windows, which cover ${length(told, 'blanked_mm')} of the way` : ''
  return `The leaf on its way does not set off ${fieldWords(told)}${inState(told)}${windows}.`
}

export const leafInField: RuleWording = {
  name: 'Leaf in the field',
  pass: leafUnseen,
  fail: (told) => {
    const from = length(told, 'from_mm')
    const to = length(told, 'to_mm')
    const shown = against(told, 'larger-is-worse')
    const stretches = number(told, 'stretches') ?? 1
    return sentenceOf([
      `the leaf on its way sets off ${fieldWords(told)}${inState(told)}`,
      shown && `, over ${shown.measured} of it`,
      from && to && `${stretches > 1 ? `, in ${count(stretches)} stretches, the longest` : ':'} from ${to} to ${from} before it is closed`,
    ])
  },
  undetermined: unsettled((told) => `the leaf on its way sets off ${fieldWords(told)}`, leafUnseen),
  notApplicable: {
    'no-subject': () => 'There is no leaf, or no field that it could meet.',
    'not-required-by-concept': () => 'The protection concept does not ask for this.',
  },
  mend: mendOr(
    () =>
      'Set the field farther out from the leaf, or give it a blanking window for this stretch and look again at what goes unseen meanwhile.',
  ),
}

const heightWatched: Say = (told) => {
  const shown = against(told, 'smaller-is-worse')
  return sentenceOf([
    `${fieldWords(told)} watches ${zoneWords(told)} up to ${shown?.measured ?? 'the height that is needed'}${inState(told)}`,
    shown && `; ${shown.limit} is needed`,
  ])
}

export const guardedHeight: RuleWording = {
  name: 'Guarded height',
  pass: heightWatched,
  fail: (told) => {
    const shown = against(told, 'smaller-is-worse')
    return sentenceOf([
      `${zoneWords(told)} is watched only up to ${shown?.measured ?? 'a part of its height'}${inState(told)}`,
      shown && `, and ${shown.limit} has to be guarded`,
      `. The field that reaches highest is ${fieldWords(told)}`,
    ])
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
  return sentenceOf([
    `nobody crawls under ${fieldWords(told)} in ${zoneWords(told)}${inState(told)}`,
    shown && `: its lower edge is ${shown.measured} above the floor, at most ${shown.limit} is allowed`,
  ])
}

export const crawlUnder: RuleWording = {
  name: 'Crawling under the field',
  pass: lowEnough,
  fail: (told) => {
    const shown = against(told, 'larger-is-worse')
    return sentenceOf([
      `somebody may crawl under ${fieldWords(told)} in ${zoneWords(told)}${inState(told)}`,
      shown && `: its lower edge is ${shown.measured} above the floor, and ${shown.limit} is the most allowed`,
    ])
  },
  undetermined: unsettled((told) => `somebody may crawl under ${fieldWords(told)}`, lowEnough),
  notApplicable: {
    'no-subject': () => 'No watched zone lies at the leaf, so there is no field to crawl under.',
    'not-required-by-concept': () => 'The protection concept does not ask for a field at the leaf.',
  },
  mend: mendOr(() => 'Lower the clearance of the field, or its lowest beam, and check the clearance above the floor again.'),
}
