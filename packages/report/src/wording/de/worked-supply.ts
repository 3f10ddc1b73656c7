/** Steps, formulas and outside values of supply, contacts and declared devices, in German; `worked.ts` asks here too. */
export const ofSupply: Readonly<Record<string, string>> = {
  'largest voltage, with no current': 'größte Spannung, ohne Strom',
  'least voltage with the coldest copper': 'kleinste Spannung bei kältestem Kupfer',
  'least voltage with the hottest copper': 'kleinste Spannung bei heißestem Kupfer',
  'least source less what its current and what others share lose':
    'kleinste Quelle weniger dem, was sein Strom und was gemeinsame Adern verlieren',
  'voltage when power comes to all at once': 'Spannung, wenn alle zugleich eingeschaltet werden',
  'window from': 'Fenster von',
  'window to': 'Fenster bis',
  'largest current': 'größter Strom',
  'largest current when power comes': 'größter Strom beim Einschalten',
  'largest voltage': 'größte Spannung',
  'largest power': 'größte Leistung',
  'voltage across the open contact': 'Spannung am offenen Kontakt',
  'largest current through the contact': 'größter Strom durch den Kontakt',
  'least current through the contact': 'kleinster Strom durch den Kontakt',
  'current through the open transistor': 'Strom durch den abgeschalteten Transistor',
  'shown by what its maker declares': 'durch die Angaben des Herstellers belegt',
  'years to dangerous failure': 'Jahre bis zum gefährlichen Ausfall',
  'B10d / (0.1 * operations in a year)': 'B10d / (0,1 * Schaltungen im Jahr)',
  'level that is reached, 1 for a to 5 for e': 'erreichter Level, 1 für a bis 5 für e',
  'the voltage at the device itself, at its worst': 'die Spannung am Gerät selbst, im ungünstigsten Fall',
  'a source is not loaded beyond what it can give, a fuse not beyond what it carries':
    'eine Quelle wird nicht über das hinaus belastet, was sie geben kann, eine Sicherung nicht über das, was sie trägt',
  'cables of sensors are laid as circuits of a source that is limited':
    'Kabel von Sensoren werden als Kreise einer begrenzten Quelle verlegt',
  'the rating of a contact holds for the load that it switches': 'die Angabe eines Kontakts gilt für die Last, die er schaltet',
  'what protects people is declared for that by its maker': 'was Menschen schützt, ist von seinem Hersteller dafür angegeben',
  'the simplified procedure': 'das vereinfachte Verfahren',
  'the simplified procedure; no page of it was seen': 'das vereinfachte Verfahren; keine Seite davon wurde eingesehen',
  'neither clause nor page was seen': 'weder Abschnitt noch Seite wurden eingesehen',
  'Least level (1 for a to 5 for e) and least category of a device whose presence detection protects at a powered door.':
    'Kleinster Level (1 für a bis 5 für e) und kleinste Kategorie eines Geräts, dessen Anwesenheitserkennung an einem kraftbetätigten Tor schützt.',
  'Where low, medium and high diagnostic coverage begin.': 'Wo niedriger, mittlerer und hoher Diagnosedeckungsgrad beginnen.',
  'Where low, medium and high mean time to dangerous failure begin.':
    'Wo niedrige, mittlere und hohe mittlere Zeit bis zum gefährlichen Ausfall beginnen.',
  'Least score, of 100 points, against failures of common cause; needed from category 2 on.':
    'Kleinste Punktzahl, von 100, gegen Ausfälle gemeinsamer Ursache; nötig ab Kategorie 2.',
  'Share of devices that have failed dangerously after B10d operations: the mean time to dangerous failure is B10d / (0.1 x operations in a year).':
    'Anteil der Geräte, die nach B10d Schaltungen gefährlich ausgefallen sind: die mittlere Zeit bis dahin ist B10d / (0,1 x Schaltungen im Jahr).',
  'Performance level that the simplified procedure gives; fives of category, least coverage, and level at low, medium and high mean time to dangerous failure.':
    'Performance Level nach dem vereinfachten Verfahren; je fünf Zahlen: Kategorie, kleinster Deckungsgrad, Level bei niedriger, mittlerer und hoher mittlerer Zeit bis zum gefährlichen Ausfall.',
  'Largest direct voltage, free of ripple, of a circuit of extra-low voltage that is safely separated.':
    'Größte Gleichspannung, frei von Welligkeit, eines sicher getrennten Kreises mit Kleinspannung.',
  'Largest voltage of a source whose circuit is energy-limited of class 2.':
    'Größte Spannung einer Quelle, deren Kreis in der Energie begrenzt ist (Klasse 2).',
  'Largest power of such a source.': 'Größte Leistung einer solchen Quelle.',
  'Largest resistance of a flexible copper conductor (class 5, plain) at 20 °C; pairs of cross-section in mm2 and resistance.':
    'Größter Widerstand eines feindrähtigen Kupferleiters (Klasse 5, blank) bei 20 °C; Paare aus Querschnitt in mm2 und Widerstand.',
  'seen in a secondary table: mycableengineering.com/knowledge-base/iec-60228-dc-resistance':
    'gesehen in einer Tabelle aus zweiter Hand: mycableengineering.com/knowledge-base/iec-60228-dc-resistance',
  'Resistance of a solid copper wire at 20 °C; threes of wire gauge, cross-section in mm2 and resistance.':
    'Widerstand eines massiven Kupferdrahts bei 20 °C; je drei Zahlen: Drahtnummer, Querschnitt in mm2 und Widerstand.',
  'diameter 0.127 x 92^((36 - n) / 39) mm at 17.241 ohm mm2/km; agrees to 0.1 % with a public table: wp.1728.org/?p=4314':
    'Durchmesser 0,127 x 92^((36 - n) / 39) mm bei 17,241 ohm mm2/km; stimmt auf 0,1 % mit einer öffentlichen Tabelle überein: wp.1728.org/?p=4314',
  'How much more than a solid wire of its gauge a stranded one is taken to have.':
    'Wie viel mehr als ein massiver Draht seiner Nummer ein mehrdrähtiger haben soll.',
  'NEC Chapter 9, table 8 has 1.020 to 1.026 times the resistance of its solid conductors':
    'NEC Kapitel 9, Tabelle 8 hat das 1,020- bis 1,026-Fache ihrer massiven Leiter',
  'Resistance in ohm/km that 1 mm2 is taken to have where the table lacks a cross-section; it is in inverse proportion to that.':
    'Widerstand in ohm/km, den 1 mm2 haben soll, wo ein Querschnitt in der Tabelle fehlt; er geht umgekehrt mit dem Querschnitt.',
  'no entry of IEC 60228, table 3 from 0.5 to 2.5 mm2 has more than 19.95 ohm mm2/km':
    'kein Eintrag von IEC 60228, Tabelle 3 von 0,5 bis 2,5 mm2 hat mehr als 19,95 ohm mm2/km',
  'What the resistance of copper at a temperature is multiplied by for that at 20 °C; pairs of temperature in °C and factor.':
    'Womit der Widerstand von Kupfer bei einer Temperatur für den bei 20 °C malzunehmen ist; Paare aus Temperatur in °C und Faktor.',
  'rounded; seen in a copy: uecables.com/471-power-copper-conductors-according-to-iec-60228.html':
    'gerundet; gesehen in einer Kopie: uecables.com/471-power-copper-conductors-according-to-iec-60228.html',
  'How much the resistance of copper grows for each kelvin, as a share of that at 20 °C; used where the table of factors ends.':
    'Um wie viel der Widerstand von Kupfer je Kelvin wächst, als Anteil dessen bei 20 °C; wo die Tabelle der Faktoren endet.',
}
