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
  'invented header scanner, 5 planes': 'erfundener Sturzscanner, 5 Ebenen',
  'invented row of downward beams': 'erfundene Reihe abwärts gerichteter Strahlen',
  'invented scanner, a single curtain': 'erfundener Scanner, ein einzelner Vorhang',
}

const THINGS: Readonly<Record<string, string>> = { wall: 'Wand', jamb: 'Zarge', guide: 'Führung' }
const HANDS: Readonly<Record<string, string>> = { left: 'links', right: 'rechts' }

/** A name that the program gave, in German; names of people come back as they are. */
export function givenNames(name: string): string {
  const whole = Object.hasOwn(WHOLE, name) ? WHOLE[name] : undefined
  if (whole !== undefined) return whole
  const sided = /^(wall|jamb|guide), (left|right) seen from (.+)$/.exec(name)
  if (sided) return `${THINGS[sided[1] ?? '']}, ${HANDS[sided[2] ?? '']} von ${givenNames(sided[3] ?? '')} aus`
  const zone = /^at the leaf, (.+)$/.exec(name)
  return zone ? `am Flügel, ${givenNames(zone[1] ?? '')}` : name
}
