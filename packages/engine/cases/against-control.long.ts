import { describe, expect, it } from 'vitest'
import { againstControl } from './stepped-cycles.ts'

describe('the worst passage', () => {
  it('covers every closing of a control that warns, holds, is reversed and tries again (seeds 15 to 400)', { timeout: 3_600_000 }, () => {
    const answers = Array.from({ length: 386 }, (_, i) => againstControl(i + 15))
    expect(answers.flatMap(({ faults }) => faults)).toEqual([])
    expect(answers.filter(({ narrowed }) => narrowed).length).toBeGreaterThan(30)
    expect(answers.reduce((all, { tight }) => all + tight, 0)).toBeLessThan(20)
  })
})
