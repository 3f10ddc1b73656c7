import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { block, plainDoor, plainState } from '../../cases/plain-door.ts'
import type { DangerKind } from '../model/danger.ts'
import type { Door } from '../model/door.ts'

const judged = (none: readonly DangerKind[] | undefined, changes: Partial<Door> = {}) =>
  findingOf('dangers-listed', plainDoor({ dangers: none && { points: [], none }, ...changes }))

describe('dangers-listed', () => {
  it('passes when somebody looked for each kind that such a leaf has', () => {
    expect(judged(['draw-in', 'lifting'])).toMatchObject({
      verdict: 'pass',
      measured: { value: 2 },
      limit: { value: 2 },
      facts: { open: '' },
    })
  })

  it('asks where nobody looked, and names what is left', () => {
    expect(judged(undefined)).toMatchObject({ verdict: 'undetermined', needs: ['survey/dangers'], facts: { open: 'draw-in lifting' } })
    expect(judged(['draw-in', 'tail'])).toMatchObject({ measured: { value: 1 }, facts: { open: 'lifting' } })
  })

  it('counts what is computed against an obstacle, and asks where nothing is', () => {
    const leaf = { travel: 'toward-zero', thickness_mm: 40, bulge_mm: 0 } as const
    const parked = block({ id: 'parked-leaf', implied: true, x_mm: 3050, size_mm: [2100, 40] })
    const open = (obstacles: readonly ReturnType<typeof block>[]) =>
      judged(['draw-in', 'secondary-edge'], { leaf, states: [plainState({ obstacles })] })
    expect(open([parked, block({ id: 'fence', x_mm: 4500 })]).verdict).toBe('pass')
    expect(open([parked])).toMatchObject({ verdict: 'undetermined', facts: { open: 'tail' } })
  })

  it('asks for the leaf, and does not apply to a door that is held to run', () => {
    expect(judged([], { leaf: undefined })).toMatchObject({ verdict: 'undetermined', needs: ['survey/leaf'] })
    const concept = { people: 'trained', drive: 'hold-to-run', closingEdge: 'none' } as const
    expect(judged(undefined, { concept })).toMatchObject({ verdict: 'not-applicable', reason: 'not-required-by-concept' })
  })
})
