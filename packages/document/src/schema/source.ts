import { choice, name, note, optional, type Plain, record } from './parts.ts'
import { entriesPart, textPart } from './schema.ts'

const BASES = ['published', 'datasheet', 'measured', 'common practice', 'from memory', 'our decision', 'invented'] as const

export const sourceSchema = record(
  {
    basis: choice(
      BASES,
      'How the figure is known. "from memory" never makes a pass until it is confirmed; "invented" is demonstration data.',
    ),
    document: optional(name('The standard, data sheet or drawing.')),
    edition: optional(name('Its edition or revision.')),
    clause: optional(name('Clause, table or page.')),
    note: optional(note('Whatever a reader needs to find the figure again: who measured, where the sheet lies.')),
  },
  'Where figures come from.',
)

/** One source for each value that does not come from where the rest comes from. */
export const sourcesSchema = entriesPart(
  sourceSchema,
  'an object { value: source }',
  'Sources of single values by name, as `"maxRange_mm": { "basis": "measured" }`, where they differ from `source`.',
)

export const confirmationSchema = record(
  {
    value: name('Id of the outside value, or of the body or sensor, whose source is confirmed.'),
    document: name('The standard held in the hand.'),
    edition: name('Its edition.'),
    clause: name('Clause or table where the figure stands.'),
    by: name('Who read it.'),
    on: textPart({ form: /^\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/ }, 'a day as 2026-11-25', 'The day, as 2026-11-25.'),
  },
  'The word of somebody who held a figure from memory against its page: from then on it counts.',
)

export type FileSource = Plain<typeof sourceSchema>
