import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { against, number, sensorWords, type Told, word } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

const shows: Say = (told) => {
  const [level, category] = [word(told, 'performanceLevel'), word(told, 'category')]
  const declared = [level && `performance level ${level}`, category && `category ${category}`].filter(Boolean).join(', ')
  return sentenceOf([`${sensorWords(told)} is declared for protecting people`, declared && ` (${declared})`])
}

const LACKS: Readonly<Record<string, (told: Told) => string>> = {
  device: (told) =>
    word(told, 'device') === 'pressure-sensitive'
      ? 'is declared as a device that has to be touched, and the concept wants nobody touched'
      : 'is not declared as a protective device: it may open the door, and guards nobody',
  level: (told) => {
    const [level, category] = [word(told, 'performanceLevel'), word(told, 'category')]
    const declared = [level && `performance level ${level}`, category && `category ${category}`].filter(Boolean).join(', ')
    const required = word(told, 'required')
    return `is declared too low for protecting people${declared ? ` (${declared})` : ''}${required ? `: at least performance level ${required}, or category ${number(told, 'requiredCategory') ?? 2}` : ''}`
  },
  test: (told) =>
    word(told, 'testedBy') === 'control'
      ? 'leaves it to the control to find its faults, and this control does not keep the door from closing where its test fails'
      : 'has nobody who finds its faults',
  listing: () => 'is not listed for use with this drive, which the law wants here',
}

export const permittedFunction: RuleWording = {
  name: 'Permitted for this function',
  pass: shows,
  fail: (told) =>
    sentenceOf([`${sensorWords(told)} `, LACKS[word(told, 'lacks') ?? '']?.(told) ?? 'is not declared for protecting people']),
  undetermined: unsettled((told) => `${sensorWords(told)} may be used for protecting people, however well it sees`, shows),
  notApplicable: {
    'no-subject': () => 'No sensor of this door is to stop the closing leaf.',
    'not-required-by-concept': () => 'The protection concept does not rest on sensors that see somebody.',
  },
  mend: mendOr((told) =>
    word(told, 'lacks') === 'test'
      ? 'Use a control that tests its sensors before each closing, or a sensor that watches itself.'
      : 'Use a sensor whose papers declare it for this, or protect the edge otherwise.',
  ),
}

const estimated: Say = (told) => {
  const [level, years] = [word(told, 'level'), number(told, 'mttfd_y')]
  return sentenceOf([
    level && level !== 'none'
      ? `the figures of ${sensorWords(told)} come to performance level ${level}`
      : `the figures of ${sensorWords(told)} are enough`,
    years !== undefined && ` (mean time to dangerous failure ${Math.floor(years)} years)`,
    ', by the simplified procedure: an estimate, for those to judge who are competent',
  ])
}

export const reliabilityEstimate: RuleWording = {
  name: 'Reliability, estimated',
  pass: estimated,
  fail: (told) => {
    const [level, required] = [word(told, 'level'), word(told, 'required')]
    const shown = against(told, 'smaller-is-worse')
    return sentenceOf([
      level && level !== 'none'
        ? `the figures of ${sensorWords(told)} come to performance level ${level} only`
        : `the figures of ${sensorWords(told)} come to no performance level`,
      shown && required && `, and ${required} is needed`,
      ': an estimate, for those to judge who are competent',
    ])
  },
  undetermined: unsettled((told) => `${sensorWords(told)} is reliable enough`, estimated),
  notApplicable: {
    'no-subject': () => 'No protecting sensor declares figures without a performance level, so nothing is left to estimate.',
    'not-required-by-concept': () => 'The protection concept does not rest on sensors that see somebody.',
  },
  mend: mendOr(
    () => 'Use a sensor that is declared with a performance level, or let somebody competent compute it with all parts of the chain.',
  ),
}
