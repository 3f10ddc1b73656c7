import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { against, fieldWords, lengthToward, type Told, word } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

function windowWords(told: Told): string {
  const [from, to] = [lengthToward(told, 'from_mm', 'nearest'), lengthToward(told, 'to_mm', 'larger-is-worse')]
  return from && to ? ` von ${to} bis ${from} vor dem Schließen` : ' nahe am Flügel'
}

const fits = (told: Told) => (word(told, 'travel') === 'down' ? 'Höhe' : 'Breite')

const nothingFits: Say = (told) =>
  sentenceOf([
    `während ${fieldWords(told)}${windowWords(told)} ausgeblendet ist, kann kein Körper, der gesehen werden muss, vor den Flügel kommen und getroffen werden`,
  ])

export const unseenInBlanking: RuleWording = {
  name: 'Ungesehen in Ausblendfenstern',
  pass: nothingFits,
  fail: (told) => {
    const shown = against(told, 'larger-is-worse')
    const to = lengthToward(told, 'to_mm', 'larger-is-worse')
    return sentenceOf([
      `während ${fieldWords(told)}${windowWords(told)} ausgeblendet ist, sieht es niemanden`,
      shown && `: ein Körper von ${shown.measured} ${fits(told)} kann ungesehen vor den Flügel kommen`,
      to && `, und ebenso alles, was weniger als ${to} ${fits(told)} hat`,
    ])
  },
  undetermined: unsettled(
    (told) => `ein Körper ungesehen vor den Flügel kommt, während ${fieldWords(told)}${windowWords(told)} ausgeblendet ist`,
    nothingFits,
  ),
  notApplicable: {
    'no-subject': () => 'Kein Feld, das den Flügel sichert, hat ein Ausblendfenster.',
    'not-required-by-concept': () => 'Das Schutzkonzept verlangt das nicht.',
  },
  mend: mendOr(
    () =>
      'Das Fenster kleiner machen als den niedrigsten Körper, der gesehen werden muss, oder ein anderes Feld währenddessen wachen lassen.',
  ),
}
