import type { RuleWording, Say } from '../rule-wording.ts'
import { needsWords } from '../told.ts'

/**
 * The sentences for what cannot be told yet. `question` goes on after "ob", with its verb at the end; where a verdict would be in order but for its
 * grounds, the pass is told first and then why it is none.
 */
export function unsettled(question: Say, pass: Say): RuleWording['undetermined'] {
  return {
    'missing-input': (told) => `Es ist nicht bekannt, ob ${question(told)}. Es fehlt: ${needsWords(told) || 'eine Angabe'}.`,
    'rests-on-assumption': (told) =>
      `So weit in Ordnung, beruht aber auf dem, was niemand eingegeben hat: ${needsWords(told) || 'eine Vorgabe'}. ${pass(told)}`,
    'limit-from-memory': (told) =>
      `So weit in Ordnung, beruht aber auf Werten, die nur aus dem Gedächtnis stammen und nie mit ihrem Dokument verglichen wurden: ${needsWords(told) || 'ein Grenzwert'}. ${pass(told)}`,
    'two-values': (told) =>
      `Es ist ungeklärt, ob ${question(told)}. Zwei Personen haben Verschiedenes eingegeben, und niemand hat gewählt: ${needsWords(told) || 'eine Stelle'}.`,
    'nothing-free': (told) => `Nichts lässt erkennen, ob ${question(told)}: Kein Körper hat dort Platz, weil überall Hindernisse stehen.`,
    'not-computable': (told) => `Für diese Art von Gerät oder Flügel lässt sich nicht berechnen, ob ${question(told)}; vor Ort prüfen.`,
    'yaw-range-sampled': (told) =>
      `Es ist nicht bekannt, ob ${question(told)}: Der Körper darf in jedem Winkel liegen, und nur einige Winkel wurden versucht. Von den versuchten geht keiner fehl.`,
    'several-parts': (told) =>
      `Es ist nicht bekannt, ob ${question(told)}: Ein Körper aus mehreren Teilen verdeckt sich selbst und wird nur beurteilt, wo er durchfährt (${needsWords(told) || 'der Körper'}). Kein anderer Körper geht fehl.`,
    'within-tolerance': (told) => `Es ist ungeklärt, ob ${question(told)}, wenn alles so weit abweicht, wie die Tordatei erlaubt.`,
    'not-proved': (told) =>
      `Es ist ungeklärt, ob ${question(told)}: Kein ungesehener Körper wurde gefunden, aber für einige Stellen fehlt der Beweis.`,
  }
}

/** What would settle it, by the reason; for fails the rule's own words. */
export function mendOr(fail: Say): Say {
  return (told) => {
    const { finding } = told
    if (finding.verdict === 'fail') return fail(told)
    if (finding.verdict !== 'undetermined') return ''
    const wanted = needsWords(told)
    return {
      'missing-input': `Eingeben: ${wanted || 'was fehlt'}.`,
      'rests-on-assumption': `Messen oder bestätigen: ${wanted || 'wofür eine Vorgabe steht'}.`,
      'limit-from-memory': `Mit der Seite vergleichen, dann in der Tordatei mit Ausgabe, Abschnitt, Name und Datum bestätigen: ${wanted || 'den Grenzwert'}.`,
      'two-values': `Einen der beiden Werte wählen: ${wanted || 'die Stelle mit zweien'}.`,
      'nothing-free': 'Hindernisse und Zone prüfen: Eines davon liegt vermutlich falsch.',
      'not-computable': 'Vor Ort mit dem Prüfkörper prüfen und die Prüfung aufzeichnen.',
      'within-tolerance': `Genauer messen oder anbringen: ${wanted || 'die Toleranzen'}.`,
      'not-proved': 'Die offenen Stellen ansehen oder vor Ort prüfen.',
      'several-parts': 'Die Zone mit Körpern aus einem Teil beurteilen oder den anderen vor Ort prüfen.',
      'yaw-range-sampled': 'Dem Körper feste Winkel geben oder die Winkel dazwischen vor Ort prüfen.',
    }[finding.reason]
  }
}
