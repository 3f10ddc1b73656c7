import { givenNames } from './given.ts'
import { ofApproach } from './worked-approach.ts'
import { ofSupply } from './worked-supply.ts'

/** Names and formulas of steps, meanings and notes of outside values, as the engine and the built-in libraries have them in English. */
const WHOLE: Readonly<Record<string, string>> = {
  ...ofApproach,
  ...ofSupply,
  '(free - unseen) / free': '(freie - ungesehene) / freie',
  'across for sure': 'sicherer Durchmesser',
  'allowed pocket': 'erlaubte Blindstelle',
  area: 'Fläche',
  '1.25 lbf ft in ANSI/BHMA A156.19 (2013); for pedestrian doors only, neither page was seen':
    '1,25 lbf ft in ANSI/BHMA A156.19 (2013); nur für Türen für Fußgänger, keine der Seiten wurde eingesehen',
  'endangers nobody': 'gefährdet niemanden',
  'faults tried': 'versuchte Fehler',
  'longest until a test finds one': 'längste Zeit, bis ein Test einen findet',
  'found by a test': 'von einem Test gefunden',
  'hidden and dangerous': 'verborgen und gefährlich',
  'years until a part fails so that it hides': 'Jahre, bis ein Teil so ausfällt, dass es verborgen bleibt',
  '1 / sum of 1 / years of each part': '1 / Summe von 1 / Jahre jedes Teils',
  'longest time between tests by hand': 'längste Zeit zwischen zwei Tests von Hand',
  '2 * share * years * 365': '2 * Anteil * Jahre * 365',
  slips: 'Versehen',
  'docs/method.md, Wiring: every single fault, one at a time': 'docs/method.md, Verdrahtung: jeder einzelne Fehler, einer nach dem anderen',
  'docs/method.md, Wiring: what cannot be meant': 'docs/method.md, Verdrahtung: was nicht gemeint sein kann',
  'force left after 5 s': 'Kraft nach 5 s',
  'Force that may act after that time.': 'Kraft, die nach dieser Zeit wirken darf.',
  'Force that may be left 5 s after contact.': 'Kraft, die 5 s nach der Berührung bleiben darf.',
  'forces on contact are measured with an instrument that is calibrated':
    'Kräfte bei Berührung werden mit einem kalibrierten Messgerät gemessen',
  'How long a contact force may stay above what may act for longer.': 'Wie lange eine Kraft über der bleiben darf, die länger wirken darf.',
  'kinetic energy': 'Bewegungsenergie',
  'kinetic energy of the leaf at its largest closing speed': 'Bewegungsenergie des Flügels bei seiner größten Schließgeschwindigkeit',
  'Largest force on contact of a leaf that goes down, of one that goes along with 50 to 500 mm left, of one that goes along with more left (in this order).':
    'Größte Kraft bei Berührung: Flügel, der senkrecht schließt; der waagrecht schließt mit 50 bis 500 mm Rest; mit mehr Rest (in dieser Reihenfolge).',
  'Largest kinetic energy of a leaf whose protection rests on low energy.':
    'Größte Bewegungsenergie eines Flügels, dessen Schutz auf wenig Energie beruht.',
  'limit: force left after 5 s': 'Grenzwert: Kraft nach 5 s',
  'limit: mean force after that': 'Grenzwert: mittlere Kraft danach',
  'limit: peak of the force': 'Grenzwert: Spitze der Kraft',
  'limit: time above what may act for longer': 'Grenzwert: Dauer über der Kraft, die länger wirken darf',
  'low energy': 'wenig Energie',
  'mean force after that': 'mittlere Kraft danach',
  'm v^2 / 2': 'm v^2 / 2 (Masse, Geschwindigkeit)',
  'I w^2 / 2 = m v^2 / 6, with I = m L^2 / 3 of a uniform panel and w = v / L':
    'I w^2 / 2 = m v^2 / 6, mit I = m L^2 / 3 einer gleichmäßigen Platte und w = v / L',
  'm / 6 (a^2 + a b + b^2) of each panel, a and b the velocities of its ends where it is widest open':
    'm / 6 (a^2 + a b + b^2) jeder Platte, a und b die Geschwindigkeiten ihrer Enden, wo sie am weitesten offen ist',
  'length of the difference of both velocities where they touch': 'Länge der Differenz beider Geschwindigkeiten, wo sie sich berühren',
  'Invented sizes and reflectances, like ones that are common in practice (no source). Measure what passes your door.':
    'Erfundene Größen und Reflexionsgrade, wie sie in der Praxis üblich sind (ohne Quelle). Messen, was durch das eigene Tor kommt.',
  'neither this table nor that of a later edition was seen': 'weder diese Tabelle noch die einer späteren Ausgabe wurde eingesehen',
  'peak of the force': 'Spitze der Kraft',
  'time above what may act for longer': 'Dauer über der Kraft, die länger wirken darf',
  'what a control does with a fault, after a loss of power, in a fire, for escape, and with a neighbour':
    'was eine Steuerung bei Störung, nach Spannungsausfall, bei Brand, zur Flucht und mit einem Nachbartor tut',
  'begins at height': 'beginnt in der Höhe',
  'cover reaches up to': 'Abdeckung reicht bis',
  'danger behind the openings': 'Gefahr hinter den Öffnungen',
  'distance in the plan between the obstacle and what the leaf sweeps':
    'Abstand im Grundriss zwischen dem Hindernis und dem, was der Flügel überstreicht',
  'far enough behind the openings': 'weit genug hinter den Öffnungen',
  'guards that are enough': 'Sicherungen, die genügen',
  'How far somebody of 14 or older reaches through an opening; fours of its width and the distance behind a slot, a square, a round hole.':
    'Wie weit jemand ab 14 Jahren durch eine Öffnung greift; je vier Zahlen: ihre Weite und der Abstand hinter Schlitz, Quadrat und rundem Loch.',
  'kinds of danger answered': 'beantwortete Arten von Gefahr',
  'least gap': 'Mindestabstand',
  'listed, computed, or said not to be there': 'aufgeführt, berechnet oder als nicht vorhanden angegeben',
  'places that crush, shear, draw in or lift besides the closing edge, while the door opens too':
    'Stellen, die außer der Schließkante quetschen, scheren, einziehen oder mitnehmen, auch beim Öffnen',
  'quotes ISO 13857, table 4; children reach farther, and their table was not seen':
    'zitiert ISO 13857, Tabelle 4; Kinder greifen weiter, und ihre Tabelle wurde nicht eingesehen',
  'smallest gap on the way': 'kleinster Abstand auf dem Weg',
  'Smallest gap that does not crush body, head, leg, foot, toes, arm, hand, finger (in this order).':
    'Kleinster Abstand, der nicht quetscht: Körper, Kopf, Bein, Fuß, Zehen, Arm, Hand, Finger (in dieser Reihenfolge).',
  'the table was not seen': 'die Tabelle wurde nicht eingesehen',
  'what a leaf does to people besides striking them with its closing edge, by how it travels':
    'was ein Flügel außer mit seiner Schließkante anrichtet, je nach seinem Lauf',
  'A box of the size that this invented office sends.': 'Eine Schachtel der Größe, die dieses erfundene Amt verschickt.',
  'at rest + dwell': 'Stillstand + Ruhezeit',
  'becomes visible + response': 'wird sichtbar + Ansprechzeit',
  'body becomes visible': 'Körper wird sichtbar',
  "body enters the leaf's plane": 'Körper erreicht die Ebene des Flügels',
  'body comes within the sweep of the leaf': 'Körper kommt in den Schwenkbereich des Flügels',
  'braking begins': 'Bremsen beginnt',
  'closing is commanded, the warning begins': 'Schließen wird befohlen, die Warnung beginnt',
  'coasting begins': 'Auslaufen beginnt',
  'fastest contact': 'schnellste Berührung',
  'leaf at rest': 'Flügel steht',
  'leaf begins to close from': 'Flügel beginnt zu schließen bei',
  'leaf opens again': 'Flügel öffnet wieder',
  nearest: 'am nächsten',
  'output changes': 'Ausgang schaltet',
  'output changes + delay of the control': 'Ausgang schaltet + Verzögerung der Steuerung',
  'relative speed': 'Relativgeschwindigkeit',
  'the last output before has let go, at the latest': 'der letzte Ausgang davor hat freigegeben, spätestens',
  '- (hold-open time or pause between attempts) - warning': '- (Offenhaltezeit oder Pause zwischen Versuchen) - Warnung',
  '- warning; an output in it calls the closing off': '- Warnung; ein Ausgang in ihr sagt das Schließen ab',
  '- warning; outputs are looked at again when it ends': '- Warnung; an ihrem Ende werden die Ausgänge noch einmal angesehen',
  'delay of the control + fastest closing / coasting': 'Verzögerung der Steuerung + schnellstes Schließen / Auslaufen',
  'smallest gap': 'kleinster Abstand',
  'speed of the body': 'Geschwindigkeit des Körpers',
  'speed of the leaf': 'Geschwindigkeit des Flügels',
  'sqrt(body^2 + leaf^2)': 'Wurzel(Körper^2 + Flügel^2)',
  'way still to go': 'verbleibender Weg',
  'way still to go - side of the body': 'verbleibender Weg - Seite des Körpers',
  'way still to go - top of the body': 'verbleibender Weg - Oberkante des Körpers',
  'way still to go - way at which the leaf meets the body': 'verbleibender Weg - Weg, bei dem der Flügel den Körper trifft',
  'no contact while the leaf moves toward closed': 'keine Berührung, während der Flügel schließt',
  'gap in sight': 'Lücke in der Sicht',
  'along the way, from the last sight to the next': 'entlang des Weges, vom letzten Sehen bis zum nächsten',
  'gap in time': 'Dauer der Lücke',
  'gap / slowest speed': 'Lücke / langsamste Geschwindigkeit',
  'held for': 'gehalten für',
  'hold of the output that lets go last': 'Haltezeit des Ausgangs, der zuletzt loslässt',
  'seen from first part to last, or held for longer than the gap; counts for vehicles':
    'gesehen vom ersten bis zum letzten Teil, oder länger gehalten, als die Lücke dauert; zählt für Fahrzeuge',
  'no contact with a leaf that rests or opens; counts for vehicles':
    'keine Berührung mit einem ruhenden oder öffnenden Flügel; zählt für Fahrzeuge',
  'beams that meet an obstacle or the floor before their end': 'Strahlen, die vor ihrem Ende ein Hindernis oder den Boden treffen',
  'beams that start inside an obstacle or under the floor': 'Strahlen, die in einem Hindernis oder unter dem Boden beginnen',
  'blocked beams': 'verstellte Strahlen',
  'bodies that fit': 'passende Körper',
  'cells * pitch * pitch': 'Rasterfelder * Teilung * Teilung',
  'cells at the foot of the sensor where it sees no posture of any body':
    'Rasterfelder am Fuß des Sensors, in denen er keine Lage irgendeines Körpers sieht',
  cells: 'Rasterfelder',
  'clearance of the field, or height of its lowest beam above the floor':
    'Bodenfreiheit des Feldes oder Höhe seines untersten Strahls über dem Boden',
  coverage: 'Abdeckung',
  'crawl-under height': 'Unterkriechhöhe',
  'dead ground': 'Totbereich',
  depth: 'Tiefe',
  diameter: 'Durchmesser',
  'distance between neighbours along the face; head-on 2 R tan(a / 2)':
    'Abstand der Nachbarn entlang der Fläche; bei geradem Auftreffen 2 R tan(a / 2)',
  'enclosed beams': 'eingeschlossene Strahlen',
  'floor tolerance': 'Toleranz des Bodens',
  'free and seen in at least one posture': 'frei und in mindestens einer Lage gesehen',
  'free placements': 'freie Plätze',
  gap: 'Lücke',
  'guarded up to': 'gesichert bis',
  'largest circle': 'größter Kreis',
  'largest diameter of its groups of cells, less the diagonal of a cell':
    'größter Durchmesser seiner Gruppen von Rasterfeldern, weniger die Diagonale eines Feldes',
  'largest distance between two points of its cells': 'größter Abstand zweier Punkte seiner Rasterfelder',
  'largest distance between two points of its tiles': 'größter Abstand zweier Punkte seiner Kacheln',
  'largest distance between two points of one connected part': 'größter Abstand zweier Punkte eines zusammenhängenden Teils',
  'largest distance between two points of these tiles': 'größter Abstand zweier Punkte dieser Kacheln',
  'largest pocket': 'größte Blindstelle',
  'largest unseen size': 'größte ungesehene Größe',
  'largest |y| of its cells': 'größtes |y| seiner Rasterfelder',
  'largest, largest - step, ... until one goes unseen; and the required size':
    'größte, größte - Schritt, ... bis eine ungesehen bleibt; und die verlangte Größe',
  'least height above the floor at which a beam takes something': 'kleinste Höhe über dem Boden, in der ein Strahl etwas erfasst',
  'left by other sensors': 'von anderen Sensoren übrig gelassen',
  limit: 'Grenzwert',
  'lower edge': 'Unterkante',
  'lowest entry': 'niedrigste Erfassung',
  'max(0, longest stay - presence time)': 'max(0, längster Aufenthalt - Haltezeit)',
  'min(guarded height, clear height)': 'min(Sicherungshöhe, lichte Höhe)',
  'min(upper edge of the field, clear height)': 'min(Oberkante des Feldes, lichte Höhe)',
  'open area outside of pockets': 'offene Fläche außerhalb von Blindstellen',
  'open area over tolerances': 'offene Fläche über die Toleranzen',
  'open area, exact': 'offene Fläche, exakt',
  'open diameter over tolerances': 'offener Durchmesser über die Toleranzen',
  'open diameter, exact': 'offener Durchmesser, exakt',
  'open tiles that no unseen placement of the grid hangs together with':
    'offene Kacheln, die mit keinem ungesehenen Platz des Rasters zusammenhängen',
  'people, drive and closing edge': 'Personen, Antrieb und Schließkante',
  'positions of the closing edge at which the leaf meets a beam in the field':
    'Stellungen der Schließkante, in denen der Flügel einen Strahl im Feld trifft',
  'seen area': 'gesehene Fläche',
  'seen from': 'gesehen ab',
  'seen placements': 'gesehene Plätze',
  'sides in falling order, none longer than its counterpart': 'Seiten der Größe nach, keine länger als ihr Gegenstück',
  'sides watched': 'überwachte Seiten',
  'sizes tried': 'versuchte Größen',
  'smallest size such that every larger one tried is seen everywhere': 'kleinste Größe, ab der jede größere versuchte überall gesehen wird',
  stated: 'angegeben',
  'tight enough': 'eng genug',
  'tiles neither proved seen nor not free': 'Kacheln, weder als gesehen noch als nicht frei bewiesen',
  'tiles that touch and are neither proved seen nor not free':
    'Kacheln, die sich berühren und weder als gesehen noch als nicht frei bewiesen sind',
  'time unheld': 'ungehaltene Zeit',
  'time unguarded': 'ungesicherte Zeit',
  'largest body unseen': 'größter ungesehener Körper',
  'what a field ignores beside the leaf, no body may be in': 'in dem, was ein Feld neben dem Flügel übergeht, darf kein Körper sein',
  'max(0, warm-up - time until a closing can begin)': 'max(0, Aufwachzeit - Zeit, bis geschlossen werden kann)',
  'no closing begins while a presence sensor that is not awake yet says that nobody is there':
    'nichts schließt, solange ein noch nicht wacher Anwesenheitssensor meldet, dass niemand da ist',
  'to be guarded': 'zu sichern',
  'unseen placements of the grid among these tiles': 'ungesehene Plätze des Rasters in diesen Kacheln',
  'unseen placements that touch along an edge or at a corner': 'ungesehene Plätze, die sich an Kante oder Ecke berühren',
  'unseen placements': 'ungesehene Plätze',
  'unwatched width on side A': 'unüberwachte Breite auf Seite A',
  'unwatched width on side B': 'unüberwachte Breite auf Seite B',
  'way across / cluster': 'Weg quer / Nachbarzahl',
  'way across': 'Weg quer',
  'min(length, width) - 2 spot radius': 'min(Länge, Breite) - 2 Fleckradius',
  'min(width of the side, height) - 2 spot radius': 'min(Breite der Seite, Höhe) - 2 Fleckradius',
  'way in the field - blanking windows': 'Weg im Feld - Ausblendfenster',
  'way in the field': 'Weg im Feld',
  'way left': 'Weg, der bleibt',
  'width - zones of presence at the leaf with y < 0': 'Breite - Anwesenheitszonen am Flügel mit y < 0',
  'width - zones of presence at the leaf with y > 0': 'Breite - Anwesenheitszonen am Flügel mit y > 0',
  'Height of the lower edge of a detection zone above which somebody may crawl under it unseen.':
    'Höhe der Unterkante eines Erfassungsbereichs, ab der jemand ungesehen darunter durchkriechen kann.',
  'seen in a published summary of the standard; the edition of 2010 had 300 mm (from memory)':
    'gesehen in einer veröffentlichten Zusammenfassung der Norm; die Ausgabe von 2010 hatte 300 mm (aus dem Gedächtnis)',
  'Height above the floor up to which places that crush or shear have to be guarded.':
    'Höhe über dem Boden, bis zu der Quetsch- und Scherstellen zu sichern sind.',
  'with the workplace rule ASR A1.7': 'mit der Arbeitsstättenregel ASR A1.7',
  'Sides of the reference body with which presence detection at a powered door is tested.':
    'Seiten des Referenzkörpers, mit dem die Anwesenheitserkennung an kraftbetätigten Toren geprüft wird.',
  'the test stood in EN 12445:2000 before both were merged; neither page was seen':
    'die Prüfung stand in EN 12445:2000, ehe beide zusammengeführt wurden; keine der Seiten wurde gesehen',
  'Contrast at which a distant dark target is just told from the sky; extinction = -ln(0.02) / visibility = 3.912 / visibility.':
    'Kontrast, bei dem ein fernes dunkles Ziel eben noch vom Himmel zu unterscheiden ist; Extinktion = -ln(0,02) / Sichtweite = 3,912 / Sichtweite.',
  'the reflectance is our decision: a dark face': 'der Reflexionsgrad ist unsere Festlegung: eine dunkle Fläche',
  'a field that lets a standing body go counts as blind for longer stays':
    'ein Feld, das einen stehenden Körper loslässt, zählt bei längerem Aufenthalt als blind',
  'the published height, applied to the lower edge of every presence field at a leaf':
    'die veröffentlichte Höhe, angewandt auf die Unterkante jedes Anwesenheitsfeldes am Flügel',
  'blind pockets': 'Blindstellen',
  'a protection concept comes before the choice of devices': 'ein Schutzkonzept kommt vor der Wahl der Geräte',
  'segments that a fixed obstacle meets': 'Strecken, die ein festes Hindernis trifft',
  'coverage of a zone, and blind pockets by their diameter': 'Abdeckung einer Zone, und Blindstellen nach ihrem Durchmesser',
  'the floor near a sensor where none of its beams sees a body':
    'der Boden nahe einem Sensor, wo keiner seiner Strahlen einen Körper sieht',
  'what a field takes, asked of the floor': 'was ein Feld erfasst, auf den Boden angewandt',
  'what a beam sees': 'was ein Strahl sieht',
  'plain geometry': 'einfache Geometrie',
  'the leaf as an obstacle at every position, with bulge': 'der Flügel als Hindernis in jeder Stellung, mit Ausbauchung',
  'devices with a drawn zone are not computed': 'Geräte mit gezeichneter Zone werden nicht berechnet',
  'the reverse test': 'die Umkehrprüfung',
  'presence detection is tested with a reference body; which one, the outside value says':
    'Anwesenheitserkennung wird mit einem Referenzkörper geprüft; mit welchem, sagt der äußere Wert',
  'coverage, size by size': 'Abdeckung, Größe für Größe',
  'Demonstration figures: no such sensor exists. Enter the values of the one in your hand.':
    'Werte zur Vorführung: Diesen Sensor gibt es nicht. Gib die Werte dessen ein, den du in der Hand hast.',
  'the door file gives no source': 'die Tordatei nennt keine Quelle',
}

export const tolerances: Readonly<Record<string, string>> = {
  length: 'Länge',
  position: 'Position',
  tilt: 'Neigung',
  roll: 'Verdrehung',
  yaw: 'Drehung',
  floor: 'Boden',
  range: 'Reichweite',
}

const PATTERNS: readonly (readonly [RegExp, (found: readonly string[]) => string])[] = [
  [/^open for lack of (.+)$/, ([, name = '']) => `offen mangels Toleranz: ${tolerances[name] ?? name}`],
  [/^open area of (.+)$/, ([, name = '']) => `offene Fläche von ${name.split(', ').map(givenNames).join(', ')}`],
  [
    /^radius of a circle in these tiles; none is larger by more than (\d+) mm$/,
    ([, within]) => `Radius eines Kreises in diesen Kacheln; keiner ist um mehr als ${within} mm größer`,
  ],
]

/** A text of the engine in German; texts of people come back as they are. Notes of several sources are put together with semicolons. */
export function worked(text: string): string {
  const whole = wordFor(text)
  if (whole !== undefined) return whole
  return text
    .split('; ')
    .map((part) => wordFor(part) ?? part)
    .join('; ')
}

function wordFor(text: string): string | undefined {
  if (Object.hasOwn(WHOLE, text)) return WHOLE[text]
  for (const [pattern, say] of PATTERNS) {
    const found = pattern.exec(text)
    if (found) return say(found)
  }
  return undefined
}
