import type { doorTerms as english } from './en-terms-door.ts'
import type { Term } from './term.ts'

export const doorTerms: Readonly<Record<keyof typeof english, Term>> = {
  // door and surroundings
  opening: {
    word: 'Öffnung',
    forms: ['Öffnung', 'Öffnungen'],
    listed: true,
    says: 'Was der Flügel verschließt: lichte Breite und lichte Höhe.',
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
    word: 'Flügel',
    forms: ['Flügel', 'Flügels', 'Torflügel', 'Torflügels'],
    says: 'Was sich bewegt und die Öffnung verschließt, gleich ob Platte, Behang oder Drehflügel.',
  },
  jamb: {
    word: 'Laibung',
    forms: ['Laibung', 'Laibungen', 'Pfosten', 'Laibungskante'],
    says: 'Die senkrechte Seite der Öffnung. Längen am Flügel entlang zählen von der linken aus.',
  },
  lintel: { word: 'Sturz', forms: ['Sturz', 'Sturzes'], says: 'Was die Öffnung oben überspannt: die Kante, unter der man hindurchgeht.' },
  guide: {
    word: 'Führung',
    forms: ['Führung', 'Führungen', 'Führungsschiene', 'Führungsschienen'],
    says: 'Die Schiene seitlich der Öffnung, in der die Kante des Flügels läuft.',
  },
  sillLine: { word: 'Bodenlinie', forms: ['Bodenlinie'], says: 'Die Linie auf dem Boden genau unter dem Flügel.' },
  travel: {
    word: 'Laufweg',
    forms: ['Laufweg', 'Laufwegs', 'Laufweges', 'Laufrichtung'],
    says: 'Wie die Schließkante ihren Weg geht: abwärts, seitwärts oder schwenkend.',
  },
  bulge: {
    word: 'Ausbauchen',
    forms: ['Ausbauchen', 'Ausbauchung', 'steht vor', 'vorsteht'],
    says: 'Wie weit der Flügel in Bewegung nach einer Seite aus seiner Ebene kippt oder sich bläht.',
  },
  parkedLeaf: {
    word: 'geöffneter Flügel',
    forms: ['geöffneter Flügel', 'geöffneten Flügel', 'geöffnete Flügel'],
    says: 'Der offene Flügel, wo er ruht: Dort ist er ein Hindernis wie jedes andere.',
  },
  closingEdge: {
    word: 'Schließkante',
    forms: ['Schließkante', 'Schließkanten'],
    says: 'Die Kante des Flügels, die beim Schließen vorangeht und jemanden treffen oder einklemmen kann.',
  },
  leveller: {
    word: 'Überladebrücke',
    forms: ['Überladebrücke', 'Überladebrücken'],
    says: 'Die Klappe einer Ladestelle, die die Lücke zum Fahrzeug überbrückt. Angehoben ist sie ein anderer Boden als eben.',
  },
  floorProfile: {
    word: 'Verlauf des Bodens',
    forms: ['Verlauf des Bodens', 'Bodenprofil', 'Bodenprofils'],
    says: 'Die Höhe des Bodens in einigen Abständen vom Flügel, verbunden durch gerade Stücke.',
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
    forms: ['Torzustand', 'Torzustände', 'Torzuständen', 'Zustände des Tores'],
    says: 'Der Tordurchgang, wie er zu einer Zeit steht, etwa mit angehobener Überladebrücke. Jeder Zustand wird beurteilt.',
  },
  side: {
    word: 'Seite',
    forms: ['Seite', 'Seiten'],
    listed: true,
    says: 'Der Raum vor oder hinter dem Flügel, genannt, wie man ihn am Ort nennt.',
  },
  floor: { word: 'Boden', forms: ['Boden', 'Bodens'], listed: true, says: 'Der fertige Boden am Tor: von ihm aus zählen Höhen.' },
  concept: {
    word: 'Schutzkonzept',
    forms: ['Schutzkonzept', 'Schutzkonzepts', 'Schutzkonzeptes', 'Schutzkonzepte', 'Konzept'],
    says: 'Wer hindurchgeht, wie das Tor angetrieben wird und was seine Schließkante sichert. Daraus folgt, was gesehen werden muss und welche Grenzen gelten.',
  },
  drive: {
    word: 'Antrieb',
    forms: ['Antrieb', 'Antriebs', 'angetrieben'],
    says: 'Was den Flügel bewegt: seine Geschwindigkeiten und Beschleunigungen, und wie lange die Steuerung für eine Antwort braucht.',
  },
  holdTime: {
    word: 'Nachlaufzeit',
    forms: ['Nachlaufzeit'],
    says: 'Wie lange ein Ausgang anbleibt, nachdem der Körper zuletzt gesehen wurde.',
  },
  responseTime: {
    word: 'Ansprechzeit',
    forms: ['Ansprechzeit', 'Reaktionszeiten'],
    says: 'Wie lange es höchstens dauert, bis der Ausgang sich ändert, nachdem ein Körper sichtbar wurde.',
  },
  lane: {
    word: 'Spur',
    forms: ['Spur', 'Spuren'],
    says: 'Ein Stück der Öffnung, in dem Menschen oder Fahrzeuge hindurchgehen, mit Tempo und Körpern.',
  },
  holdToRun: {
    word: 'Totmannbetrieb',
    forms: ['Totmannbetrieb', 'Totmann', 'solange ein Taster gehalten wird', 'gehaltenem Taster'],
    says: 'Der Flügel bewegt sich nur, solange jemand einen Taster drückt und ihn im Blick hat; losgelassen bleibt er stehen.',
  },
  impulse: {
    word: 'Impuls',
    forms: ['Impuls', 'Impulses', 'Impulse', 'Impulsen'],
    says: 'Ein kurzer Befehl, etwa ein Druck auf einen Taster, nach dem das Tor seinen ganzen Weg von selbst geht.',
  },
  forceLimit: {
    word: 'Kraftbegrenzung',
    forms: ['Kraftbegrenzung', 'Kraft der Schließkante ist begrenzt', 'ihre Kraft begrenzt'],
    says: 'Die Kante hält an und weicht zurück, bevor sie zu stark drückt. Wie stark sie drückt, wird am Tor gemessen.',
  },
  // sensors
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
    says: 'Eine weiche Leiste am Flügel, die bemerkt, wenn sie gedrückt wird.',
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
    word: 'Abtastebene',
    forms: ['Abtastebene', 'Abtastebenen', 'Ebene', 'Ebenen'],
    says: 'Die Fläche, in der die Strahlen eines Fächers liegen. Auf dem Boden zeichnet sie eine Linie; zwischen zwei Flächen wird nichts gesehen.',
  },
  fan: {
    word: 'Fächer',
    forms: ['Fächer', 'Fächers', 'Fächern'],
    says: 'Die Strahlen einer Abtastebene, von einem Punkt aus unter gleichen Winkeln gespreizt.',
  },
  tilt: {
    word: 'Neigung',
    forms: ['Neigung', 'geneigt', 'neigt', 'neigen'],
    says: 'Wie weit die Ebenen von der Wand weg geneigt sind: bei 0 hängen sie lotrecht, mehr führt vom Flügel weg.',
  },
  yaw: {
    word: 'Drehung im Grundriss',
    forms: ['Drehung im Grundriss', 'gedreht'],
    says: 'Wie weit ein Ding von oben gesehen gedreht ist, gegen den Uhrzeigersinn.',
  },
  roll: {
    word: 'Verdrehung',
    forms: ['Verdrehung', 'verdreht'],
    says: 'Wie weit der Fächer in seiner eigenen Ebene gedreht ist, wie ein Zeiger auf dem Zifferblatt.',
  },
  spot: {
    word: 'Auftreffpunkt',
    forms: ['Auftreffpunkt', 'Auftreffpunkte', 'Auftreffpunkten', 'Fleckradius'],
    says: 'Wo ein Strahl auftrifft und wie breit er dort ist.',
  },
  background: {
    word: 'Hintergrund',
    forms: ['Hintergrund', 'Hintergrunds', 'Hintergrundes', 'Hintergründe'],
    says: 'Worauf ein Strahl endet, wenn niemand da ist: Boden, Wand, Pfosten. Der Sensor bemerkt, was davor kommt.',
  },
  backgroundMargin: {
    word: 'Hintergrundabstand',
    forms: ['Hintergrundabstand', 'Hintergrundabstands'],
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
    word: 'Extinktion',
    forms: ['Extinktion', 'Abschwächung'],
    says: 'Der Anteil des Lichts, den die Luft auf jedem Stück seines Wegs schluckt.',
  },
  lowestEntry: {
    word: 'niedrigste Erfassung',
    forms: ['niedrigste Erfassung', 'niedrigsten Erfassung'],
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
    word: 'Bodenfreiheit',
    forms: ['Bodenfreiheit'],
    says: 'Die kleinste Höhe, in der ein Feld etwas annimmt. Zu klein, und der Boden gilt als Körper; zu groß, und ein flacher Körper wird verfehlt.',
  },
  topOfField: {
    word: 'Oberkante des Feldes',
    forms: ['Oberkante des Feldes', 'Oberkante des Felds'],
    says: 'Die größte Höhe, in der ein Feld etwas annimmt.',
  },
  cluster: {
    word: 'Nachbarstrahlen',
    forms: ['Nachbarstrahlen', 'Nachbarn'],
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
    says: 'Der Teil des Flügelwegs, auf dem ein Feld nicht wirkt, damit der Flügel es nicht auslöst.',
  },
}
