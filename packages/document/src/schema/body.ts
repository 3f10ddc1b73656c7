import { BOUNDS } from '../bounds.ts'
import { angle_deg, choice, distance_mm, id, list, name, number, optional, type Plain, pair_mm, record, reflectance, tag } from './parts.ts'
import { eitherPart, saying, tuplePart } from './schema.ts'
import { sourceSchema } from './source.ts'

const yawSchema = eitherPart(
  [angle_deg('One yaw.'), tuplePart([angle_deg('from'), angle_deg('to')], 'two angles [from, to]', '')],
  'an angle, or two angles [from, to]',
  'Counter-clockwise in the plan; two angles mean every yaw between them; 0 if absent.',
)

const how = optional(
  choice(
    ['passes', 'fallen'],
    'fallen: it comes about by a fall, where a lane says that bodies fall, and does not pass by itself. "passes" if absent.',
  ),
)

/** Thinner than a millimetre nobody is. */
const side_mm = (means: string) => number({ from: 1, upTo: BOUNDS.length_mm }, means)

const boxSize_mm = tuplePart(
  [side_mm('along x'), side_mm('along y'), side_mm('height')],
  'three numbers from 1 [along x, along y, height]',
  'Size along x, along y (at yaw 0) and height.',
)

const partPlace = {
  name: optional(name('Name for people, as "mast".')),
  at_mm: optional(pair_mm('Middle of the part along x and y, from any point that all parts of the posture share; [0, 0] if absent.')),
  from_mm: optional(distance_mm('Height of its underside above the floor; 0 if absent.')),
  reflectance: optional(reflectance('Diffuse reflectance of its darkest side; that of the body if absent.')),
}
const partSchema = eitherPart(
  [
    record({ shape: tag('box'), ...partPlace, size_mm: boxSize_mm }, 'An upright box.'),
    record({ shape: tag('cylinder'), ...partPlace, radius_mm: side_mm('Radius.'), height_mm: side_mm('Height.') }, 'An upright cylinder.'),
  ],
  '"box" or "cylinder"',
  'One upright solid of a body of several parts.',
  'shape',
)

const postureSchema = eitherPart(
  [
    record(
      {
        shape: tag('box'),
        name: optional(name('Name for people, as "lying along".')),
        size_mm: boxSize_mm,
        how,
        yaw_deg: optional(yawSchema),
      },
      'An upright box.',
    ),
    record(
      {
        shape: tag('cylinder'),
        name: optional(name('Name for people.')),
        radius_mm: side_mm('Radius.'),
        height_mm: side_mm('Height.'),
        how,
      },
      'An upright cylinder.',
    ),
    record(
      {
        shape: tag('parts'),
        name: optional(name('Name for people.')),
        parts: list(
          partSchema,
          { from: 1, upTo: BOUNDS.partsOfPosture },
          'Its parts, rigid to each other. It goes toward +y at yaw 0, and is turned by half a turn on its way from side A.',
        ),
        yaw_deg: optional(yawSchema),
        how,
      },
      'Several upright solids that pass together. Lanes alone judge it; a zone that names it stays undetermined.',
    ),
  ],
  '"box", "cylinder" or "parts"',
  'One way in which the body stands or lies, its bottom on the floor under its centre.',
  'shape',
)

const values = {
  name: optional(name('Name by size, as "700 x 300 x 200".')),
  reflectance: optional(reflectance('Diffuse reflectance of its darkest side, 0 to 1. Needed here or in the library.')),
  postures: optional(
    list(postureSchema, { from: 1, upTo: BOUNDS.postures }, 'Postures; each must be seen. Needed here or in the library.'),
  ),
  source: optional(saying(sourceSchema, 'Where size and reflectance come from. If absent, from memory is assumed.')),
}

export const bodySchema = record(
  { id: id('Name inside the file.'), use: optional(id('Id of a library body whose values hold where this entry gives none.')), ...values },
  'A test body: what stands in for somebody, named by its size.',
)
export const libraryBodySchema = record(values, 'A test body as its standard describes it.')

export type FileBody = Plain<typeof bodySchema>
export type LibraryBody = Plain<typeof libraryBodySchema>
export type FilePosture = Plain<typeof postureSchema>
export type FilePart = Plain<typeof partSchema>
