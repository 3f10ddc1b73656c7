import { count, figure, size } from '../figures.ts'
import { capital } from '../plain.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import {
  against,
  causeOf,
  inState,
  length,
  lengthToward,
  limitOf,
  mendOfCause,
  number,
  sensorWords,
  type Told,
  word,
  worstBody,
  worstPlace,
  zoneWords,
} from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

const gridOnly = (told: Told): string => (told.finding.provisional === 'grid' ? ' at every placement of the grid' : '')

const seenEverywhere: Say = (told) => {
  const free = (number(told, 'seen') ?? 0) + (number(told, 'blind') ?? 0)
  const unseen = number(told, 'openArea_mm2') ?? number(told, 'blind') ?? 0
  const limit = against(told, 'larger-is-worse')
  const placements = free > 0 && told.finding.provisional === 'grid' ? `, ${count(free)} in all` : ''
  const everywhere = number(told, 'openArea_mm2') === undefined ? gridOnly(told) : ' wherever it has room'
  const tolerant = number(told, 'tolerantArea_mm2') === undefined ? '' : ', also with everything off by as much as the door file allows'
  if (unseen === 0) return `Every test body is seen${everywhere} in ${zoneWords(told)}${inState(told)}${placements}${tolerant}.`
  return `The unseen places in ${zoneWords(told)}${inState(told)} are no larger than the zone allows: ${limit?.measured ?? ''} of ${limit?.limit ?? ''} across.`
}

/** As written it is one thing, over the tolerances it is not settled; where one tolerance alone would have to be tighter, that one and how tight. */
function withinTolerance(told: Told): string {
  const zone = `${zoneWords(told)}${inState(told)}`
  if ((number(told, 'pockets') ?? 0) > 0)
    return `As written, test bodies go unseen in ${zone}; with everything off by as much as the door file allows, no single one of them is unseen for sure.`
  const binding = word(told, 'binding')
  const value = number(told, 'tightTo')
  const unit = word(told, 'tightUnit')
  const head = `As written, every test body is seen wherever it has room in ${zone}; with everything off by as much as the door file allows, that is not proved`
  if (binding === undefined || value === undefined || value === 0) return `${head}.`
  const tight =
    unit === 'mm'
      ? figure({ value, unit: 'mm' }, told, 'smaller-is-worse')
      : `${Number((Math.floor(value * 1000) / 1000).toPrecision(2))}${unit === 'deg' ? ' degrees' : ' %'}`
  return binding === 'all'
    ? `${head}. It would be if every tolerance were ${tight} of what it is.`
    : `${head}. It would be if the tolerance of ${binding} were ${tight}, all others as stated.`
}

function notProved(told: Told): string {
  const shown = against(told, 'larger-is-worse')
  const zone = `${zoneWords(told)}${inState(told)}`
  if ((number(told, 'pockets') ?? 0) === 0)
    return `It is not settled whether every test body is seen in ${zone}: no unseen body was found, but a few places could not be proved.`
  return `Test bodies go unseen in ${zone}. Whether the places are small enough is not settled: up to ${shown?.measured ?? ''} across, of which not all is sure; ${shown?.limit ?? ''} may stay.`
}

export const zoneCovered: RuleWording = {
  name: 'Zone covered',
  pass: seenEverywhere,
  fail: (told) => {
    const shown = against(told, 'larger-is-worse')
    const pockets = number(told, 'pockets') ?? 1
    const noField = number(told, 'fields') === 0
    if (noField)
      return `Nothing watches ${zoneWords(told)}${inState(told)}: no sensor of this door has an output for that function, so every body goes unseen.`
    const limit = (limitOf(told)?.value ?? 0) > 0 ? `where at most ${shown?.limit ?? ''} may stay` : 'where none may stay'
    const percent = shareUnseen(told)
    return sentenceOf([
      `test bodies go unseen in ${zoneWords(told)}${inState(told)}: `,
      pockets === 1 ? 'one blind pocket' : `${count(pockets)} blind pockets, the largest`,
      word(told, 'pocket') ? ` (${word(told, 'pocket')})` : '',
      ` ${shown?.measured ?? ''} across, ${limit}`,
      percent && `. Unseen are ${percent} of all placements with room for a body`,
    ])
  },
  undetermined: {
    ...unsettled((told) => `every test body is seen in ${zoneWords(told)}${inState(told)}`, seenEverywhere),
    'within-tolerance': withinTolerance,
    'not-proved': notProved,
  },
  notApplicable: {
    'no-subject': () => 'No zone of this door has to be covered, so there is none to judge.',
    'not-required-by-concept': () => 'The protection concept does not ask for a covered zone here.',
  },
  mend: mendOr((told) =>
    number(told, 'fields') === 0
      ? 'Give a field of a sensor the function that the zone asks for, or add a sensor that has it.'
      : 'Turn or move the sensor so that its planes pass through the pockets, or add a sensor on that side. Each pocket has a finding of its own with its cause.',
  ),
}

function shareUnseen(told: Told): string | undefined {
  const share = number(told, 'share')
  return share === undefined ? undefined : figure({ value: (1 - share) * 100, unit: 'percent' }, told, 'larger-is-worse')
}

/** "A body 700 x 300 x 200 mm, lying, goes unseen: its middle 3.55 m from the left jamb edge, ... Hidden behind the bollard." */
function unseenBody(told: Told): string {
  const letter = word(told, 'letter')
  const body = worstBody(told)
  const where = worstPlace(told)
  const cause = causeOf(told)
  const head = `${letter ? `Pocket ${letter}: a body` : 'A body'}${body ? ` of ${body},` : ''} goes unseen${inState(told)}`
  return `${head}${where ? ` with its middle ${where}` : ''}.${cause ? ` It is ${cause}.` : ''}`
}

const smallEnough: Say = (told) => {
  const shown = against(told, 'larger-is-worse')
  return `${unseenBody(told)} The pocket is ${shown?.measured ?? 'small'} across; ${zoneWords(told)} allows ${shown?.limit ?? 'it'}.`
}

export const blindPocket: RuleWording = {
  name: 'Blind pocket',
  pass: smallEnough,
  fail: (told) => {
    const shown = against(told, 'larger-is-worse')
    const allowed = (limitOf(told)?.value ?? 0) > 0 ? `${shown?.limit ?? ''} may stay` : 'none may stay'
    return `${unseenBody(told)} The pocket is ${extentOf(told) ?? shown?.measured ?? ''} and ${shown?.measured ?? ''} across${circleOf(told)}; ${allowed} in ${zoneWords(told)}.`
  },
  undetermined: {
    ...unsettled((told) => `a blind pocket in ${zoneWords(told)} may stay`, smallEnough),
    'not-proved': (told) => {
      const shown = against(told, 'larger-is-worse')
      const sure = lengthToward(told, 'sure_mm', 'smaller-is-worse')
      return `${unseenBody(told)} The pocket is at most ${shown?.measured ?? ''} across${sure ? ` and at least ${sure}` : ''}; ${shown?.limit ?? ''} may stay in ${zoneWords(told)}.`
    },
    'within-tolerance': (told) => `${smallEnough(told)} With everything off by as much as the door file allows, that is not proved.`,
  },
  notApplicable: {
    'no-subject': () => 'There is no blind pocket to judge.',
    'not-required-by-concept': () => 'The protection concept does not ask for a covered zone here.',
  },
  mend: mendOr((told) => {
    const cause = mendOfCause(told)
    return cause ? `${capital(cause)}.` : 'Turn or move the sensor, or add one that looks from another place.'
  }),
}

function extentOf(told: Told): string | undefined {
  const [xMin_mm, xMax_mm, yMin_mm, yMax_mm] = ['xMin_mm', 'xMax_mm', 'yMin_mm', 'yMax_mm'].map((key) => number(told, key))
  if (xMin_mm === undefined || xMax_mm === undefined || yMin_mm === undefined || yMax_mm === undefined) return undefined
  const say = (value: number): string => figure({ value, unit: 'mm' }, told, 'larger-is-worse')
  return `${say(xMax_mm - xMin_mm)} along the leaf by ${say(yMax_mm - yMin_mm)} deep`
}

/** ", its largest circle at most 160 mm", by its diameter; nothing where it was not computed. */
function circleOf(told: Told): string {
  const radius_mm = number(told, 'circleAtMost_mm')
  return radius_mm === undefined
    ? ''
    : `, its largest circle at most ${figure({ value: 2 * radius_mm, unit: 'mm' }, told, 'larger-is-worse')}`
}

const nothingSeen: Say = (told) => `No body is seen${gridOnly(told)} in ${zoneWords(told)}${inState(told)}, as it has to be.`

export const mustNotSee: RuleWording = {
  name: 'Must not be seen',
  pass: nothingSeen,
  fail: (told) => {
    const body = worstBody(told)
    const where = worstPlace(told)
    const shown = against(told, 'larger-is-worse')
    return sentenceOf([
      `the sensor sees into ${zoneWords(told)}${inState(told)}, where nothing may be seen`,
      shown && `: bodies are seen over ${shown.measured}`,
      where && `, for one ${body ? `of ${body} ` : ''}with its middle ${where}`,
    ])
  },
  undetermined: unsettled((told) => `nothing is seen in ${zoneWords(told)}${inState(told)}`, nothingSeen),
  notApplicable: {
    'no-subject': () => 'No zone of this door must stay unseen.',
    'not-required-by-concept': () => 'The protection concept does not ask for a zone that stays unseen.',
  },
  mend: mendOr(
    () =>
      'Draw the side or the depth of the field in, or lean the sensor back toward the leaf; then check the zones that must be covered again.',
  ),
}

const groundWatched: Say = (told) => {
  const shown = against(told, 'larger-is-worse')
  const depth = (number(told, 'cells') ?? 0) > 0 ? lengthToward(told, 'depth_mm', 'larger-is-worse') : undefined
  if (depth === undefined) return `There is no dead ground at the foot of ${sensorWords(told)} in ${zoneWords(told)}${inState(told)}.`
  const rest =
    (limitOf(told)?.value ?? 0) > 0 && shown
      ? `what other sensors leave of it is ${shown.measured} across, and ${shown.limit} may stay`
      : 'other sensors watch all of it'
  return `At the foot of ${sensorWords(told)} lies dead ground up to ${depth} from the middle of the leaf in ${zoneWords(told)}${inState(told)}; ${rest}.`
}

export const deadGround: RuleWording = {
  name: 'Dead ground',
  pass: groundWatched,
  fail: (told) => {
    const shown = against(told, 'larger-is-worse')
    const depth = lengthToward(told, 'depth_mm', 'larger-is-worse')
    const where = worstPlace(told)
    const allowed = (limitOf(told)?.value ?? 0) > 0 ? `at most ${shown?.limit ?? ''} may stay` : 'none may stay'
    return sentenceOf([
      `at the foot of ${sensorWords(told)} lies dead ground in ${zoneWords(told)}${inState(told)}: no body is seen there in any posture`,
      depth && `, up to ${depth} from the middle of the leaf`,
      shown && `. What no other sensor watches is ${shown.measured} across; ${allowed}`,
      where && `. At its worst the middle of a body lies ${where}`,
    ])
  },
  undetermined: unsettled((told) => `there is dead ground at the foot of ${sensorWords(told)}`, groundWatched),
  notApplicable: {
    'no-subject': () => 'No ranging sensor watches a zone at the leaf, so there is no dead ground to look for.',
    'not-required-by-concept': () => 'The protection concept does not ask for the floor near this sensor to be watched.',
  },
  mend: mendOr(() => 'Lean one plane less so that it falls nearer to the leaf, or add a sensor that watches this floor.'),
}

const smallestSeen: Say = (told) => {
  const smallest = smallestWords(told)
  const required = lengthToward(told, 'required_mm', 'nearest')
  return sentenceOf([
    `in ${zoneWords(told)}${inState(told)} bodies of the family are seen${gridOnly(told)} from ${smallest ?? 'the required size'} up, in steps of ${length(told, 'step_mm') ?? 'the family'}`,
    required && `; from ${required} up is required`,
  ])
}

/** "a size of 300 mm (150 x 210 x 300 mm)". */
function smallestWords(told: Told): string | undefined {
  const smallest = lengthToward(told, 'smallest_mm', 'larger-is-worse')
  const sides = ['a_mm', 'b_mm', 'c_mm'].map((key) => number(told, key)).filter((side) => side !== undefined)
  return smallest === undefined ? undefined : `a size of ${smallest}${sides.length === 3 ? ` (${size(sides, told)})` : ''}`
}

export const smallestBody: RuleWording = {
  name: 'Smallest body seen',
  pass: smallestSeen,
  fail: (told) => {
    const unseen = lengthToward(told, 'unseen_mm', 'larger-is-worse') ?? against(told, 'larger-is-worse')?.measured
    const smallest = smallestWords(told)
    return sentenceOf([
      `in ${zoneWords(told)}${inState(told)} a body of the family with a size of ${unseen ?? 'the required size'} still goes unseen somewhere`,
      `; from ${lengthToward(told, 'required_mm', 'nearest') ?? 'the required size'} up all have to be seen. `,
      smallest
        ? `All sizes tried are seen only from ${smallest} up`
        : `No size up to ${length(told, 'largest_mm') ?? 'the largest'} is seen everywhere`,
    ])
  },
  undetermined: {
    ...unsettled((told) => `bodies as small as required are seen in ${zoneWords(told)}${inState(told)}`, smallestSeen),
    'missing-input': (told) => {
      const smallest = smallestWords(told)
      const found = smallest
        ? `bodies of the family are seen${gridOnly(told)} from ${smallest} up`
        : `no size of the family up to ${length(told, 'largest_mm') ?? 'the largest'} is seen everywhere`
      return `In ${zoneWords(told)}${inState(told)} ${found}. Nobody has said from which size on they have to be seen.`
    },
  },
  notApplicable: {
    'no-subject': () => 'No zone names a family of bodies whose smallest size would be looked for.',
    'not-required-by-concept': () => 'The protection concept does not ask for a smallest body.',
  },
  mend: mendOr(() => 'Bring the beams closer together there: a sensor nearer, more planes, or a second sensor.'),
}
