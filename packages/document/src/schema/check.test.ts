import Ajv2020 from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { mutatedFile } from '../../test/mutations.ts'
import { doorFileJsonSchema } from '../json-schema.ts'
import { faultsIn } from './check.ts'
import { doorFileSchema } from './door-file.ts'
import { list, number, optional, record, tag, wordOr } from './parts.ts'
import { eitherPart, type Part, tuplePart } from './schema.ts'

const size = number({ above: 0, upTo: 100 }, 'a size')
const shapes = eitherPart(
  [record({ shape: tag('box'), size }, 'a box'), record({ shape: tag('post'), radius: size }, 'a post')],
  '"box" or "post"',
  '',
  'shape',
)

/** Faults as `place: code`. */
const faults = (schema: Part, value: unknown) => faultsIn(schema, value).map(({ keys, code }) => `${keys.join('/')}: ${code}`)

describe('faultsIn', () => {
  it('finds every place that does not fit, once, in the order of the schema', () => {
    const schema = record({ a: size, b: list(size, { from: 1, upTo: 3 }, ''), c: optional(size) }, '')
    expect(faults(schema, { a: 1, b: [1] })).toEqual([])
    expect(faults(schema, { b: [1, -1, 'x'], a: 101, c: null })).toEqual([
      'a: out-of-range',
      'b/1: out-of-range',
      'b/2: wrong-type',
      'c: wrong-type',
    ])
    expect(faults(schema, {})).toEqual(['a: missing', 'b: missing'])
    expect(faults(schema, [])).toEqual([': wrong-type'])
  })

  it('takes limits as they are said: above and below without, from and up to with the limit itself', () => {
    const accepts = (schema: Part, value: number) => faults(schema, value).length === 0
    expect([0, 1, 100, 101].map((value) => accepts(size, value))).toEqual([false, true, true, false])
    expect([0, 1, 99, 100].map((value) => accepts(number({ from: 0, below: 100 }, ''), value))).toEqual([true, true, true, false])
    expect([Number.NaN, Infinity, -Infinity].map((value) => accepts(number({}, ''), value))).toEqual([false, false, false])
  })

  it('says that a list has a wrong length without looking at its items', () => {
    expect(faults(list(size, { from: 1, upTo: 2 }, ''), [-1, -1, -1])).toEqual([': wrong-length'])
    expect(faults(list(size, { from: 1, upTo: 2 }, ''), [])).toEqual([': wrong-length'])
    expect(faults(tuplePart([size, size], '', ''), [1])).toEqual([': wrong-length'])
  })

  it('names what is wrong in the alternative that was meant, and else that none fits', () => {
    expect(faults(shapes, { shape: 'box', size: -1 })).toEqual(['size: out-of-range'])
    expect(faults(shapes, { shape: 'ball' })).toEqual(['shape: unknown-choice'])
    expect(faults(shapes, { size: 1 })).toEqual(['shape: missing'])
    const parked = wordOr('none', record({ x: size }, ''), 'a box', '')
    expect(faults(parked, { x: -1 })).toEqual(['x: out-of-range'])
    expect(faults(parked, 'nowhere')).toEqual([': unknown-choice'])
  })

  it('does not take what every object inherits for a field', () => {
    expect(faults(record({ constructor: size }, ''), {})).toEqual(['constructor: missing'])
  })

  // Second method: a program of others reads our JSON Schema
  it('refuses exactly the mutated files that ajv refuses (seeds 1 to 4000)', () => {
    const validates = new Ajv2020.default({ strict: true }).compile(doorFileJsonSchema())
    let refused = 0
    let accepted = 0
    for (let seed = 1; seed <= 4000; seed++) {
      const file = parsed(mutatedFile(seed))
      if (file === undefined) continue
      const fits = faultsIn(doorFileSchema, file).length === 0
      expect({ seed, fits }).toEqual({ seed, fits: validates(file) })
      if (fits) accepted++
      else refused++
    }
    expect(Math.min(refused, accepted)).toBeGreaterThan(100) // else the files would test nothing
  })
})

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}
