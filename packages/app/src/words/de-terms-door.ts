import type { doorTerms as english } from './en-terms-door.ts'
import type { Term } from './term.ts'

/** Wörter von Tor und Sensor. */
export const doorTerms: Readonly<Record<keyof typeof english, Term>> = {
  // Tor und Umgebung
  opening: {
    word: 'Öffnung',
    forms: ['Öffnung', 'Öffnungen'],
    listed: true,
    says: 'Was das Blatt verschließt: lichte Breite und lichte Höhe.',
  },
  clearWidth: {
    word: 'lichte Breite',
    forms: ['lichte Breite', 'lichten Breite'],
    says: 'Die freie Breite von Führung zu Führung; von mehreren Messungen die kleinste.',
  },
  clearHeight: {
    word: 'lichte Höhe',
    forms: ['lichte Höhe', 'lichten Höhe'],
    says: 'Die freie Höhe vom Boden bis zur Unterkante darüber; von mehreren Messungen die kleinste.',
  },
  diagonal: {
    word: 'Diagonale',
    forms: ['Diagonale', 'Diagonalen'],
    says: 'Von Ecke zu Ecke der Öffnung. Mit Breite und Höhe zeigen beide Diagonalen ein falsch abgelesenes Maß und ob die Ecken rechtwinklig sind.',
  },
  leaf: {
    word: 'Blatt',
    forms: ['Blatt', 'Blattes', 'Blatts', 'Torblatt', 'Torblattes', 'Torblatts'],
    says: 'Was sich bewegt und die Öffnung verschließt: Platte, Behang oder Flügel des Tors.',
  },
  jamb: {
    word: 'Laibung',
    forms: ['Laibung', 'Laibungen', 'Pfosten', 'Laibungskante'],
    says: 'Die senkrechte Seite der Öffnung. Längen am Blatt entlang zählen von der linken aus.',
  },
  lintel: { word: 'Sturz', forms: ['Sturz', 'Sturzes'], says: 'Was die Öffnung oben überspannt: die Kante, unter der man hindurchgeht.' },
  guide: {
    word: 'Führung',
    forms: ['Führung', 'Führungen', 'Führungsschiene', 'Führungsschienen'],
    says: 'Die Schiene seitlich der Öffnung, in der die Kante des Blattes läuft.',
  },
  sillLine: { word: 'Bodenlinie', forms: ['Bodenlinie'], says: 'Die Linie auf dem Boden genau unter dem Blatt.' },
  travel: {
    word: 'Laufweg',
    forms: ['Laufweg', 'Laufwegs', 'Laufweges', 'Laufrichtung'],
    says: 'Wie die Schließkante ihren Weg geht: abwärts, seitwärts oder schwenkend.',
  },
  bulge: {
    word: 'Ausbauchen',
    forms: ['Ausbauchen', 'Ausbauchung', 'baucht', 'steht vor'],
    says: 'Wie weit das Blatt in Bewegung nach einer Seite aus seiner Ebene kippt oder sich bläht.',
  },
  parkedLeaf: {
    word: 'abgestelltes Blatt',
    forms: ['abgestelltes Blatt', 'abgestellten Blatt', 'abgestellte Blatt'],
    says: 'Das offene Blatt, wo es ruht: dort ist es ein Hindernis wie jedes andere.',
  },
  closingEdge: {
    word: 'Schließkante',
    forms: ['Schließkante', 'Schließkanten'],
    says: 'Die Kante des Blattes, die beim Schließen vorangeht und jemanden treffen oder einklemmen kann.',
  },
  leveller: {
    word: 'Überladebrücke',
    forms: ['Überladebrücke', 'Überladebrücken'],
    says: 'Die Klappe einer Ladestelle, die die Lücke zum Fahrzeug überbrückt. Angehoben ist sie ein anderer Boden als eben.',
  },
  floorProfile: {
    word: 'Bodenprofil',
    forms: ['Bodenprofil', 'Bodenprofils'],
    says: 'Die Höhe des Bodens in einigen Abständen vom Blatt, verbunden durch gerade Stücke.',
  },
  slope: {
    word: 'Quergefälle',
    forms: ['Quergefälle', 'Quergefälles', 'Anstieg des Bodens'],
    says: 'Wie sehr der Boden entlang der Öffnung steigt, von einer Laibung zur anderen.',
  },
  floorTolerance: {
    word: 'Bodentoleranz',
    forms: ['Bodentoleranz', 'höher als aufgemessen', 'vom Aufmaß abweichen'],
    says: 'Wie weit der wirkliche Boden über dem gemessenen liegen kann.',
  },
  obstacle: {
    word: 'Hindernis',
    forms: ['Hindernis', 'Hindernisses', 'Hindernisse', 'Hindernissen'],
    says: 'Ein festes Ding, das immer dort steht: es verdeckt Körper dahinter und beendet Strahlen.',
  },
  doorState: {
    word: 'Torzustand',
    forms: ['Torzustand', 'Torzustände', 'Torzuständen', 'Zustände des Tors'],
    says: 'Der Tordurchgang, wie er zu einer Zeit steht, etwa mit angehobener Überladebrücke. Jeder Zustand wird beurteilt.',
  },
  side: {
    word: 'Seite',
    forms: ['Seite', 'Seiten'],
    listed: true,
    says: 'Der Raum vor oder hinter dem Blatt, genannt, wie man ihn am Ort nennt.',
  },
  floor: { word: 'Boden', forms: ['Boden', 'Bodens'], listed: true, says: 'Der fertige Boden am Tor: von ihm aus zählen Höhen.' },
  concept: {
    word: 'Schutzkonzept',
    forms: ['Schutzkonzept', 'Schutzkonzepts', 'Schutzkonzeptes', 'Schutzkonzepte', 'Konzept'],
    says: 'Wer hindurchgeht, wie das Tor angetrieben wird und was seine Schließkante sichert. Daraus folgt, was gesehen werden muss und welche Grenzen gelten.',
  },
  holdToRun: {
    word: 'Totmannbetrieb',
    forms: [
      'Totmannbetrieb',
      'Totmann',
      'solange ein Taster gedrückt wird',
      'solange ein Knopf gedrückt wird',
      'solange ein Knopf gehalten wird',
    ],
    says: 'Das Blatt bewegt sich nur, solange jemand einen Taster drückt und es im Blick hat; losgelassen bleibt es stehen.',
  },
  impulse: {
    word: 'Impuls',
    forms: ['Impuls', 'Impulses', 'Impulse', 'Impulsen', 'auf Tastendruck', 'durch einen Druck'],
    says: 'Ein kurzer Befehl, etwa ein Druck auf einen Taster, nach dem das Tor seinen ganzen Weg von selbst geht.',
  },
  forceLimit: {
    word: 'Kraftbegrenzung',
    forms: ['Kraftbegrenzung', 'kraftbegrenzt', 'kraftbegrenzte', 'in der Kraft begrenzt', 'Begrenzung der Kraft'],
    says: 'Die Kante hält an und weicht zurück, bevor sie zu stark drückt. Wie stark sie drückt, wird am Tor gemessen.',
  },
  // Sensoren
  sensor: {
    word: 'Sensor',
    forms: ['Sensor', 'Sensors', 'Sensoren'],
    listed: true,
    says: 'Was überwacht: ein Scanner, eine Reihe von Strahlen, ein Lichtgitter, eine Lichtschranke; oder Radar, Schleife und Kontaktleiste, die hier nur gezeichnet werden.',
  },
  scanner: {
    word: 'Scanner',
    forms: ['Scanner', 'Scanners', 'Scannern'],
    says: 'Ein Sensor, der Fächer von Lichtstrahlen aussendet und misst, wie weit jeder kommt.',
  },
  lightGrid: {
    word: 'Lichtgitter',
    forms: ['Lichtgitter', 'Lichtgitters', 'Lichtgittern'],
    says: 'Strahlen übereinander von Pfosten zu Pfosten: was einen unterbricht, wird bemerkt.',
  },
  photoEye: {
    word: 'Lichtschranke',
    forms: ['Lichtschranke', 'Lichtschranken'],
    says: 'Ein Strahl quer durch die Öffnung zu einem Empfänger oder Spiegel: was ihn unterbricht, wird bemerkt.',
  },
  contactEdge: {
    word: 'Kontaktleiste',
    forms: ['Kontaktleiste', 'Kontaktleisten'],
    says: 'Eine weiche Leiste am Blatt, die bemerkt, wenn sie gedrückt wird.',
  },
  zoneOnly: {
    word: 'nur gezeichnetes Gerät',
    forms: ['nur gezeichnet', 'nur gezeichnetes Gerät'],
    says: 'Radar, Schleife, Kontaktleiste, Schnur oder Taster: keine Geometrie entscheidet, was sie bemerken; sie werden vor Ort geprüft.',
  },
  beam: {
    word: 'Strahl',
    forms: ['Strahl', 'Strahls', 'Strahles', 'Strahlen'],
    listed: true,
    says: 'Ein dünner Lichtstrahl eines Sensors. Ein Körper wird bemerkt, wo er auf einen trifft.',
  },
  pose: { word: 'Lage', forms: ['Lage des Sensors'], says: 'Wo ein Sensor hängt und wie er gedreht ist.' },
  scanPlane: {
    word: 'Scanebene',
    forms: ['Scanebene', 'Scanebenen', 'Ebene', 'Ebenen'],
    says: 'Die Fläche, in der die Strahlen eines Fächers liegen. Auf dem Boden zeichnet sie eine Linie; zwischen zwei Flächen wird nichts gesehen.',
  },
  fan: {
    word: 'Fächer',
    forms: ['Fächer', 'Fächers', 'Fächern'],
    says: 'Die Strahlen einer Scanebene, von einem Punkt aus unter gleichen Winkeln gespreizt.',
  },
  tilt: {
    word: 'Neigung',
    forms: ['Neigung', 'geneigt', 'neigt'],
    says: 'Wie weit die Ebenen von der Wand weg geneigt sind: bei 0 hängen sie lotrecht, mehr führt vom Blatt weg.',
  },
  yaw: {
    word: 'Drehung im Grundriss',
    forms: ['Drehung im Grundriss', 'gedreht'],
    says: 'Wie weit ein Ding von oben gesehen gedreht ist, gegen den Uhrzeigersinn.',
  },
  roll: {
    word: 'Rollen',
    forms: ['Rollen', 'Rollwinkel', 'gerollt'],
    says: 'Wie weit der Fächer in seiner eigenen Ebene gedreht ist, wie ein Zeiger auf dem Zifferblatt.',
  },
  spot: {
    word: 'Auftreffpunkt',
    forms: ['Auftreffpunkt', 'Auftreffpunkte', 'Auftreffpunkten'],
    says: 'Wo ein Strahl auftrifft und wie breit er dort ist.',
  },
  background: {
    word: 'Hintergrund',
    forms: ['Hintergrund', 'Hintergrunds', 'Hintergrundes', 'Hintergründe'],
    says: 'Worauf ein Strahl endet, wenn niemand da ist: Boden, Wand, Pfosten. Der Sensor bemerkt, was davor kommt.',
  },
  backgroundMargin: {
    word: 'Abstand zum Hintergrund',
    forms: ['Abstand zum Hintergrund'],
    says: 'Wie weit vor seinem Hintergrund ein Strahl auf einen Körper treffen muss, um beide zu unterscheiden.',
  },
  learned: {
    word: 'gelernter Zustand',
    forms: ['gelernter Zustand', 'gelernten Zustand', 'gelernt', 'eingelernt'],
    says: 'Der Tordurchgang, wie er stand, als der Sensor seinen Hintergrund aufnahm.',
  },
  reach: {
    word: 'Reichweite',
    forms: ['Reichweite', 'Reichweiten'],
    says: 'Wie weit weg ein Körper noch bemerkt wird. Dunkel, schräg oder im Dunst muss er näher sein.',
  },
  reflectance: {
    word: 'Reflexionsgrad',
    forms: ['Reflexionsgrad', 'Reflexionsgrads', 'zu dunkel', 'so dunklen Körper'],
    says: 'Der Anteil des Lichts, den eine Fläche zurückwirft: wenig von dunklem Tuch, viel von Weiß.',
  },
  extinction: {
    word: 'Abschwächung',
    forms: ['Abschwächung'],
    says: 'Der Anteil des Lichts, den die Luft auf jedem Stück seines Wegs schluckt.',
  },
  lowestEntry: {
    word: 'tiefster Eintritt',
    forms: ['tiefster Eintritt', 'tiefsten Eintritt', 'tiefste Eintritt'],
    says: 'Wo ein Strahl eines Feldes dem Boden am nächsten kommt und etwas noch angenommen wird.',
  },
  incidence: {
    word: 'Einfallswinkel',
    forms: ['Einfallswinkel', 'Einfallswinkels'],
    says: 'Wie schräg ein Strahl auf eine Fläche trifft. Senkrecht kommt am meisten Licht zurück.',
  },
  visibility: {
    word: 'Sichtweite',
    forms: ['Sichtweite', 'Nebel', 'Nebels', 'Dunst'],
    says: 'Wie weit man durch die Luft sieht. Nebel und Dunst schlucken Licht auf dem Hin- und Rückweg.',
  },
  field: {
    word: 'Feld',
    forms: ['Feld', 'Felds', 'Feldes', 'Felder', 'Feldern'],
    says: 'Der Teil des Raums, in dem ein Sensor annimmt, was er trifft, wie er eingestellt ist, mit dem Ausgang, den er schaltet.',
  },
  output: {
    word: 'Ausgang',
    forms: ['Ausgang', 'Ausgangs', 'Ausgänge', 'Ausgängen'],
    says: 'Der Kontakt eines Sensors, der dem Tor sagt: da ist jemand.',
  },
  clearance: {
    word: 'Abstand über dem Boden',
    forms: ['Abstand über dem Boden', 'Bodenabstand', 'Bodenabstands'],
    says: 'Die kleinste Höhe, in der ein Feld etwas annimmt. Zu klein, und der Boden gilt als Körper; zu groß, und ein flacher Körper wird verfehlt.',
  },
  topOfField: {
    word: 'Oberkante des Feldes',
    forms: ['Oberkante des Feldes', 'Oberkante des Felds'],
    says: 'Die größte Höhe, in der ein Feld etwas annimmt.',
  },
  cluster: {
    word: 'benachbarte Strahlen',
    forms: ['benachbarte Strahlen', 'benachbarten Strahlen', 'Nachbarstrahlen', 'Nachbarn'],
    says: 'Wie viele Strahlen nebeneinander auf einen Körper treffen müssen, bevor er zählt. Mehr halten Regen und Staub fern und verfehlen kleine Körper.',
  },
  presenceTime: {
    word: 'Haltezeit',
    forms: ['Haltezeit', 'Anwesenheitszeit', 'hält einen stehenden Körper', 'einen stehenden Körper'],
    says: 'Wie lange ein Feld einen Körper weiter bemerkt, der stillsteht.',
  },
  blanking: {
    word: 'Ausblendung',
    forms: ['Ausblendung', 'Ausblendungen', 'Ausblendfenster', 'Ausblendfenstern'],
    says: 'Der Teil des Wegs des Blattes, auf dem ein Feld nicht wirkt, damit das Blatt es nicht auslöst.',
  },
}
