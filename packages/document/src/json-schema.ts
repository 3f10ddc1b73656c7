import { doorFileSchema, libraryFileSchema } from './schema/door-file.ts'
import type { NumberPart, Part } from './schema/schema.ts'

type JsonSchema = Record<string, unknown>

/**
 * JSON Schema 2020-12 of the newest door file, from the same schema that checks it. Contradictions between fields (a sensor in a wall, a
 * minimum above its maximum) are beyond it: `parseDocument` finds those. Fields that the schema does not know are allowed, as they are kept.
 */
export function doorFileJsonSchema(): JsonSchema {
  return { ...DIALECT, ...jsonSchema(doorFileSchema), title: 'Sillsight door file, version 1' }
}

/** The same for a library of sensors and bodies. */
export function libraryJsonSchema(): JsonSchema {
  return { ...DIALECT, ...jsonSchema(libraryFileSchema), title: 'Sillsight library, version 1' }
}

const DIALECT = Object.fromEntries([['$schema', 'https://json-schema.org/draft/2020-12/schema']])

function jsonSchema(part: Part): JsonSchema {
  if (part.kind === 'optional') return jsonSchema(part.inner)
  return { ...(part.means !== '' && { description: part.means }), ...constraints(part) }
}

function constraints(part: Exclude<Part, { readonly kind: 'optional' }>): JsonSchema {
  switch (part.kind) {
    case 'anything':
      return {}
    case 'number':
      return { type: part.whole ? 'integer' : 'number', ...limits(part) }
    case 'text':
      return { type: 'string', ...given({ maxLength: part.longest, pattern: part.form?.source }) }
    case 'choice':
      return {
        type: typeof part.values[0] === 'number' ? 'number' : 'string',
        ...(part.values.length === 1 ? { const: part.values[0] } : { enum: part.values }),
      }
    case 'list':
      return { type: 'array', items: jsonSchema(part.item), ...(part.from > 0 && { minItems: part.from }), maxItems: part.upTo }
    case 'tuple':
      return {
        type: 'array',
        prefixItems: part.items.map(jsonSchema),
        items: false,
        minItems: part.items.length,
        maxItems: part.items.length,
      }
    case 'fields':
      return {
        type: 'object',
        properties: Object.fromEntries(Object.entries(part.fields).map(([key, field]) => [key, jsonSchema(field)])),
        ...required(part.fields),
      }
    case 'entries':
      return { type: 'object', additionalProperties: jsonSchema(part.entry) }
    case 'either':
      return { [part.tag === undefined ? 'anyOf' : 'oneOf']: part.options.map(jsonSchema) }
  }
}

function limits({ above, from, below, upTo }: NumberPart): JsonSchema {
  return given({ exclusiveMinimum: above, minimum: from, exclusiveMaximum: below, maximum: upTo })
}

function required(fields: Readonly<Record<string, Part>>): JsonSchema {
  const names = Object.entries(fields).flatMap(([key, field]) => (field.kind === 'optional' ? [] : [key]))
  return names.length === 0 ? {} : { required: names }
}

function given(limits: JsonSchema): JsonSchema {
  return Object.fromEntries(Object.entries(limits).filter(([, limit]) => limit !== undefined))
}
