import { figure } from '../figures.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { against, fieldWords, inState, lengthToward, nameIn, number, type Told, word } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

function who(told: Told): string {
  const name = nameIn(told, 'laneName', 'lane')
  const lane = name === undefined ? 'the lane' : told.language.things.lane(name)
  const from = word(told, 'from')
  const side = from === 'a' || from === 'b' ? told.language.places.side(told.door.sides[from]) : undefined
  return `whoever comes${side ? ` from ${side}` : ''} in ${lane}${inState(told)}`
}

function byEdition(told: Told): string {
  const edition = word(told, 'separation')
  return edition === undefined ? 'the separation distance' : `the separation distance of edition ${edition}`
}

const inTime: Say = (told) => {
  const found = against(told, 'smaller-is-worse')
  const left = lengthToward(told, 'left_mm', 'smaller-is-worse')
  return sentenceOf([
    `the leaf rests before ${who(told)} gets there`,
    found && `: ${fieldWords(told)} finds a body ${found.measured} before it, and ${byEdition(told)} is ${found.limit}`,
    found && left && `, so that ${left} are left over`,
  ])
}

const late: Say = (told) => {
  const found = against(told, 'smaller-is-worse')
  const total = number(told, 'total_s')
  if (number(told, 'lowest_mm') !== undefined)
    return sentenceOf([
      `${fieldWords(told)} lies too low for its detection capability`,
      found && `: ${found.measured} above the floor, and ${byEdition(told)} counts from ${found.limit}`,
    ])
  return sentenceOf([
    `the leaf may not rest before ${who(told)} gets there`,
    found && `: ${fieldWords(told)} finds a body only ${found.measured} before it, and ${byEdition(told)} is ${found.limit}`,
    total !== undefined && `, because ${figure({ value: total, unit: 's' }, told, 'larger-is-worse')} go by until the leaf rests`,
  ])
}

/** What was solved for, each enough alone; what no change would reach is not offered. */
const repairs: Say = (told) => {
  if (number(told, 'lowest_mm') !== undefined) return 'Raise the detection zone, or use a field with a finer detection capability.'
  const slower = number(told, 'slower_mm_per_s')
  const faster = number(told, 'faster_s')
  const wider = lengthToward(told, 'wider_mm', 'larger-is-worse')
  const ways = [
    wider && `let the field reach ${wider} from the middle of the leaf`,
    faster !== undefined && `make its output answer within ${figure({ value: faster, unit: 's' }, told, 'smaller-is-worse')}`,
    slower !== undefined && `close at no more than ${figure({ value: slower, unit: 'mm_per_s' }, told, 'smaller-is-worse')}`,
  ].filter((way): way is string => Boolean(way))
  if (ways.length === 0) return 'No single change of reach, response or closing speed is enough: see farther out and stop sooner.'
  return sentenceOf([ways.join(', or '), ways.length > 1 && ': each alone is enough'])
}

export const approachDistance: RuleWording = {
  name: 'Approach distance',
  pass: inTime,
  fail: late,
  undetermined: unsettled((told) => `the leaf rests before ${who(told)} gets there, by ${byEdition(told)}`, inTime),
  notApplicable: {
    'no-subject': () => 'No lane that people use is entered, so no approach is judged.',
    'not-required-by-concept': () =>
      'The protection concept does not promise that the closing leaf touches nobody, so no separation distance is asked for.',
  },
  mend: mendOr(repairs),
}
