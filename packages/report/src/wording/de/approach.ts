import { figure } from '../figures.ts'
import { sideName } from '../places.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { against, fieldWords, inState, lengthToward, nameIn, number, type Told, word } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

function who(told: Told): string {
  const name = nameIn(told, 'laneName', 'lane')
  const lane = name === undefined ? 'der Spur' : told.language.things.lane(name)
  const from = word(told, 'from')
  const side = from === 'a' || from === 'b' ? sideName(told.door, from, told) : undefined
  return `wer in ${lane}${side ? ` von ${side} her` : ''} kommt${inState(told)}`
}

function byEdition(told: Told, article: 'der' | 'dem' = 'der'): string {
  const edition = word(told, 'separation')
  return `${article} Sicherheitsabstand${edition === undefined ? '' : ` der Ausgabe ${edition}`}`
}

const inTime: Say = (told) => {
  const found = against(told, 'smaller-is-worse')
  const left = lengthToward(told, 'left_mm', 'smaller-is-worse')
  return sentenceOf([
    `der Flügel steht, bevor ihn erreicht, ${who(told)}`,
    found && `: ${fieldWords(told)} findet einen Körper ${found.measured} davor, und ${byEdition(told)} beträgt ${found.limit}`,
    found && left && `, so dass ${left} übrig bleiben`,
  ])
}

const late: Say = (told) => {
  const found = against(told, 'smaller-is-worse')
  const total = number(told, 'total_s')
  if (number(told, 'lowest_mm') !== undefined)
    return sentenceOf([
      `${fieldWords(told)} liegt zu tief für sein Detektionsvermögen`,
      found && `: ${found.measured} über dem Boden, und ${byEdition(told)} gilt ab ${found.limit}`,
    ])
  return sentenceOf([
    `der Flügel steht womöglich noch nicht, wenn ihn erreicht, ${who(told)}`,
    found && `: ${fieldWords(told)} findet einen Körper erst ${found.measured} davor, und ${byEdition(told)} beträgt ${found.limit}`,
    total !== undefined && `, weil ${figure({ value: total, unit: 's' }, told, 'larger-is-worse')} vergehen, bis der Flügel steht`,
  ])
}

/** What was solved for, each enough alone; what no change would reach is not offered. */
const repairs: Say = (told) => {
  if (number(told, 'lowest_mm') !== undefined)
    return 'Den Erfassungsbereich höher legen oder ein Feld mit feinerem Detektionsvermögen nehmen.'
  const slower = number(told, 'slower_mm_per_s')
  const faster = number(told, 'faster_s')
  const wider = lengthToward(told, 'wider_mm', 'larger-is-worse')
  const ways = [
    wider && `das Feld bis ${wider} von der Mitte des Flügels reichen lassen`,
    faster !== undefined &&
      `seinen Ausgang in höchstens ${figure({ value: faster, unit: 's' }, told, 'smaller-is-worse')} ansprechen lassen`,
    slower !== undefined && `mit höchstens ${figure({ value: slower, unit: 'mm_per_s' }, told, 'smaller-is-worse')} schließen`,
  ].filter((way): way is string => Boolean(way))
  if (ways.length === 0)
    return 'Keine einzelne Änderung von Reichweite, Ansprechzeit oder Schließgeschwindigkeit genügt: Weiter hinaus sehen und früher anhalten.'
  return sentenceOf([ways.join(', oder '), ways.length > 1 && ': Jedes allein genügt'])
}

export const approachDistance: RuleWording = {
  name: 'Sicherheitsabstand der Annäherung',
  pass: inTime,
  fail: late,
  undetermined: unsettled((told) => `der Flügel nach ${byEdition(told, 'dem')} steht, bevor ihn erreicht, ${who(told)}`, inTime),
  notApplicable: {
    'no-subject': () => 'Keine Spur für Personen ist eingegeben; eine Annäherung wird nicht beurteilt.',
    'not-required-by-concept': () =>
      'Das Schutzkonzept verspricht nicht, dass der schließende Flügel niemanden berührt; ein Sicherheitsabstand wird nicht verlangt.',
  },
  mend: mendOr(repairs),
}
