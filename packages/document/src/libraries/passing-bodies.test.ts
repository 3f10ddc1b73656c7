import { isOfParts, judge, partsOf } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { SIX_VALUES } from '../../test/example-files.ts'
import { toDoor } from '../door/resolve.ts'
import { parseDocument } from '../parse.ts'
import { passingBodies } from './passing-bodies.ts'

function doorWith(uses: readonly string[], survey: object = {}) {
  const bodies = uses.map((use) => ({ id: use, use }))
  const file = { ...SIX_VALUES, survey: { ...SIX_VALUES.survey, ...survey }, bodies }
  const parsed = parseDocument(JSON.stringify(file))
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  return toDoor(parsed.document)
}

describe('the bodies that pass', () => {
  it.each(passingBodies())(
    '$id has the size that it is named by, stands on its wheels or feet, and says that it is invented',
    ({ id, name }) => {
      const [body] = doorWith([id]).bodies
      const posture = body?.postures[0]
      if (!body || posture?.shape !== 'box') throw new Error('a passing body must have a box or parts')
      expect(name.startsWith(`${posture.a_mm} x ${posture.b_mm} x ${posture.c_mm}, stands for`)).toBe(true)
      expect(body.source.basis).toBe('invented')
      expect(Math.min(...(partsOf(posture) ?? [{ from_mm: 0 }]).map(({ from_mm }) => from_mm))).toBeLessThan(61)
    },
  )

  it('can all be named by a lane, and zones are judged without them', () => {
    const uses = passingBodies().map(({ id }) => id)
    const lanes = [{ id: 'all', who: 'both', xMin_mm: 300, xMax_mm: 3100, bodies: uses, slowest_m_per_s: 0.2, fastest_m_per_s: 3 }]
    const door = doorWith(uses, { lanes })
    expect(door.lanes?.[0]?.bodies).toEqual(uses)
    expect(door.zones.flatMap(({ bodies }) => bodies)).toEqual(['passing-person'])
    expect(door.bodies.filter(isOfParts)).toHaveLength(uses.length - 1)
    expect(judge(door, { depth: 'grid' }).crashes).toEqual([])
  })
})
