type Found = readonly string[]

/** What a door file was expected to hold at a place, as the reader of door files says it in English. The first pattern that fits speaks. */
const PATTERNS: readonly (readonly [RegExp, (found: Found) => string])[] = [
  [
    /^(a number|a whole number|a length)(?: (above|from) (-?[\d.]+))?(?: (below|up to) (-?[\d.]+))?$/,
    ([, what, low, least, high, most]) =>
      [
        KINDS[what ?? ''],
        low && `${low === 'above' ? 'über' : 'ab'} ${comma(least)}`,
        high && `${high === 'below' ? 'unter' : 'bis'} ${comma(most)}`,
      ]
        .filter(Boolean)
        .join(' '),
  ],
  [/^a number between (-?[\d.]+) and (-?[\d.]+)$/, ([, least, most]) => `eine Zahl zwischen ${comma(least)} und ${comma(most)}`],
  [/^an angle from (-?[\d.]+) to (-?[\d.]+) degrees$/, ([, least, most]) => `ein Winkel von ${comma(least)} bis ${comma(most)} Grad`],
  [
    /^(a number|an angle|a height|a y) above (\w+) \((.+)\)$/,
    ([, what, name, value]) => `${KINDS[what ?? '']} über ${name} (${comma(value)})`,
  ],
  [/^a number above what the fall takes \((.+)\)$/, ([, value]) => `eine Zahl über dem, was das Gefälle nimmt (${comma(value)})`],
  [/^y above (.+), as the profile runs along y$/, ([, value]) => `ein y über ${comma(value)}, denn der Verlauf geht entlang y`],
  [
    /^at (least|most) (\w+) \((.+)\)$/,
    ([, which, name, value]) => `${which === 'least' ? 'mindestens' : 'höchstens'} ${name} (${comma(value)})`,
  ],
  [/^at most (\d+) (.+)$/, ([, count, what]) => `höchstens ${count} ${THINGS[what ?? ''] ?? what}`],
  [/^one of (.+)$/, ([, words]) => `eines von ${words}`],
  [
    /^a terminal that some part has \((.*)\); its other end is at (.+)$/,
    ([, known, other]) => `eine Klemme, die ein Teil hat (${known}); das andere Ende liegt an ${other}`,
  ],
  [/^another terminal than (plus|at its beginning)$/, ([, than]) => `eine andere Klemme als ${than === 'plus' ? 'Plus' : 'am Anfang'}`],
  [/^no "unpowered": nothing is energised without power$/, () => 'kein „unpowered“: ohne Spannung zieht nichts an'],
  [/^above (\w+) \((.+)\)$/, ([, name, value]) => `über ${name} (${comma(value)})`],
  [/^above the end of the range before \((.+)\)$/, ([, value]) => `über dem Ende des Bereichs davor (${comma(value)})`],
  [
    /^a terminal as "device\.terminal", such as "(.+)", without spaces$/,
    ([, example]) => `eine Klemme als „Gerät.Klemme“, wie „${example}“, ohne Leerzeichen`,
  ],
  [/^a colour by its letters, as (.+)$/, ([, example]) => `eine Farbe mit ihren Buchstaben, wie ${example?.replace(' or ', ' oder ')}`],
  [/^an output, whose kind is (.+)$/, ([, kinds]) => `ein Ausgang, dessen kind ${kinds?.replace(' or ', ' oder ')} ist`],
  [/^an object \{ area_mm2 \} or \{ awg \}$/, () => 'ein Objekt { area_mm2 } oder { awg }'],
  [/^(a sensor of the door|another input|an input) ?\((.*)\)$/, ([, what, known]) => `${THINGS[what ?? '']} (${known})`],
  [/^version (\d+)$/, ([, version]) => `Fassung ${version}`],
  [/^nothing here for an output that does not act for presence$/, () => 'hier nichts bei einem Ausgang, der nicht für Anwesenheit wirkt'],
  [/^presence, opening or call$/, () => 'presence, opening oder call'],
  [/^the function of its output, (.+)$/, ([, acts]) => `die Funktion seines Ausgangs, ${acts}`],
  [/^nothing here (?:for device|beside) (.+)$/, ([, what]) => `hier nichts neben ${what}`],
  [/^(.+) for device (.+)$/, ([, what, device]) => `${what} bei ${device}`],
  [
    /^(a body|a state|a plane of this sensor|an output of this sensor|a sensor of a library|a body of a library) ?\((.*)\)$/,
    ([, what, known]) => `${THINGS[what ?? '']} (${known})`,
  ],
  [/^a list of (?:(\d+) to|at most) (\d+)$/, ([, least, most]) => `eine Liste von ${least ? `${least} bis` : 'höchstens'} ${most}`],
  [
    /^(one line|a text) of at most (\d+) characters that can be printed$/,
    ([, what, most]) => `${THINGS[what ?? '']} von höchstens ${most} druckbaren Zeichen`,
  ],
  [
    /^a short name of at most (\d+) letters, digits, "\.", "_" and "-"$/,
    ([, most]) => `ein kurzer Name von höchstens ${most} Buchstaben, Ziffern, „.“, „_“ und „-“`,
  ],
  [
    /^(two|three) numbers( above 0| from 1)? (\[.*\])$/,
    ([, count, from, places]) => `${COUNTS[count ?? '']} Zahlen${FROM[from ?? ''] ?? ''} ${inGerman(places)}`,
  ],
  [/^two (points|places) (\[.*\])$/, ([, what, places]) => `zwei ${what === 'points' ? 'Punkte' : 'Orte'} ${inGerman(places)}`],
  [/^(an angle, or )?two angles \[from, to\]$/, ([, one]) => `${one ? 'ein Winkel oder ' : ''}zwei Winkel [von, bis]`],
  [/^an? (day|edition) as (.+)$/, ([, what, example]) => `${what === 'day' ? 'ein Tag wie' : 'eine Ausgabe wie'} ${example}`],
  [
    /^a length in mm, or as it was read off the tape \("(.+)"\)$/,
    ([, example]) => `eine Länge in mm, oder wie sie vom Band abgelesen wurde („${example}“)`,
  ],
  [/^an object \{ (.+) \}$/, ([, inside]) => `ein Objekt { ${inGerman(inside)} }`],
  [/^"([^"]+)"$/, ([, word]) => `„${word}“`],
  [/^"(.+)", as the purpose is "(.+)"$/, ([, word, purpose]) => `„${word}“, denn der Zweck ist „${purpose}“`],
  [/^"(.+)", as long as there is no "pose"$/, ([, word]) => `„${word}“, solange es keine „pose“ gibt`],
  [/^the content that was pinned \((.+)\)$/, ([, pinned]) => `der festgehaltene Inhalt (${pinned})`],
  [
    /^a length with which all panels together fill the opening \((.+) wide\): from half of it to a quarter more$/,
    ([, width]) =>
      `eine Länge, mit der alle Platten zusammen die Öffnung füllen (${comma(width)} breit): von der Hälfte bis zu einem Viertel mehr`,
  ],
  [
    /^at least the length of the panel on the hinge \((.+)\)$/,
    ([, length]) => `mindestens die Länge der Platte am Band (${comma(length)})`,
  ],
  [/^at most 90 for a folding leaf$/, () => 'höchstens 90 bei einem Faltflügel'],
  [/^"turning" for a leaf on a hinge$/, () => '„turning“ bei einem Flügel am Band'],
  [/^at most the way of the leaf \((.+)\)$/, ([, way]) => `höchstens der Weg des Flügels (${comma(way)})`],
  [
    /^at least the response of the slowest presence output \((.+) s\)$/,
    ([, time]) => `mindestens die Ansprechzeit des langsamsten Anwesenheitsausgangs (${comma(time)} s)`,
  ],
  [
    /^nothing, as brake is "none" \((.+) or (.+) instead\)$/,
    ([, one, other]) => `nichts, weil brake "none" ist (statt dessen ${one} oder ${other})`,
  ],
  [/^nothing, unless brake is "none"$/, () => 'nichts, außer wenn brake "none" ist'],
  [/^nothing beside (.+), which says the same$/, ([, other]) => `nichts neben ${other}, das dasselbe sagt`],
  [/^0, as the leaf stays after a stop$/, () => '0, weil der Flügel nach einem Halt stehen bleibt'],
  [/^nothing without attempts$/, () => 'nichts ohne weitere Versuche'],
  [/^"waits", as an output in the warning calls the closing off$/, () => '"waits", weil ein Ausgang in der Warnung das Schließen absagt'],
  [/^"stays-open", as there is no partial opening$/, () => '"stays-open", weil es keine Teilöffnung gibt'],
  [/^"no", or the hold-open time \((.+)\)$/, ([, path]) => `"no", oder die Offenhaltezeit (${path})`],
  [/^less than the whole closing takes \((.+)\)$/, ([, time]) => `weniger, als das ganze Schließen dauert (${comma(time)})`],
  [/^a time after the reading before \((.+)\)$/, ([, before]) => `eine Zeit nach der Ablesung davor (${comma(before)})`],
  [
    /^a time at most (.+) s after the reading before \((.+)\)$/,
    ([, most, before]) => `eine Zeit höchstens ${comma(most)} s nach der Ablesung davor (${comma(before)})`,
  ],
  [
    /^a way of at least that of the reading before \((.+)\)$/,
    ([, before]) => `ein Weg von mindestens dem der Ablesung davor (${comma(before)})`,
  ],
  [
    /^work of at most (\d+) strokes \(.+\)$/,
    ([, most]) => `Arbeit von höchstens ${most} Strichen (Strahlen mal Reihen mal Lagen mal Zustände)`,
  ],
  [/^the beams of device (.+)$/, ([, device]) => `die Strahlen des Geräts ${device}`],
  [/^format (\d+)$/, ([, format]) => `Format ${format}`],
  [/^version (\d+) or older$/, ([, version]) => `Fassung ${version} oder älter`],
  [/^"(.+)" or (.+)$/, ([, word, otherwise]) => `„${word}“ oder ${OTHERWISE[otherwise ?? ''] ?? otherwise}`],
]

const KINDS: Readonly<Record<string, string>> = {
  'a number': 'eine Zahl',
  'a whole number': 'eine ganze Zahl',
  'a length': 'eine Länge',
  'an angle': 'ein Winkel',
  'a height': 'eine Höhe',
  'a y': 'ein y',
}

const COUNTS: Readonly<Record<string, string>> = { two: 'zwei', three: 'drei' }
const FROM: Readonly<Record<string, string>> = { ' above 0': ' über 0', ' from 1': ' ab 1' }

const THINGS: Readonly<Record<string, string>> = {
  'one line': 'eine Zeile',
  'a text': 'ein Text',
  bytes: 'Bytes',
  'passages (lanes times 3 places across times directions times postures times states times openings)':
    'Durchgänge (Wege mal 3 Orte quer mal Richtungen mal Lagen mal Zustände mal Öffnungen)',
  'cells in one zone': 'Rasterfelder in einer Zone',
  sizes: 'Größen',
  characters: 'Zeichen',
  entries: 'Einträge',
  'beams at one door': 'Strahlen an einem Tor',
  'a body': 'ein Körper',
  'a sensor of the door': 'ein Sensor des Tores',
  'another input': 'ein anderer Eingang',
  'an input': 'ein Eingang',
  'cores together': 'Adern zusammen',
  'a state': 'ein Zustand',
  'a plane of this sensor': 'eine Ebene dieses Sensors',
  'an output of this sensor': 'ein Ausgang dieses Sensors',
  'a sensor of a library': 'ein Sensor einer Bibliothek',
  'a body of a library': 'ein Körper einer Bibliothek',
}

const OTHERWISE: Readonly<Record<string, string>> = {
  'a number from 0.1': 'eine Zahl ab 0,1',
  'their measures': 'die Maße',
  'its measures': 'die Maße',
  "the wall's measures": 'die Maße der Wand',
}

const WHOLE: Readonly<Record<string, string>> = {
  '64 hexadecimal digits in lower case': '64 hexadezimale Ziffern in kleinen Buchstaben',
  'at least one posture': 'mindestens eine Lage',
  'a kind that no listed point has': 'eine Art, die keine der aufgeführten Stellen hat',
  'both x_mm and y_mm, or neither': 'x_mm und y_mm, oder keines von beiden',
  'a sensor of a library ("use"), or "device" and its values': 'ein Sensor einer Bibliothek („use“), oder „device“ und seine Werte',
  "the source of the value that replaces the library's": 'die Quelle des Werts, der den der Bibliothek ersetzt',
  'the source of what differs from the library': 'die Quelle dessen, was von der Bibliothek abweicht',
  'what its output does at the door': 'was sein Ausgang am Tor bewirkt',
  'the output that it switches': 'der Ausgang, den es schaltet',
  'the angle of the first beam': 'der Winkel des ersten Strahls',
  'the angle of the last beam': 'der Winkel des letzten Strahls',
  'the number of beams': 'die Zahl der Strahlen',
  'the number of beams, or "places_mm"': 'die Zahl der Strahlen, oder „places_mm“',
  'the distance from beam to beam': 'der Abstand von Strahl zu Strahl',
  'the two uprights, or "segments_mm"': 'die beiden Ständer, oder „segments_mm“',
  'the heights of the beams, or "segments_mm"': 'die Höhen der Strahlen, oder „segments_mm“',
  'the function that must not see here': 'die Funktion, die hier nichts sehen darf',
  'who or what allows an unseen place': 'wer oder was eine nicht gesehene Stelle erlaubt',
  'a whole backup': 'eine ganze Sicherung',
  'a text': 'ein Text',
  'doors and photos': 'Tore und Fotos',
  'fewer doors and photos': 'weniger Tore und Fotos',
  'an entry of a backup': 'ein Eintrag einer Sicherung',
  'a whole door': 'ein ganzes Tor',
  'a place in the open': 'ein freier Platz',
  'a zone within the reach of a sensor': 'eine Zone in Reichweite eines Sensors',
  'another place than the first': 'ein anderer Platz als der erste',
  'a field of view below 360 degrees': 'ein Sichtfeld unter 360 Grad',
  'less than 90 degrees together with the pose': 'weniger als 90 Grad zusammen mit der Lage',
  'at most one full turn': 'höchstens eine ganze Drehung',
  'the smaller angle first': 'der kleinere Winkel zuerst',
  'an id that stands only once': 'eine Kennung, die nur einmal vorkommt',
  'an id that no other library uses': 'eine Kennung, die keine andere Bibliothek benutzt',
  'the id of an obstacle that is there otherwise': 'die Kennung eines Hindernisses, das sonst da ist',
  'a file that can be read': 'eine lesbare Datei',
  'a place where libraries can be read': 'ein Ort, an dem Bibliotheken gelesen werden können',
  'a door file': 'eine Tordatei',
  'a value': 'ein Wert',
  'a finite number': 'eine endliche Zahl',
  'a name in double quotes': 'ein Name in geraden Anführungszeichen',
  'any other name': 'ein anderer Name',
  'every name once in its object': 'jeder Name nur einmal in seinem Objekt',
  'the version of the file, 0 to 1': 'die Fassung der Datei, 0 bis 1',
  'a length above 0': 'eine Länge über 0',
  'the beams of device "scanner"': 'die Strahlen eines Scanners',
  'the drawn rectangle': 'das gezeichnete Rechteck',
}

/** What a door file held instead, where that is not a figure or in quotation marks. */
const GOT: readonly (readonly [RegExp, (found: Found) => string])[] = [
  [/^nothing$/, () => 'nichts'],
  [/^none here$/, () => 'hier keinen'],
  [/^an object$/, () => 'ein Objekt'],
  [/^a list of (\d+)$/, ([, count]) => `eine Liste von ${count}`],
  [/^a number too large to hold$/, () => 'eine Zahl, die zu groß ist'],
  [/^(-?[\d.]+) degrees$/, ([, value]) => `${comma(value)} Grad`],
  [/^(.+) at line (\d+), column (\d+)$/, ([, what, line, column]) => `${got(what ?? '')} in Zeile ${line}, Spalte ${column}`],
  [/^the end$/, () => 'das Ende'],
  [/^a text that ends early or was changed$/, () => 'ein Text, der zu früh endet oder verändert wurde'],
  [/^something else$/, () => 'etwas anderes'],
  [/^more$/, () => 'mehr'],
  [/^that of a newer program$/, () => 'das eines neueren Programms'],
]

/** Names of what stands in a list or an object, as a person reads them. */
const INSIDE: Readonly<Record<string, string>> = {
  along: 'entlang',
  across: 'quer',
  height: 'Höhe',
  seconds: 'Sekunden',
  value: 'Wert',
  source: 'Quelle',
  body: 'Körper',
  sensor: 'Sensor',
  id: 'Kennung',
}

function inGerman(text = ''): string {
  return text.replace(/"[^"]*"|[a-z]+/g, (word) => INSIDE[word] ?? word)
}

function comma(value = ''): string {
  return value.replace('.', ',')
}

/** In German where the program has words for it, else as it is. */
export function expected(text: string): string {
  if (Object.hasOwn(WHOLE, text)) return WHOLE[text] ?? text
  for (const [pattern, say] of PATTERNS) {
    const found = pattern.exec(text)
    if (found) return say(found)
  }
  return text
}

/** In German where the program has words for it; what stood in the file itself stays as it is. */
export function got(text: string): string {
  for (const [pattern, say] of GOT) {
    const found = pattern.exec(text)
    if (found) return say(found)
  }
  return text
}
