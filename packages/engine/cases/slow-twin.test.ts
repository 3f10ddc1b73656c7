import { describe, expect, it } from 'vitest'
import { directionCases, directionPlane, methodCases } from './method-cases.ts'
import { slowTwin } from './slow-twin.ts'
import { beamsOfPlane } from './slow-twin-beams.ts'

describe('the slow twin gives the answers worked on paper (hand calculation)', () => {
  it.each(directionCases)('$id: with $setting the beam points along $direction', ({ pose, direction }) => {
    const [beam] = beamsOfPlane(directionPlane, pose)
    direction.forEach((component, axis) => {
      expect(beam?.along[axis]).toBeCloseTo(component, 14)
    })
  })

  it.each(methodCases)('$id: $setting gives $answer', ({ door, answer, why }) => {
    const { cells } = slowTwin(door, 'zone', 'as surveyed')
    const count = (verdict: string) => cells.filter((cell) => cell.verdict === verdict).length
    expect({ seen: count('seen'), blind: count('blind'), notFree: count('not free') }, why).toEqual(answer)
  })

  it('H2 and H11: the cells seen are the four about the beam', () => {
    for (const { door } of methodCases.filter(({ answer }) => answer.seen === 4)) {
      const { cells } = slowTwin(door, 'zone', 'as surveyed')
      const centres = cells.filter(({ verdict }) => verdict === 'seen').map(({ x_mm, y_mm }) => [x_mm, y_mm])
      expect(centres).toEqual([
        [450, -50],
        [550, -50],
        [450, 50],
        [550, 50],
      ])
    }
  })

  it('H11: a width of 450 on a pitch of 100 makes five columns', () => {
    const h11 = methodCases.find(({ id }) => id === 'H11')
    const { columns, rows } = slowTwin(h11?.door ?? expect.fail('H11 is missing'), 'zone', 'as surveyed')
    expect({ columns, rows }).toEqual({ columns: 5, rows: 4 })
  })
})
