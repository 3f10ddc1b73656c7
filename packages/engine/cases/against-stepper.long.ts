import { describe, expect, it } from 'vitest'
import { againstStepper } from './stepped-cases.ts'

describe('the worst passage', () => {
  it('agrees with stepping every phase through time (seeds 17 to 1,000)', { timeout: 3_600_000 }, () => {
    const answers = Array.from({ length: 984 }, (_, i) => againstStepper(i + 17))
    expect(answers.flatMap(({ faults }) => faults)).toEqual([])
    // left are leaves that stop a hair before they are shut, which whole steps cannot tell; 2 of the first 110
    expect(answers.filter(({ tight }) => tight).length).toBeLessThan(984 / 20)
    expect(answers.filter(({ loose }) => loose).length).toBeLessThan(10) // the boxes ran out: the gap said is smaller than it need be
  })
})
