import { cycle } from './de-cycle.ts'
import { calls, hinged, note, parked, readings, states, stops } from './de-movement.ts'
import type { around as english } from './en-around.ts'

const building: (typeof english)['building'] = {
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
  besides: {
    underside_mm: { words: 'Höhe seiner Unterkante: {besides}.', name: 'seine Unterkante' },
    top_mm: { words: 'Höhe des oberen Endes: {besides}.', name: 'Oberkante' },
    beyond_mm: {
      words: 'Sie reicht an beiden Enden {besides} weiter.',
      name: 'wie weit sie über die Öffnung hinausreicht',
    },
  },
  clearHeight: 'die lichte Höhe',
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
      unknown: 'Der Sturz ergibt sich aus der Wand.',
      none: 'Nichts überspannt die Öffnung.',
      there: 'Ein eigener Sturz',
      notThere: 'Kein Sturz',
    },
    jambs: {
      name: 'Zarge',
      words: 'Die Zarge reicht {width_mm} nach außen und liegt zwischen {yMin_mm} und {yMax_mm} davor.',
      unknown: 'Eine Zarge, die aus der Wand steht, ist nicht beschrieben.',
      none: 'Keine Zarge steht aus der Wand.',
      there: 'Zarge beschreiben',
      notThere: 'Keine Zarge',
    },
    guides: {
      name: 'Führungen',
      words: 'Die Führungen reichen {width_mm} nach außen und liegen zwischen {yMin_mm} und {yMax_mm} davor.',
      unknown: 'Führungen des Flügels sind nicht beschrieben.',
      none: 'Es gibt keine Führungen.',
      there: 'Führungen beschreiben',
      notThere: 'Keine Führungen',
    },
    hood: {
      name: 'Haube',
      words: 'Die Haube liegt zwischen {yMin_mm} und {yMax_mm} davor, von {from_mm} bis {to_mm}.',
      unknown: 'Eine Haube über der Öffnung ist nicht beschrieben.',
      none: 'Es gibt keine Haube.',
      there: 'Haube beschreiben',
      notThere: 'Keine Haube',
    },
  },
}

const lanes: (typeof english)['lanes'] = {
  title: 'Wer wo durchgeht',
  none: 'Keine Spur ist aufgeführt. Mit Spuren lässt sich beurteilen, ob der Flügel jemanden trifft.',
  newLane: 'Spur',
  words: 'Spur {name}: {who}, zwischen {xMin} und {xMax} längs, {ways}, mit {slowest} bis {fastest}; jemand darf {stay} stehen.',
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

const drive: (typeof english)['drive'] = {
  title: 'Wie sich der Flügel bewegt',
  closing: 'Er schließt mit {closeSpeed} und beschleunigt mit {closeAccel}; wie rasch das einsetzt: {closeJerk}.',
  stopping: 'Nach einem Haltebefehl läuft er {stopDelay} weiter, bremst mit {stopDecel} und {afterStop}.',
  stoppingFree: 'Nach einem Haltebefehl läuft er {stopDelay} weiter, kommt von selbst zum Stehen und {afterStop}.',
  opening: 'Er ruht {reverseDelay}, bevor er öffnet; er öffnet mit {openSpeed} und beschleunigt mit {openAccel}.',
  weight: 'Was sich mit der Kante bewegt, wiegt {mass}.',
  known: 'Diese Angaben sind bekannt aus {basis}: {where}',
  atOnce: 'sofort',
  closeSpeed: 'Schließgeschwindigkeit',
  closeAccel: 'wie rasch der schließende Flügel schneller und langsamer wird',
  closeJerk: 'wie rasch diese Beschleunigung einsetzt',
  stopDelay: 'Verzögerung der Steuerung: von ihrem Eingang, bis das Bremsen beginnt',
  stopDecel: 'wie rasch er nach einem Haltebefehl bremst',
  afterStop: 'Was der Flügel nach einem Halt tut',
  afterStops: { reverse: 'öffnet wieder', stay: 'bleibt stehen' },
  reverseDelay: 'Ruhezeit vor dem Wiederöffnen',
  openSpeed: 'Öffnungsgeschwindigkeit',
  openAccel: 'wie rasch der öffnende Flügel schneller und langsamer wird',
  mass: 'Masse von allem, was sich mit der Kante bewegt',
  partial: 'Er kann auch aus einer Teilöffnung von {way} schließen.',
  partialWay: 'lichte Weite einer Teilöffnung',
  addPartial: 'Eine Teilöffnung',
  curve: '{at} nach dem Haltebefehl bei voller Geschwindigkeit war die Kante um {way} weiter.',
  curveAt: 'Zeit seit dem Haltebefehl',
  curveWay: 'Weg seit dem Haltebefehl',
  addCurve: 'Eine Ablesung eines gemessenen Halts',
}

export const around: typeof english = { building, lanes, drive, cycle, calls, stops, parked, hinged, states, readings, note }
