import { figure } from '../figures.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { against, fieldWords, flag, inState, lengthToward, nameIn, number, type Told, word } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

function laneWords(told: Told): string {
  const name = nameIn(told, 'laneName', 'lane')
  return name === undefined ? 'the lane' : told.language.things.lane(name)
}

function vehicle(told: Told): string {
  const from = word(told, 'from')
  const side = from === 'a' || from === 'b' ? told.language.places.side(told.door.sides[from]) : undefined
  const pace = number(told, 'lane_mm_per_s')
  const at = pace === undefined ? '' : ` at ${figure({ value: pace, unit: 'mm_per_s' }, told)}`
  return `a vehicle in ${laneWords(told)}${side ? ` that comes from ${side}` : ''}${at}${inState(told)}`
}

const slowly: Say = (told) => {
  const pace = number(told, 'slower_mm_per_s')
  const words = pace === undefined ? undefined : figure({ value: pace, unit: 'mm_per_s' }, told, 'smaller-is-worse')
  return words === undefined ? '' : ` At no more than ${words} it would do.`
}

const clear: Say = (told) => {
  const found = against(told, 'smaller-is-worse')
  const left = lengthToward(told, 'left_mm', 'smaller-is-worse')
  return sentenceOf([
    `${vehicle(told)} finds the opening clear when it arrives, without braking`,
    found && `: ${fieldWords(told)} calls ${found.measured} before the leaf, and ${found.limit} are needed`,
    found && left && `, so that ${left} are left over`,
  ])
}

const notClear: Say = (told) => {
  const found = against(told, 'smaller-is-worse')
  const open = number(told, 'open_s')
  if (number(told, 'higher_mm') !== undefined)
    return sentenceOf([
      `${vehicle(told)} never finds the opening clear`,
      found && `: it needs a way of ${found.limit}, and the leaf opens by ${found.measured}`,
    ])
  return sentenceOf([
    `${vehicle(told)} does not find the opening clear when it arrives`,
    found && `: ${fieldWords(told)} calls only ${found.measured} before the leaf, and ${found.limit} are needed`,
    open !== undefined && `, because the leaf takes ${figure({ value: open, unit: 's' }, told, 'larger-is-worse')} until it is clear`,
    flag(told, 'wasClosing') === true && ', one that was just about to shut',
  ])
}

const noCall = {
  'no-subject': () => 'No lane that vehicles use has a field that opens the door or calls it, so nothing is judged about calling.',
  'not-required-by-concept': () => 'The protection concept asks for no call.',
}

export const openingInTime: RuleWording = {
  name: 'Open when it arrives',
  pass: clear,
  fail: notClear,
  undetermined: unsettled((told) => `${vehicle(told)} finds the opening clear when it arrives`, clear),
  notApplicable: noCall,
  mend: mendOr((told) =>
    number(told, 'higher_mm') !== undefined
      ? 'Open higher, or let nothing of that height use the lane.'
      : `Call from farther out, open faster, or slow the vehicles down.${slowly(told)}`,
  ),
}

const stands: Say = (told) => {
  const found = against(told, 'smaller-is-worse')
  const left = lengthToward(told, 'left_mm', 'smaller-is-worse')
  return sentenceOf([
    `${vehicle(told)} still stops before a leaf that stays shut`,
    found && `: ${fieldWords(told)} calls ${found.measured} before it, and it stands after ${found.limit}`,
    found && left && `, so that ${left} are left over`,
  ])
}

const runsOn: Say = (told) => {
  const found = against(told, 'smaller-is-worse')
  const stopping = lengthToward(told, 'stopping_mm', 'larger-is-worse')
  return sentenceOf([
    `${vehicle(told)} does not stop before a leaf that stays shut`,
    found && `: ${fieldWords(told)} calls only ${found.measured} before it, and it stands after ${found.limit}`,
    stopping && `, of which ${stopping} are its stopping distance`,
  ])
}

export const stopsIfShut: RuleWording = {
  name: 'Stops if the leaf stays shut',
  pass: stands,
  fail: runsOn,
  undetermined: unsettled((told) => `${vehicle(told)} still stops before a leaf that stays shut`, stands),
  notApplicable: noCall,
  mend: mendOr((told) => `Call from farther out, make the output faster, or slow the vehicles down.${slowly(told)}`),
}
