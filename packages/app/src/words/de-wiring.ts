import type { wiring as english } from './en-wiring.ts'

export const wiring: typeof english = {
  title: 'Verdrahtung',
  none: 'Noch hat niemand gesagt, wie die Sensoren verdrahtet sind. Mit einer üblichen Verdrahtung beginnen und ändern, was anders ist: dann wird jeder einzelne Fehler darin versucht.',
  begin: 'Mit einer üblichen Verdrahtung beginnen',
  beginToo: 'Die anderen Sensoren auch verdrahten, auf übliche Weise',
  name: 'Verdrahtung',
  remembered: 'Ihre Zahlen sind nur gemerkt. Nichts ist damit in Ordnung, bis jemand sie mit den Datenblättern verglichen hat.',
  cautions: [
    'Das Tor vom Netz trennen, bevor die Steuerung geöffnet oder eine Klemme berührt wird.',
    'Arbeit am Netz ist Sache von Elektrofachkräften.',
  ],
}
