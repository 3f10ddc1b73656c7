import { describe, expect, it } from 'vitest'
import { againstSights } from './stepped-sights.ts'

describe('the worst passage where the leaf changes what is seen', () => {
  // Second method, ours: a stepper of 1 ms in which each output sees, and stops the leaf, only while that is high enough
  it('is never clear where stepping finds somebody struck, and struck where it does in nearly every case (seeds 1 to 40)', () => {
    const answers = Array.from({ length: 40 }, (_, i) => againstSights(i + 1))
    expect(answers.flatMap(({ fault }) => fault ?? [])).toEqual([])
    const apart = answers.filter(({ engine, stepped }) => engine !== stepped).length
    expect({
      clear: answers.filter(({ engine }) => !engine).length > 4,
      struck: answers.filter(({ stepped }) => stepped).length > 10,
      apart: apart < 6,
    }).toEqual({
      clear: true,
      struck: true,
      apart: true,
    })
  })
})
