import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { plainDoor } from '../../cases/plain-door.ts'
import { wiredDoor } from '../../cases/wired-door.ts'
import type { Supply } from '../model/wiring.ts'

const judged = (changes: Partial<Supply>) =>
  findingOf(
    'supply-current',
    wiredDoor((wiring) => ({ ...wiring, supply: { ...wiring.supply, ...changes } })),
  )

describe('supply-current', () => {
  it('sums what the device draws and what its contacts feed: 0.2 A and at most 27 V over 3, 3 and 5 kilohm', () => {
    const found = judged({ largest_A: 0.3 })
    expect(found).toMatchObject({ verdict: 'pass', limit: { value: 0.3, unit: 'A' }, facts: { limitedBy: 'source' } })
    const drawn = 'measured' in found ? (found.measured?.value ?? 0) : 0
    expect(drawn).toBeGreaterThan(0.2 + 26 / 3000)
    expect(drawn).toBeLessThan(0.2 + 27 / 3000 + 27 / 3000 + 27 / 5000)
  })
  it('fails where source or fuse carry less', () => {
    expect(judged({ largest_A: 0.2 })).toMatchObject({ verdict: 'fail', facts: { limitedBy: 'source' } })
    expect(judged({ largest_A: 2, fuse_A: 0.2 })).toMatchObject({ verdict: 'fail', limit: { value: 0.2 }, facts: { limitedBy: 'fuse' } })
    expect(judged({ largest_A: undefined, fuse_A: 0.2 }).verdict).toBe('fail')
  })
  it('asks what the source gives, whatever its fuse carries', () => {
    expect(judged({ largest_A: undefined, fuse_A: 1 })).toMatchObject({ verdict: 'undetermined', needs: ['wiring/supply/largest_A'] })
  })
  it('asks how cold the copper gets', () => {
    const found = findingOf(
      'supply-current',
      wiredDoor((wiring) => ({ ...wiring, copper: undefined })),
    )
    expect(found).toMatchObject({ verdict: 'undetermined', needs: ['wiring/copper'] })
  })
  it('has no subject without wiring', () => {
    expect(findingOf('supply-current', plainDoor()).verdict).toBe('not-applicable')
  })
})
