import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { same, takeBack } from './take-back.ts'

type Fields = Record<string, unknown>
const leaf = fc.oneof(fc.integer({ min: 0, max: 9 }), fc.constantFrom('a', 'b'), fc.boolean())
const named = fc.uniqueArray(fc.record({ id: fc.constantFrom('p', 'q', 'r', 's'), v: leaf }), { selector: ({ id }) => id, maxLength: 4 })
const fields: fc.Arbitrary<Fields> = fc.dictionary(
  fc.constantFrom('x', 'y', 'z'),
  fc.oneof(leaf, fc.array(fc.integer({ min: 0, max: 9 }), { maxLength: 3 }), named, fc.dictionary(fc.constantFrom('u', 'v'), leaf)),
)
const SEED = { seed: 20261126 }

describe('taking an edit back', () => {
  it('brings the earlier document back where nobody has done anything since (seed 20261126)', () => {
    fc.assert(
      fc.property(fields, fields, (before, after) => {
        const now = structuredClone(after)
        takeBack(now, before, after)
        expect(sorted(now)).toEqual(sorted(before)) // lists of named things may come back in another order
      }),
      SEED,
    )
  })
  it('leaves what somebody else has changed since', () => {
    const now = { width: 3, height: 9, posts: [{ id: 'a', r: 5 }] }
    takeBack(now, { width: 1, height: 2, posts: [{ id: 'a', r: 1 }] }, { width: 3, height: 4, posts: [{ id: 'a', r: 2 }] })
    expect(now).toEqual({ width: 1, height: 9, posts: [{ id: 'a', r: 5 }] })
  })
  it('takes away what was added and brings back what was removed, beside what others added', () => {
    const now = { posts: [{ id: 'a' }, { id: 'mine' }, { id: 'theirs' }] }
    takeBack(now, { posts: [{ id: 'a' }, { id: 'gone' }] }, { posts: [{ id: 'a' }, { id: 'mine' }] })
    expect(now).toEqual({ posts: [{ id: 'a' }, { id: 'gone' }, { id: 'theirs' }] })
  })
  it('leaves an added thing alone that somebody has changed since', () => {
    const now = { posts: [{ id: 'mine', r: 7 }] }
    takeBack(now, { posts: [] }, { posts: [{ id: 'mine', r: 1 }] })
    expect(now).toEqual({ posts: [{ id: 'mine', r: 7 }] })
  })
})

describe('taking back that something was added', () => {
  it('leaves what somebody else has added alike', () => {
    const now = { posts: [{ id: 'a' }, { id: 'both' }, { id: 'both' }] }
    takeBack(now, { posts: [{ id: 'a' }] }, { posts: [{ id: 'a' }, { id: 'both' }] })
    expect(now).toEqual({ posts: [{ id: 'a' }, { id: 'both' }] })
  })
})

describe('two pieces of JSON', () => {
  it('say the same whatever the order of their fields, and not otherwise', () => {
    expect(same({ a: 1, b: [1, { c: 2 }] }, { b: [1, { c: 2 }], a: 1 })).toBe(true)
    expect(same({ a: 1 }, { a: 1, b: undefined })).toBe(false)
    expect(same([1, 2], [2, 1])).toBe(false)
  })
})

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) {
    const items = value.map(sorted)
    return items.every((each) => typeof each === 'object' && each !== null)
      ? items.sort((a, b) => ((a as { id: string }).id < (b as { id: string }).id ? -1 : 1))
      : items
  }
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, sorted(each)]))
}
