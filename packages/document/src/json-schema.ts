import { z } from 'zod'
import { doorFileSchema, libraryFileSchema } from './schema/door-file.ts'

/**
 * JSON Schema 2020-12 of the newest door file, from the same schema that checks it. Contradictions between fields (a sensor in a wall, a
 * minimum above its maximum) are beyond it: `parseDocument` finds those.
 */
export function doorFileJsonSchema(): Record<string, unknown> {
  return { ...z.toJSONSchema(doorFileSchema, OPTIONS), title: 'Sillsight door file, version 1' }
}

/** The same for a library of sensors and bodies. */
export function libraryJsonSchema(): Record<string, unknown> {
  return { ...z.toJSONSchema(libraryFileSchema, OPTIONS), title: 'Sillsight library, version 1' }
}

/** As input: fields that the schema does not know are allowed, as they are kept. */
const OPTIONS = { target: 'draft-2020-12', io: 'input' } as const
