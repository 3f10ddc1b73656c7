import { BOUNDS } from '../bounds.ts'
import { controlSchema } from './control.ts'
import { dangersSchema } from './dangers.ts'
import { driveSchema } from './drive.ts'
import {
  angle_deg,
  choice,
  distance_mm,
  id,
  list,
  name,
  number,
  optional,
  type Plain,
  pair_mm,
  place_mm,
  record,
  size_mm,
  tag,
  wordOr,
} from './parts.ts'
import { eitherPart, numberPart, textPart, tuplePart } from './schema.ts'
import { sourceSchema } from './source.ts'
import { within_mm } from './tolerances.ts'

const readingSchema = eitherPart(
  [numberPart({ above: 0, upTo: BOUNDS.length_mm }, 'a length', ''), textPart({ longest: 40 }, 'a length', '')],
  'a length in mm, or as it was read off the tape ("94 1/2 in")',
  'A reading: a number is mm, a text carries its unit as typed, such as `94 1/2 in`.',
)

const readingsSchema = record(
  {
    widths: optional(
      list(
        record({ at_mm: optional(place_mm('Height of the reading above the floor.')), reading: readingSchema }, 'One width.'),
        { upTo: BOUNDS.readings },
        'The clear width read at several heights.',
      ),
    ),
    heights: optional(
      list(
        record({ at_mm: optional(place_mm('x of the reading.')), reading: readingSchema }, 'One height.'),
        { upTo: BOUNDS.readings },
        'The clear height read at several places.',
      ),
    ),
    diagonals: optional(list(readingSchema, { upTo: 2 }, 'Both diagonals of the clear opening.')),
  },
  'More readings than unknowns: they find the misread one.',
)

const openingSchema = record(
  {
    width_mm: size_mm('Clear width, the smallest where it varies.'),
    height_mm: size_mm('Clear height above the finished floor at x = 0, y = 0, the smallest where it varies.'),
    tolerance_mm: optional(within_mm('How far either may be off.')),
    readings: optional(readingsSchema),
  },
  'The clear opening. x runs from 0 to its width.',
)

const boxMeasures = {
  x_mm: place_mm('x of the centre.'),
  y_mm: place_mm('y of the centre.'),
  size_mm: tuplePart([size_mm('along'), size_mm('across')], 'two numbers above 0 [along, across]', 'Size along x and along y at yaw 0.'),
  yaw_deg: optional(angle_deg('Counter-clockwise in the plan; 0 if absent.')),
  from_mm: place_mm('Height of the underside, absolute in the doorway frame.'),
  to_mm: place_mm('Height of the top.'),
}

const hingedSchema = record(
  {
    hinge: choice(
      ['at-zero', 'at-width', 'both'],
      'Where the hinge line stands, on y = 0: at x = 0, at x = width, or one leaf at each; both then turn together.',
    ),
    opensTo: choice(['a', 'b'], 'Side to which it opens.'),
    length_mm: size_mm(
      'Length of one leaf from its hinge line to its closing edge; of a folding leaf the length of the panel on the hinge.',
    ),
    secondPanel_mm: optional(
      size_mm(
        'Folding leaf: length of the panel that hangs on the first one, at least as long as that. Its free end is guided along y = 0. Absent for a leaf that swings as one.',
      ),
    ),
    openAngle_deg: number(
      { above: 0, upTo: 180 },
      'Angle of the panel on the hinge when fully open, from the shut position; at most 90 for a folding leaf.',
    ),
  },
  'How a turning leaf is hung. Speeds, accelerations and ways of the drive are then those of the far end of the panel on the hinge, along its arc: its closing edge, or the joint of both panels.',
)

const leafSchema = record(
  {
    travel: choice(
      ['down', 'toward-zero', 'toward-width', 'both-inward', 'turning'],
      'How the closing edge travels: down, along x toward 0 or toward the width, two leaves that meet, or turning (swing, folding).',
    ),
    thickness_mm: size_mm('Thickness of the leaf; y = 0 is its mid-plane.'),
    bulge_mm: optional(
      distance_mm('How far the moving leaf may stand out of its plane on either side (wind, sway, slats). If absent, 0 is assumed.'),
    ),
    hinged: optional(hingedSchema),
    parked: optional(
      wordOr(
        'none',
        record(boxMeasures, 'A box.'),
        'the box that the open leaf fills',
        'Where the open leaf stands as an obstacle. "none": nowhere in view.',
      ),
    ),
  },
  'The moving leaf.',
)

const across = {
  yMin_mm: place_mm('y of the face toward side B.'),
  yMax_mm: place_mm('y of the face toward side A.'),
}
const wallsSchema = record(
  {
    ...across,
    beyondZero_mm: distance_mm('How far the wall runs on beyond x = 0; 0 where there is none.'),
    beyondWidth_mm: distance_mm('How far the wall runs on beyond x = width; 0 where there is none.'),
    top_mm: place_mm('Height of its top. Above the opening the same wall is the lintel.'),
  },
  'The wall around the opening.',
)
const lintelSchema = record(
  { ...across, underside_mm: optional(place_mm('Its underside; the clear height if absent.')), top_mm: place_mm('Its top.') },
  'What spans the opening, where it differs from the wall.',
)
const uprightSchema = record(
  {
    ...across,
    width_mm: size_mm('How far it reaches from the edge of the clear opening outward.'),
    top_mm: optional(place_mm('Its top; the clear height if absent.')),
  },
  'A pair of uprights, one at x = 0 and one at x = width, outside of the clear opening.',
)
const hoodSchema = record(
  {
    ...across,
    from_mm: place_mm('Height of the underside.'),
    to_mm: place_mm('Height of the top.'),
    beyond_mm: optional(distance_mm('How far it runs on beyond both ends of the opening; 0 if absent.')),
  },
  'The housing above the opening that takes the leaf or its drum.',
)

const floorSchema = record(
  {
    profile_mm: list(
      pair_mm('y and z of one point.'),
      { from: 1, upTo: BOUNDS.profilePoints },
      'The floor as straight pieces along y, y rising: `[[y, z], ...]`, level beyond both ends. A step is a steep piece. z = 0 is the finished floor at x = 0, y = 0.',
    ),
    slopeX_percent: optional(number({ from: -50, upTo: 50 }, 'Rise along x, in mm per 100 mm. If absent, 0 is assumed.')),
    tolerance_mm: optional(distance_mm('How far the real floor may stand above this survey.')),
  },
  'The floor under and around the opening. If absent, a level one is assumed.',
)

const named = { id: id('Name inside the file.'), name: optional(name('Name for people.')) }
const measured = { tolerance_mm: optional(within_mm('How far its measures may be off.')) }
const obstacleSchema = eitherPart(
  [
    record({ ...named, shape: tag('box'), ...boxMeasures, ...measured }, 'An upright box.'),
    record(
      {
        ...named,
        shape: tag('post'),
        x_mm: boxMeasures.x_mm,
        y_mm: boxMeasures.y_mm,
        radius_mm: size_mm('Radius of the upright cylinder.'),
        from_mm: boxMeasures.from_mm,
        to_mm: boxMeasures.to_mm,
        ...measured,
      },
      'An upright cylinder.',
    ),
  ],
  '"box" or "post"',
  'Something that stands or hangs in the way of a beam.',
  'shape',
)

const stateSchema = record(
  {
    id: id('Name inside the file.'),
    name: optional(name('Name for people, as "leveller raised".')),
    floor: optional(floorSchema),
    addObstacles: optional(list(obstacleSchema, { upTo: BOUNDS.obstacles }, 'There in this state only.')),
    removeObstacles: optional(
      list(
        id('Id of an obstacle.'),
        { upTo: BOUNDS.obstacles },
        'Not there in this state: ids of listed or implied obstacles (`parked-leaf`, `lintel`, ...).',
      ),
    ),
  },
  'One state of the doorway, such as a dock leveller up or down; each is judged.',
)

const brakingSchema = record(
  {
    reaction_s: number(
      { from: 0, upTo: 10 },
      "From seeing that the leaf stays shut until the vehicle brakes: the driver's time and the brake's.",
    ),
    decel_m_per_s2: number({ above: 0, upTo: 10 }, 'How hard it brakes on the level, on the worst floor and with the worst load.'),
    gradient_percent: number(
      { from: -30, upTo: 30 },
      'Fall of the way toward the leaf in mm per 100 mm: 0 on the level, negative where it rises.',
    ),
    source: optional(sourceSchema),
  },
  'How a vehicle of this lane stops before a leaf that stays shut.',
)

const laneSchema = record(
  {
    ...named,
    who: choice(['people', 'vehicles', 'both'], 'Who passes.'),
    xMin_mm: place_mm('Where the lane begins.'),
    xMax_mm: place_mm('Where it ends.'),
    directions: optional(list(choice(['from-a', 'from-b'], 'Entering from this side.'), { from: 1, upTo: 2 }, 'Both if absent.')),
    slowest_m_per_s: optional(number({ from: 0, upTo: 50 }, 'Slowest pace.')),
    fastest_m_per_s: optional(number({ above: 0, upTo: 50 }, 'Fastest pace.')),
    bodies: optional(
      list(id('Id of a body.'), { from: 1, upTo: BOUNDS.bodies }, 'Bodies that stand in for whoever passes; all of the door if absent.'),
    ),
    longestStay_s: optional(number({ above: 0, upTo: 1e7 }, 'Longest time that somebody may stand in the doorway.')),
    falls: optional(
      choice(
        ['never', 'anywhere'],
        'anywhere: whoever passes may fall and stay, judged with each posture of its body that is "fallen". "never" if absent.',
      ),
    ),
    followGap_mm: optional(
      distance_mm(
        'Least distance from the back of one body to the front of the next; each is then judged with another so far ahead and behind too.',
      ),
    ),
    braking: optional(brakingSchema),
  },
  'Where people and vehicles pass, along y. Somebody who passes may stop and stand anywhere.',
)

const crossingSchema = record(
  {
    ...named,
    yMin_mm: place_mm('Where the way begins; the middles of passers-by keep to it.'),
    yMax_mm: place_mm('Where it ends.'),
    slowest_m_per_s: optional(number({ from: 0, upTo: 50 }, 'Slowest pace.')),
    fastest_m_per_s: optional(number({ above: 0, upTo: 50 }, 'Fastest pace.')),
    bodies: optional(
      list(id('Id of a body.'), { from: 1, upTo: BOUNDS.bodies }, 'Bodies that stand in for whoever passes by; all of the door if absent.'),
    ),
    perDay: optional(number({ from: 0, upTo: 1_000_000 }, 'Passers-by in a day, both directions together.')),
    mostPerDay: optional(number({ from: 0, upTo: 1_000_000 }, 'Needless openings in a day that are bearable.')),
  },
  'A way past the door, along x, of people who do not want through.',
)

const airSchema = record(
  {
    sideA_degC: number({ from: -60, upTo: 80 }, 'Temperature on side A in degrees Celsius.'),
    sideB_degC: number({ from: -60, upTo: 80 }, 'Temperature on side B.'),
    mostPerDay_m3: optional(number({ from: 0, upTo: 1e9 }, 'Air in cubic metres that may be lost in a day by needless openings.')),
  },
  'The air on both sides of the door, for what needless openings let through.',
)

const uprights = (what: string) => optional(wordOr('none', uprightSchema, 'their measures', what))

export const surveySchema = record(
  {
    opening: openingSchema,
    leaf: optional(leafSchema),
    drive: optional(driveSchema),
    walls: optional(
      wordOr(
        'none',
        wallsSchema,
        "the wall's measures",
        'The wall on both sides and above. "none": free-standing posts, a gate. If absent, no wall is assumed.',
      ),
    ),
    lintel: optional(wordOr('none', lintelSchema, 'its measures', 'Made from the wall if absent; "none": nothing spans the opening.')),
    jambs: uprights('Frame members that stand out of the wall beside the opening.'),
    guides: uprights('Guides of the leaf beside the opening.'),
    hood: optional(wordOr('none', hoodSchema, 'its measures', 'Housing above the opening.')),
    floor: optional(floorSchema),
    obstacles: optional(
      list(obstacleSchema, { upTo: BOUNDS.obstacles }, 'Bollards, racks, machines, posts, heaters: whatever a beam could end on.'),
    ),
    states: optional(
      list(
        stateSchema,
        { from: 1, upTo: BOUNDS.states },
        'Absent for a doorway that always looks the same. Sensors learn their background in the first unless they say otherwise.',
      ),
    ),
    lanes: optional(list(laneSchema, { upTo: BOUNDS.lanes }, 'Lanes.')),
    crossings: optional(list(crossingSchema, { upTo: BOUNDS.crossings }, 'Ways past the door.')),
    air: optional(airSchema),
    dangers: optional(dangersSchema),
    control: optional(controlSchema),
    visibility_m: optional(
      wordOr(
        'clear',
        number({ from: 0.1, upTo: 100_000 }, 'Metres.'),
        'a number from 0.1',
        'How far one sees in the worst air that the door works in (fog, freezer mist), in metres at 2 % contrast; "clear" where the air never matters. If absent, clear air is assumed.',
      ),
    ),
  },
  'The doorway as it was measured. Doorway frame: x along the leaf, y = 0 in its mid-plane and positive toward side A, z up.',
)

export type Survey = Plain<typeof surveySchema>
export type FileFloor = Plain<typeof floorSchema>
export type FileObstacle = Plain<typeof obstacleSchema>
