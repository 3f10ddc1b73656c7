import { ofApproach } from './worked-approach.ts'

/** Names and formulas of steps, meanings and notes of outside values, as the engine and the built-in libraries have them in English. */
const WHOLE: Readonly<Record<string, string>> = {
  ...ofApproach,
  '(free - unseen) / free': '(freie - ungesehene) / freie',
  'across for sure': 'sicherer Durchmesser',
  'allowed pocket': 'erlaubte Blindstelle',
  area: 'Fläche',
  'A box of the size that this invented office sends.': 'Eine Schachtel der Größe, die dieses erfundene Amt verschickt.',
  'at rest + dwell': 'Stillstand + Ruhezeit',
  'becomes visible + response': 'wird sichtbar + Ansprechzeit',
  'body becomes visible': 'Körper wird sichtbar',
  "body enters the leaf's plane": 'Körper erreicht die Ebene des Flügels',
  'braking begins': 'Bremsen beginnt',
  'fastest contact': 'schnellste Berührung',
  'leaf at rest': 'Flügel steht',
  'leaf begins to close from': 'Flügel beginnt zu schließen bei',
  'leaf opens again': 'Flügel öffnet wieder',
  nearest: 'am nächsten',
  'output changes': 'Ausgang schaltet',
  'output changes + delay of the control': 'Ausgang schaltet + Verzögerung der Steuerung',
  'relative speed': 'Relativgeschwindigkeit',
  'smallest gap': 'kleinster Abstand',
  'speed of the body': 'Geschwindigkeit des Körpers',
  'speed of the leaf': 'Geschwindigkeit des Flügels',
  'sqrt(body^2 + leaf^2)': 'Wurzel(Körper^2 + Flügel^2)',
  'way still to go': 'verbleibender Weg',
  'way still to go - top of the body': 'verbleibender Weg - Oberkante des Körpers',
  'no contact while the leaf moves toward closed': 'keine Berührung, während der Flügel schließt',
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
  [/^open area of (.+)$/, ([, name]) => `offene Fläche von ${name}`],
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
