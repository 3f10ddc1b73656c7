import { count, figure, type Toward } from '../figures.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { basisWords } from '../sources.ts'
import { against, fieldWords, flag, inState, number, sensorWords, type Told, word, zoneWords } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

const heldLongEnough: Say = (told) => {
  if (flag(told, 'heldForEver') === true) return `In ${zoneWords(told)} ${fieldWords(told)} holds a standing body for as long as it stays.`
  const held = seconds(told, 'presence_s', 'smaller-is-worse')
  const stay = seconds(told, 'stay_s', 'larger-is-worse')
  return sentenceOf([
    `in ${zoneWords(told)} ${fieldWords(told)} holds a standing body`,
    held && ` for ${held}`,
    stay && `; nobody stays longer than ${stay}`,
  ])
}

function seconds(told: Told, key: string, toward: Toward): string | undefined {
  const value = number(told, key)
  return value === undefined ? undefined : figure({ value, unit: 's' }, told, toward)
}

export const presenceTime: RuleWording = {
  name: 'Time a standing body is held',
  pass: heldLongEnough,
  fail: (told) => {
    const held = seconds(told, 'presence_s', 'smaller-is-worse')
    const stay = seconds(told, 'stay_s', 'larger-is-worse')
    const unheld = against(told, 'larger-is-worse')
    return sentenceOf([
      `whoever stands still in ${zoneWords(told)} goes unseen after a time: ${fieldWords(told)} lets a standing body go`,
      held && ` after ${held}`,
      stay && `, and people stay up to ${stay}`,
      unheld && `. That leaves ${unheld.measured} unseen`,
    ])
  },
  undetermined: unsettled((told) => `${fieldWords(told)} holds a standing body long enough in ${zoneWords(told)}`, heldLongEnough),
  notApplicable: {
    'no-subject': () => 'No zone has to hold a body that stands still.',
    'not-required-by-concept': () => 'The protection concept does not ask for a standing body to be held.',
  },
  mend: mendOr(() => 'Set the field to hold a standing body for ever, or use a sensor that can.'),
}

const alwaysOnSite: Say = (told) =>
  sentenceOf([
    `${sensorWords(told)} cannot be computed; test it on site`,
    word(told, 'needs') && `. Its maker says that it needs: ${word(told, 'needs')}`,
  ])

export const zoneOnlyDevice: RuleWording = {
  name: 'Device that is only drawn',
  pass: (told) => `There is nothing to compute about ${sensorWords(told)}.`,
  fail: alwaysOnSite,
  undetermined: { ...unsettled((told) => `${sensorWords(told)} sees what it has to`, alwaysOnSite), 'not-computable': alwaysOnSite },
  notApplicable: {
    'no-subject': () => 'Every sensor of this door can be computed; there is no radar, loop, contact edge, cord or button.',
    'not-required-by-concept': () => 'The protection concept does not rest on this device.',
  },
  mend: mendOr(() => 'Test it on site, and record the test.'),
}

const valuesKnown: Say = (told) => {
  const source = told.finding.basis.find(({ id }) => id === told.finding.subject.id)
  return sentenceOf([
    `the values of ${sensorWords(told)} are complete and no beam starts inside of something`,
    source && ` (values ${basisWords(source.source.basis, source.confirmed, told)})`,
  ])
}

export const sensorValues: RuleWording = {
  name: 'Values of the sensor',
  pass: valuesKnown,
  fail: (told) => {
    const enclosed = number(told, 'enclosed') ?? 0
    const obstacle = word(told, 'obstacleName')
    const which = enclosed === number(told, 'beams') ? 'every beam' : `${count(enclosed)} of ${count(number(told, 'beams') ?? 0)} beams`
    return `The sensor stands inside of something: ${which} of ${sensorWords(told)} ${enclosed === 1 ? 'starts' : 'start'} ${obstacle ? `inside the ${obstacle}` : 'under the floor'}${inState(told)} and sees nothing.`
  },
  undetermined: unsettled((told) => `${sensorWords(told)} sees as computed`, valuesKnown),
  notApplicable: {
    'no-subject': () => 'This door has no sensor that measures ranges.',
    'not-required-by-concept': () => 'The protection concept does not rest on this sensor.',
  },
  mend: mendOr(() => 'Check where the sensor is mounted and where the obstacle stands: one of them is measured wrong.'),
}
