import type { ProtectionConcept } from '@sillsight/engine'
import { count, size, tape } from '../figures.ts'
import { sideName } from '../places.ts'
import type { RuleWording, Say } from '../rule-wording.ts'
import { number, type Told, zoneWords } from '../told.ts'
import { phrases } from './phrases.ts'
import { mendOr, unsettled } from './unsettled.ts'

function conceptWords({ people, drive, closingEdge }: ProtectionConcept): string {
  const { concept } = phrases
  return phrases.listed([concept.people[people], concept.drive[drive], concept.closingEdge[closingEdge]])
}

const stated: Say = ({ door }) => `Das Schutzkonzept ist angegeben${door.concept ? `: ${conceptWords(door.concept)}` : ''}.`

export const conceptStated: RuleWording = {
  name: 'Schutzkonzept angegeben',
  pass: stated,
  fail: () => 'Das Schutzkonzept widerspricht sich; aus ihm folgt nichts.',
  undetermined: {
    ...unsettled(() => 'hier das Richtige gesehen werden muss', stated),
    'missing-input': () =>
      'Niemand hat gesagt, wer hier durchgeht, wie das Tor angetrieben wird und was seine Schließkante sichert. Daraus folgt, was gesehen werden muss.',
  },
  notApplicable: {
    'no-subject': () => 'Es gibt keinen kraftbetätigten Flügel; ein Schutzkonzept ist nicht nötig.',
    'not-required-by-concept': () => 'Hier ist kein Schutzkonzept nötig.',
  },
  mend: mendOr(() => 'Richtigstellen, wer durchgeht, wie das Tor angetrieben wird und was die Schließkante sichert.'),
}

const bothSides: Say = (told) =>
  `Anwesenheit am Flügel wird über die ganze Öffnung überwacht, auf ${sideName(told.door, 'a', told)} und auf ${sideName(told.door, 'b', told)}.`

export const presenceRequired: RuleWording = {
  name: 'Anwesenheit am Flügel verlangt',
  pass: bothSides,
  fail: (told) =>
    `${unwatchedWords(told)} Die Schließkante fährt weder nur bei gehaltenem Taster noch ist ihre Kraft begrenzt; darum brauchen beide Seiten des Flügels Anwesenheitserkennung.`,
  undetermined: {
    ...unsettled(() => 'Anwesenheit am Flügel überwacht werden muss', bothSides),
    'missing-input': () =>
      'Es ist nicht bekannt, ob Anwesenheit am Flügel überwacht werden muss: Das folgt aus dem Schutzkonzept, und das fehlt.',
  },
  notApplicable: {
    'no-subject': () => 'Es gibt keinen Flügel, an dem Anwesenheit zu überwachen wäre.',
    'not-required-by-concept': ({ door }) =>
      `Das Schutzkonzept verlangt keine Anwesenheitserkennung am Flügel${door.concept ? `, denn ${whyNot(door.concept)}` : ''}.`,
  },
  mend: mendOr(
    () =>
      'Auf jeder Seite, der sie fehlt, über die ganze Breite eine Anwesenheitszone am Flügel zeichnen, überwacht von einem Sensor, dessen Ausgang für Anwesenheit wirkt; oder ein Konzept angeben, das das Tor trägt.',
  ),
}

function whyNot(concept: ProtectionConcept): string {
  return concept.drive === 'hold-to-run' ? phrases.concept.drive[concept.drive] : phrases.concept.closingEdge[concept.closingEdge]
}

function unwatchedWords(told: Told): string {
  const { door } = told
  const sides = (['a', 'b'] as const).flatMap((side) => {
    const unwatched_mm = number(told, side === 'a' ? 'unwatchedA_mm' : 'unwatchedB_mm') ?? 0
    if (unwatched_mm <= 0) return []
    const where = phrases.places.onSide(sideName(door, side, told))
    return [unwatched_mm >= door.opening.width_mm ? where : `auf ${tape(unwatched_mm, told)} der Breite ${where}`]
  })
  return `Nichts überwacht Anwesenheit am Flügel${sides.length > 0 ? ` ${phrases.listed(sides)}` : ''}.`
}

const smallEnough: Say = (told) =>
  `In ${zoneWords(told)} wird Anwesenheit mit einem Körper beurteilt, der in den Referenzkörper von ${referenceSize(told)} passt.`

export const referenceBody: RuleWording = {
  name: 'Referenzkörper',
  pass: smallEnough,
  fail: (told) => {
    const bodies = number(told, 'bodies') ?? 0
    const none =
      bodies === 1
        ? 'passt der Körper, mit dem beurteilt wird, nicht'
        : `passt keiner der ${count(bodies)} Körper, mit denen beurteilt wird,`
    return `In ${zoneWords(told)} ${none} in den Referenzkörper von ${referenceSize(told)}; kleinere Körper können dort ungesehen bleiben.`
  },
  undetermined: unsettled((told) => `Anwesenheit in ${zoneWords(told)} mit einem Körper beurteilt wird, der klein genug ist`, smallEnough),
  notApplicable: {
    'no-subject': () => 'Keine Zone verlangt Anwesenheit am Flügel; ein Referenzkörper ist nicht nötig.',
    'not-required-by-concept': () => 'Das Schutzkonzept verlangt keine Anwesenheit am Flügel.',
  },
  mend: mendOr((told) => `Die Zone mit einem Körper von höchstens ${referenceSize(told)} in allen seinen Lagen beurteilen.`),
}

function referenceSize(told: Told): string {
  const sides = ['a_mm', 'b_mm', 'c_mm'].map((key) => number(told, key)).filter((side) => side !== undefined)
  return sides.length === 3 ? size(sides, told) : 'der Größe, die die Werte nennen'
}
