import { figure } from '../figures.ts'
import { sideName } from '../places.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { against, fieldWords, flag, inState, lengthToward, nameIn, number, type Told, word } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

function laneWords(told: Told): string {
  const name = nameIn(told, 'laneName', 'lane')
  return name === undefined ? 'der Spur' : told.language.things.lane(name)
}

function vehicle(told: Told): string {
  const from = word(told, 'from')
  const side = from === 'a' || from === 'b' ? sideName(told.door, from, told) : undefined
  const pace = number(told, 'lane_mm_per_s')
  const at = pace === undefined ? '' : ` mit ${figure({ value: pace, unit: 'mm_per_s' }, told)}`
  return `ein Fahrzeug in ${laneWords(told)}${side ? ` von ${side} her` : ''}${at}${inState(told)}`
}

const slowly: Say = (told) => {
  const pace = number(told, 'slower_mm_per_s')
  const words = pace === undefined ? undefined : figure({ value: pace, unit: 'mm_per_s' }, told, 'smaller-is-worse')
  return words === undefined ? '' : ` Mit höchstens ${words} würde es reichen.`
}

const clear: Say = (told) => {
  const found = against(told, 'smaller-is-worse')
  const left = lengthToward(told, 'left_mm', 'smaller-is-worse')
  return sentenceOf([
    `${vehicle(told)} findet bei der Ankunft die Öffnung frei, ohne zu bremsen`,
    found && `: ${fieldWords(told)} fordert ${found.measured} vor dem Flügel an, und ${found.limit} sind nötig`,
    found && left && `, so dass ${left} übrig bleiben`,
  ])
}

const notClear: Say = (told) => {
  const found = against(told, 'smaller-is-worse')
  const open = number(told, 'open_s')
  if (number(told, 'higher_mm') !== undefined)
    return sentenceOf([
      `${vehicle(told)} findet die Öffnung nie frei`,
      found && `: Nötig ist ein Weg von ${found.limit}, und der Flügel öffnet um ${found.measured}`,
    ])
  return sentenceOf([
    `${vehicle(told)} findet bei der Ankunft die Öffnung nicht frei`,
    found && `: ${fieldWords(told)} fordert erst ${found.measured} vor dem Flügel an, und ${found.limit} sind nötig`,
    open !== undefined && `, weil der Flügel ${figure({ value: open, unit: 's' }, told, 'larger-is-worse')} braucht, bis er frei gibt`,
    flag(told, 'wasClosing') === true && ', wenn er eben noch am Schließen war',
  ])
}

const noCall = {
  'no-subject': () => 'Keine Spur für Fahrzeuge hat ein Feld, das das Tor öffnet oder anfordert; über das Anfordern wird nichts beurteilt.',
  'not-required-by-concept': () => 'Das Schutzkonzept verlangt kein Anfordern.',
}

export const openingInTime: RuleWording = {
  name: 'Offen bei der Ankunft',
  pass: clear,
  fail: notClear,
  undetermined: unsettled((told) => `${vehicle(told)} bei der Ankunft die Öffnung frei findet`, clear),
  notApplicable: noCall,
  mend: mendOr((told) =>
    number(told, 'higher_mm') !== undefined
      ? 'Höher öffnen oder nichts von dieser Höhe die Spur benutzen lassen.'
      : `Weiter draußen anfordern, schneller öffnen oder die Fahrzeuge verlangsamen.${slowly(told)}`,
  ),
}

const stands: Say = (told) => {
  const found = against(told, 'smaller-is-worse')
  const left = lengthToward(told, 'left_mm', 'smaller-is-worse')
  return sentenceOf([
    `${vehicle(told)} hält noch vor einem Flügel, der geschlossen bleibt`,
    found && `: ${fieldWords(told)} fordert ${found.measured} davor an, und nach ${found.limit} steht es`,
    found && left && `, so dass ${left} übrig bleiben`,
  ])
}

const runsOn: Say = (told) => {
  const found = against(told, 'smaller-is-worse')
  const stopping = lengthToward(told, 'stopping_mm', 'larger-is-worse')
  return sentenceOf([
    `${vehicle(told)} hält nicht vor einem Flügel, der geschlossen bleibt`,
    found && `: ${fieldWords(told)} fordert erst ${found.measured} davor an, und erst nach ${found.limit} steht es`,
    stopping && `, davon ${stopping} Anhalteweg`,
  ])
}

export const stopsIfShut: RuleWording = {
  name: 'Hält, wenn der Flügel geschlossen bleibt',
  pass: stands,
  fail: runsOn,
  undetermined: unsettled((told) => `${vehicle(told)} noch vor einem Flügel hält, der geschlossen bleibt`, stands),
  notApplicable: noCall,
  mend: mendOr((told) => `Weiter draußen anfordern, den Ausgang schneller machen oder die Fahrzeuge verlangsamen.${slowly(told)}`),
}
