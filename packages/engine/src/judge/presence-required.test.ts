import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { downward, plainDoor, plainZone } from '../../cases/plain-door.ts'
import type { Door, ProtectionConcept } from '../model/door.ts'
import type { Zone } from '../model/zone.ts'

const automatic: ProtectionConcept = { people: 'public', drive: 'automatic', closingEdge: 'presence-aid' }
const sideA = plainZone({ id: 'a', xMin_mm: 0, xMax_mm: 2000, yMin_mm: 0, yMax_mm: 1000 })
const sideB = plainZone({ id: 'b', xMin_mm: 0, xMax_mm: 2000, yMin_mm: -1000, yMax_mm: 0 })

const judged = (zones: readonly Zone[], changes: Partial<Door> = {}) =>
  findingOf('presence-required', plainDoor({ concept: automatic, zones, ...changes }))

describe('presence-required', () => {
  it('passes with presence over the whole width on both sides, in one zone or several', () => {
    expect(judged([sideA, sideB])).toMatchObject({
      verdict: 'pass',
      measured: { value: 2 },
      limit: { value: 2 },
      facts: { sideA: 'yard', unwatchedA_mm: 0, unwatchedB_mm: 0 },
    })
    expect(judged([plainZone({ xMin_mm: 0, xMax_mm: 2000 })]).verdict).toBe('pass')
    expect(judged([{ ...sideA, xMax_mm: 900 }, { ...sideA, id: 'a2', xMin_mm: 900 }, sideB]).verdict).toBe('pass')
  })

  it('fails where a side, or a part of its width, has none', () => {
    expect(judged([sideA])).toMatchObject({ verdict: 'fail', measured: { value: 1 }, facts: { unwatchedA_mm: 0, unwatchedB_mm: 2000 } })
    expect(judged([sideA, { ...sideB, xMin_mm: 150 }])).toMatchObject({ verdict: 'fail', facts: { unwatchedB_mm: 150 } })
    expect(judged([])).toMatchObject({ verdict: 'fail', measured: { value: 0 } })
  })

  it('does not count zones of another purpose, or without a presence field', () => {
    expect(judged([sideA, { ...sideB, purpose: 'opening', function: 'opening' }]).verdict).toBe('fail')
    const opening = downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }], {}, { function: 'opening' })
    expect(judged([sideA, sideB], { sensors: [opening] })).toMatchObject({ verdict: 'fail', measured: { value: 0 } })
  })

  it('does not apply where the door is held to run or its edge is limited in force', () => {
    const notRequired = { verdict: 'not-applicable', reason: 'not-required-by-concept' }
    expect(judged([], { concept: { ...automatic, drive: 'hold-to-run' } })).toMatchObject(notRequired)
    expect(judged([], { concept: { ...automatic, closingEdge: 'force-limited-edge' } })).toMatchObject(notRequired)
  })

  it('asks for the concept where it is missing, and takes back a pass that rests on assumed zones', () => {
    expect(judged([sideA, sideB], { concept: undefined })).toMatchObject({ verdict: 'undetermined', needs: ['concept'] })
    expect(judged([sideA, sideB], { assumed: ['zones'] })).toMatchObject({ reason: 'rests-on-assumption', needs: ['zones'] })
    expect(judged([sideA, sideB], { assumed: ['sensors/0/backgroundMargin_mm'] }).verdict).toBe('pass')
  })
})
