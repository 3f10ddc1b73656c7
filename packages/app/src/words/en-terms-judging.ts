import type { Term } from './term.ts'

/** Words of test bodies, of coverage and of judging. */
export const judgingTerms = {
  // bodies and coverage
  testBody: {
    word: 'test body',
    forms: ['test body', 'test bodies'],
    says: 'A box or cylinder of stated size that stands in for somebody. Where it is unseen, somebody of that size may be.',
  },
  referenceBody: {
    word: 'reference body',
    forms: ['reference body'],
    says: 'The test body that a standard names: presence at the leaf is judged with one no larger.',
  },
  posture: { word: 'posture', forms: ['posture', 'postures'], says: 'One way in which a test body stands or lies.' },
  zone: {
    word: 'zone',
    forms: ['zone', 'zones'],
    says: 'A rectangle on the floor with a purpose: there bodies must be seen, or must not.',
  },
  purpose: {
    word: 'purpose',
    forms: ['purpose'],
    says: 'What a zone is for: presence at the leaf, opening, call, or that nothing is seen there.',
  },
  presence: {
    word: 'presence at the leaf',
    forms: ['presence at the leaf', 'presence', 'presence sensing'],
    says: 'A body in the way of the leaf is noticed, also when it stands still, so that the leaf does not close on it.',
  },
  longestStay: { word: 'longest stay', forms: ['longest stay'], says: 'How long somebody may stand in a zone.' },
  family: {
    word: 'family',
    forms: ['family'],
    says: 'Boxes of like shape in growing sizes: the smallest that is seen everywhere is looked for.',
  },
  placement: { word: 'placement', forms: ['placement', 'placements'], says: 'One place on the floor for the middle of a test body.' },
  grid: { word: 'grid', forms: ['grid'], says: 'The net of placements that is tried first. Between its points nothing was computed yet.' },
  unseen: {
    word: 'unseen (blind)',
    forms: ['unseen', 'blind'],
    says: 'No field that counts notices the body in at least one of its postures. On the drawing such places are hatched.',
  },
  coverage: {
    word: 'covered (coverage)',
    forms: ['covered', 'coverage'],
    says: 'Wherever a test body finds room in the zone, it is seen.',
  },
  blindPocket: {
    word: 'blind pocket',
    forms: ['blind pocket', 'blind pockets', 'pocket', 'pockets'],
    says: 'A connected patch of floor on which a body goes unseen. Each has a letter on the drawing.',
  },
  allowedPocket: {
    word: 'allowed pocket',
    forms: ['allowed pocket', 'largest blind pocket that may stay'],
    says: 'The largest blind pocket that may stay in a zone.',
  },
  diameter: { word: 'diameter', forms: ['diameter'], says: 'The largest distance between two points of a pocket.' },
  largestCircle: {
    word: 'largest circle',
    forms: ['largest circle'],
    says: 'The largest circle that fits into a pocket: it says how much room there is.',
  },
  deadGround: {
    word: 'dead ground',
    forms: ['dead ground'],
    says: 'Floor near the foot of a sensor on which no body is seen in any posture.',
  },
  reverseTest: {
    word: 'reverse test',
    forms: ['reverse test'],
    says: 'Whether nothing is seen where nothing may be seen, such as on the road before the door.',
  },
  worstCase: { word: 'worst case', forms: ['worst case', 'worst cases'], says: 'One body, where it lies, that shows why something fails.' },
  smallestBody: {
    word: 'smallest body',
    forms: ['smallest body'],
    says: 'The smallest size from which on every body tried is seen everywhere in the zone.',
  },
  // judging
  finding: {
    word: 'finding',
    forms: ['finding', 'findings'],
    listed: true,
    says: 'One question put to one thing at this door, with its answer.',
  },
  inOrder: {
    word: 'in order',
    forms: ['in order'],
    listed: true,
    says: 'The figure keeps its limit, and both rest on something that somebody entered or holds.',
  },
  fails: { word: 'fails', forms: ['fails', 'fail'], listed: true, says: 'The figure misses its limit. What would mend it stands beside.' },
  notSettled: { word: 'not settled', forms: ['not settled'], says: 'Something is missing that would decide it. The sentence says what.' },
  doesNotApply: {
    word: 'does not apply',
    forms: ['does not apply', 'do not apply'],
    says: 'The question makes no sense at this door, or the protection concept does not ask it.',
  },
  provisional: { word: 'provisional', forms: ['provisional'], says: 'Computed on the grid alone, while the exact answer is on its way.' },
  tolerance: {
    word: 'tolerance',
    forms: ['tolerance', 'tolerances'],
    says: 'How far what is built may be off from what is written, either way. The answer then holds for all of that.',
  },
  basis: {
    word: 'basis',
    forms: ['basis', 'from memory', 'common practice', 'our decision'],
    says: 'How a figure is known: published, from a datasheet, measured, by common practice, from memory, decided by us, or invented.',
  },
  outsideValue: {
    word: 'outside value',
    forms: ['outside value', 'outside values'],
    says: 'A limit or size that does not come from this door, with its source.',
  },
  edition: {
    word: 'edition',
    forms: ['edition', 'editions'],
    says: 'The state of limits and sizes, by year and month, that this was judged against.',
  },
  confirmation: {
    word: 'confirmation',
    forms: ['confirmation', 'confirmations'],
    says: 'The word of somebody who holds the standard that a remembered figure stands there exactly so.',
  },
  assumed: {
    word: 'assumed',
    forms: ['assumed'],
    says: 'Nobody entered it: something usual stands in until somebody does. It makes no pass.',
  },
  repair: {
    word: 'repair',
    forms: ['repair', 'repairs'],
    listed: true,
    says: 'Steps that hands can make, after which a failing finding is in order and no other is worse.',
  },
  beamGap: {
    word: 'gap between beams',
    forms: ['gap between beams', 'beam gap'],
    says: 'The room between neighbouring beams, in which a body could lie and meet none.',
  },
  guardedHeight: { word: 'guarded height', forms: ['guarded height'], says: 'How far up the closing edge has to be watched.' },
  crawlUnder: {
    word: 'crawling under',
    forms: ['crawl under', 'crawls under', 'crawling under'],
    says: 'Whether somebody could pass below the lowest beam of a field.',
  },
  struck: {
    word: 'struck',
    forms: ['struck', 'strike', 'strikes'],
    says: 'The closing leaf is still moving when it meets a body.',
  },
  walkedInto: {
    word: 'walked into',
    forms: ['walked into', 'walks into', 'run into', 'runs into'],
    says: 'A body meets the leaf while it rests or opens: it was not out of the way in time.',
  },
  leafInField: {
    word: 'leaf in the field',
    forms: ['leaf in the field'],
    says: 'The moving leaf meets a beam of a field and sets it off by itself.',
  },
  performanceLevel: {
    word: 'performance level',
    forms: ['performance level', 'performance levels'],
    says: 'How reliable a part of a safety function is, from a, the least, to e. Its maker states it.',
  },
  meanTimeToFailure: {
    word: 'mean time to dangerous failure',
    forms: ['mean time to dangerous failure'],
    says: 'Years, on average, until a part fails so that nobody is protected any more.',
  },
  diagnosticCoverage: {
    word: 'diagnostic coverage',
    forms: ['diagnostic coverage'],
    says: 'The share of the dangerous failures that a device or its control finds by itself.',
  },
} satisfies Readonly<Record<string, Term>>
