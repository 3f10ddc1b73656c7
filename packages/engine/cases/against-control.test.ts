import { describe, expect, it } from 'vitest'
import { againstControl } from './stepped-cycles.ts'

describe('the worst passage', () => {
  // Second method, ours: a control stepped by 0.1 ms, with hold-open time, warning, attempts and coasting; the long run goes on to seed 400
  it('covers every closing of a control that warns, holds, is reversed and tries again, and is met in it (seeds 1 to 14)', () => {
    const answers = Array.from({ length: 14 }, (_, i) => againstControl(i + 1))
    const sum = (key: 'tried' | 'struckLater' | 'again' | 'tight') => answers.reduce((all, each) => all + each[key], 0)
    expect(answers.flatMap(({ faults }) => faults)).toEqual([])
    // else one kind was never asked for
    expect([sum('tried') > 100, sum('struckLater') > 20, sum('again') > 3, answers.some(({ narrowed }) => narrowed)]).toEqual([
      true,
      true,
      true,
      true,
    ])
    expect(sum('tight')).toBeLessThan(3)
  })
})
