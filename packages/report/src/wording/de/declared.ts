import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { against, number, sensorWords, type Told, word } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

function declaredOf(told: Told): string {
  const [level, category] = [word(told, 'performanceLevel'), word(told, 'category')]
  return [level && `Performance Level ${level}`, category && `Kategorie ${category}`].filter(Boolean).join(', ')
}

const shows: Say = (told) => {
  const declared = declaredOf(told)
  return sentenceOf([`${sensorWords(told)} ist zum Schutz von Menschen angegeben`, declared && ` (${declared})`])
}

const LACKS: Readonly<Record<string, (told: Told) => string>> = {
  device: (told) =>
    word(told, 'device') === 'pressure-sensitive'
      ? 'ist als Gerät angegeben, das berührt werden muss, und das Konzept will niemanden berührt haben'
      : 'ist nicht als Schutzeinrichtung angegeben: er darf das Tor öffnen und sichert niemanden',
  level: (told) => {
    const [declared, required] = [declaredOf(told), word(told, 'required')]
    return `ist zum Schutz von Menschen zu niedrig angegeben${declared ? ` (${declared})` : ''}${required ? `: mindestens Performance Level ${required} oder Kategorie ${number(told, 'requiredCategory') ?? 2}` : ''}`
  },
  test: (told) =>
    word(told, 'testedBy') === 'control'
      ? 'überlässt es der Steuerung, seine Fehler zu finden, und diese hält das Tor bei misslungener Prüfung nicht vom Schließen ab'
      : 'hat niemanden, der seine Fehler findet',
  listing: () => 'ist nicht für diesen Antrieb gelistet, was das Recht hier verlangt',
}

export const permittedFunction: RuleWording = {
  name: 'Für diese Aufgabe zulässig',
  pass: shows,
  fail: (told) =>
    sentenceOf([`${sensorWords(told)} `, LACKS[word(told, 'lacks') ?? '']?.(told) ?? 'ist nicht zum Schutz von Menschen angegeben']),
  undetermined: unsettled((told) => `${sensorWords(told)}, wie gut er auch sieht, zum Schutz von Menschen dienen darf`, shows),
  notApplicable: {
    'no-subject': () => 'Kein Sensor dieses Tores soll den schließenden Flügel anhalten.',
    'not-required-by-concept': () => 'Das Schutzkonzept beruht nicht auf Sensoren, die jemanden sehen.',
  },
  mend: mendOr((told) =>
    word(told, 'lacks') === 'test'
      ? 'Eine Steuerung nehmen, die ihre Sensoren vor jedem Schließen prüft, oder einen Sensor, der sich selbst überwacht.'
      : 'Einen Sensor nehmen, dessen Papiere ihn dafür angeben, oder die Kante anders sichern.',
  ),
}

const estimated: Say = (told) => {
  const [level, years] = [word(told, 'level'), number(told, 'mttfd_y')]
  return sentenceOf([
    level && level !== 'none'
      ? `die Werte von ${sensorWords(told)} ergeben Performance Level ${level}`
      : `die Werte von ${sensorWords(told)} genügen`,
    years !== undefined && ` (mittlere Zeit bis zum gefährlichen Ausfall ${Math.floor(years)} Jahre)`,
    ', nach dem vereinfachten Verfahren: eine Schätzung, zu beurteilen von denen, die dazu befähigt sind',
  ])
}

export const reliabilityEstimate: RuleWording = {
  name: 'Zuverlässigkeit, geschätzt',
  pass: estimated,
  fail: (told) => {
    const [level, required] = [word(told, 'level'), word(told, 'required')]
    const shown = against(told, 'smaller-is-worse')
    return sentenceOf([
      level && level !== 'none'
        ? `die Werte von ${sensorWords(told)} ergeben nur Performance Level ${level}`
        : `die Werte von ${sensorWords(told)} ergeben keinen Performance Level`,
      shown && required && `, und nötig ist ${required}`,
      ': eine Schätzung, zu beurteilen von denen, die dazu befähigt sind',
    ])
  },
  undetermined: unsettled((told) => `${sensorWords(told)} zuverlässig genug ist`, estimated),
  notApplicable: {
    'no-subject': () => 'Kein sichernder Sensor gibt Werte ohne Performance Level an; es bleibt nichts zu schätzen.',
    'not-required-by-concept': () => 'Das Schutzkonzept beruht nicht auf Sensoren, die jemanden sehen.',
  },
  mend: mendOr(
    () =>
      'Einen Sensor nehmen, für den ein Performance Level angegeben ist, oder jemanden, der dazu befähigt ist, mit allen Teilen der Kette rechnen lassen.',
  ),
}
