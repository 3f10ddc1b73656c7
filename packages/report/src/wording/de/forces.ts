import { figure } from '../figures.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { against, lengthToward, number, type Told, word } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

function where(told: Told): string {
  const place = word(told, 'place')
  const gap = lengthToward(told, 'gap_mm', 'nearest')
  return `${place === undefined ? 'an der Schließkante' : `bei ${told.language.quoted(place)}`}${gap ? ` mit ${gap} Rest` : ''}`
}

const WHAT: Readonly<Record<string, string>> = {
  peak: 'die Spitze der Kraft',
  time: 'die Dauer der hohen Kraft',
  mean: 'die Kraft, die anhält,',
  rest: 'die Kraft nach 5 s',
}

const gentle: Say = (told) => {
  const found = against(told, 'larger-is-worse')
  return sentenceOf([`${where(told)} berührt der Flügel sanft genug`, found && `: ${found.measured} gemessen, ${found.limit} erlaubt`])
}

export const contactForce: RuleWording = {
  name: 'Kraft bei Berührung',
  pass: gentle,
  fail: (told) => {
    const found = against(told, 'larger-is-worse')
    const what = WHAT[word(told, 'exceeds') ?? ''] ?? 'die Kraft'
    return sentenceOf([`${where(told)} ist ${what} zu groß`, found && `: ${found.measured} gemessen, ${found.limit} erlaubt`])
  },
  undetermined: unsettled((told) => `der Flügel ${where(told)} sanft genug berührt`, gentle),
  notApplicable: {
    'no-subject': () => 'Kein Flügel berührt jemanden.',
    'not-required-by-concept': () => 'Die Schließkante soll niemanden berühren; Kräfte müssen nicht gemessen werden.',
  },
  mend: mendOr(
    () =>
      'Den Flügel langsamer fahren, die Kante weiter nachgeben lassen oder den Antrieb früher anhalten und wieder öffnen lassen; dann neu messen. Mit dem Messgerät gegen eine Stütze messen, nie gegen einen Menschen.',
  ),
}

const little: Say = (told) => {
  const found = against(told, 'larger-is-worse')
  return sentenceOf([
    'der schließende Flügel hat wenig genug Energie',
    found && `: höchstens ${found.measured}; ${found.limit} sind erlaubt`,
  ])
}

export const contactEnergy: RuleWording = {
  name: 'Energie bei Berührung',
  pass: little,
  fail: (told) => {
    const found = against(told, 'larger-is-worse')
    const mass = number(told, 'mass_kg')
    const speed = number(told, 'speed_mm_per_s')
    return sentenceOf([
      'der schließende Flügel hat zu viel Energie',
      found && `: ${found.measured}; ${found.limit} sind erlaubt`,
      mass !== undefined &&
        speed !== undefined &&
        `. Es sind ${String(mass).replace('.', ',')} kg bei ${figure({ value: speed, unit: 'mm_per_s' }, told, 'larger-is-worse')}`,
    ])
  },
  undetermined: unsettled(() => 'der schließende Flügel wenig genug Energie hat', little),
  notApplicable: {
    'no-subject': () => 'Kein Flügel schließt.',
    'not-required-by-concept': () =>
      'Das Tor beruht nicht auf Berührung mit wenig Energie, und der Grenzwert solcher Türen gilt für kein anderes.',
  },
  mend: mendOr(() => 'Langsamer schließen oder einen leichteren Flügel nehmen.'),
}
