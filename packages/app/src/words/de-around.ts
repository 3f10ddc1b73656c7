import type { building as englishBuilding, lanes as englishLanes } from './en-around.ts'

export const building: typeof englishBuilding = {
  title: 'Das Gebäude',
  figures: {
    beyondZero_mm: 'wie weit sie über das Ende hinausreicht, an dem x beginnt',
    beyondWidth_mm: 'wie weit sie über das andere Ende hinausreicht',
    yMin_mm: 'Fläche gegen Seite B, nach Seite A hin gezählt',
    yMax_mm: 'Fläche gegen Seite A',
    top_mm: 'Oberkante',
    width_mm: 'wie weit es nach außen reicht',
    from_mm: 'Unterkante',
    to_mm: 'Oberkante',
  },
  parts: {
    walls: {
      name: 'Wand',
      words:
        'Die Wand reicht am einen Ende {beyondZero_mm} und am anderen {beyondWidth_mm} weiter, liegt zwischen {yMin_mm} und {yMax_mm} davor und ist {top_mm} hoch.',
      unknown: 'Niemand hat die Wand um die Öffnung beschrieben. Angenommen wird keine.',
      none: 'Es gibt keine Wand: Die Öffnung steht frei.',
      there: 'Es gibt eine Wand',
      notThere: 'Keine Wand',
    },
    lintel: {
      name: 'Sturz',
      words: 'Der Sturz liegt zwischen {yMin_mm} und {yMax_mm} davor, und seine Oberkante ist {top_mm} hoch.',
      unknown: 'Der Sturz ist, wozu die Wand ihn macht.',
      none: 'Nichts überspannt die Öffnung.',
      there: 'Ein eigener Sturz',
      notThere: 'Kein Sturz',
    },
    jambs: {
      name: 'Zarge',
      words: 'Die Zarge reicht {width_mm} nach außen und liegt zwischen {yMin_mm} und {yMax_mm} davor.',
      unknown: 'Keine Zarge, die aus der Wand steht, ist beschrieben.',
      none: 'Keine Zarge steht aus der Wand.',
      there: 'Zarge beschreiben',
      notThere: 'Keine Zarge',
    },
    guides: {
      name: 'Führungen',
      words: 'Die Führungen reichen {width_mm} nach außen und liegen zwischen {yMin_mm} und {yMax_mm} davor.',
      unknown: 'Keine Führungen des Flügels sind beschrieben.',
      none: 'Es gibt keine Führungen.',
      there: 'Führungen beschreiben',
      notThere: 'Keine Führungen',
    },
    hood: {
      name: 'Haube',
      words: 'Die Haube liegt zwischen {yMin_mm} und {yMax_mm} davor, von {from_mm} bis {to_mm}.',
      unknown: 'Keine Haube über der Öffnung ist beschrieben.',
      none: 'Es gibt keine Haube.',
      there: 'Haube beschreiben',
      notThere: 'Keine Haube',
    },
  },
}

export const lanes: typeof englishLanes = {
  title: 'Wer wo durchgeht',
  none: 'Keine Spur ist aufgeführt. Mit Spuren lässt sich beurteilen, ob der Flügel jemanden trifft.',
  newLane: 'Spur',
  words: 'Spur {name}: {who}, zwischen {xMin} und {xMax} entlang, {ways}, mit {slowest} bis {fastest}.',
  askWords: 'Die Spur läuft zwischen {xMin_mm} und {xMax_mm} entlang des Flügels.',
  add: 'Eine Spur',
  who: 'Wer darin geht oder fährt',
  whoNames: { people: 'Menschen', vehicles: 'Fahrzeuge', both: 'Menschen und Fahrzeuge' },
  xMin: 'wo die Spur beginnt',
  xMax: 'wo die Spur endet',
  ways: 'In welcher Richtung',
  bothWays: 'in beiden Richtungen',
  from: (side) => `nur von ${side}`,
  slowest: 'langsamstes Tempo',
  fastest: 'schnellstes Tempo',
}
