import { BOUNDS } from '../bounds.ts'
import { choice, distance_mm, id, list, name, number, optional, type Plain, place_mm, record, reflectance, size_mm } from './parts.ts'
import { tuplePart } from './schema.ts'
import { sourceSchema } from './source.ts'

const familySchema = record(
  {
    proportions: tuplePart(
      [size('along x'), size('along y'), size('height')],
      'three numbers above 0 [along x, along y, height]',
      'The box of size s is s times these.',
    ),
    reflectance: reflectance('Diffuse reflectance, 0 to 1.'),
    largest_mm: size_mm('Largest size tried.'),
    step_mm: size_mm('From size to size.'),
    required_mm: optional(size_mm('Smallest size that has to be seen everywhere, if the job says so.')),
  },
  'Similar boxes, to find the smallest size from which on everything is seen.',
)
function size(which: string) {
  return number({ above: 0, upTo: 1000 }, which)
}

export const zoneSchema = record(
  {
    id: id('Name inside the file.'),
    name: optional(name('Name for people.')),
    purpose: choice(
      ['presence-at-leaf', 'opening', 'call', 'must-not-see'],
      'Why bodies must be seen here; "must-not-see" is the reverse test (a road, a neighbour).',
    ),
    function: optional(
      choice(
        ['presence', 'opening', 'call'],
        'The function that has to see them, or must not; follows from the purpose except for "must-not-see".',
      ),
    ),
    xMin_mm: place_mm('x where it begins.'),
    xMax_mm: place_mm('x where it ends.'),
    yMin_mm: place_mm('y where it begins.'),
    yMax_mm: place_mm('y where it ends.'),
    bodies: optional(list(id('Id of a body.'), { from: 1, upTo: BOUNDS.bodies }, 'Bodies that must be seen; all of one part if absent.')),
    allowedPocket_mm: optional(distance_mm('Largest diameter of a place that may stay unseen; 0 if absent.')),
    allowedPocketSource: optional(sourceSchema),
    pitch_mm: optional(number({ from: 1, upTo: 1000 }, 'Grid of placements; 25 if absent.')),
    longestStay_s: optional(number({ above: 0, upTo: 1e7 }, 'Longest time that somebody may stay here.')),
    family: optional(familySchema),
  },
  'A rectangle on the floor in which bodies must be seen.',
)

export const conceptSchema = record(
  {
    people: choice(['trained', 'public'], 'Who passes.'),
    drive: choice(['hold-to-run', 'impulse-in-view', 'impulse-out-of-view', 'automatic'], 'How the door is driven.'),
    closingEdge: choice(['force-limited-edge', 'presence-aid', 'contact-free', 'none'], 'What protects the closing edge.'),
    lowEnergy: optional(
      choice(['yes', 'no'], 'For a pedestrian door whose protection rests on touching with little energy. Not so if absent.'),
    ),
    listing: optional(
      choice(
        ['needed', 'not-needed'],
        'Whether the law at the place lets only devices protect that are listed for use with the drive. Asked for if absent.',
      ),
    ),
    separation: optional(
      choice(['2010', '2024'], 'Edition of the separation-distance standard (ISO 13855) that the job names; both are judged if absent.'),
    ),
  },
  'The protection concept: what must be covered follows from it.',
)

export type FileZone = Plain<typeof zoneSchema>
