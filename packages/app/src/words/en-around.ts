import { cycle } from './en-cycle.ts'
import { calls, hinged, note, parked, readings, states, stops } from './en-movement.ts'

/** What is said of the building around the opening. */
const building = {
  title: 'The building',
  figures: {
    beyondZero_mm: 'how far it runs on past the end where x begins',
    beyondWidth_mm: 'how far it runs on past the other end',
    yMin_mm: 'face toward side B, counted up toward side A',
    yMax_mm: 'face toward side A',
    top_mm: 'its top',
    width_mm: 'how far it reaches outward',
    from_mm: 'underside',
    to_mm: 'top',
  },
  /** What follows from the opening where nobody says it. */
  besides: {
    underside_mm: { words: 'Its underside is {besides} up.', name: 'its underside' },
    top_mm: { words: 'They end {besides} up.', name: 'their top' },
    beyond_mm: { words: 'It runs on {besides} past both ends.', name: 'how far it runs on past the opening' },
  },
  clearHeight: 'the clear height',
  parts: {
    walls: {
      name: 'Wall',
      words:
        'The wall runs on {beyondZero_mm} past the one end and {beyondWidth_mm} past the other, lies between {yMin_mm} and {yMax_mm} out, and is {top_mm} high.',
      unknown: 'Nobody has described the wall around the opening. None is assumed.',
      none: 'There is no wall: the opening stands free.',
      there: 'There is a wall',
      notThere: 'No wall',
    },
    lintel: {
      name: 'Lintel',
      words: 'The lintel lies between {yMin_mm} and {yMax_mm} out, and its top is {top_mm} up.',
      unknown: 'The lintel is what the wall makes it.',
      none: 'Nothing spans the opening.',
      there: 'A lintel of its own',
      notThere: 'No lintel',
    },
    jambs: {
      name: 'Jambs',
      words: 'The jambs reach {width_mm} outward and lie between {yMin_mm} and {yMax_mm} out.',
      unknown: 'No jambs that stand out of the wall are described.',
      none: 'No jambs stand out of the wall.',
      there: 'Describe jambs',
      notThere: 'No jambs',
    },
    guides: {
      name: 'Guides',
      words: 'The guides reach {width_mm} outward and lie between {yMin_mm} and {yMax_mm} out.',
      unknown: 'No guides of the leaf are described.',
      none: 'There are no guides.',
      there: 'Describe guides',
      notThere: 'No guides',
    },
    hood: {
      name: 'Hood',
      words: 'The hood lies between {yMin_mm} and {yMax_mm} out, from {from_mm} up to {to_mm}.',
      unknown: 'No hood above the opening is described.',
      none: 'There is no hood.',
      there: 'Describe a hood',
      notThere: 'No hood',
    },
  },
}

/** What is said of those who pass. */
const lanes = {
  title: 'Who passes where',
  none: 'No lane is listed. With lanes it can be judged whether the leaf meets anybody.',
  newLane: 'lane',
  words: 'Lane {name}: {who} pass between {xMin} and {xMax} along, {ways}, at {slowest} to {fastest}; somebody may stand for {stay}.',
  askWords: 'The lane runs between {xMin_mm} and {xMax_mm} along the leaf.',
  add: 'A lane',
  who: 'Who passes in it',
  whoNames: { people: 'people', vehicles: 'vehicles', both: 'people and vehicles' },
  xMin: 'where the lane begins',
  xMax: 'where the lane ends',
  ways: 'Which way',
  bothWays: 'both ways',
  from: (side: string): string => `only from ${side}`,
  slowest: 'slowest pace',
  fastest: 'fastest pace',
}

/** How the leaf is driven. */
const drive = {
  title: 'How the leaf moves',
  closing: 'It closes at {closeSpeed} and speeds up at {closeAccel}, which sets in at {closeJerk}.',
  stopping: 'Told to stop, it goes on for {stopDelay}, brakes at {stopDecel}, and {afterStop}.',
  stoppingFree: 'Told to stop, it goes on for {stopDelay}, comes to rest by itself, and {afterStop}.',
  opening: 'It rests for {reverseDelay} before it opens; it opens at {openSpeed} and speeds up at {openAccel}.',
  weight: 'All that moves with the edge weighs {mass}.',
  known: 'These figures are known from {basis}: {where}',
  atOnce: 'once',
  closeSpeed: 'closing speed',
  closeAccel: 'how fast the closing leaf speeds up and slows down',
  closeJerk: 'how fast that acceleration sets in',
  stopDelay: 'delay of the control: from its input until braking begins',
  stopDecel: 'how fast it brakes after a stop command',
  afterStop: 'What the leaf does after a stop',
  afterStops: { reverse: 'opens again', stay: 'stays where it is' },
  reverseDelay: 'rest before it opens again',
  openSpeed: 'opening speed',
  openAccel: 'how fast the opening leaf speeds up and slows down',
  mass: 'mass of all that moves with the edge',
  partial: 'It may also close from {way} open.',
  partialWay: 'clear way of a partial opening',
  addPartial: 'A partial opening',
  curve: '{at} after the stop command at full speed the edge had gone on by {way}.',
  curveAt: 'time since the stop command',
  curveWay: 'way since the stop command',
  addCurve: 'A reading of a measured stop',
}

/** What stands on the sheet that is measured on, below the opening itself. */
export const around = { building, lanes, drive, cycle, calls, stops, parked, hinged, states, readings, note }
