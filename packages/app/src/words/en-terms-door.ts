import type { Term } from './term.ts'

/** Words of the door and of sensors. */
export const doorTerms = {
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
    word: 'rise of the floor',
    forms: ['rise of the floor', 'slope across', 'rises'],
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
  drive: {
    word: 'drive',
    forms: ['drive', 'driven'],
    says: 'What moves the leaf: its speeds and accelerations, and how long its control takes to answer.',
  },
  holdTime: {
    word: 'hold time',
    forms: ['hold time'],
    says: 'How long an output stays on after the body was last seen.',
  },
  responseTime: {
    word: 'response time',
    forms: ['response time', 'response times'],
    says: 'How long it takes at most, from a body becoming visible until the output has changed.',
  },
  lane: {
    word: 'lane',
    forms: ['lane', 'lanes'],
    says: 'A stretch along the opening in which people or vehicles pass, with their paces and bodies.',
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
  spot: { word: 'spot, spot radius', forms: ['spot', 'spots', 'spot radius'], says: 'Where a beam strikes, and how wide it is there.' },
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
  extinction: { word: 'extinction', forms: ['extinction'], says: 'The share of light that the air swallows on each stretch of its way.' },
  lowestEntry: {
    word: 'lowest entry',
    forms: ['lowest entry'],
    says: 'Where a beam of a field comes closest to the floor with something still taken.',
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
} satisfies Readonly<Record<string, Term>>
