import { count, figure } from '../figures.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { against, inState, nameIn, number, type Told } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

function crossingWords(told: Told): string {
  const name = nameIn(told, 'crossingName', 'crossing')
  return name === undefined ? 'the crossing' : told.language.things.crossing(name)
}

/** "34 of 120 passers-by", or undefined. */
function openers(told: Told): string | undefined {
  const openings = number(told, 'openings')
  const perDay = number(told, 'perDay')
  return openings === undefined || perDay === undefined ? undefined : `${count(Math.ceil(openings - 1e-6))} of ${count(perDay)} passers-by`
}

const counted: Say = (told) => {
  const limit = against(told, 'larger-is-worse')?.limit
  const who = openers(told)
  return sentenceOf([
    `in ${crossingWords(told)} ${who ?? 'some passers-by'} in a day open the door needlessly${inState(told)}`,
    limit && `, and up to ${limit} are bearable`,
  ])
}

const untold = unsettled((told) => `passers-by in ${crossingWords(told)} open the door too often`, counted)

export const needlessOpenings: RuleWording = {
  name: 'Needless openings',
  pass: counted,
  fail: (told) => {
    const limit = against(told, 'larger-is-worse')?.limit
    return sentenceOf([
      `in ${crossingWords(told)} ${openers(told) ?? 'some passers-by'} in a day open the door needlessly${inState(told)}`,
      limit && `; only ${limit} are bearable`,
    ])
  },
  undetermined: {
    ...untold,
    'missing-input': (told) =>
      openers(told) === undefined ? untold['missing-input'](told) : `${counted(told)} Nobody said how many are bearable.`,
  },
  notApplicable: {
    'no-subject': () => 'No way past the door is entered, or no field opens it, so no needless openings are counted.',
    'not-required-by-concept': () => 'The protection concept asks for nothing about needless openings.',
  },
  mend: mendOr(() => 'Let the field that opens end nearer to the door or farther from the way past it, or let its output answer later.'),
}

function airWords(told: Told): string {
  const once = number(told, 'opening_m3')
  const lost = number(told, 'lost_m3')
  const shown = (value: number) => figure({ value, unit: 'm3' }, told, 'larger-is-worse')
  return once === undefined || lost === undefined
    ? 'air goes through'
    : `${shown(lost)} of air go through in a day, ${shown(once)} at each opening`
}

const lost: Say = (told) => {
  const limit = against(told, 'larger-is-worse')?.limit
  return sentenceOf([`when the door opens needlessly ${airWords(told)}`, limit && `; up to ${limit} are bearable`])
}

const unknownAir = unsettled(() => 'needless openings let too much air through', lost)

export const airLost: RuleWording = {
  name: 'Air lost',
  pass: lost,
  fail: (told) => {
    const limit = against(told, 'larger-is-worse')?.limit
    return sentenceOf([`when the door opens needlessly ${airWords(told)}`, limit && `; only ${limit} are bearable`])
  },
  undetermined: {
    ...unknownAir,
    'missing-input': (told) =>
      number(told, 'lost_m3') === undefined ? unknownAir['missing-input'](told) : `${lost(told)} Nobody said how much is bearable.`,
  },
  notApplicable: {
    'no-subject': () => 'No way past the door is entered, or no field opens it, so no air is lost by needless openings.',
    'not-required-by-concept': () => 'The protection concept asks for nothing about air.',
  },
  mend: mendOr(() => 'Open less often, shut sooner, or open only partly.'),
}
