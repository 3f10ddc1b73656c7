import type { Help } from './en-help.ts'

export const help: Help = {
  tour: {
    offer:
      'Neu hier? Ein Rundgang an einem erfundenen Tor dauert keine zwei Minuten. Er arbeitet an einer Kopie, die danach verworfen wird.',
    take: 'Rundgang beginnen',
    again: 'Rundgang, zwei Minuten',
    notNow: 'Jetzt nicht',
    waiting: 'Ein Rundgang wurde begonnen und nicht beendet.',
    goOn: 'Weitermachen',
    label: 'Rundgang',
    count: (at, of) => `Halt ${at} von ${of}.`,
    show: 'Zeigen',
    next: 'Weiter',
    leave: 'Verlassen',
    stops: {
      tape: 'Die ganze Arbeit liegt an diesem Maßband, kein Teil ist gesperrt. Auf „{thing}“ tippen.',
      figure: 'Was unterstrichen ist, lässt sich ändern, auch in der Zeichnung. Auf die lichte Breite tippen und eine andere eingeben.',
      place: 'Als Nächstes, wo der Sensor hängt und wie er blickt. Auf „{thing}“ tippen.',
      body: 'Auf „{thing}“ tippen und ihn umherschieben. Unter der Zeichnung steht, was ihn sieht oder warum nichts ihn sieht.',
      why: 'Mängel stehen zuerst. Auf „{thing}“ tippen und wieder schließen: Jeder Wert sagt, woher er kommt.',
      repairs: 'Auf „{thing}“ tippen. Angeboten wird nur, was nichts anderes verschlechtert; warten muss man nicht.',
      undo: 'Alles wurde beim Eingeben gespeichert. Auf „{thing}“ tippen; die Uhr daneben weiß, wer was getan hat.',
      later: 'Was nach dem Beurteilen kommt, steht weiter hinten am Maßband. Auf „{thing}“ tippen.',
    },
    end: 'Das war der Weg durch die Arbeit. Dieses Tor war eine Kopie: Behalten muss man es nicht.',
    throwAway: 'Verwerfen',
    keep: 'Behalten',
  },
  words: {
    open: 'Wörter?',
    label: 'Die Wörter auf diesem Blatt, erklärt',
    title: 'Wörter auf diesem Blatt',
    none: 'Hier steht kein Fachwort.',
  },
  cautions: {
    title: 'Bevor du Hand anlegst',
    practice:
      'Jedes davon ist übliche Praxis des Fachs; keines wird hier aus einer Quelle zitiert. Örtliche Vorschriften und die Anleitungen der Hersteller gehen vor.',
    opening: [
      'Antrieb freischalten und gegen Wiedereinschalten sichern, bevor jemand in der Öffnung steht. Den Flügel abstützen, dass er nicht herunterkommen kann, was immer ihn hält: Federn, Seile, Bremse.',
      'Leiter auf festen, waagerechten Grund stellen und halten lassen. Nie an den Flügel lehnen, nie unter einen Flügel stellen, der nicht abgestützt ist.',
      'Nie in einen Strahl blicken, auch nicht in den eines Messlasers.',
    ],
    leaf: [
      'Muss sich der Flügel für eine Messung bewegen, dann nur im Totmannbetrieb und im Blick; Maßband, Hände und Leiter sind vorher aus seinem Weg, und die Fahrspur ist abgesperrt.',
    ],
    place: [
      'Antrieb freigeschaltet und gesichert, Flügel abgestützt; Federn und Aufhängung stehen unter Spannung.',
      'Fahrspur absperren; niemand kommt herein, solange sich die Hebebühne bewegt. In der Höhe arbeiten, wie es die Regeln dafür sagen.',
      'Vor dem Bohren feststellen, was in der Wand liegt.',
      'Beim Ausrichten nur den Sensor speisen. Nie in einen Strahl blicken.',
    ],
    judge: [
      'Mit einem Körper prüfen, nicht mit einem Menschen, wo der Flügel treffen kann.',
      'In Ordnung heißt hier berechnet: Bevor sich jemand darauf verlässt, wird es am Tor geprüft.',
    ],
  },
}
