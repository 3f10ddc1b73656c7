import { BOUNDS } from '../bounds.ts'
import { choice, distance_mm, id, list, name, optional, type Plain, place_mm, record, tag } from './parts.ts'
import { choicePart, eitherPart } from './schema.ts'

const KINDS = ['tail', 'sweep', 'hinge', 'folding', 'draw-in', 'lifting', 'secondary-edge', 'leaf-opening'] as const
const kind = (means: string) => choice(KINDS, means)

/** `true` or `false`, written as words, as everything else that is chosen. */
const stops = optional(choice(['yes', 'no'], 'Whether it stops the movement that is dangerous here, opening too.'))

const guardSchema = eitherPart(
  [
    record(
      {
        how: tag('cover'),
        upTo_mm: distance_mm('Height above the floor up to which it reaches.'),
        opening_mm: distance_mm('Width of its widest opening; 0 for a plate.'),
        shape: optional(choice(['slot', 'square', 'round'], 'Shape of the openings; slots if absent, through which one reaches farthest.')),
        distance_mm: distance_mm('From the openings to the danger behind.'),
      },
      "A fence, plate, mesh or grille before it; for `leaf-opening` the leaf's own filling.",
    ),
    record({ how: tag('presence'), zone: id('Id of the zone that has to be covered there.'), stops }, 'Presence detection.'),
    record({ how: tag('edge'), sensor: id('Id of the sensor.'), stops }, 'A sensitive edge.'),
    record(
      {
        how: choicePart(
          ['nothing-to-hold', 'load-stop'],
          '"nothing-to-hold" or "load-stop"',
          'Against lifting: no ledge, handle or bar on which to ride up, or a drive that stops when it lifts more than it should.',
        ),
      },
      'What keeps people from riding up.',
    ),
  ],
  '"cover", "presence", "edge", "nothing-to-hold" or "load-stop"',
  'What is done against it, besides distance.',
  'how',
)

const pointSchema = record(
  {
    id: id('Name inside the file.'),
    name: optional(name('Name for people, as "tail and rear fence".')),
    kind: kind(
      'What happens there: the tail of a leaf that runs back, the sweep of one that swings, the gap at its hinge, between parts that fold, draw-in, lifting, another edge that closes a gap, or reaching through the leaf.',
    ),
    obstacle: optional(id('Against which obstacle, for "tail" and "sweep": then the gap is computed.')),
    gap_mm: optional(distance_mm('The smallest gap over the whole travel, measured; where it is computed this is not asked.')),
    part: optional(
      choice(
        ['body', 'head', 'leg', 'foot', 'toes', 'arm', 'hand', 'finger'],
        'The largest part of a body that can get in; the whole body if absent.',
      ),
    ),
    from_mm: optional(distance_mm('Height above the floor where it begins; at the floor if absent.')),
    x_mm: optional(place_mm('Where it is, for a presence zone.')),
    y_mm: optional(place_mm('Where it is, for a presence zone.')),
    guards: optional(list(guardSchema, { upTo: BOUNDS.guards }, 'What is done against it.')),
  },
  'One place where the leaf may crush, shear, draw in or lift somebody.',
)

export const dangersSchema = record(
  {
    points: optional(list(pointSchema, { upTo: BOUNDS.dangers }, 'Places that were found.')),
    none: optional(list(kind('A kind of danger.'), { upTo: KINDS.length }, 'Kinds that somebody looked for and did not find.')),
  },
  'Danger points besides the closing edge, while the door opens too. If absent, nobody looked.',
)

export type FileDangers = Plain<typeof dangersSchema>
