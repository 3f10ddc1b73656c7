import { BOUNDS } from '../bounds.ts'
import { angle_deg, id, list, name, number, optional, type Plain, record, reflectance, tag } from './parts.ts'
import { eitherPart, saying, tuplePart } from './schema.ts'
import { sourceSchema } from './source.ts'

const yawSchema = eitherPart(
  [angle_deg('One yaw.'), tuplePart([angle_deg('from'), angle_deg('to')], 'two angles [from, to]', '')],
  'an angle, or two angles [from, to]',
  'Counter-clockwise in the plan; two angles mean every yaw between them; 0 if absent.',
)

/** Thinner than a millimetre nobody is. */
const side_mm = (means: string) => number({ from: 1, upTo: BOUNDS.length_mm }, means)

const postureSchema = eitherPart(
  [
    record(
      {
        shape: tag('box'),
        name: optional(name('Name for people, as "lying along".')),
        size_mm: tuplePart(
          [side_mm('along x'), side_mm('along y'), side_mm('height')],
          'three numbers from 1 [along x, along y, height]',
          'Size along x, along y (at yaw 0) and height.',
        ),
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
      },
      'An upright cylinder.',
    ),
  ],
  '"box" or "cylinder"',
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
