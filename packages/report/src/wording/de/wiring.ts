import { figure } from '../figures.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { flag, number, sensorWords, type Told, word } from '../told.ts'
import { missingByHand, oftenByHand } from './by-hand.ts'
import { faultWords } from './faults.ts'
import { mendOr, unsettled } from './unsettled.ts'

/** Where nobody described the wiring it is about any of them. */
const whose: Say = (told) => (told.finding.facts['sensorName'] === undefined ? 'ein Sensor' : sensorWords(told))

const counts: Say = (told) => {
  const [found, within_s] = [number(told, 'found') ?? 0, number(told, 'within_s')]
  const within = within_s === undefined ? '' : `, sp\u00e4testens nach ${figure({ value: within_s, unit: 's' }, told, 'larger-is-worse')}`
  return sentenceOf([
    `von ${number(told, 'faults') ?? 0} einzelnen Fehlern verbirgt keiner unbemerkt, was ${whose(told)} meldet`,
    found > 0 && `; ${found} findet ein Test${within}`,
  ])
}

export const singleFault: RuleWording = {
  name: 'Jeder einzelne Fehler der Verdrahtung',
  pass: counts,
  fail: (told) => {
    const fault = faultWords(told.finding.facts)
    if (word(told, 'fault') === 'none')
      return sentenceOf(['ganz ohne Fehler h\u00e4lt die Steuerung nicht an, wenn ', sensorWords(told), ' jemanden sieht'])
    const more = (number(told, 'hidden') ?? 1) - 1
    return sentenceOf([
      fault ?? 'ein einzelner Fehler',
      ': die Steuerung h\u00e4lt die \u00d6ffnung weiter f\u00fcr frei, w\u00e4hrend ',
      sensorWords(told),
      ' jemanden sieht, und niemand merkt es bis zum n\u00e4chsten Test von Hand',
      more > 0 && `; ${more} weitere von ${number(told, 'faults') ?? 0} Fehlern bleiben ebenso verborgen`,
    ])
  },
  undetermined: unsettled((told) => `ein einzelner Fehler der Verdrahtung unbemerkt verbirgt, was ${whose(told)} meldet`, counts),
  notApplicable: {
    'no-subject': () => 'Kein Sensor dieses Tores soll den schlie\u00dfenden Fl\u00fcgel anhalten.',
    'not-required-by-concept': () =>
      'Das Tor f\u00e4hrt nur, solange jemand, der es sieht, einen Taster h\u00e4lt; kein Fehler der Verdrahtung l\u00e4sst es von selbst schlie\u00dfen.',
  },
  mend: mendOr((told) =>
    word(told, 'fault') === 'none'
      ? 'Den Anwesenheitsausgang so anschlie\u00dfen, dass die Steuerung ihn schalten sieht.'
      : 'So anschlie\u00dfen, dass dieser Fehler wie ein K\u00f6rper wirkt (geschlossen bei freier \u00d6ffnung), oder den Weg vom Sensor zur Steuerung vor jedem Schlie\u00dfen von ihr testen lassen. Bis dahin ' +
        byHand(told),
  ),
}

function byHand(told: Told): string {
  const [longest_d, share, missing] = [number(told, 'longest_d'), number(told, 'mostHidden_percent'), word(told, 'handMissing')]
  if (longest_d === undefined || share === undefined)
    return `von Hand testen, und oft${missing ? `; wie oft, lässt sich nicht sagen ohne: ${missingByHand(missing.split(', '))}` : ''}.`
  const [days, percent] = [
    figure({ value: longest_d, unit: 'd' }, told, 'smaller-is-worse'),
    figure({ value: share, unit: 'percent' }, told),
  ]
  return `${oftenByHand(days, percent, flag(told, 'handRemembered') === true)}.`
}

const SLIPS: Readonly<Record<string, (a: string, b: string) => string>> = {
  'two-drivers': (a, b) => `zwei Transistoren treiben eine Leitung, von ${a} und von ${b}; jeder speist in den anderen zur\u00fcck`,
  'input-floating': (a, b) => `der Eingang zwischen ${a} und ${b} h\u00e4ngt in der Luft; keine Ader f\u00fchrt zu ihm`,
  'no-supply': (a, b) => `der Sensor zwischen ${a} und ${b} h\u00e4ngt nicht an der Versorgung`,
  'bridged-contact': (a, b) => `der Kontakt von ${a} nach ${b} ist durch Kupfer \u00fcberbr\u00fcckt und schaltet nichts`,
}

const noSlip: Say = () =>
  'Kein Versehen in der Verdrahtung: Jeder Eingang, jeder Kontakt und jeder Sensor h\u00e4ngt da, wo er seine Arbeit tun kann.'

export const wiringSlips: RuleWording = {
  name: 'Versehen in der Verdrahtung',
  pass: noSlip,
  fail: (told) =>
    sentenceOf([SLIPS[word(told, 'slip') ?? '']?.(word(told, 'a') ?? '?', word(told, 'b') ?? '?') ?? 'die Verdrahtung hat ein Versehen']),
  undetermined: unsettled(() => 'die Verdrahtung ein Versehen hat', noSlip),
  notApplicable: {
    'no-subject': () => 'Keine Verdrahtung ist beschrieben.',
    'not-required-by-concept': () => 'Das Konzept verlangt keine Verdrahtung.',
  },
  mend: mendOr(() => 'Beide Enden vor Ort ansehen und die Verdrahtung oder ihre Beschreibung richtigstellen.'),
}
