import type { CaughtPart, DangerKind, Guard } from '@sillsight/engine'
import { figure } from '../figures.ts'
import { plain } from '../plain.ts'
import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { against, inState, limitOf, nameIn, number, type Told, word } from '../told.ts'
import { phrases } from './phrases.ts'
import { mendOr, unsettled } from './unsettled.ts'

const KINDS: Readonly<Record<DangerKind, string>> = {
  tail: 'das Ende eines Flügels, der zurückläuft',
  sweep: 'der Schwenkbereich eines Drehflügels',
  hinge: 'der Spalt am Drehpunkt',
  folding: 'Teile, die sich falten',
  'draw-in': 'Einzug',
  lifting: 'Mitfahren am Flügel',
  'secondary-edge': 'eine Nebenschließkante',
  'leaf-opening': 'Durchgreifen durch den Flügel',
}

const PARTS: Readonly<Record<CaughtPart, string>> = {
  body: 'ein ganzer Körper',
  head: 'ein Kopf',
  leg: 'ein Bein',
  foot: 'ein Fuß',
  toes: 'die Zehenspitze',
  arm: 'ein Arm',
  hand: 'eine Faust',
  finger: 'ein Finger',
}

const GUARDS: Readonly<Record<Guard['how'], string>> = {
  cover: 'eine Abdeckung, die hoch genug ist und durch die niemand hindurchgreift',
  presence: 'Anwesenheitserkennung an dieser Stelle, die auch diese Bewegung anhält',
  edge: 'eine Schaltleiste, die auch diese Bewegung anhält',
  'nothing-to-hold': 'der Flügel bietet nichts zum Aufsteigen oder Festhalten',
  'load-stop': 'der Antrieb hält an, wenn er mehr hebt, als er soll',
}

function where(told: Told): string {
  const obstacle = nameIn(told, 'obstacleName')
  const name = nameIn(told, 'dangerName')
  const thing = obstacle === undefined ? 'dem, was dort steht' : told.language.quoted(obstacle)
  const called = name === undefined || name === obstacle ? '' : ` (${told.language.quoted(name)})`
  const places: Readonly<Record<string, string>> = {
    tail: `zwischen dem Ende des Flügels und ${thing}`,
    sweep: `zwischen dem schwenkenden Flügel und ${thing}`,
    hinge: 'am Drehpunkt des Flügels',
    folding: 'zwischen den Teilen des Faltflügels',
    'draw-in': 'dort, wo der Flügel einläuft,',
    lifting: 'dort, wo jemand am Flügel mitfahren kann,',
    'secondary-edge': 'an einer Nebenschließkante',
    'leaf-opening': 'dort, wo jemand durch den Flügel greifen kann,',
  }
  const place = places[word(told, 'kind') ?? ''] ?? 'an einer Gefahrstelle'
  const end = `${called}${inState(told)}`
  return end !== '' && place.endsWith(',') ? `${place.slice(0, -1)}${end},` : `${place}${end}`
}

function computed(told: Told): string {
  return number(told, 'gapX_mm') === undefined ? '' : ' (berechnet)'
}

function part(told: Told): string {
  return PARTS[(word(told, 'caught') ?? 'body') as CaughtPart] ?? PARTS.body
}

const guarded: Say = (told) => {
  const by = word(told, 'by')
  const found = against(told, 'smaller-is-worse')
  if (by === 'height' && found)
    return sentenceOf([where(told), ` ist niemand in Reichweite: Die Stelle beginnt in ${found.measured} Höhe, und ${found.limit} genügen`])
  if (by === 'gap' && found)
    return sentenceOf([
      where(told),
      ` bleiben auf dem ganzen Weg mindestens ${found.measured}${computed(told)} frei; ${part(told)} braucht ${found.limit}`,
    ])
  const guard = by === undefined ? undefined : GUARDS[by as Guard['how']]
  return sentenceOf([where(told), ' wird niemand verletzt', guard && `: ${guard}`])
}

const CAUTION =
  'Bevor dort jemand arbeitet: den Antrieb trennen und gegen Einschalten sichern, den Flügel blockieren (Federn und Aufhängung stehen unter Spannung), die Spur absperren. Mit einem Prüfkörper versuchen, nie mit einem Menschen.'

const fewer: Say = (told) => {
  const kind = word(told, 'kind')
  if (kind === 'lifting') return 'Wegnehmen oder abdecken, worauf man steigen oder woran man sich festhalten kann.'
  if (kind === 'leaf-opening') return 'Die Öffnungen schließen oder so eng machen, dass niemand bis zur Gefahr dahinter greift.'
  return 'Den Abstand vergrößern, die Stelle bis zur Sicherungshöhe so abdecken, dass niemand hindurchgreift, oder sie mit einer Anwesenheitserkennung überwachen, die auch diese Bewegung anhält. Wo nur ein kleinerer Körperteil hineingerät, angeben, welcher.'
}

export const dangerPoint: RuleWording = {
  name: 'Gefahrstelle außer der Schließkante',
  pass: guarded,
  fail: (told) => {
    const kind = word(told, 'kind')
    const nothing = (number(told, 'guards') ?? 0) > 0 ? 'keine Sicherung dort genügt' : 'nichts sichert die Stelle'
    const found = kind === 'lifting' || kind === 'leaf-opening' ? undefined : against(told, 'smaller-is-worse')
    if (!found) return sentenceOf([where(told).replace(/,$/, ''), `: ${nothing.replace(/^./, (first) => first.toUpperCase())}`])
    return sentenceOf([
      where(told),
      ` bleiben auf dem Weg nur ${found.measured}${computed(told)} frei, und ${nothing}; ${part(told)} braucht ${found.limit}`,
    ])
  },
  undetermined: {
    ...unsettled((told) => `${where(told)} niemand verletzt wird`, guarded),
    'not-computable': (told) => {
      const by = word(told, 'by')
      const guard = by === undefined ? undefined : GUARDS[by as Guard['how']]
      return sentenceOf([
        `ob ${where(told)} niemand verletzt wird, lässt sich nicht berechnen`,
        guard && `; gesichert ist die Stelle so: ${guard}`,
        '. Vor Ort prüfen',
      ])
    },
  },
  notApplicable: {
    'no-subject': () => 'Außer der Schließkante ist keine Gefahrstelle aufgeführt oder berechnet.',
    'not-required-by-concept': () =>
      'Das Tor fährt nur, solange jemand, der es sieht, einen Taster hält; Gefahrstellen werden nicht beurteilt.',
  },
  mend: (told) => [mendOr(fewer)(told), needsCaution(told) && CAUTION].filter(Boolean).join(' '),
}

function needsCaution({ finding }: Told): boolean {
  return finding.verdict === 'fail' || finding.verdict === 'undetermined'
}

const allLooked: Say = () => 'Jemand hat nach jeder Art von Gefahr gesehen, die ein solcher Flügel außer seiner Schließkante hat.'

function missing(told: Told): string {
  const kinds = (word(told, 'open') ?? '').split(' ').filter(Boolean)
  return phrases.listed(kinds.map((kind) => KINDS[kind as DangerKind] ?? plain(kind)))
}

export const dangersListed: RuleWording = {
  name: 'Nach Gefahrstellen gesehen',
  pass: allLooked,
  fail: (told) => `Nach Gefahren außer der Schließkante wurde nicht gesehen: ${missing(told) || 'einige Arten'}.`,
  undetermined: {
    ...unsettled(() => 'der Flügel jemanden anders als mit seiner Schließkante gefährdet', allLooked),
    'missing-input': (told) => {
      const kinds = missing(told)
      const limit = limitOf(told)
      const of = limit ? ` (von ${figure(limit, told)} Arten)` : ''
      return kinds === ''
        ? 'Es ist nicht bekannt, was der Flügel außer mit seiner Schließkante anrichten kann, denn niemand hat ihn beschrieben.'
        : `Niemand hat gesagt, ob der Flügel, auch beim Öffnen, jemanden anders als mit seiner Schließkante gefährdet: ${kinds}${of}.`
    },
  },
  notApplicable: {
    'no-subject': () => 'Es gibt keinen Flügel, der jemanden gefährden könnte.',
    'not-required-by-concept': () =>
      'Das Tor fährt nur, solange jemand, der es sieht, einen Taster hält; nach Gefahrstellen wird nicht gefragt.',
  },
  mend: mendOr((told) => `Danach sehen und aufführen, was da ist, oder sagen, dass es fehlt: ${missing(told) || 'jede Art'}.`),
}
