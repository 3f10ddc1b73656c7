import { count, figure, type Toward } from '../figures.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { basisWords } from '../sources.ts'
import { against, fieldWords, flag, inState, nameIn, number, sensorWords, type Told, word, zoneWords } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

const heldLongEnough: Say = (told) => {
  if (flag(told, 'heldForEver') === true) return `In ${zoneWords(told)} hält ${fieldWords(told)} einen stehenden Körper, solange er bleibt.`
  const held = seconds(told, 'presence_s', 'smaller-is-worse')
  const stay = seconds(told, 'stay_s', 'larger-is-worse')
  return sentenceOf([
    `in ${zoneWords(told)} hält ${fieldWords(told)} einen stehenden Körper`,
    held && ` ${held} lang`,
    stay && `; niemand bleibt länger als ${stay}`,
  ])
}

function seconds(told: Told, key: string, toward: Toward): string | undefined {
  const value = number(told, key)
  return value === undefined ? undefined : figure({ value, unit: 's' }, told, toward)
}

export const presenceTime: RuleWording = {
  name: 'Haltezeit für stehende Körper',
  pass: heldLongEnough,
  fail: (told) => {
    const held = seconds(told, 'presence_s', 'smaller-is-worse')
    const stay = seconds(told, 'stay_s', 'larger-is-worse')
    const unheld = against(told, 'larger-is-worse')
    return sentenceOf([
      `wer in ${zoneWords(told)} stillsteht, bleibt nach einer Zeit ungesehen: ${fieldWords(told)} lässt einen stehenden Körper`,
      held ? ` nach ${held} los` : ' los',
      stay && `, und man bleibt bis zu ${stay}`,
      unheld && `. So bleiben ${unheld.measured} ungesehen`,
    ])
  },
  undetermined: unsettled((told) => `${fieldWords(told)} in ${zoneWords(told)} einen stehenden Körper lange genug hält`, heldLongEnough),
  notApplicable: {
    'no-subject': () => 'Keine Zone muss einen Körper halten, der stillsteht.',
    'not-required-by-concept': () => 'Das Schutzkonzept verlangt nicht, dass ein stehender Körper gehalten wird.',
  },
  mend: mendOr(() => 'Das Feld so einstellen, dass es einen stehenden Körper unbegrenzt hält, oder einen Sensor nehmen, der das kann.'),
}

const alwaysOnSite: Say = (told) =>
  sentenceOf([
    `${sensorWords(told)} lässt sich nicht berechnen; vor Ort prüfen`,
    word(told, 'needs') && `. Der Hersteller sagt, was nötig ist: ${word(told, 'needs')}`,
  ])

export const zoneOnlyDevice: RuleWording = {
  name: 'Nur gezeichnetes Gerät',
  pass: (told) => `An ${sensorWords(told)} gibt es nichts zu berechnen.`,
  fail: alwaysOnSite,
  undetermined: { ...unsettled((told) => `${sensorWords(told)} sieht, was nötig ist`, alwaysOnSite), 'not-computable': alwaysOnSite },
  notApplicable: {
    'no-subject': () =>
      'Jeder Sensor dieses Tores lässt sich berechnen; es gibt kein Radar, keine Schleife, keine Kontaktleiste, keinen Zugschalter und keinen Taster.',
    'not-required-by-concept': () => 'Das Schutzkonzept beruht nicht auf diesem Gerät.',
  },
  mend: mendOr(() => 'Vor Ort prüfen und die Prüfung aufzeichnen.'),
}

const valuesKnown: Say = (told) => {
  const source = told.finding.basis.find(({ id }) => id === told.finding.subject.id)
  return sentenceOf([
    `die Werte von ${sensorWords(told)} sind vollständig, und kein Strahl beginnt in etwas`,
    source && ` (Werte ${basisWords(source.source.basis, source.confirmed, told)})`,
  ])
}

export const sensorValues: RuleWording = {
  name: 'Werte des Sensors',
  pass: valuesKnown,
  fail: (told) => {
    const enclosed = number(told, 'enclosed') ?? 0
    const obstacle = nameIn(told, 'obstacleName')
    const which =
      enclosed === number(told, 'beams') ? 'jeder Strahl' : `${count(enclosed)} von ${count(number(told, 'beams') ?? 0)} Strahlen`
    const one = enclosed === 1 || enclosed === number(told, 'beams')
    const inside = obstacle ? `in ${told.language.things.obstacle(obstacle)}` : 'unter dem Boden'
    return `Der Sensor steht in etwas: ${which} von ${sensorWords(told)} ${one ? 'beginnt' : 'beginnen'} ${inside}${inState(told)} und ${one ? 'sieht' : 'sehen'} nichts.`
  },
  undetermined: unsettled((told) => `${sensorWords(told)} sieht wie berechnet`, valuesKnown),
  notApplicable: {
    'no-subject': () => 'Dieses Tor hat keinen Sensor, der Entfernungen misst.',
    'not-required-by-concept': () => 'Das Schutzkonzept beruht nicht auf diesem Sensor.',
  },
  mend: mendOr(() => 'Prüfen, wo der Sensor hängt und wo das Hindernis steht: Eines von beiden ist falsch gemessen.'),
}
