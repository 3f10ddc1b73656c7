import { describe, expect, it } from 'vitest'
import { againstStepper } from './stepped-cases.ts'

describe('the worst passage', () => {
  // Second method, ours: a stepper of 0.1 ms written from docs/method.md alone; the long run goes on to seed 1,000
  it('agrees with stepping every phase through time, in kind, speed and gap (seeds 1 to 16, and 940: met by the last step of braking)', () => {
    const answers = [...Array.from({ length: 16 }, (_, i) => i + 1), 940].map((seed) => againstStepper(seed))
    expect(answers.flatMap(({ faults }) => faults)).toEqual([])
    expect(new Set(answers.map(({ kinds }) => kinds)).size).toBeGreaterThan(2) // else one kind of answer was never asked for
    expect(answers.filter(({ tight }) => tight).length).toBeLessThan(2)
  })
})
