import type { EitherPart, NumberPart, Part, TextPart } from './schema.ts'
import { bare, isObject, own } from './shape.ts'

/** A place that does not fit. */
export interface Fault {
  readonly code: 'missing' | 'wrong-type' | 'out-of-range' | 'wrong-length' | 'wrong-form' | 'unknown-choice'
  readonly keys: readonly (string | number)[]
  readonly expected: string
}
type Keys = Fault['keys']

/** Every place of a value that does not fit its schema, in the order of the schema; one fault for each place at most. */
export function faultsIn(schema: Part, value: unknown, keys: Keys = []): readonly Fault[] {
  const part = bare(schema)
  const fault = (code: Fault['code']): readonly Fault[] =>
    part.kind === 'anything' ? [] : [{ code: value === undefined ? 'missing' : code, keys, expected: part.expected }]
  switch (part.kind) {
    case 'anything':
      return []
    case 'number':
      return numberFault(part, value, fault)
    case 'text':
      return textFault(part, value, fault)
    case 'choice':
      return part.values.includes(value as string | number) ? [] : fault('unknown-choice')
    case 'list': {
      if (!Array.isArray(value)) return fault('wrong-type')
      if (value.length < part.from || value.length > part.upTo) return fault('wrong-length') // nobody reads a thousand issues of items
      return value.flatMap((item, i) => faultsIn(part.item, item, [...keys, i]))
    }
    case 'tuple':
      if (!Array.isArray(value)) return fault('wrong-type')
      if (value.length !== part.items.length) return fault('wrong-length')
      return part.items.flatMap((item, i) => faultsIn(item, value[i], [...keys, i]))
    case 'fields':
      if (!isObject(value)) return fault('wrong-type')
      return Object.entries(part.fields).flatMap(([key, field]) => fieldFaults(field, value, key, keys))
    case 'entries':
      if (!isObject(value)) return fault('wrong-type')
      return Object.entries(value).flatMap(([key, entry]) => faultsIn(part.entry, entry, [...keys, key]))
    case 'either':
      return eitherFaults(part, value, keys, fault)
  }
}

type MakeFault = (code: Fault['code']) => readonly Fault[]

function numberFault({ whole, above, from, below, upTo }: NumberPart, value: unknown, fault: MakeFault): readonly Fault[] {
  if (typeof value !== 'number' || !Number.isFinite(value) || (whole && !Number.isInteger(value))) return fault('wrong-type')
  const low = (above !== undefined && value <= above) || (from !== undefined && value < from)
  const high = (below !== undefined && value >= below) || (upTo !== undefined && value > upTo)
  return low || high ? fault('out-of-range') : []
}

function textFault({ longest, form }: TextPart, value: unknown, fault: MakeFault): readonly Fault[] {
  if (typeof value !== 'string') return fault('wrong-type')
  if (longest !== undefined && value.length > longest) return fault('wrong-length')
  return form === undefined || form.test(value) ? [] : fault('wrong-form')
}

function fieldFaults(field: Part, value: Readonly<Record<string, unknown>>, key: string, keys: Keys): readonly Fault[] {
  if (!Object.hasOwn(value, key) && field.kind === 'optional') return []
  return faultsIn(field, own(value, key), [...keys, key])
}

function eitherFaults({ options, tag, expected }: EitherPart, value: unknown, keys: Keys, fault: MakeFault): readonly Fault[] {
  if (tag !== undefined) {
    if (!isObject(value)) return fault('wrong-type')
    const option = options.find((each) => each.kind === 'fields' && faultsIn(each.fields[tag] ?? each, own(value, tag)).length === 0)
    if (option) return faultsIn(option, value, keys)
    return [{ code: own(value, tag) === undefined ? 'missing' : 'unknown-choice', keys: [...keys, tag], expected }]
  }
  const tried = options.map((option) => faultsIn(option, value, keys))
  if (tried.some((faults) => faults.length === 0)) return []
  // Of the alternatives the one that got farther than the first look: the object whose fields are wrong, not the word that it is not
  return tried.find((faults) => faults.every((each) => each.keys.length > keys.length || isLimit(each))) ?? fault('unknown-choice')
}

function isLimit({ code }: Fault): boolean {
  return code === 'out-of-range' || code === 'wrong-length'
}
