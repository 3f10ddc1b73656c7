import { figure } from '../figures.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { against, nameIn, number, sensorWords, type Told, word } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

function outputWords(told: Told): string {
  const name = nameIn(told, 'output')
  return name === undefined ? sensorWords(told) : `output ${told.language.quoted(name)} of ${sensorWords(told)}`
}

function seconds(told: Told, key: string): string | undefined {
  const value = number(told, key)
  return value === undefined ? undefined : figure({ value, unit: 's' }, told, 'larger-is-worse')
}

const guarded: Say = (told) => {
  if (word(told, 'says') === 'detecting')
    return sentenceOf([`until it is awake after a loss of power, ${outputWords(told)} lets nothing close`])
  if (word(told, 'does') === 'moves-guarded')
    return sentenceOf([`after a loss of power the control waits until its sensors are awake, ${sensorWords(told)} among them`])
  return sentenceOf([`after a loss of power no closing begins before ${sensorWords(told)} is awake`])
}

export const warmUp: RuleWording = {
  name: 'Waking after a loss of power',
  pass: guarded,
  fail: (told) => {
    const open = against(told, 'larger-is-worse')
    const warmUp = seconds(told, 'warmUp_s')
    return sentenceOf([
      'when power returns, the leaf can close unguarded',
      open && ` for ${open.measured}`,
      `: until ${sensorWords(told)} is awake`,
      warmUp && ` (${warmUp})`,
      word(told, 'says') === 'undefined'
        ? `, ${outputWords(told)} may say that nobody is there`
        : `, ${outputWords(told)} says that nobody is there`,
    ])
  },
  undetermined: unsettled((told) => `the leaf can close unguarded while ${sensorWords(told)} wakes after a loss of power`, guarded),
  notApplicable: {
    'no-subject': () => 'No output of this door stops the closing leaf.',
    'not-required-by-concept': () => 'The door moves only while a button is held, so nothing closes by itself while a sensor wakes.',
  },
  mend: mendOr(
    () =>
      'Let the control wait for its sensors after a loss of power, or set the output so that it stops the leaf until the sensor is awake.',
  ),
}
