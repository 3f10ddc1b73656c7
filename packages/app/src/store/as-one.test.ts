import type { DoorFile } from '@sillsight/document'
import { describe, expect, it } from 'vitest'
import { changesOf, devices, dice, merge, plain } from '../../test/devices.ts'
import { pushAt, putAt, takeAt } from '../entry/places.ts'
import type { Draft } from './contract.ts'

const body = (n: number) => ({ id: `body-${n}`, size: { x_mm: 100, y_mm: n }, parts: [{ id: 'p' }], says: ['a'] })
const first = { sillsight: 1, survey: { opening: {} }, bodies: [body(0), body(1)] } as unknown as DoorFile

/** A door into whose lists both devices put the same things, in another order, and what they made apart from each other. */
const merged = (seed: number) => {
  const both = devices(first)
  for (const [i, door] of both.entries())
    door.edit({ deed: 'added' }, (draft) => {
      for (const n of i === 0 ? [2, 3, 5] : [3, 6, 2]) pushAt(draft, 'bodies', body(n))
      pushAt(draft, 'bodies', body(seed * 10 + i))
      for (const bodies of ['bodies/0', 'bodies/1']) pushAt(draft, `${bodies}/parts`, { id: 'both' })
      for (const says of i === 0 ? ['b', 'c'] : ['c', 'b']) pushAt(draft, 'bodies/0/says', says)
    })
  merge(both)
  return both
}

describe('a door in which two devices made the same things', () => {
  it('shows each once, and is edited as it is shown, without a question (50 random orders of edits, seeds 1 to 50)', () => {
    for (let seed = 1; seed <= 50; seed++) {
      const [a] = merged(seed)
      const roll = dice(seed)
      expect(a.document().file.bodies?.length).toBeGreaterThan(plain(a).bodies?.length ?? 0)
      for (let step = 0; step < 8; step++) {
        const at = roll(plain(a).bodies?.length ?? 1)
        const edits: readonly ((draft: Draft) => void)[] = [
          (draft) => putAt(draft, `bodies/${at}/size/x_mm`, step),
          (draft) => putAt(draft, `bodies/${at}/size`, { x_mm: 7, y_mm: step }),
          (draft) => putAt(draft, `bodies/${at}/size/x_mm`, undefined),
          (draft) => putAt(draft, `bodies/${at}`, body(100 + step)),
          (draft) => pushAt(draft, `bodies/${at}/parts`, { id: `part-${step}` }),
          (draft) => takeAt(draft, `bodies/${at}/parts`, 0),
          (draft) => putAt(draft, `bodies/${at}/parts/0/name`, `part ${step}`),
          (draft) => takeAt(draft, `bodies/${at}/says`, 0),
          (draft) => takeAt(draft, 'bodies', at),
          (draft) => pushAt(draft, 'bodies', body(200 + step)),
          (draft) => {
            ;(draft.bodies as unknown as unknown[]).splice(at, 1, body(300 + step), body(400 + step))
          },
        ]
        const edit = edits[roll(edits.length)] ?? (() => {})
        const expected = plain(a)
        edit(expected as unknown as Draft)
        a.edit({ deed: 'set' }, edit)
        expect(plain(a), `seed ${seed}, step ${step}`).toEqual(expected)
        expect(a.snapshot().conflicts, `seed ${seed}, step ${step}`).toEqual([])
      }
    }
  })

  it('keeps what the other, who has not met it yet, does with its own (30 random orders, seeds 1 to 30)', () => {
    for (let seed = 1; seed <= 30; seed++) {
      const roll = dice(seed)
      const both = devices(first)
      for (const [i, door] of both.entries())
        door.edit({ deed: 'added' }, (draft) => {
          for (const n of i === 0 ? [2, 3, 5] : [3, 6, 2]) pushAt(draft, 'bodies', body(n))
        })
      const [a, b] = both
      a.receive(changesOf(b)) // b goes on without having heard of a
      const placeOf = (door: typeof a, n: number) => plain(door).bodies?.findIndex(({ id }) => id === `body-${n}`)
      const n = [2, 3][roll(2)] as number
      b.edit({ deed: 'set' }, (draft) => putAt(draft, `bodies/${placeOf(b, n)}/size/x_mm`, 50))
      a.edit({ deed: 'set' }, (draft) => putAt(draft, `bodies/${placeOf(a, n)}/name`, 'named'))
      merge(both)
      expect(plain(b)).toEqual(plain(a))
      const said = [
        plain(a).bodies?.[placeOf(a, n) ?? 0],
        ...a.snapshot().conflicts.flatMap(({ values }) => values.map(({ value }) => value)),
      ]
      expect(said, `seed ${seed}`).toContainEqual(expect.objectContaining({ size: { x_mm: 50, y_mm: n } }))
      expect(said, `seed ${seed}`).toContainEqual(expect.objectContaining({ name: 'named' }))
    }
  })
})
