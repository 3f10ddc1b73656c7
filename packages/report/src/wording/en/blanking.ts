import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { against, fieldWords, lengthToward, type Told, word } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

function windowWords(told: Told): string {
  const [from, to] = [lengthToward(told, 'from_mm', 'nearest'), lengthToward(told, 'to_mm', 'larger-is-worse')]
  return from && to ? ` from ${to} to ${from} before the leaf is closed` : ' near the leaf'
}

const fits = (told: Told) => (word(told, 'travel') === 'down' ? 'high' : 'wide')

const nothingFits: Say = (told) =>
  sentenceOf([
    `while ${fieldWords(told)} is blanked${windowWords(told)}, no body that has to be seen can come before the leaf and be met by it`,
  ])

export const unseenInBlanking: RuleWording = {
  name: 'Unseen in blanking windows',
  pass: nothingFits,
  fail: (told) => {
    const shown = against(told, 'larger-is-worse')
    const to = lengthToward(told, 'to_mm', 'larger-is-worse')
    return sentenceOf([
      `while ${fieldWords(told)} is blanked${windowWords(told)}, it sees nobody`,
      shown && `: a body ${shown.measured} ${fits(told)} can come before the leaf unseen`,
      to && `, and so can whatever is less than ${to} ${fits(told)}`,
    ])
  },
  undetermined: unsettled(
    (told) => `a body comes before the leaf unseen while ${fieldWords(told)} is blanked${windowWords(told)}`,
    nothingFits,
  ),
  notApplicable: {
    'no-subject': () => 'No field that guards the leaf has a blanking window.',
    'not-required-by-concept': () => 'The protection concept does not ask for this.',
  },
  mend: mendOr(() => 'Make the window smaller than the lowest body that has to be seen, or let another field watch meanwhile.'),
}
