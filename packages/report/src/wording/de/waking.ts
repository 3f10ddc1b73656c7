import { figure } from '../figures.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { against, nameIn, number, sensorWords, type Told, word } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

function outputWords(told: Told): string {
  const name = nameIn(told, 'output')
  return name === undefined ? sensorWords(told) : `Ausgang ${told.language.quoted(name)} von ${sensorWords(told)}`
}

function seconds(told: Told, key: string): string | undefined {
  const value = number(told, key)
  return value === undefined ? undefined : figure({ value, unit: 's' }, told, 'larger-is-worse')
}

const guarded: Say = (told) => {
  if (word(told, 'says') === 'detecting')
    return sentenceOf([`bis er nach einem Spannungsausfall wach ist, lässt ${outputWords(told)} nichts schließen`])
  if (word(told, 'does') === 'moves-guarded')
    return sentenceOf([`nach einem Spannungsausfall wartet die Steuerung, bis ihre Sensoren wach sind, darunter ${sensorWords(told)}`])
  return sentenceOf([`nach einem Spannungsausfall schließt nichts, bevor ${sensorWords(told)} wach ist`])
}

export const warmUp: RuleWording = {
  name: 'Aufwachen nach einem Spannungsausfall',
  pass: guarded,
  fail: (told) => {
    const open = against(told, 'larger-is-worse')
    const warmUp = seconds(told, 'warmUp_s')
    return sentenceOf([
      'kehrt die Spannung wieder, kann der Flügel',
      open && ` ${open.measured} lang`,
      ` ungesichert schließen: bis ${sensorWords(told)} wach ist`,
      warmUp && ` (${warmUp})`,
      word(told, 'says') === 'undefined'
        ? `, kann ${outputWords(told)} melden, dass niemand da ist`
        : `, meldet ${outputWords(told)}, dass niemand da ist`,
    ])
  },
  undetermined: unsettled(
    (told) => `der Flügel ungesichert schließen kann, während ${sensorWords(told)} nach einem Spannungsausfall aufwacht`,
    guarded,
  ),
  notApplicable: {
    'no-subject': () => 'Kein Ausgang dieses Tores hält den schließenden Flügel an.',
    'not-required-by-concept': () =>
      'Das Tor fährt nur, solange ein Taster gehalten wird; während ein Sensor aufwacht, schließt nichts von selbst.',
  },
  mend: mendOr(
    () =>
      'Die Steuerung nach einem Spannungsausfall auf ihre Sensoren warten lassen oder den Ausgang so einstellen, dass er den Flügel anhält, bis der Sensor wach ist.',
  ),
}
