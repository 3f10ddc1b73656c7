/** What a word of the trade means, and how it is written in sentences. */
export interface Term {
  readonly word: string
  /** As it stands in sentences, in every inflection that occurs. */
  readonly forms: readonly string[]
  readonly says: string
  /** So common that underlining it would only litter: explained in the list of words alone. */
  readonly listed?: true
}

/** Words are looked for in what the screens say: the longest form wins, names in quotation marks are left alone. */
const terms = {
  // door and surroundings
  opening: { word: 'opening', forms: ['opening', 'openings'], listed: true, says: 'What the leaf closes: its clear width and height.' },
  clearWidth: {
    word: 'clear width',
    forms: ['clear width'],
    says: 'The free width from guide to guide; of several readings the smallest.',
  },
  clearHeight: {
    word: 'clear height',
    forms: ['clear height'],
    says: 'The free height from the floor to the underside of what is above; of several readings the smallest.',
  },
  diagonal: {
    word: 'diagonal',
    forms: ['diagonal', 'diagonals'],
    says: 'From corner to corner of the opening. With width and height, both diagonals show a misread length and whether the corners are square.',
  },
  leaf: { word: 'leaf', forms: ['leaf'], says: 'What moves and closes the opening: the panel, curtain or wing of the door.' },
  jamb: {
    word: 'jamb',
    forms: ['jamb', 'jambs', 'jamb edge'],
    says: 'The upright side of the opening. Lengths along the leaf are counted from the left one.',
  },
  lintel: { word: 'lintel', forms: ['lintel', 'header'], says: 'What spans the opening above: the edge under which one passes.' },
  guide: { word: 'guide', forms: ['guide', 'guides'], says: 'The rail at the side of the opening in which the edge of the leaf runs.' },
  sillLine: { word: 'sill line', forms: ['sill line'], says: 'The line on the floor right under the leaf.' },
  travel: { word: 'travel', forms: ['travel', 'travels'], says: 'How the closing edge goes on its way: down, sideways, or turning.' },
  bulge: {
    word: 'standing out (bulge)',
    forms: ['bulge', 'stands out'],
    says: 'How far the leaf, while it moves, leans or billows out of its plane to either side.',
  },
  parkedLeaf: {
    word: 'parked leaf',
    forms: ['parked leaf'],
    says: 'The open leaf where it rests: there it is an obstacle like any other.',
  },
  closingEdge: {
    word: 'closing edge',
    forms: ['closing edge', 'closing edges'],
    says: 'The edge of the leaf that goes first when it closes, and could strike or trap somebody.',
  },
  leveller: {
    word: 'leveller',
    forms: ['leveller', 'dock leveller'],
    says: 'The flap of a loading bay that bridges the gap to the vehicle. Raised, it is another floor than level.',
  },
  floorProfile: {
    word: 'floor profile',
    forms: ['floor profile'],
    says: 'The height of the floor at some distances from the leaf, joined by straight pieces.',
  },
  slope: {
    word: 'slope across',
    forms: ['slope across', 'rise of the floor'],
    says: 'How much the floor rises along the opening, from one jamb to the other.',
  },
  floorTolerance: {
    word: 'floor tolerance',
    forms: ['floor tolerance', 'higher than surveyed', 'stand off the survey'],
    says: 'How far the real floor may stand above what was measured.',
  },
  obstacle: {
    word: 'obstacle',
    forms: ['obstacle', 'obstacles'],
    says: 'A solid thing that always stands there: it hides bodies behind it and ends beams.',
  },
  doorState: {
    word: 'door state',
    forms: ['door state', 'door states', 'states of the door'],
    says: 'The doorway as it stands at one time, such as with the leveller up. Each state is judged.',
  },
  side: { word: 'side', forms: ['side', 'sides'], listed: true, says: 'The room before or behind the leaf, called as the site calls it.' },
  floor: { word: 'floor', forms: ['floor'], listed: true, says: 'The finished floor at the door: heights are counted from it.' },
  concept: {
    word: 'protection concept',
    forms: ['protection concept', 'protection concepts', 'concept'],
    says: 'Who passes, how the door is driven and what guards its closing edge. What has to be seen, and which limits apply, follows from it.',
  },
  holdToRun: {
    word: 'hold-to-run',
    forms: ['hold-to-run', 'held to run', 'while a button is held'],
    says: 'The leaf moves only while somebody holds a button and has it in view; let go, it stops.',
  },
  impulse: {
    word: 'impulse',
    forms: ['impulse', 'impulses', 'by a push'],
    says: 'A short command, such as one push on a button, after which the door goes its whole way by itself.',
  },
  forceLimit: {
    word: 'limit of force',
    forms: ['limit of force', 'limited in force', 'force-limited'],
    says: 'The edge stops and goes back before it presses too hard. How hard it presses is measured at the door.',
  },
  // sensors
  sensor: {
    word: 'sensor',
    forms: ['sensor', 'sensors'],
    listed: true,
    says: 'What watches: a scanner, a row of beams, a light grid, a photo-eye; or radar, loop and contact edge, which are only drawn here.',
  },
  scanner: {
    word: 'scanner',
    forms: ['scanner', 'scanners'],
    says: 'A sensor that sends fans of light beams and measures how far each one gets.',
  },
  lightGrid: {
    word: 'light grid',
    forms: ['light grid', 'light grids'],
    says: 'Beams one above the other from post to post: what interrupts one is noticed.',
  },
  photoEye: {
    word: 'photo-eye',
    forms: ['photo-eye', 'photo-eyes'],
    says: 'One beam across the opening, to a receiver or a mirror: what interrupts it is noticed.',
  },
  contactEdge: {
    word: 'contact edge',
    forms: ['contact edge', 'contact edges'],
    says: 'A soft edge on the leaf that notices when it is pressed.',
  },
  zoneOnly: {
    word: 'device that is only drawn',
    forms: ['only drawn', 'zone-only'],
    says: 'Radar, loop, contact edge, cord or button: no geometry decides what they notice, so they are tested on site.',
  },
  beam: {
    word: 'beam',
    forms: ['beam', 'beams'],
    listed: true,
    says: 'One thin ray of light of a sensor. A body is noticed where it meets one.',
  },
  pose: { word: 'pose', forms: ['pose'], says: 'Where a sensor hangs and how it is turned.' },
  scanPlane: {
    word: 'scan plane',
    forms: ['scan plane', 'scan planes', 'plane', 'planes'],
    says: 'The sheet in which the beams of one fan lie. On the floor it draws a line; between two sheets nothing is seen.',
  },
  fan: { word: 'fan', forms: ['fan', 'fans'], says: 'The beams of one scan plane, spread from one point at equal angles.' },
  tilt: {
    word: 'lean (tilt)',
    forms: ['tilt', 'leans', 'leaning', 'lean of the field'],
    says: 'How far the planes lean out from the wall: at 0 they hang straight down, more leads away from the leaf.',
  },
  yaw: {
    word: 'turn in the plan (yaw)',
    forms: ['yaw', 'turn in the plan', 'turned'],
    says: 'How far a thing is turned as seen from above, counter-clockwise.',
  },
  roll: { word: 'roll', forms: ['roll', 'rolled'], says: 'How far the fan is turned in its own plane, as a clock hand turns on its face.' },
  spot: { word: 'spot', forms: ['spot', 'spots', 'spot radius'], says: 'Where a beam strikes, and how wide it is there.' },
  background: {
    word: 'background',
    forms: ['background', 'backgrounds'],
    says: 'What a beam ends on with nobody there: the floor, a wall, a post. The sensor notices what comes before it.',
  },
  backgroundMargin: {
    word: 'background margin',
    forms: ['background margin'],
    says: 'How far before its background a beam has to meet a body, to tell the two apart.',
  },
  learned: {
    word: 'learned state',
    forms: ['learned state', 'learned'],
    says: 'The doorway as it stood when the sensor took its background.',
  },
  reach: {
    word: 'reach',
    forms: ['reach', 'reaches'],
    says: 'How far away a body is still noticed. Dark, slanting or in mist, it has to be nearer.',
  },
  reflectance: {
    word: 'reflectance',
    forms: ['reflectance', 'too dark', 'so dark a body'],
    says: 'The share of light that a surface throws back: little from dark cloth, much from white.',
  },
  incidence: {
    word: 'incidence',
    forms: ['incidence'],
    says: 'How slantingly a beam meets a surface. Square to it, most light comes back.',
  },
  visibility: {
    word: 'visibility',
    forms: ['visibility', 'fog', 'mist'],
    says: 'How far one sees through the air. Fog and mist swallow light on its way out and back.',
  },
  field: {
    word: 'field',
    forms: ['field', 'fields'],
    says: 'The part of space in which a sensor takes what it meets, as it is set, with the output that it switches.',
  },
  output: { word: 'output', forms: ['output', 'outputs'], says: 'The contact of a sensor that tells the door: somebody is there.' },
  clearance: {
    word: 'clearance above the floor',
    forms: ['clearance above the floor', 'clearance'],
    says: 'The lowest height at which a field takes anything. Too low, the floor is taken for a body; too high, a flat body is missed.',
  },
  topOfField: { word: 'top of the field', forms: ['top of the field'], says: 'The greatest height at which a field takes anything.' },
  cluster: {
    word: 'neighbouring beams (cluster)',
    forms: ['cluster', 'neighbouring beams', 'neighbours'],
    says: 'How many beams side by side have to meet a body before it counts. More keep off rain and dust, and miss small bodies.',
  },
  presenceTime: {
    word: 'presence time',
    forms: ['presence time', 'holds a standing body', 'hold a standing body', 'lets a standing body go'],
    says: 'How long a field goes on noticing a body that stands still.',
  },
  blanking: {
    word: 'blanking',
    forms: ['blanking', 'blanking window', 'blanking windows'],
    says: 'The part of the leaf’s way on which a field does not act, so that the leaf does not set it off.',
  },
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
    forms: ['presence at the leaf', 'presence', 'presence sensing', 'presence sensor', 'presence sensors'],
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
    word: 'unseen',
    forms: ['unseen', 'blind'],
    says: 'No field that counts notices the body in at least one of its postures. On the drawing such places are hatched.',
  },
  coverage: { word: 'covered', forms: ['covered', 'coverage'], says: 'Wherever a test body finds room in the zone, it is seen.' },
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
  leafInField: {
    word: 'leaf in the field',
    forms: ['leaf in the field'],
    says: 'The moving leaf meets a beam of a field and sets it off by itself.',
  },
} satisfies Readonly<Record<string, Term>>

/** The tour, the words of the trade, and the cautions. */
export const help = {
  tour: {
    offer: 'New here? A tour on an invented door takes less than two minutes. It works on a copy that is thrown away.',
    take: 'Take the tour',
    again: 'Take the tour, two minutes',
    notNow: 'Not now',
    waiting: 'A tour was begun and left standing.',
    goOn: 'Go on with it',
    label: 'Tour',
    count: (at: number, of: number) => `Stop ${at} of ${of}.`,
    show: 'Show me',
    next: 'Next',
    leave: 'Leave',
    stops: {
      tape: 'The whole job lies along this tape, and no part is locked. Touch Measure.',
      figure: 'What is underlined can be changed, on the drawing too. Touch the clear width and enter another.',
      place: 'Next, where the sensor hangs and how it looks. Touch Place.',
      body: 'Touch “Test body” and push it about. Below the drawing stands what sees it, or why nothing does.',
      why: 'What fails stands first. Touch “why?” and close it again: every figure says where it comes from.',
      repairs: 'Touch “search for repairs”. Only what makes nothing else worse is offered; you need not wait.',
      undo: 'All of it was saved as you entered it. Touch undo; the clock beside it keeps who did what.',
      later: 'What comes after judging stands farther along the tape. Touch Fit.',
    },
    end: 'That was the way through the job. This door was a copy: keep it only if you want to.',
    throwAway: 'Throw it away',
    keep: 'Keep it',
  },
  words: {
    open: 'words?',
    label: 'Words on this sheet, explained',
    title: 'Words on this sheet',
    none: 'No word of the trade stands here.',
  },
  terms: terms as Readonly<Record<keyof typeof terms, Term>>,
  cautions: {
    title: 'Before you touch it',
    practice:
      'Each of these is common practice of the trade; none is cited from a source here. Local codes and the makers’ instructions rule.',
    opening: [
      'Isolate the drive and lock it off before you stand in the opening. Block the leaf so that it cannot come down, whatever holds it: springs, ropes, brake.',
      'Set the ladder on firm, level ground and have it held. Never lean it on the leaf, never stand it under a leaf that is not blocked.',
      'Never look into a beam, that of a measuring laser included.',
    ],
    leaf: [
      'Where the leaf must move for a reading, hold it to run and keep it in view; tape, hands and ladder are out of its way first, and the lane is cordoned off.',
    ],
    place: [
      'Drive isolated and locked off, leaf blocked; springs and suspension are under tension.',
      'Cordon off the lane; nobody enters while the lift moves. Work at height as the rules for it say.',
      'Find out what runs in the wall before you drill.',
      'Feed the sensor alone while aiming. Never look into a beam.',
    ],
    judge: [
      'Test with a body, not with a person, where the leaf can strike.',
      'In order here means computed: before anybody relies on it, it is tested at the door.',
    ],
  },
}

export type Help = typeof help
