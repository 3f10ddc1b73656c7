import { describe, expect, it } from 'vitest'
import { didYouMean, editDistance, nearWords } from './near.ts'

describe('near words', () => {
  it('counts a letter added, dropped, changed, or swapped with its neighbour as one edit', () => {
    expect(editDistance('judge', 'judges')).toBe(1)
    expect(editDistance('judge', 'jude')).toBe(1)
    expect(editDistance('judge', 'fudge')).toBe(1)
    expect(editDistance('judge', 'jugde')).toBe(1)
    expect(editDistance('', 'why')).toBe(3)
    expect(editDistance('kitten', 'sitting')).toBe(3) // the example of textbooks
  })

  it('finds what somebody meant, nearest first, and stays silent where nothing is near', () => {
    const words = ['judge', 'why', 'draw', 'schema']
    expect(nearWords('jugde', words)).toEqual(['judge'])
    expect(nearWords('JUDGE', words)).toEqual(['judge'])
    expect(nearWords('xylophone', words)).toEqual([])
    expect(nearWords('', words)).toEqual([])
    expect(nearWords('coverage', ['coverage:b', 'coverage:a', 'clearance:s'])).toEqual(['coverage:a', 'coverage:b'])
  })

  it('asks in words', () => {
    expect(didYouMean('drwa', ['draw', 'why'])).toBe('Did you mean `draw`?')
    expect(didYouMean('zzz', ['draw'])).toBeUndefined()
  })

  it('answers at once however long the typed word is', () => {
    expect(nearWords('x'.repeat(1_000_000), ['judge'])).toEqual([])
  })
})
