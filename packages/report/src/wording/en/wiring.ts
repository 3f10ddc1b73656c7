import { figure } from '../figures.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { flag, number, sensorWords, type Told, word } from '../told.ts'
import { missingByHand, oftenByHand } from './by-hand.ts'
import { faultWords } from './faults.ts'
import { mendOr, unsettled } from './unsettled.ts'

const counts: Say = (told) => {
  const [found, within_s] = [number(told, 'found') ?? 0, number(told, 'within_s')]
  const within = within_s === undefined ? '' : `, within ${figure({ value: within_s, unit: 's' }, told, 'larger-is-worse')} at the latest`
  return sentenceOf([
    `of ${number(told, 'faults') ?? 0} single faults none hides ${sensorWords(told)} unnoticed`,
    found === 1 ? `; 1 is found by a test${within}` : found > 0 && `; ${found} are found by a test${within}`,
  ])
}

export const singleFault: RuleWording = {
  name: 'Every single fault of the wiring',
  pass: counts,
  fail: (told) => {
    const fault = faultWords(told.finding.facts)
    if (word(told, 'fault') === 'none')
      return sentenceOf(['with nothing wrong at all, the control does not stop for what ', sensorWords(told), ' sees'])
    const more = (number(told, 'hidden') ?? 1) - 1
    return sentenceOf([
      fault ?? 'a single fault',
      ': the control goes on believing that nobody is there while ',
      sensorWords(told),
      ' sees somebody, and nobody notices until the next test by hand',
      more > 0 && `; ${more} more of ${number(told, 'faults') ?? 0} faults hide like this`,
    ])
  },
  undetermined: unsettled((told) => `a single fault of the wiring hides ${sensorWords(told)} unnoticed`, counts),
  notApplicable: {
    'no-subject': () => 'No sensor of this door is to stop the closing leaf.',
    'not-required-by-concept': () =>
      'The door moves only while a button is held by somebody who sees it, so no fault of the wiring lets it close by itself.',
  },
  mend: mendOr((told) =>
    word(told, 'fault') === 'none'
      ? 'Connect the presence output so that the control sees it switch.'
      : 'Connect it so that this fault switches like a body does (closed when clear), or let the control test the way from sensor to control before each closing. Until then ' +
        byHand(told),
  ),
}

function byHand(told: Told): string {
  const [longest_d, share, missing] = [number(told, 'longest_d'), number(told, 'mostHidden_percent'), word(told, 'handMissing')]
  if (longest_d === undefined || share === undefined)
    return `test it by hand, and often${missing ? `; how often cannot be said without: ${missingByHand(missing.split(', '))}` : ''}.`
  const [days, percent] = [
    figure({ value: longest_d, unit: 'd' }, told, 'smaller-is-worse'),
    figure({ value: share, unit: 'percent' }, told),
  ]
  return `${oftenByHand(days, percent, flag(told, 'handRemembered') === true)}.`
}

const SLIPS: Readonly<Record<string, (a: string, b: string) => string>> = {
  'two-drivers': (a, b) => `two transistors drive one line, from ${a} and from ${b}: each feeds back into the other`,
  'input-floating': (a, b) => `the input between ${a} and ${b} hangs in the air: no core leads to it`,
  'no-supply': (a, b) => `the sensor between ${a} and ${b} does not hang on the supply`,
  'bridged-contact': (a, b) => `the contact from ${a} to ${b} is bridged by copper and switches nothing`,
}

const noSlip: Say = () => 'No slip in the wiring: each input, each contact and each sensor hangs where it can do its work.'

export const wiringSlips: RuleWording = {
  name: 'Slips of the wiring',
  pass: noSlip,
  fail: (told) =>
    sentenceOf([SLIPS[word(told, 'slip') ?? '']?.(word(told, 'a') ?? '?', word(told, 'b') ?? '?') ?? 'the wiring has a slip']),
  undetermined: unsettled(() => 'the wiring has a slip', noSlip),
  notApplicable: {
    'no-subject': () => 'No wiring is described.',
    'not-required-by-concept': () => 'The concept asks for no wiring.',
  },
  mend: mendOr(() => 'Look at both ends on site, and put right the wiring or its description.'),
}
