const WHOLE: Readonly<Record<string, string>> = {
  'side A': 'Seite A',
  'side B': 'Seite B',
  'as surveyed': 'wie aufgemessen',
  lintel: 'Sturz',
  hood: 'Haube',
  'parked leaf': 'geöffneter Flügel',
  all: 'alles',
  'lying along the leaf': 'längs des Flügels liegend',
  'lying across': 'quer liegend',
  standing: 'stehend',
  walking: 'gehend',
  'invented header scanner, 5 planes': 'erfundener Sturzscanner, 5 Ebenen',
  'invented row of downward beams': 'erfundene Reihe abwärts gerichteter Strahlen',
  'invented scanner, a single curtain': 'erfundener Scanner, ein einzelner Vorhang',
}

/** Who or what passes, as the library of passing bodies names it. */
const PASSING: Readonly<Record<string, string>> = {
  'a person': 'eine Person',
  'a person with a walking frame': 'eine Person mit Gehgestell',
  'a person in a wheelchair': 'eine Person im Rollstuhl',
  'a person with a pram': 'eine Person mit Kinderwagen',
  'a cyclist': 'eine Person auf dem Fahrrad',
  'a person with a loaded pallet truck': 'eine Person mit beladenem Hubwagen',
  'a fork-lift with its tines low': 'einen Gabelstapler mit gesenkten Zinken',
  'a fork-lift with its mast high': 'einen Gabelstapler mit hohem Mast',
  'a fork-lift with a matt black load': 'einen Gabelstapler mit mattschwarzer Last',
  'a fork-lift with a load that shines or is wrapped in film: it sends light elsewhere, and counts as all but black':
    'einen Gabelstapler mit glänzender oder in Folie gewickelter Last: Sie wirft das Licht anderswohin und gilt als fast schwarz',
  'a truck': 'einen Lastwagen',
  'a tractor with a thin drawbar and a trailer': 'einen Traktor mit dünner Deichsel und Anhänger',
}

const THINGS: Readonly<Record<string, string>> = { wall: 'Wand', jamb: 'Zarge', guide: 'Führung' }
const HANDS: Readonly<Record<string, string>> = { left: 'links', right: 'rechts' }

/** A name that the program gave, in German; names of people come back as they are. */
export function givenNames(name: string): string {
  const whole = Object.hasOwn(WHOLE, name) ? WHOLE[name] : undefined
  if (whole !== undefined) return whole
  const sided = /^(wall|jamb|guide), (left|right) seen from (.+)$/.exec(name)
  if (sided) return `${THINGS[sided[1] ?? '']}, ${HANDS[sided[2] ?? '']} von ${givenNames(sided[3] ?? '')} aus`
  const passing = /^(\d+ x \d+ x \d+, )?stands for (.+)$/.exec(name)
  const who = passing && Object.hasOwn(PASSING, passing[2] ?? '') ? PASSING[passing[2] ?? ''] : undefined
  if (passing && who !== undefined) return `${passing[1] ?? ''}steht für ${who}`
  const zone = /^at the leaf, (.+)$/.exec(name)
  return zone ? `am Flügel, ${givenNames(zone[1] ?? '')}` : name
}
