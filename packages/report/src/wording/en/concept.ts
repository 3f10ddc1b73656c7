import type { ProtectionConcept } from '@sillsight/engine'
import { count, size, tape } from '../figures.ts'
import { sideName } from '../places.ts'
import type { RuleWording, Say } from '../rule-wording.ts'
import { number, type Told, zoneWords } from '../told.ts'
import { phrases } from './phrases.ts'
import { mendOr, unsettled } from './unsettled.ts'

/** The concept as people say it: who passes, how the door is driven, what guards the closing edge. */
function conceptWords({ people, drive, closingEdge }: ProtectionConcept): string {
  const { concept } = phrases
  return phrases.listed([concept.people[people], concept.drive[drive], concept.closingEdge[closingEdge]])
}

const stated: Say = ({ door }) => `The protection concept is stated${door.concept ? `: ${conceptWords(door.concept)}` : ''}.`

export const conceptStated: RuleWording = {
  name: 'Protection concept stated',
  pass: stated,
  fail: () => 'The protection concept contradicts itself, so nothing follows from it.',
  undetermined: {
    ...unsettled(() => 'what has to be seen here is the right thing', stated),
    'missing-input': () =>
      'Nobody has said who passes here, how the door is driven and what guards its closing edge. What has to be seen follows from that.',
  },
  notApplicable: {
    'no-subject': () => 'There is no power-driven leaf, so no protection concept is needed.',
    'not-required-by-concept': () => 'No protection concept is needed here.',
  },
  mend: mendOr(() => 'Correct who passes, how the door is driven and what guards the closing edge.'),
}

const bothSides: Say = (told) =>
  `Presence at the leaf is watched across the whole opening, on the side of ${sideName(told.door, 'a', told)} and on that of ${sideName(told.door, 'b', told)}.`

export const presenceRequired: RuleWording = {
  name: 'Presence at the leaf required',
  pass: bothSides,
  fail: (told) =>
    `${unwatchedWords(told)} The closing edge is neither held to run nor limited in force, so both sides of the leaf need presence sensing.`,
  undetermined: {
    ...unsettled(() => 'presence at the leaf has to be watched', bothSides),
    'missing-input': () =>
      'It is not known whether presence at the leaf has to be watched: that follows from the protection concept, which is missing.',
  },
  notApplicable: {
    'no-subject': () => 'There is no leaf at which presence would have to be watched.',
    'not-required-by-concept': ({ door }) =>
      `The protection concept does not ask for presence sensing at the leaf${door.concept ? `, because ${whyNot(door.concept)}` : ''}.`,
  },
  mend: mendOr(
    () =>
      'Draw a zone of presence at the leaf over the whole width on each side that lacks one, watched by a sensor whose output acts for presence; or state a concept that carries the door.',
  ),
}

function whyNot(concept: ProtectionConcept): string {
  return concept.drive === 'hold-to-run' ? phrases.concept.drive[concept.drive] : phrases.concept.closingEdge[concept.closingEdge]
}

/** "Nothing watches for presence at the leaf on the side of the hall, and ..." */
function unwatchedWords(told: Told): string {
  const { door } = told
  const sides = (['a', 'b'] as const).flatMap((side) => {
    const unwatched_mm = number(told, side === 'a' ? 'unwatchedA_mm' : 'unwatchedB_mm') ?? 0
    if (unwatched_mm <= 0) return []
    const where = phrases.places.onSide(sideName(door, side, told))
    return [unwatched_mm >= door.opening.width_mm ? where : `over ${tape(unwatched_mm, told)} of the width ${where}`]
  })
  return `Nothing watches for presence at the leaf${sides.length > 0 ? ` ${phrases.listed(sides)}` : ''}.`
}

const smallEnough: Say = (told) =>
  `In ${zoneWords(told)} presence is judged with a body that fits into the reference body of ${referenceSize(told)}.`

export const referenceBody: RuleWording = {
  name: 'Reference body',
  pass: smallEnough,
  fail: (told) => {
    const bodies = number(told, 'bodies') ?? 0
    const none = bodies === 1 ? 'the body it is judged with does not fit' : `none of the ${count(bodies)} bodies it is judged with fits`
    return `In ${zoneWords(told)} ${none} into the reference body of ${referenceSize(told)}, so smaller bodies may go unseen there.`
  },
  undetermined: unsettled((told) => `presence in ${zoneWords(told)} is judged with a body that is small enough`, smallEnough),
  notApplicable: {
    'no-subject': () => 'No zone asks for presence at the leaf, so no reference body is needed.',
    'not-required-by-concept': () => 'The protection concept does not ask for presence at the leaf.',
  },
  mend: mendOr((told) => `Judge the zone with a body of at most ${referenceSize(told)} in all its postures.`),
}

function referenceSize(told: Told): string {
  const sides = ['a_mm', 'b_mm', 'c_mm'].map((key) => number(told, key)).filter((side) => side !== undefined)
  return sides.length === 3 ? size(sides, told) : 'the size that the values name'
}
