import { describe, expect, it } from 'vitest'
import { freeId } from './free-id.ts'

describe('the id of a thing that is added', () => {
  it('has the first number that nothing of its kind has, whoever made those', () => {
    expect(freeId('post', [])).toMatch(/^post-1[a-z]{3}$/)
    expect(freeId('post', ['post-1', 'post-2kqt', 'lane-3', 'post-x', undefined])).toMatch(/^post-3[a-z]{3}$/)
  })
  it('is another on two devices that have not heard of each other, but for one time in some thousands', () => {
    const pairs = Array.from({ length: 2000 }, () => {
      const [mine, theirs] = [freeId('lane', []), freeId('lane', [])]
      return mine === theirs
    })
    expect(pairs.filter(Boolean).length).toBeLessThan(6)
  })
  it('is the same on both where they make the same thing, and another for another', () => {
    const of = (what: unknown) => freeId('sensor', ['sensor-1'], what)
    expect(of({ x_mm: 1400 })).toBe(of({ x_mm: 1400 }))
    expect(of({ x_mm: 1400 })).toMatch(/^sensor-2[a-z]{3}$/)
    const ids = Array.from({ length: 200 }, (_, x_mm) => of({ x_mm }))
    expect(new Set(ids).size).toBeGreaterThan(190)
  })
})
