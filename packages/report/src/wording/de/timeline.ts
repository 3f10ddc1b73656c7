import type { timeline as english } from '../en/timeline.ts'

export const timeline: typeof english = {
  title: (finding) => `In der Zeit: ${finding}`,
  way: (unit) => `Kante des Flügels, noch bis zu, ${unit}`,
  angle: 'Winkel des Flügels, ab zu',
  axis: 's, seit der Flügel zu schließen begann',
  phases: { warns: 'warnt', closes: 'schließt', delay: 'Verzug', brakes: 'bremst', rests: 'ruht', opens: 'öffnet' },
  inPlane: 'Körper in der Ebene des Flügels',
  body: 'Körper',
  instants: {
    warns: 'das Schließen wird befohlen, die Warnung beginnt',
    begins: 'der Flügel beginnt zu schließen',
    visible: 'der Körper wird sichtbar',
    output: 'der Ausgang schaltet',
    brakes: 'der Flügel beginnt zu bremsen',
    rests: 'der Flügel steht',
    opens: 'der Flügel öffnet wieder',
    enters: 'der Körper erreicht die Ebene des Flügels',
    leaves: 'der Körper hat die Ebene des Flügels verlassen',
    contact: (way) => `Berührung: die Kante hat noch ${way} vor sich`,
    nearest: (way) => `am nächsten: die Kante hat noch ${way} vor sich`,
  },
  at: (time, what) => `${time}: ${what.join('; ')}`,
  field: (sensor, output) => `${sensor}: ungesehen oder gesehen, darunter ${output}`,
  keys: {
    unseen: 'der Körper ist ungesehen',
    output: 'der Ausgang verbietet das Schließen',
    after: 'gestrichelt: ohne die Berührung',
  },
  moreFields: (count) => `und ${count} weitere, die ihn sehen`,
  atContact: (time) => `der Körper, wie er ${time} nach Beginn des Schließens liegt`,
  nothing: 'Hier bewegt sich nichts: der Befund hat keinen Verlauf in der Zeit.',
}
