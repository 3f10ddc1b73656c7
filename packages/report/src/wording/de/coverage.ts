import { count, figure, size } from '../figures.ts'
import { capital } from '../plain.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import {
  against,
  causeOf,
  inState,
  length,
  lengthToward,
  limitOf,
  mendOfCause,
  number,
  sensorWords,
  type Told,
  word,
  worstBody,
  worstPlace,
  zoneWords,
} from '../told.ts'
import { phrases } from './phrases.ts'
import { mendOr, unsettled } from './unsettled.ts'
import { tolerances } from './worked.ts'

const gridOnly = (told: Told): string => (told.finding.provisional === 'grid' ? ' an jedem Platz des Rasters' : '')

const seenEverywhere: Say = (told) => {
  const free = (number(told, 'seen') ?? 0) + (number(told, 'blind') ?? 0)
  const unseen = number(told, 'openArea_mm2') ?? number(told, 'blind') ?? 0
  const limit = against(told, 'larger-is-worse')
  const placements = free > 0 && told.finding.provisional === 'grid' ? `, ${count(free)} zusammen` : ''
  const everywhere = number(told, 'openArea_mm2') === undefined ? gridOnly(told) : ' überall, wo er Platz hat,'
  const tolerant = number(told, 'tolerantArea_mm2') === undefined ? '' : ', auch wenn alles so weit abweicht, wie die Tordatei erlaubt'
  if (unseen === 0) return `Jeder Prüfkörper wird in ${zoneWords(told)}${inState(told)}${everywhere} gesehen${placements}${tolerant}.`
  return `Die ungesehenen Stellen in ${zoneWords(told)}${inState(told)} sind nicht größer als die Zone erlaubt: ${limit?.measured ?? ''} von ${limit?.limit ?? ''} Durchmesser.`
}

function withinTolerance(told: Told): string {
  const zone = `${zoneWords(told)}${inState(told)}`
  if ((number(told, 'pockets') ?? 0) > 0)
    return `Wie aufgeschrieben bleiben Prüfkörper in ${zone} ungesehen; weicht alles so weit ab, wie die Tordatei erlaubt, ist von keinem einzelnen sicher, dass er ungesehen bleibt.`
  const binding = word(told, 'binding')
  const value = number(told, 'tightTo')
  const unit = word(told, 'tightUnit')
  const head = `Wie aufgeschrieben wird jeder Prüfkörper in ${zone} überall gesehen, wo er Platz hat; wenn alles so weit abweicht, wie die Tordatei erlaubt, ist das nicht bewiesen`
  if (binding === undefined || value === undefined || value === 0) return `${head}.`
  const share = String(Number((Math.floor(value * 1000) / 1000).toPrecision(2))).replace('.', phrases.decimal)
  const tight = unit === 'mm' ? figure({ value, unit: 'mm' }, told, 'smaller-is-worse') : `${share}${unit === 'deg' ? ' Grad' : ' %'}`
  return binding === 'all'
    ? `${head}. Es wäre bewiesen, wenn jede Toleranz ${tight} von dem wäre, was sie ist.`
    : `${head}. Es wäre bewiesen, wenn die Toleranz für ${tolerances[binding] ?? binding} ${tight} wäre, alle anderen wie angegeben.`
}

function notProved(told: Told): string {
  const shown = against(told, 'larger-is-worse')
  const zone = `${zoneWords(told)}${inState(told)}`
  if ((number(told, 'pockets') ?? 0) === 0)
    return `Es ist ungeklärt, ob jeder Prüfkörper in ${zone} gesehen wird: Kein ungesehener Körper wurde gefunden, aber für einige Stellen fehlt der Beweis.`
  return `Prüfkörper bleiben in ${zone} ungesehen. Ob die Stellen klein genug sind, ist ungeklärt: bis zu ${shown?.measured ?? ''} Durchmesser, wovon nicht alles sicher ist; ${shown?.limit ?? ''} dürfen bleiben.`
}

export const zoneCovered: RuleWording = {
  name: 'Zone abgedeckt',
  pass: seenEverywhere,
  fail: (told) => {
    const shown = against(told, 'larger-is-worse')
    const pockets = number(told, 'pockets') ?? 1
    const noField = number(told, 'fields') === 0
    if (noField)
      return `Nichts überwacht ${zoneWords(told)}${inState(told)}: Kein Sensor dieses Tores hat einen Ausgang für diesen Zweck, darum bleibt jeder Körper ungesehen.`
    const limit = (limitOf(told)?.value ?? 0) > 0 ? `höchstens ${shown?.limit ?? ''} dürfen bleiben` : 'keine darf bleiben'
    const percent = shareUnseen(told)
    return sentenceOf([
      `prüfkörper bleiben in ${zoneWords(told)}${inState(told)} ungesehen: `,
      pockets === 1 ? 'eine Blindstelle' : `${count(pockets)} Blindstellen, die größte`,
      word(told, 'pocket') ? ` (${word(told, 'pocket')})` : '',
      ` mit ${shown?.measured ?? ''} Durchmesser, und ${limit}`,
      percent && `. Ungesehen sind ${percent} aller Plätze, an denen ein Körper Raum hat`,
    ])
  },
  undetermined: {
    ...unsettled((told) => `jeder Prüfkörper in ${zoneWords(told)}${inState(told)} gesehen wird`, seenEverywhere),
    'within-tolerance': withinTolerance,
    'not-proved': notProved,
  },
  notApplicable: {
    'no-subject': () => 'Keine Zone dieses Tores muss abgedeckt sein; es gibt keine zu beurteilen.',
    'not-required-by-concept': () => 'Das Schutzkonzept verlangt hier keine abgedeckte Zone.',
  },
  mend: mendOr((told) =>
    number(told, 'fields') === 0
      ? 'Einem Feld eines Sensors den Zweck geben, den die Zone verlangt, oder einen Sensor setzen, der ihn hat.'
      : 'Den Sensor so drehen oder versetzen, dass seine Ebenen durch die Blindstellen gehen, oder auf dieser Seite einen Sensor setzen. Jede Blindstelle hat einen eigenen Befund mit ihrem Grund.',
  ),
}

function shareUnseen(told: Told): string | undefined {
  const share = number(told, 'share')
  return share === undefined ? undefined : figure({ value: (1 - share) * 100, unit: 'percent' }, told, 'larger-is-worse')
}

function unseenBody(told: Told): string {
  const letter = word(told, 'letter')
  const body = worstBody(told)
  const where = worstPlace(told)
  const cause = causeOf(told)
  const head = `${letter ? `Blindstelle ${letter}: Ein Körper` : 'Ein Körper'}${body ? ` von ${body}${body.includes(', ') ? ',' : ''}` : ''} bleibt ungesehen${inState(told)}`
  return `${head}${where ? `, seine Mitte ${where}` : ''}.${cause ? ` Grund: ${cause}.` : ''}`
}

const smallEnough: Say = (told) => {
  const shown = against(told, 'larger-is-worse')
  return `${unseenBody(told)} Die Blindstelle hat ${shown?.measured ?? 'wenig'} Durchmesser; ${zoneWords(told)} erlaubt ${shown?.limit ?? 'das'}.`
}

export const blindPocket: RuleWording = {
  name: 'Blindstelle',
  pass: smallEnough,
  fail: (told) => {
    const shown = against(told, 'larger-is-worse')
    const allowed = (limitOf(told)?.value ?? 0) > 0 ? `dürfen ${shown?.limit ?? ''} bleiben` : 'darf keine bleiben'
    return `${unseenBody(told)} Die Blindstelle misst ${extentOf(told) ?? shown?.measured ?? ''} und ${shown?.measured ?? ''} im Durchmesser${circleOf(told)}; in ${zoneWords(told)} ${allowed}.`
  },
  undetermined: {
    ...unsettled((told) => `eine Blindstelle in ${zoneWords(told)} bleiben darf`, smallEnough),
    'not-proved': (told) => {
      const shown = against(told, 'larger-is-worse')
      const sure = lengthToward(told, 'sure_mm', 'smaller-is-worse')
      return `${unseenBody(told)} Die Blindstelle hat höchstens ${shown?.measured ?? ''} Durchmesser${sure ? ` und mindestens ${sure}` : ''}; in ${zoneWords(told)} dürfen ${shown?.limit ?? ''} bleiben.`
    },
    'within-tolerance': (told) => `${smallEnough(told)} Weicht alles so weit ab, wie die Tordatei erlaubt, ist das nicht bewiesen.`,
  },
  notApplicable: {
    'no-subject': () => 'Es gibt keine Blindstelle zu beurteilen.',
    'not-required-by-concept': () => 'Das Schutzkonzept verlangt hier keine abgedeckte Zone.',
  },
  mend: mendOr((told) => {
    const cause = mendOfCause(told)
    return cause ? `${capital(cause)}.` : 'Den Sensor drehen oder versetzen, oder einen setzen, der von anderswo blickt.'
  }),
}

function extentOf(told: Told): string | undefined {
  const [xMin_mm, xMax_mm, yMin_mm, yMax_mm] = ['xMin_mm', 'xMax_mm', 'yMin_mm', 'yMax_mm'].map((key) => number(told, key))
  if (xMin_mm === undefined || xMax_mm === undefined || yMin_mm === undefined || yMax_mm === undefined) return undefined
  const say = (value: number): string => figure({ value, unit: 'mm' }, told, 'larger-is-worse')
  return `${say(xMax_mm - xMin_mm)} längs des Flügels mal ${say(yMax_mm - yMin_mm)} Tiefe`
}

function circleOf(told: Told): string {
  const radius_mm = number(told, 'circleAtMost_mm')
  return radius_mm === undefined
    ? ''
    : `, ihr größter Kreis höchstens ${figure({ value: 2 * radius_mm, unit: 'mm' }, told, 'larger-is-worse')}`
}

const nothingSeen: Say = (told) => `In ${zoneWords(told)}${inState(told)} wird${gridOnly(told)} kein Körper gesehen, wie es sein muss.`

export const mustNotSee: RuleWording = {
  name: 'Darf nicht gesehen werden',
  pass: nothingSeen,
  fail: (told) => {
    const body = worstBody(told)
    const where = worstPlace(told)
    const shown = against(told, 'larger-is-worse')
    return sentenceOf([
      `der Sensor sieht in ${zoneWords(told)}${inState(told)} hinein, wo nichts gesehen werden darf`,
      shown && `: Körper werden auf ${shown.measured} gesehen`,
      where && `, zum Beispiel einer ${body ? `von ${body} ` : ''}mit seiner Mitte ${where}`,
    ])
  },
  undetermined: unsettled((told) => `in ${zoneWords(told)}${inState(told)} nichts gesehen wird`, nothingSeen),
  notApplicable: {
    'no-subject': () => 'Keine Zone dieses Tores muss ungesehen bleiben.',
    'not-required-by-concept': () => 'Das Schutzkonzept verlangt keine Zone, die ungesehen bleibt.',
  },
  mend: mendOr(
    () =>
      'Die Seite oder die Tiefe des Feldes einziehen oder den Sensor zum Flügel zurückneigen; danach die Zonen erneut prüfen, die abgedeckt sein müssen.',
  ),
}

const groundWatched: Say = (told) => {
  const shown = against(told, 'larger-is-worse')
  const depth = (number(told, 'cells') ?? 0) > 0 ? lengthToward(told, 'depth_mm', 'larger-is-worse') : undefined
  if (depth === undefined) return `Am Fuß von ${sensorWords(told)} gibt es in ${zoneWords(told)}${inState(told)} keinen Totbereich.`
  const rest =
    (limitOf(told)?.value ?? 0) > 0 && shown
      ? `was andere Sensoren davon übrig lassen, hat ${shown.measured} Durchmesser, und ${shown.limit} dürfen bleiben`
      : 'andere Sensoren überwachen ihn ganz'
  return `Am Fuß von ${sensorWords(told)} liegt in ${zoneWords(told)}${inState(told)} ein Totbereich bis ${depth} von der Flügelmitte; ${rest}.`
}

export const deadGround: RuleWording = {
  name: 'Totbereich',
  pass: groundWatched,
  fail: (told) => {
    const shown = against(told, 'larger-is-worse')
    const depth = lengthToward(told, 'depth_mm', 'larger-is-worse')
    const where = worstPlace(told)
    const allowed = (limitOf(told)?.value ?? 0) > 0 ? `höchstens ${shown?.limit ?? ''} dürfen bleiben` : 'nichts davon darf bleiben'
    return sentenceOf([
      `am Fuß von ${sensorWords(told)} liegt in ${zoneWords(told)}${inState(told)} ein Totbereich: Kein Körper wird dort in irgendeiner Lage gesehen`,
      depth && `, bis ${depth} von der Flügelmitte`,
      shown && `. Was kein anderer Sensor überwacht, hat ${shown.measured} Durchmesser; ${allowed}`,
      where && `. Am ungünstigsten liegt die Mitte eines Körpers ${where}`,
    ])
  },
  undetermined: unsettled((told) => `am Fuß von ${sensorWords(told)} ein Totbereich liegt`, groundWatched),
  notApplicable: {
    'no-subject': () => 'Kein entfernungsmessender Sensor überwacht eine Zone am Flügel; es gibt keinen Totbereich zu suchen.',
    'not-required-by-concept': () => 'Das Schutzkonzept verlangt nicht, dass der Boden nahe diesem Sensor überwacht wird.',
  },
  mend: mendOr(() => 'Eine Ebene weniger neigen, damit sie näher am Flügel auftrifft, oder einen Sensor für diesen Boden setzen.'),
}

const smallestSeen: Say = (told) => {
  const smallest = smallestWords(told)
  const required = lengthToward(told, 'required_mm', 'nearest')
  return sentenceOf([
    `in ${zoneWords(told)}${inState(told)} werden Körper der Familie${gridOnly(told)} ab ${smallest ?? 'der verlangten Größe'} gesehen, in Schritten von ${length(told, 'step_mm') ?? 'der Familie'}`,
    required && `; ab ${required} ist verlangt`,
  ])
}

function smallestWords(told: Told): string | undefined {
  const smallest = lengthToward(told, 'smallest_mm', 'larger-is-worse')
  const sides = ['a_mm', 'b_mm', 'c_mm'].map((key) => number(told, key)).filter((side) => side !== undefined)
  return smallest === undefined ? undefined : `einer Größe von ${smallest}${sides.length === 3 ? ` (${size(sides, told)})` : ''}`
}

export const smallestBody: RuleWording = {
  name: 'Kleinster gesehener Körper',
  pass: smallestSeen,
  fail: (told) => {
    const unseen = lengthToward(told, 'unseen_mm', 'larger-is-worse') ?? against(told, 'larger-is-worse')?.measured
    const smallest = smallestWords(told)
    return sentenceOf([
      `in ${zoneWords(told)}${inState(told)} bleibt ein Körper der Familie von ${unseen ?? 'der verlangten Größe'} noch irgendwo ungesehen`,
      `; ab ${lengthToward(told, 'required_mm', 'nearest') ?? 'der verlangten Größe'} müssen alle gesehen werden. `,
      smallest
        ? `Alle versuchten Größen werden erst ab ${smallest} gesehen`
        : `Keine Größe bis ${length(told, 'largest_mm') ?? 'zur größten'} wird überall gesehen`,
    ])
  },
  undetermined: {
    ...unsettled((told) => `so kleine Körper wie verlangt in ${zoneWords(told)}${inState(told)} gesehen werden`, smallestSeen),
    'missing-input': (told) => {
      const smallest = smallestWords(told)
      const found = smallest
        ? `werden Körper der Familie${gridOnly(told)} ab ${smallest} gesehen`
        : `wird keine Größe der Familie bis ${length(told, 'largest_mm') ?? 'zur größten'} überall gesehen`
      return `In ${zoneWords(told)}${inState(told)} ${found}. Niemand hat gesagt, ab welcher Größe sie gesehen werden müssen.`
    },
  },
  notApplicable: {
    'no-subject': () => 'Keine Zone nennt eine Familie von Körpern, deren kleinste Größe zu suchen wäre.',
    'not-required-by-concept': () => 'Das Schutzkonzept verlangt keinen kleinsten Körper.',
  },
  mend: mendOr(() => 'Die Strahlen dort dichter legen: ein näherer Sensor, mehr Ebenen oder ein zweiter Sensor.'),
}
