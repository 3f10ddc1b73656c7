import { figure, type Toward } from '../figures.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { against, flag, length, number, sensorWords, type Told, word } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

function electric(told: Told, key: string, toward: Toward = 'nearest'): string | undefined {
  const value = number(told, key)
  return value === undefined ? undefined : figure({ value, unit: key.endsWith('_V') ? 'V' : 'A' }, told, toward)
}

function sizes(told: Told): string | undefined {
  const [area, awg] = [number(told, 'core_mm2'), number(told, 'awg')]
  const both = [area && `${String(area).replace('.', told.language.decimal)} mm\u00b2`, awg && `AWG ${awg}`].filter(Boolean)
  return both.length > 0 ? both.join(' oder ') : undefined
}

function cableWords(told: Told): string | undefined {
  const [cable, length_mm, longest] = [word(told, 'cable'), length(told, 'length_mm'), length(told, 'longest_mm')]
  if (cable === undefined || length_mm === undefined) return undefined
  return longest === undefined
    ? `Kabel ${cable} (${length_mm}) darf jede übliche Länge haben.`
    : `Kabel ${cable} (${length_mm}) darf bis zu ${longest} lang sein.`
}

const temperatures = (told: Told): string => {
  const hottest = number(told, 'hottest_degC')
  return hottest === undefined ? '' : ` bei Kupfer von ${String(hottest).replace('.', told.language.decimal)} °C`
}

const keepsWindow: Say = (told) => {
  const shown = against(told, 'smaller-is-worse')
  const inrush = electric(told, 'inrush_V', 'smaller-is-worse')
  return [
    sentenceOf([
      `${sensorWords(told)} hat immer genug Spannung`,
      shown && `: mindestens ${shown.measured}${temperatures(told)}; nötig sind ${shown.limit}`,
    ]),
    cableWords(told),
    inrush && `Für einen Augenblick beim Einschalten hat er ${inrush}; wie lange er damit arbeitet, wird nicht beurteilt.`,
  ]
    .filter(Boolean)
    .join(' ')
}

export const supplyVoltage: RuleWording = {
  name: 'Spannung am Sensor',
  pass: keepsWindow,
  fail: (told) => {
    if (word(told, 'beyond') === 'high') {
      const shown = against(told, 'larger-is-worse')
      return sentenceOf([
        `${sensorWords(told)} kann zu viel Spannung bekommen`,
        shown && `: bis zu ${shown.measured}; er verträgt ${shown.limit}`,
      ])
    }
    const shown = against(told, 'smaller-is-worse')
    return sentenceOf([
      `${sensorWords(told)} kann zu wenig Spannung bekommen`,
      shown && `: ${shown.measured}${temperatures(told)} bei kleinster Quelle und größtem Strom; nötig sind ${shown.limit}`,
    ])
  },
  undetermined: unsettled(
    (told) => `${word(told, 'sensor') === undefined ? 'jeder Sensor' : sensorWords(told)} immer die nötige Spannung hat`,
    keepsWindow,
  ),
  notApplicable: {
    'no-subject': () => 'Kein Sensor ist verdrahtet.',
    'not-required-by-concept': () => 'Das Konzept verlangt keinen verdrahteten Sensor.',
  },
  mend: mendOr((told) => {
    if (word(told, 'beyond') === 'high') return 'Eine Quelle nehmen, die weniger gibt, oder einen Sensor, der mehr verträgt.'
    const enough = sizes(told)
    return sentenceOf([
      enough ? `Adern von mindestens ${enough}, ein kürzeres Kabel` : 'Keine übliche Ader ist dick genug: ein kürzeres Kabel',
      ' oder eine Quelle nehmen, die mehr gibt',
    ])
  }),
}

const carries: Say = (told) => {
  const shown = against(told, 'larger-is-worse')
  const inrush = electric(told, 'inrush_A', 'larger-is-worse')
  return [
    sentenceOf([
      electric(told, 'fuse_A') ? 'Quelle und Sicherung tragen' : 'die Quelle gibt',
      ', was alle Sensoren aufnehmen',
      shown && `: höchstens ${shown.measured} von ${shown.limit}`,
      inrush && `; ${inrush} für einen Augenblick beim Einschalten, was nicht beurteilt wird`,
    ]),
    electric(told, 'fuse_A') && 'Ob die Sicherung klein genug für die Kabel ist, wird ebenfalls nicht beurteilt.',
  ]
    .filter(Boolean)
    .join(' ')
}

export const supplyCurrent: RuleWording = {
  name: 'Strom der Quelle',
  pass: carries,
  fail: (told) => {
    const shown = against(told, 'larger-is-worse')
    const whose = word(told, 'limitedBy') === 'fuse' ? 'ihre Sicherung trägt' : 'sie geben kann'
    return sentenceOf(['die Sensoren können der Quelle mehr entnehmen, als ', whose, shown && `: ${shown.measured} gegen ${shown.limit}`])
  },
  undetermined: unsettled(() => 'die Quelle geben kann, was alle Sensoren aufnehmen', carries),
  notApplicable: {
    'no-subject': () => 'Keine Verdrahtung ist beschrieben.',
    'not-required-by-concept': () => 'Das Konzept verlangt keine Verdrahtung.',
  },
  mend: mendOr((told) =>
    word(told, 'limitedBy') === 'fuse'
      ? 'Eine größere Sicherung nehmen, wenn Quelle und Kabel es erlauben, oder einige Sensoren anders speisen.'
      : 'Eine Quelle nehmen, die mehr geben kann, oder einige Sensoren anders speisen.',
  ),
}

const LIMITED: Readonly<Record<string, string>> = {
  'class-2': 'die Quelle ist in der Energie begrenzt (Klasse 2)',
  'extra-low': 'die Quelle ist sicher getrennt und gibt Kleinspannung',
}

const isLimited: Say = (told) => {
  const shown = against(told, 'larger-is-worse')
  return sentenceOf([
    LIMITED[word(told, 'limited') ?? ''] ?? 'die Quelle ist begrenzt wie angegeben',
    shown && `: höchstens ${shown.measured}, erlaubt sind ${shown.limit}`,
  ])
}

export const energyLimited: RuleWording = {
  name: 'Grenzen der Quelle',
  pass: isLimited,
  fail: (told) => {
    const shown = against(told, 'larger-is-worse')
    const what = word(told, 'exceeds') === 'power' ? 'Leistung' : 'Spannung'
    return sentenceOf([
      `die Quelle hat mehr ${what}, als sie ihrer Angabe nach haben darf`,
      shown && `: ${shown.measured} gegen ${shown.limit}`,
    ])
  },
  undetermined: {
    ...unsettled(() => 'der Kreis der Sensoren in Spannung und Energie begrenzt ist', isLimited),
    'not-computable': () =>
      'Die Quelle ist weder in der Energie begrenzt noch sicher getrennt: ihr Kreis ist zu verlegen, zu schützen und zu beurteilen wie einer am Netz, was dieses Programm nicht tut.',
  },
  notApplicable: {
    'no-subject': () => 'Keine Verdrahtung ist beschrieben.',
    'not-required-by-concept': () => 'Das Konzept verlangt keine Verdrahtung.',
  },
  mend: mendOr(
    () =>
      'Die Sensoren aus einer Quelle speisen, deren Schild sagt, dass sie so begrenzt ist, oder den Kreis wie einen am Netz beurteilen lassen.',
  ),
}

function contactWords(told: Told): string {
  const contact = word(told, 'contact')
  const kind = flag(told, 'isTransistor') ? 'Transistor' : 'Kontakt'
  return contact === undefined ? `der ${kind} (${sensorWords(told)})` : `${kind} ${told.language.quoted(contact)} (${sensorWords(told)})`
}

const switches: Say = (told) => {
  const [open, most, least] = [
    electric(told, 'open_V', 'larger-is-worse'),
    electric(told, 'most_A', 'larger-is-worse'),
    electric(told, 'least_A', 'smaller-is-worse'),
  ]
  return sentenceOf([`${contactWords(told)} schaltet, was er darf`, open && most && least && `: ${open} und zwischen ${least} und ${most}`])
}

export const contactRating: RuleWording = {
  name: 'Last eines Kontakts',
  pass: switches,
  fail: (told) => {
    const exceeds = word(told, 'exceeds')
    const shown = against(told, exceeds === 'least' ? 'smaller-is-worse' : 'larger-is-worse')
    if (exceeds === 'leak')
      return sentenceOf([
        `${contactWords(told)} lässt abgeschaltet so viel durch, dass Eingang ${word(told, 'input') ?? '?'} ihn nicht für abgeschaltet hält`,
        shown && `: ${shown.measured}; höchstens ${shown.limit} gingen`,
      ])
    if (exceeds === 'least')
      return sentenceOf([
        `${contactWords(told)} schaltet zu wenig, um ${flag(told, 'isTransistor') ? 'sicher zu leiten' : 'sich sauber zu halten'}`,
        shown && `: ${shown.measured}; nötig sind ${shown.limit}`,
      ])
    const what = exceeds === 'voltage' ? 'Spannung' : 'Strom'
    return sentenceOf([`${contactWords(told)} schaltet mehr ${what}, als er darf`, shown && `: ${shown.measured} gegen ${shown.limit}`])
  },
  undetermined: unsettled((told) => `${contactWords(told)} schaltet, was er darf`, switches),
  notApplicable: {
    'no-subject': () => 'Kein Kontakt eines Sensors schaltet etwas.',
    'not-required-by-concept': () => 'Das Konzept verlangt keinen Kontakt.',
  },
  mend: mendOr((told) =>
    word(told, 'exceeds') === 'leak'
      ? 'Die Leitung mit einem Widerstand neben dem Eingang belasten oder einen Eingang mit weniger Widerstand oder einen Ausgang nehmen, der weniger durchlässt.'
      : word(told, 'exceeds') === 'least'
        ? 'Den Kontakt mit einem Widerstand neben dem Eingang belasten oder einen Eingang nehmen, der mehr aufnimmt.'
        : 'Ein Relais zwischen Kontakt und Last setzen oder einen Ausgang nehmen, der so viel schalten darf.',
  ),
}
