import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { type Told, word } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

const FACTS: Readonly<
  Record<string, { readonly question: string; readonly does: Readonly<Record<string, string>>; readonly mend: string }>
> = {
  sensorFault: {
    question: 'die Steuerung bei gestörtem Anwesenheitssensor keinen ungesicherten Flügel schließen lässt',
    does: {
      'hold-to-run': 'bei gestörtem Anwesenheitssensor fährt das Tor nur, solange ein Taster gehalten wird',
      stays: 'bei gestörtem Anwesenheitssensor bleibt das Tor stehen',
      closes: 'bei gestörtem Anwesenheitssensor schließt das Tor trotzdem, und niemand ist gesichert',
    },
    mend: 'Die Steuerung so einstellen, dass das Tor bei gestörtem Sensor nur bei gehaltenem Taster fährt oder stehen bleibt. Bis dahin außer Betrieb nehmen.',
  },
  powerReturn: {
    question: 'der Flügel niemanden überrascht, wenn die Spannung wiederkehrt',
    does: {
      waits: 'kehrt die Spannung wieder, wartet das Tor auf einen Befehl',
      'moves-guarded': 'kehrt die Spannung wieder, fährt das Tor erst, wenn seine Sensoren wach sind',
      moves: 'kehrt die Spannung wieder, fährt das Tor sofort, noch bevor seine Sensoren wach sind',
    },
    mend: 'Die Steuerung so einstellen, dass sie nach einem Spannungsausfall auf einen Befehl oder auf ihre Sensoren wartet.',
  },
  fire: {
    question: 'eine Funktion, die bei Brand schließt, niemanden trifft',
    does: {
      none: 'keine Funktion schließt das Tor bei Brand',
      'presence-first': 'auch bei Brand hält Anwesenheit das schließende Tor an',
      'fire-first': 'bei Brand schließt das Tor, ob jemand gesehen wird oder nicht',
    },
    mend: 'Anwesenheit auch bei Brand wirken lassen oder die Kraft der Schließkante begrenzen; ob das sein darf, entscheidet, wer für den Brandschutz verantwortlich ist.',
  },
  escape: {
    question: 'eine Funktion, die Menschen hinauslässt, vor allem anderen kommt',
    does: {
      none: 'kein Fluchtweg führt durch das Tor',
      'escape-first': 'die Funktion, die Menschen hinauslässt, kommt vor allem anderen',
      'other-first': 'etwas anderes kommt vor der Funktion, die Menschen hinauslässt',
    },
    mend: 'Die Funktion, die Menschen hinauslässt, zuerst kommen lassen oder den Fluchtweg anders führen.',
  },
  interlock: {
    question: 'eine Verriegelung keinen Flügel daran hindert, wieder zu öffnen',
    does: {
      none: 'kein Nachbartor verriegelt das Tor',
      'reversal-first': 'ein Flügel, der wieder öffnen muss, tut es auch bei offenem Nachbartor',
      'interlock-first': 'bei offenem Nachbartor darf ein Flügel, der wieder öffnen muss, es nicht, und wer darunter ist, bleibt es',
    },
    mend: 'Einen Flügel, der wieder öffnen muss, öffnen lassen, was auch das Nachbartor tut.',
  },
}

function fact(told: Told) {
  return FACTS[word(told, 'fact') ?? '']
}

const stated: Say = (told) => sentenceOf([fact(told)?.does[word(told, 'does') ?? ''] ?? 'was die Steuerung tut, gefährdet niemanden'])

export const controlFact: RuleWording = {
  name: 'Was die Steuerung tut',
  pass: (told) => stated(told).replace(/\.$/, '; niemand ist gefährdet.'),
  fail: (told) => (told.finding.facts['does'] === undefined ? 'Was die Steuerung tut, gefährdet jemanden.' : stated(told)),
  undetermined: unsettled((told) => fact(told)?.question ?? 'die Steuerung niemanden gefährdet', stated),
  notApplicable: {
    'no-subject': () => 'Es gibt keine Steuerung.',
    'not-required-by-concept': () =>
      'Das Tor fährt nur, solange ein Taster gehalten wird; ein gestörter Sensor lässt nichts von selbst schließen.',
  },
  mend: mendOr((told) => fact(told)?.mend ?? 'Die Steuerung anders einstellen.'),
}
