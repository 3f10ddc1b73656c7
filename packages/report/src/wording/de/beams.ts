import { postureOf, postureWords } from '../bodies.ts'
import { count } from '../figures.ts'
import { place } from '../places.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import {
  against,
  fieldWords,
  inState,
  length,
  lengthToward,
  limitOf,
  nameIn,
  needsWords,
  number,
  sensorWords,
  type Told,
  word,
  zoneWords,
} from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

function facedBody(told: Told): string {
  const posture = postureOf(told.door, { body: word(told, 'body') ?? '', posture: number(told, 'posture') ?? 0 })
  const face = word(told, 'face') === 'top' ? 'auf der Oberseite' : 'auf einer Seite'
  return posture ? `${face} eines Körpers von ${postureWords(posture, told, number(told, 'yaw_rad'))}` : `${face} des Körpers`
}

function neighbours(told: Told): string {
  const cluster = number(told, 'cluster') ?? 1
  return cluster > 1 ? ` (${count(cluster)} Nachbarn müssen übereinstimmen)` : ''
}

function placeOf(told: Told): string | undefined {
  const x_mm = number(told, 'x_mm')
  const y_mm = number(told, 'y_mm')
  return x_mm === undefined || y_mm === undefined ? undefined : place(told.door, { x_mm, y_mm }, told)
}

const closeEnough: Say = (told) => {
  const shown = against(told, 'larger-is-worse')
  return sentenceOf([
    `nachbarstrahlen von ${fieldWords(told)} liegen in ${zoneWords(told)}${inState(told)} dicht genug beieinander${neighbours(told)}`,
    shown && `: höchstens ${shown.measured} ${facedBody(told)}, weniger als ${shown.limit} ist nötig`,
  ])
}

export const beamGapMax: RuleWording = {
  name: 'Lücke zwischen Strahlen',
  pass: closeEnough,
  fail: (told) => {
    const shown = against(told, 'larger-is-worse')
    const where = placeOf(told)
    return sentenceOf([
      `in ${zoneWords(told)}${inState(told)} kann ein Körper zwischen Nachbarstrahlen von ${fieldWords(told)} liegen${neighbours(told)}`,
      shown && `: Sie liegen ${facedBody(told)} ${shown.measured} auseinander, nötig ist weniger als ${shown.limit}`,
      where && `. Am weitesten liegen sie hier auseinander: ${where}`,
    ])
  },
  undetermined: unsettled(
    (told) => `die Strahlen von ${fieldWords(told)} in ${zoneWords(told)} dicht genug beieinander liegen`,
    closeEnough,
  ),
  notApplicable: {
    'no-subject': (told) =>
      word(told, 'field') === undefined
        ? 'Kein Feld zählt für eine Zone, die abgedeckt sein muss; darum wird keine Lücke beurteilt.'
        : `Keine zwei Nachbarstrahlen von ${fieldWords(told)} treffen in ${zoneWords(told)}${inState(told)} einen Körper; darum wird keine Lücke beurteilt.`,
    'not-required-by-concept': () => 'Das Schutzkonzept setzt hier keinen Grenzwert für die Lücke zwischen Strahlen.',
  },
  mend: mendOr(() => 'Den Sensor näher anbringen, einen mit dichteren Strahlen nehmen oder weniger übereinstimmende Nachbarn verlangen.'),
}

const floorClear: Say = (told) => {
  const shown = against(told, 'smaller-is-worse')
  return sentenceOf([
    `der Boden bleibt außerhalb von ${fieldWords(told)}${inState(told)}`,
    shown &&
      `: Der tiefste Punkt, an dem etwas erfasst wird, liegt ${shown.measured} über dem aufgemessenen Boden, der um ${shown.limit} abweichen darf`,
  ])
}

export const floorClearance: RuleWording = {
  name: 'Bodenfreiheit',
  pass: floorClear,
  fail: (told) => {
    const shown = against(told, 'smaller-is-worse')
    const where = placeOf(told)
    const off = (limitOf(told)?.value ?? 0) > 0 ? `, und der wirkliche Boden darf ${shown?.limit ?? ''} höher stehen` : ''
    return sentenceOf([
      `${sensorWords(told)} kann den Boden für einen Körper halten${inState(told)}: ${told.language.things.itsField(nameIn(told, 'fieldName', 'field'))} erfasst, was ${shown?.measured ?? 'so wenig'} über dem aufgemessenen Boden liegt${off}`,
      where && `. Das ist ${where}`,
    ])
  },
  undetermined: {
    ...unsettled((told) => `der Boden außerhalb von ${fieldWords(told)} bleibt`, floorClear),
    'missing-input': (told) => {
      const height = lengthToward(told, 'height_mm', 'smaller-is-worse')
      if (height === undefined)
        return `Es ist nicht bekannt, ob der Boden außerhalb von ${fieldWords(told)} bleibt. Es fehlt: ${needsWords(told) || 'eine Angabe'}.`
      return `Der tiefste Punkt, an dem ${fieldWords(told)} etwas erfasst, liegt ${height} über dem aufgemessenen Boden${inState(told)}. Niemand hat gesagt, wie weit der wirkliche Boden vom Aufmaß abweichen darf.`
    },
  },
  notApplicable: {
    'no-subject': () => 'Kein Feld erfasst etwas in Bodennähe; es gibt keine Bodenfreiheit zu beurteilen.',
    'not-required-by-concept': () => 'Das Schutzkonzept verlangt keine Bodenfreiheit.',
  },
  mend: mendOr(() => 'Die Bodenfreiheit des Feldes vergrößern und die Zonen neu beurteilen, oder dort den Boden ebnen.'),
}

const noFixedThing: Say = (told) => `Nichts Festes steht in einem Strahl von ${sensorWords(told)}${inState(told)}.`

export const segmentBlocked: RuleWording = {
  name: 'Strahl dauernd verstellt',
  pass: noFixedThing,
  fail: (told) => {
    const blocked = number(told, 'blocked') ?? 1
    const thing = nameIn(told, 'obstacleName')
    const beam = number(told, 'beam')
    const at = length(told, 'at_mm')
    return sentenceOf([
      `${sensorWords(told)} kann so nie arbeiten${inState(told)}, ${count(blocked)} von ${count(number(told, 'beams') ?? blocked)} Strahlen sind dauernd verstellt: Im Weg ist ${thing ? told.language.things.obstacle(thing) : told.language.things.floor}`,
      beam !== undefined && `, bei Strahl ${beam}`,
      word(told, 'plane') && ` von ${word(told, 'plane')}`,
      at && `, nach ${at}`,
    ])
  },
  undetermined: unsettled((told) => `ein Strahl von ${sensorWords(told)} dauernd verstellt ist`, noFixedThing),
  notApplicable: {
    'no-subject': () => 'Es ist kein Lichtgitter und keine Lichtschranke angebracht; kein Strahl kann dauernd verstellt sein.',
    'not-required-by-concept': () => 'Das Schutzkonzept verlangt diesen Strahl nicht.',
  },
  mend: mendOr(() => 'Wegräumen, was im Strahl steht, oder beide Enden des Strahls versetzen.'),
}

const leafUnseen: Say = (told) => {
  const blanked = number(told, 'blanked_mm') ?? 0
  const windows = blanked > 0 ? ` außerhalb seiner Ausblendfenster, die ${length(told, 'blanked_mm')} des Weges abdecken,` : ''
  return `Der Flügel löst auf seinem Weg${windows} ${fieldWords(told)} nicht aus${inState(told)}.`
}

export const leafInField: RuleWording = {
  name: 'Flügel im Feld',
  pass: leafUnseen,
  fail: (told) => {
    const from = length(told, 'from_mm')
    const to = length(told, 'to_mm')
    const shown = against(told, 'larger-is-worse')
    const stretches = number(told, 'stretches') ?? 1
    return sentenceOf([
      `der Flügel löst auf seinem Weg ${fieldWords(told)} aus${inState(told)}`,
      shown && `, auf ${shown.measured} davon`,
      from && to && `${stretches > 1 ? `, in ${count(stretches)} Stücken, das längste` : ':'} von ${to} bis ${from} vor dem Zulauf`,
    ])
  },
  undetermined: unsettled((told) => `der Flügel auf seinem Weg ${fieldWords(told)} auslöst`, leafUnseen),
  notApplicable: {
    'no-subject': () => 'Es gibt keinen Flügel oder kein Feld, das er treffen könnte.',
    'not-required-by-concept': () => 'Das Schutzkonzept verlangt dies nicht.',
  },
  mend: mendOr(
    () =>
      'Das Feld weiter vom Flügel weg legen, oder ihm für dieses Stück ein Ausblendfenster geben und neu ansehen, was derweil ungesehen bleibt.',
  ),
}

const heightWatched: Say = (told) => {
  const shown = against(told, 'smaller-is-worse')
  return sentenceOf([
    `${fieldWords(told)} überwacht ${zoneWords(told)} bis ${shown?.measured ?? 'zur nötigen Höhe'}${inState(told)}`,
    shown && `; ${shown.limit} ist nötig`,
  ])
}

export const guardedHeight: RuleWording = {
  name: 'Gesicherte Höhe',
  pass: heightWatched,
  fail: (told) => {
    const shown = against(told, 'smaller-is-worse')
    return sentenceOf([
      `${zoneWords(told)} wird nur bis ${shown?.measured ?? 'zu einem Teil der Höhe'} überwacht${inState(told)}`,
      shown && `, und ${shown.limit} sind zu sichern`,
      `. Am höchsten reicht ${fieldWords(told)}`,
    ])
  },
  undetermined: unsettled((told) => `${zoneWords(told)} so weit hinauf überwacht wird wie nötig`, heightWatched),
  notApplicable: {
    'no-subject': () => 'Am Flügel liegt keine überwachte Zone; es gibt keine Höhe zu sichern.',
    'not-required-by-concept': () => 'Das Schutzkonzept verlangt keine gesicherte Höhe.',
  },
  mend: mendOr(() => 'Die Oberkante des Feldes höher einstellen oder einen Sensor für den Rest der Höhe setzen.'),
}

const lowEnough: Say = (told) => {
  const shown = against(told, 'larger-is-worse')
  return sentenceOf([
    `niemand kriecht in ${zoneWords(told)}${inState(told)} unter ${fieldWords(told)} durch`,
    shown && `: Die Unterkante liegt ${shown.measured} über dem Boden, höchstens ${shown.limit} ist erlaubt`,
  ])
}

export const crawlUnder: RuleWording = {
  name: 'Unterkriechen des Feldes',
  pass: lowEnough,
  fail: (told) => {
    const shown = against(told, 'larger-is-worse')
    return sentenceOf([
      `in ${zoneWords(told)}${inState(told)} kann jemand unter ${fieldWords(told)} durchkriechen`,
      shown && `: Die Unterkante liegt ${shown.measured} über dem Boden, höchstens ${shown.limit} ist erlaubt`,
    ])
  },
  undetermined: unsettled((told) => `jemand unter ${fieldWords(told)} durchkriechen kann`, lowEnough),
  notApplicable: {
    'no-subject': () => 'Am Flügel liegt keine überwachte Zone; es gibt kein Feld, unter dem man durchkriechen könnte.',
    'not-required-by-concept': () => 'Das Schutzkonzept verlangt kein Feld am Flügel.',
  },
  mend: mendOr(() => 'Die Bodenfreiheit des Feldes oder seinen untersten Strahl tiefer legen und die Bodenfreiheit erneut prüfen.'),
}
