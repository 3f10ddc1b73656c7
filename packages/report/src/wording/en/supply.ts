import { figure, type Toward } from '../figures.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { against, flag, length, number, sensorWords, type Told, word } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

function electric(told: Told, key: string, toward: Toward = 'nearest'): string | undefined {
  const value = number(told, key)
  return value === undefined ? undefined : figure({ value, unit: key.endsWith('_V') ? 'V' : 'A' }, told, toward)
}

/** "1.5 mm² or 16 AWG", or what there is of it. */
function sizes(told: Told): string | undefined {
  const [area, awg] = [number(told, 'core_mm2'), number(told, 'awg')]
  const both = [area && `${String(area).replace('.', told.language.decimal)} mm\u00b2`, awg && `${awg} AWG`].filter(Boolean)
  return both.length > 0 ? both.join(' or ') : undefined
}

function cableWords(told: Told): string | undefined {
  const [cable, length_mm, longest] = [word(told, 'cable'), length(told, 'length_mm'), length(told, 'longest_mm')]
  if (cable === undefined || length_mm === undefined) return undefined
  return longest === undefined
    ? `Cable ${cable} (${length_mm}) may be of any usual length.`
    : `Cable ${cable} (${length_mm}) may be up to ${longest} long.`
}

const temperatures = (told: Told): string => {
  const hottest = number(told, 'hottest_degC')
  return hottest === undefined ? '' : ` with its copper at ${String(hottest).replace('.', told.language.decimal)} °C`
}

const keepsWindow: Say = (told) => {
  const shown = against(told, 'smaller-is-worse')
  const inrush = electric(told, 'inrush_V', 'smaller-is-worse')
  return [
    sentenceOf([
      `${sensorWords(told)} always gets enough voltage`,
      shown && `: at least ${shown.measured}${temperatures(told)}, and it needs ${shown.limit}`,
    ]),
    cableWords(told),
    inrush && `For a moment when power comes it has ${inrush}; how long it works with that is not judged.`,
  ]
    .filter(Boolean)
    .join(' ')
}

export const supplyVoltage: RuleWording = {
  name: 'Voltage at the sensor',
  pass: keepsWindow,
  fail: (told) => {
    if (word(told, 'beyond') === 'high') {
      const shown = against(told, 'larger-is-worse')
      return sentenceOf([
        `${sensorWords(told)} may get too much voltage`,
        shown && `: up to ${shown.measured}, and it stands ${shown.limit}`,
      ])
    }
    const shown = against(told, 'smaller-is-worse')
    return sentenceOf([
      `${sensorWords(told)} may get too little voltage`,
      shown && `: ${shown.measured}${temperatures(told)} at the least source and the largest current, and it needs ${shown.limit}`,
    ])
  },
  undetermined: unsettled(
    (told) => `${word(told, 'sensor') === undefined ? 'each sensor' : sensorWords(told)} always gets the voltage that it needs`,
    keepsWindow,
  ),
  notApplicable: {
    'no-subject': () => 'No sensor is wired.',
    'not-required-by-concept': () => 'The concept asks for no wired sensor.',
  },
  mend: mendOr((told) => {
    if (word(told, 'beyond') === 'high') return 'Use a source that gives less, or a sensor that stands more.'
    const enough = sizes(told)
    return sentenceOf([
      enough ? `use cores of at least ${enough}, a shorter cable` : 'no usual core is thick enough: use a shorter cable',
      ' or a source that gives more',
    ])
  }),
}

const carries: Say = (told) => {
  const shown = against(told, 'larger-is-worse')
  const inrush = electric(told, 'inrush_A', 'larger-is-worse')
  return [
    sentenceOf([
      electric(told, 'fuse_A') ? 'source and fuse carry' : 'the source gives',
      ' what all sensors draw',
      shown && `: at most ${shown.measured} of ${shown.limit}`,
      inrush && `; ${inrush} for a moment when power comes, which is not judged`,
    ]),
    electric(told, 'fuse_A') && 'Whether the fuse is small enough for the cables is not judged either.',
  ]
    .filter(Boolean)
    .join(' ')
}

export const supplyCurrent: RuleWording = {
  name: 'Current of the source',
  pass: carries,
  fail: (told) => {
    const shown = against(told, 'larger-is-worse')
    const whose = word(told, 'limitedBy') === 'fuse' ? 'its fuse carries' : 'it can give'
    return sentenceOf(['the sensors may draw more from the source than ', whose, shown && `: ${shown.measured}, against ${shown.limit}`])
  },
  undetermined: unsettled(() => 'the source can give what all sensors draw', carries),
  notApplicable: {
    'no-subject': () => 'No wiring is described.',
    'not-required-by-concept': () => 'The concept asks for no wiring.',
  },
  mend: mendOr((told) =>
    word(told, 'limitedBy') === 'fuse'
      ? 'Use a larger fuse if source and cables allow it, or feed some sensors from elsewhere.'
      : 'Use a source that can give more, or feed some sensors from elsewhere.',
  ),
}

const LIMITED: Readonly<Record<string, string>> = {
  'class-2': 'the source is energy-limited (class 2)',
  'extra-low': 'the source is separated and of extra-low voltage',
}

const isLimited: Say = (told) => {
  const shown = against(told, 'larger-is-worse')
  return sentenceOf([
    LIMITED[word(told, 'limited') ?? ''] ?? 'the source is limited as declared',
    shown && `: at most ${shown.measured}, where ${shown.limit} is allowed`,
  ])
}

export const energyLimited: RuleWording = {
  name: 'Limits of the source',
  pass: isLimited,
  fail: (told) => {
    const shown = against(told, 'larger-is-worse')
    const what = word(told, 'exceeds') === 'power' ? 'power' : 'voltage'
    return sentenceOf([
      `the source has more ${what} than what it is declared to be may have`,
      shown && `: ${shown.measured}, against ${shown.limit}`,
    ])
  },
  undetermined: {
    ...unsettled(() => 'the circuit of the sensors is limited in voltage and energy', isLimited),
    'not-computable': () =>
      'The source is neither energy-limited nor safely separated: its circuit has to be laid, protected and judged like one of mains, which this program does not do.',
  },
  notApplicable: {
    'no-subject': () => 'No wiring is described.',
    'not-required-by-concept': () => 'The concept asks for no wiring.',
  },
  mend: mendOr(
    () => 'Feed the sensors from a source whose label says that it is limited so, or have the circuit judged like one of mains.',
  ),
}

function contactWords(told: Told): string {
  const contact = word(told, 'contact')
  const kind = flag(told, 'isTransistor') ? 'transistor' : 'contact'
  return contact === undefined ? `the ${kind} of ${sensorWords(told)}` : `${kind} ${told.language.quoted(contact)} of ${sensorWords(told)}`
}

const switches: Say = (told) => {
  const [open, most, least] = [
    electric(told, 'open_V', 'larger-is-worse'),
    electric(told, 'most_A', 'larger-is-worse'),
    electric(told, 'least_A', 'smaller-is-worse'),
  ]
  return sentenceOf([`${contactWords(told)} switches what it may`, open && most && least && `: ${open}, and between ${least} and ${most}`])
}

export const contactRating: RuleWording = {
  name: 'Load of a contact',
  pass: switches,
  fail: (told) => {
    const exceeds = word(told, 'exceeds')
    const shown = against(told, exceeds === 'least' ? 'smaller-is-worse' : 'larger-is-worse')
    if (exceeds === 'leak')
      return sentenceOf([
        `${contactWords(told)} leaks so much while it is off that input ${word(told, 'input') ?? '?'} does not take it for off`,
        shown && `: ${shown.measured}, and at most ${shown.limit} would do`,
      ])
    if (exceeds === 'least')
      return sentenceOf([
        `${contactWords(told)} switches too little ${flag(told, 'isTransistor') ? 'to conduct for sure' : 'to keep itself clean'}`,
        shown && `: ${shown.measured}, and it needs ${shown.limit}`,
      ])
    const what = exceeds === 'voltage' ? 'voltage' : 'current'
    return sentenceOf([`${contactWords(told)} switches more ${what} than it may`, shown && `: ${shown.measured}, against ${shown.limit}`])
  },
  undetermined: unsettled((told) => `${contactWords(told)} switches what it may`, switches),
  notApplicable: {
    'no-subject': () => 'No contact of a sensor switches anything.',
    'not-required-by-concept': () => 'The concept asks for no contact.',
  },
  mend: mendOr((told) =>
    word(told, 'exceeds') === 'leak'
      ? 'Load the line with a resistor beside the input, or use an input of less resistance or an output that leaks less.'
      : word(told, 'exceeds') === 'least'
        ? 'Load the contact with a resistor beside the input, or use an input that draws more.'
        : 'Put a relay between contact and load, or use an output that may switch so much.',
  ),
}
