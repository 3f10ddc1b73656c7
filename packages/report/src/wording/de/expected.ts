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
  [/^nothing here (?:for device|beside) (.+)$/, ([, what]) => `hier nichts neben ${what}`],
  [/^(.+) for device (.+)$/, ([, what, device]) => `${what} bei ${device}`],
  [
    /^(a body|a state|a plane of this sensor|a sensor of a library|a body of a library) ?\((.*)\)$/,
    ([, what, known]) => `${THINGS[what ?? '']} (${known})`,
  ],
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

const THINGS: Readonly<Record<string, string>> = {
  'cells in one zone': 'Rasterfelder in einer Zone',
  sizes: 'Größen',
  characters: 'Zeichen',
  entries: 'Einträge',
  'beams at one door': 'Strahlen an einem Tor',
  'a body': 'ein Körper',
  'a state': 'ein Zustand',
  'a plane of this sensor': 'eine Ebene dieses Sensors',
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
