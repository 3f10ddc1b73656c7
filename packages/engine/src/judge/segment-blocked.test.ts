import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { block, level, lightGrid, plainDoor, plainState } from '../../cases/plain-door.ts'
import type { DoorState, Obstacle } from '../model/door.ts'

const judged = (state: DoorState, sensor = lightGrid([300, 900])) =>
  findingOf('segment-blocked', plainDoor({ sensors: [sensor], states: [state] }))
const behind = (...obstacles: readonly Obstacle[]) => plainState({ obstacles })

describe('segment-blocked', () => {
  it('passes where every beam arrives, posts that it starts and ends on included', () => {
    const posts = [block({ id: 'p', x_mm: -50 }), block({ id: 'q', x_mm: 2050 })]
    expect(judged(behind(...posts))).toMatchObject({
      id: 'segment-blocked:grid',
      verdict: 'pass',
      measured: { value: 0 },
      facts: { blocked: 0, beams: 2 },
    })
  })

  it('fails where something that always stands there meets a beam, and says which', () => {
    expect(judged(behind(block({ id: 'rack', name: 'rack', x_mm: 700, from_mm: 500, to_mm: 1000 })))).toMatchObject({
      verdict: 'fail',
      measured: { value: 1 },
      facts: { blocked: 1, plane: 'p0', beam: 2, at_mm: 650, obstacle: 'rack', obstacleName: 'rack' },
    })
  })

  it('fails where the floor does', () => {
    const finding = judged(plainState({ floor: level(10, [[0, 310]]) }))
    expect(finding).toMatchObject({ verdict: 'fail', facts: { blocked: 1, beam: 1, at_mm: 0 } })
    expect(finding.facts).not.toHaveProperty('obstacle')
  })

  it('does not apply without such a sensor', () => {
    expect(findingOf('segment-blocked', plainDoor()).verdict).toBe('not-applicable')
  })
})
