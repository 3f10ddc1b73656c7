import type { wiring as english } from './en-wiring.ts'

export const wiring: typeof english = {
  title: 'Verdrahtung',
  none: 'Noch hat niemand gesagt, wie die Sensoren verdrahtet sind. Mit einer üblichen Verdrahtung beginnen und ändern, was anders ist: dann wird jeder einzelne Fehler darin versucht.',
  begin: 'Mit einer üblichen Verdrahtung beginnen',
  beginToo: 'Die anderen Sensoren auch verdrahten, auf übliche Weise',
  name: 'Verdrahtung',
  remembered: 'Ihre Zahlen sind nur gemerkt. Nichts ist damit in Ordnung, bis jemand sie mit den Datenblättern verglichen hat.',
  supply: {
    copper: 'Das Kupfer der Kabel wird bis zu {coldest} kalt und bis zu {hottest} heiß.',
    coldest: 'wie kalt das Kupfer wird',
    hottest: 'wie heiß das Kupfer wird',
    source: 'Die Quelle {limited}; geben kann sie {largest}, über eine Sicherung von {fuse}.',
    limited: 'Was auf dem Schild der Quelle steht',
    limitedNames: {
      'class-2': 'ist in der Energie begrenzt (Klasse 2)',
      'extra-low': 'ist sicher getrennt und gibt Kleinspannung',
      no: 'ist weder in der Energie begrenzt noch sicher getrennt',
    },
    limitedUnknown: 'hat ein Schild, das niemand gelesen hat',
    largest: 'der Strom, den die Quelle geben kann',
    fuse: 'Größe der Sicherung',
    noFuse: 'einer Größe, die niemand genannt hat',
    contact: 'Kontakt {name} von {sensor} darf {volt} und {most} schalten und braucht {least}, um sauber zu bleiben.',
    volt: (contact) => `größte Spannung des Kontakts ${contact}`,
    most: (contact) => `größter Strom des Kontakts ${contact}`,
    least: (contact) => `kleinster Strom des Kontakts ${contact}`,
  },
  cautions: [
    'Das Tor vom Netz trennen, bevor die Steuerung geöffnet oder eine Klemme berührt wird.',
    'Arbeit am Netz ist Sache von Elektrofachkräften.',
  ],
}
