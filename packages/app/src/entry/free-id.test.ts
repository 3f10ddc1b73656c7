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
})
