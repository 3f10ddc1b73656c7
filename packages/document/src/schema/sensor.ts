import { BOUNDS } from '../bounds.ts'
import { declaresSchema } from './declares.ts'
import {
  angle_deg,
  choice,
  distance_mm,
  id,
  list,
  name,
  note,
  number,
  optional,
  type Plain,
  pair_mm,
  place_mm,
  point_mm,
  record,
  reflectance,
  size_mm,
  wholeNumber,
  wordOr,
} from './parts.ts'
import { saying, tuplePart } from './schema.ts'
import { sourceSchema, sourcesSchema } from './source.ts'
import { within_mm } from './tolerances.ts'

const planeSchema = record(
  {
    id: id('Name inside the sensor.'),
    offset_deg: optional(angle_deg('scanner: how far this plane leans beyond the tilt of the pose; 0 if absent.', 89)),
    fovMin_deg: optional(angle_deg('scanner: angle of the first beam from straight down, positive toward +x.')),
    fovMax_deg: optional(angle_deg('scanner: angle of the last beam.')),
    beamCount: optional(
      wholeNumber({ from: 1, upTo: BOUNDS.beamsOfPlane }, 'scanner: number of beams. downward-row: number of beams of the row.'),
    ),
    spacing_mm: optional(size_mm('downward-row: from beam to beam along x, the row centred on the pose.')),
    places_mm: optional(
      list(
        point_mm('x, y, z of one beam.'),
        { from: 1, upTo: BOUNDS.beamsOfPlane },
        'downward-row: where each beam starts, instead of beamCount, spacing and pose.',
      ),
    ),
    tilt_deg: optional(angle_deg('downward-row: how far the beams lean toward the side that the sensor faces; 0 if absent.', 89)),
    segments_mm: optional(
      list(
        tuplePart([point_mm('from'), point_mm('to')], 'two points [[x, y, z], [x, y, z]]', ''),
        { from: 1, upTo: BOUNDS.beamsOfPlane },
        'segments: both ends of each beam; a reflector type ends at its reflector.',
      ),
    ),
    between_mm: optional(
      tuplePart(
        [pair_mm('x, y of the sender'), pair_mm('x, y of the receiver')],
        'two places [[x, y], [x, y]]',
        'segments: the two uprights of a light grid, with `heights_mm`, instead of `segments_mm`.',
      ),
    ),
    heights_mm: optional(
      list(
        place_mm('Height of one beam.'),
        { from: 1, upTo: BOUNDS.beamsOfPlane },
        'segments: absolute heights of the beams between the uprights.',
      ),
    ),
  },
  'Beams that belong together: a scan plane, a row, a grid.',
)

const ASSUMED_OPEN = ' If absent, open is assumed.'
const openLimit = (what: string, otherwise = '') =>
  optional(wordOr('open', place_mm(what), 'a number', `${what} "open" where the field ends nowhere.${otherwise}`))

const blankingSchema = record(
  { from_mm: distance_mm('Least way.'), to_mm: distance_mm('Largest way.') },
  'While the closing edge has this way still to go, the field does not act.',
)

const leafBlankingSchema = record(
  {
    beside_mm: distance_mm('From either face of the leaf, bulge included.'),
    before_mm: distance_mm('Before its closing edge, the way it goes.'),
  },
  'A window that follows the closing leaf: what is entered so near to it is ignored. Ranging devices only.',
)

const approachSchema = record(
  {
    way: choice(
      ['parallel', 'perpendicular', 'single-beam'],
      'How people come to it: along the floor into a zone that lies, square through one that stands, or through one level beam.',
    ),
    capability_mm: optional(size_mm('Detection capability d: the smallest body that is surely seen, as the data sheet says.')),
    height_mm: optional(number({ from: 0, upTo: 1000 }, 'Height H of a lying zone above the floor.')),
    addend_mm: optional(
      distance_mm('Addend C, or D_DS in the edition of 2024, read off the page where this program does not have it; with its source.'),
    ),
    supplement_mm: optional(distance_mm('Supplement Z of the edition of 2024: what measuring may be off by; with its source.')),
    source: optional(sourceSchema),
  },
  'What the separation-distance standard asks about this field.',
)

const FUNCTIONS = ['presence', 'opening', 'call'] as const

const presenceTime = (more: string) =>
  optional(
    wordOr(
      'for-ever',
      number({ above: 0, upTo: 1e6 }, 'Seconds.'),
      'a number above 0',
      `How long a standing body is held; "for-ever" if it is never let go. ${more}`,
    ),
  )

const outputSchema = record(
  {
    name: name('As on the terminal, and as the fields name it.'),
    function: choice(FUNCTIONS, 'presence: stops the closing leaf. opening, call: make it open, and guard nobody.'),
    response_s: optional(number({ from: 0, upTo: 60 }, 'The response of its fields that give none of their own.')),
    fastestResponse_s: optional(
      number({ from: 0, upTo: 60 }, 'The shortest response that its fields can be set to, where they give none.'),
    ),
    hold_s: optional(number({ from: 0, upTo: 600 }, 'The hold of its fields that give none of their own.')),
    presenceTime_s: presenceTime('For its fields that give none of their own; only where it acts for presence.'),
    whileWarmingUp: optional(
      choice(
        ['detecting', 'clear', 'undefined'],
        'What it says from the return of power until the sensor is awake: as if somebody were seen, as if nobody were, or either.',
      ),
    ),
  },
  'One output of the sensor and what it does at the door.',
)

const fieldSchema = record(
  {
    id: id('Name inside the sensor.'),
    name: optional(name('Name for people.')),
    planes: optional(list(id('Id of a plane.'), { from: 1, upTo: BOUNDS.planes }, 'Planes that it uses; all if absent.')),
    xMin_mm: openLimit('Smallest x of a point that counts.', ASSUMED_OPEN),
    xMax_mm: openLimit('Largest x of a point that counts.', ASSUMED_OPEN),
    yMin_mm: openLimit('Smallest y of a point that counts.', ' Open if absent.'),
    yMax_mm: openLimit('Largest y of a point that counts.', ' Open if absent.'),
    clearance_mm: optional(distance_mm('Points lower than this above the floor do not count. If absent, 0 is assumed.')),
    top_mm: openLimit('Points higher than this above the floor do not count.', ASSUMED_OPEN),
    clusterBeams: optional(
      wholeNumber({ from: 1, upTo: BOUNDS.beamsOfPlane }, 'Neighbouring beams that must agree. If absent, 1 is assumed.'),
    ),
    output: name('The output that it switches, as on the terminal.'),
    function: optional(choice(FUNCTIONS, 'What that output does at the door. Needed here or in `outputs`.')),
    presenceTime_s: presenceTime('If absent here and in `outputs`, nobody said.'),
    response_s: optional(
      number(
        { from: 0, upTo: 60 },
        'From a body becoming visible until the output has changed, at the latest; a body seen for less does nothing.',
      ),
    ),
    fastestResponse_s: optional(
      number(
        { from: 0, upTo: 60 },
        'The shortest response that the device can be set to. Without it a faster response is not offered as a repair.',
      ),
    ),
    hold_s: optional(number({ from: 0, upTo: 600 }, 'How long the output stays after the body was last visible.')),
    approach: optional(approachSchema),
    blanking: optional(list(blankingSchema, { upTo: BOUNDS.blankings }, 'Windows of the leaf in which the field does not act.')),
    leafBlanking: optional(leafBlankingSchema),
    leafHides: optional(
      choice(
        ['nothing', 'bodies'],
        'bodies: on its way the leaf comes between the sensor and bodies behind it, and is judged as an obstacle where it is. So it is where there is any blanking; else "nothing" if absent.',
      ),
    ),
  },
  'What counts as seen and what it does. It belongs to one sensor.',
)

/** What a data sheet says: the same in the door file and in a library. */
const values = {
  device: optional(
    choice(
      ['scanner', 'downward-row', 'segments', 'zone-only'],
      'scanner: planes of ranging beams from one point. downward-row: ranging beams that look down. segments: light grid, photo-eye. zone-only: radar, loop, edge, cord, button; drawn, not computed.',
    ),
  ),
  source: optional(saying(sourceSchema, 'Where the values come from. If absent, from memory is assumed.')),
  sources: optional(sourcesSchema),
  planes: optional(
    list(planeSchema, { from: 1, upTo: BOUNDS.planes }, 'Planes of beams. Needed here or in the library, except for zone-only.'),
  ),
  fields: optional(
    list(
      fieldSchema,
      { from: 1, upTo: BOUNDS.fields },
      'Fields. If absent, one is assumed that sees with every beam and acts for presence.',
    ),
  ),
  maxRange_mm: optional(size_mm('Farthest distance at which anything counts. Needed for ranging devices.')),
  rangeRef_mm: optional(size_mm('Range on the reference target, as the data sheet gives it. Needed for ranging devices.')),
  reflectanceRef: optional(reflectance('Diffuse reflectance of that target, 0 to 1. Needed for ranging devices.')),
  backgroundMargin_mm: optional(distance_mm('How far before its learned background a point must lie. If absent, 0 is assumed.')),
  spotRadius_mm: optional(distance_mm('Radius of the beam spot; 0 if absent.')),
  usualTilt_deg: optional(angle_deg('Tilt that is used where the door file gives a mounting height but no tilt.', 89)),
  outputs: optional(
    list(outputSchema, { from: 1, upTo: BOUNDS.fields }, 'Its outputs. Where they are listed, every field switches one of them.'),
  ),
  warmUp_s: optional(number({ from: 0, upTo: 3600 }, 'From the return of power until it sees and its outputs say so, at the latest.')),
  declares: optional(declaresSchema),
  function: optional(choice(FUNCTIONS, 'zone-only: what its output does at the door.')),
  output: optional(name('zone-only: its output.')),
  needs: optional(note('zone-only: what sets it off, as its maker says: least speed or force.')),
}

const poseSchema = record(
  {
    x_mm: place_mm('x of the origin of the beams.'),
    y_mm: place_mm('y.'),
    z_mm: place_mm('z.'),
    yaw_deg: optional(angle_deg('Counter-clockwise in the plan; 0 if absent.')),
    tilt_deg: optional(angle_deg('Positive leans the field toward the side that the sensor faces (side A at yaw 0); 0 if absent.', 180)),
    roll_deg: optional(angle_deg('Turns the fan in its own plane; 0 if absent.')),
  },
  'Where the sensor is and how it is turned.',
)

const coversSchema = record(
  { xMin_mm: place_mm('x'), xMax_mm: place_mm('x'), yMin_mm: place_mm('y'), yMax_mm: place_mm('y') },
  'zone-only: the drawn rectangle.',
)

export const sensorSchema = record(
  {
    id: optional(id('Name inside the file; `sensor-1`, ... if absent.')),
    name: optional(name('Name for people.')),
    use: optional(id('Id of a library sensor whose values hold where this entry gives none.')),
    side: optional(choice(['a', 'b'], 'Short form of the pose: the side that it hangs on and faces.')),
    mountingHeight_mm: optional(size_mm('Short form: height of the origin above the finished floor.')),
    offset_mm: optional(distance_mm('Short form: from the mid-plane of the leaf to the origin, measured toward that side.')),
    x_mm: optional(place_mm('Short form: x of the origin. If absent, the middle of the opening is assumed.')),
    tilt_deg: optional(angle_deg('Short form: tilt toward that side. If absent, what the library calls usual is assumed.', 89)),
    pose: optional(poseSchema),
    tolerance_mm: optional(within_mm('How far its place may be off.')),
    learnedIn: optional(id('Id of the state in which the background was learned. If absent, the first of several is assumed.')),
    covers: optional(coversSchema),
    ...values,
  },
  'A sensor: its values with their sources, its place, its fields.',
)

export const librarySensorSchema = record(
  { name: optional(name('Name for people.')), ...values },
  'A sensor as its data sheet describes it.',
)

export type FileSensor = Plain<typeof sensorSchema>
export type LibrarySensor = Plain<typeof librarySensorSchema>
export type FilePlane = Plain<typeof planeSchema>
export type FileOutput = Plain<typeof outputSchema>
export type FileField = Plain<typeof fieldSchema>
