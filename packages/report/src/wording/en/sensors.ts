import { figure } from '../figures.ts'
import { basisWords } from '../sources.ts'
import { mendOr, type RuleWording, type Say, sentenceOf, unsettled } from '../rule-wording.ts'
import { against, number, type Told, word, zoneWords } from '../told.ts'
import { sensorWords } from './coverage.ts'

const heldLongEnough: Say = (told) => {
  const shown = against(told, 'smaller-is-worse')
  return sentenceOf([`a body that stands still in ${zoneWords(told)} is held as long as anybody stays`, shown && `: ${shown.measured}, ${shown.limit} needed`])
}

export const presenceTime: RuleWording = {
  name: 'Time a standing body is held',
  pass: heldLongEnough,
  fail: (told) => {
    const shown = against(told, 'smaller-is-worse')
    const field = word(told, 'fieldName')
    return sentenceOf([
      `somebody who stands still in ${zoneWords(told)} is lost before leaving`, shown && `: ${field ? `field \u201c${field}\u201d` : sensorWords(told)} lets a standing body go after ${shown.measured}, and stays of ${shown.limit} have to be held`,
    ])
  },
  undetermined: unsettled((told) => `a body that stands still in ${zoneWords(told)} is held long enough`, heldLongEnough),
  notApplicable: {
    'no-subject': () => 'No zone has to hold a body that stands still.',
    'not-required-by-concept': () => 'The protection concept does not ask for a standing body to be held.',
  },
  mend: mendOr(() => 'Set the field to hold a standing body for ever, or use a sensor that does.'),
}

const alwaysOnSite: Say = (told) => sentenceOf([
  `${sensorWords(told)} cannot be computed; test it on site`, word(told, 'needs') && `. Its maker says that it needs: ${word(told, 'needs')}`,
])

export const zoneOnlyDevice: RuleWording = {
  name: 'Device that is only drawn',
  pass: alwaysOnSite,
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
  return sentenceOf([`the values of ${sensorWords(told)} are complete`, source && `, ${basisWords(source.source.basis, source.confirmed)}`])
}

export const sensorValues: RuleWording = {
  name: 'Values of the sensor',
  pass: valuesKnown,
  fail: (told) => {
    const wrong = word(told, 'problem') ?? word(told, 'what')
    const value = number(told, 'value_mm')
    return sentenceOf([`the values of ${sensorWords(told)} contradict each other`, wrong && `: ${wrong}`, value !== undefined && ` (${figure({ value, unit: 'mm' }, told.units)})`])
  },
  undetermined: {
    ...unsettled((told) => `the values of ${sensorWords(told)} can be relied on`, valuesKnown),
    'rests-on-assumption': (told) => `Values of ${sensorWords(told)} were never entered, and defaults stand in for them. Nothing that rests on them can be in order.`,
  },
  notApplicable: {
    'no-subject': () => 'This door has no sensor yet.',
    'not-required-by-concept': () => 'The protection concept does not rest on this sensor.',
  },
  mend: mendOr(() => "Correct the sensor's values against its data sheet."),
}
