import { describe, expect, it } from 'vitest'
import { againstTurningStepper } from './turning-cases.ts'

describe('the worst passage of a leaf that turns', () => {
  it('is no contact only where stepping finds none, and is one that stepping finds as well (seeds 1 to 1,000)', {
    timeout: 3_600_000,
  }, () => {
    const answers = Array.from({ length: 1000 }, (_, i) => againstTurningStepper(i + 1, 400))
    expect(answers.flatMap(({ faults }) => faults)).toEqual([])
    expect(answers.filter(({ unproved }) => unproved.struck > 0).length).toBeLessThan(30)
    expect(answers.filter(({ tight }) => tight).length).toBeLessThan(250)
  })
})
