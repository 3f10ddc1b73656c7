import type { DoorFile } from '@sillsight/document'
import { describe, expect, it } from 'vitest'
import { devices, dice, merge, plain } from '../../test/devices.ts'
import { pushAt, putAt } from '../entry/places.ts'
import type { OpenDoor } from './contract.ts'

const first = { sillsight: 1, name: 'A door', survey: { opening: { width_mm: 3000, height_mm: 2500 } } } as unknown as DoorFile

const write = (door: OpenDoor, path: 'name' | 'note', value: string) =>
  door.edit({ deed: 'set', path }, (draft) => {
    ;(draft as Record<string, unknown>)[path] = value
  })

/** Both wrote the name, and took in what the other wrote. */
const asked = (file = first) => {
  const both = devices(file)
  write(both[0], 'name', 'of a')
  write(both[1], 'name', 'of b')
  merge(both)
  return both
}

describe('who takes a choice back', () => {
  it('is asked again, until he chooses again or brings the choice back', () => {
    const both = asked()
    const [a, b] = both
    const [question] = a.snapshot().conflicts
    const shown = plain(a).name
    expect(question?.path).toBe('name')
    for (const which of [0, 1]) {
      a.choose('name', which)
      expect(a.snapshot().conflicts).toEqual([])
      a.undo()
      expect(a.snapshot().conflicts).toEqual([question])
      a.redo()
      expect(a.snapshot().conflicts).toEqual([])
      a.undo()
      merge(both)
      for (const each of both) {
        expect(each.snapshot().conflicts).toEqual([question])
        expect(plain(each).name).toBe(shown)
      }
    }
    a.choose('name', 0)
    merge(both)
    for (const each of both) expect(each.snapshot().conflicts).toEqual([])
    expect(plain(b).name).toBe(shown)
  })

  it('is asked again about lists that both began, which are judged together meanwhile', () => {
    const both = devices(first)
    for (const [i, door] of both.entries())
      door.edit({ deed: 'added', path: 'bodies' }, (draft) => pushAt(draft, 'bodies', { id: `body-${i}`, use: 'presence-reference-body' }))
    merge(both)
    const [a] = both
    const [question] = a.snapshot().conflicts
    expect(question?.together).toBeDefined()
    a.choose('bodies', 'all')
    a.undo()
    expect(a.snapshot().conflicts).toEqual([question])
    a.choose('bodies', 'all')
    expect(a.snapshot().conflicts).toEqual([])
    expect(plain(a).bodies).toEqual(question?.together)
  })

  it('is not asked about what was written since, or chosen by somebody else who had not seen that', () => {
    const rewritten = asked()
    rewritten[0].choose('name', 1)
    rewritten[0].undo()
    write(rewritten[0], 'name', 'another')
    expect(rewritten[0].snapshot().conflicts).toEqual([])
    const chosen = asked()
    const [a, b] = chosen
    a.choose('name', 1)
    a.undo()
    b.choose('name', 0)
    merge(chosen)
    for (const each of chosen) expect(each.snapshot().conflicts).toEqual([])
  })

  it('is asked again although a wiring was written over later, of which the choice knew nothing', () => {
    const both = asked({ ...first, wiring: { cables: [{ id: 'W1' }] } } as unknown as DoorFile)
    both[0].choose('name', 0)
    both[0].undo()
    merge(both)
    const [question] = both[0].snapshot().conflicts
    for (const [i, door] of both.entries())
      door.edit({ deed: 'mended', path: 'wiring' }, (draft) => putAt(draft, 'wiring/cables', [{ id: `W1${i}` }]))
    merge(both)
    for (const { snapshot } of both) {
      expect(snapshot().conflicts.map(({ path }) => path)).toEqual(['wiring', 'name'])
      expect(snapshot().conflicts[1]).toEqual(question)
    }
  })

  it('sees what the other device sees, in 200 random orders of writing, choosing, taking back and merging (seeds 1 to 200)', () => {
    let again = 0
    for (let seed = 1; seed <= 200; seed++) {
      const roll = dice(seed)
      const both = devices(first)
      for (let step = 0; step < 24; step++) {
        const door = both[roll(2)] as (typeof both)[0]
        const act = roll(7)
        const [conflict] = door.snapshot().conflicts
        if (act < 2) write(door, roll(2) === 0 ? 'name' : 'note', `${step} ${roll(3)}`)
        else if (act < 4 && conflict) door.choose(conflict.path, roll(conflict.values.length))
        else if (act === 4) door.undo()
        else if (act === 5) door.redo()
        else merge(both)
        if (act === 4 && !conflict && door.snapshot().conflicts.length > 0) again++
      }
      merge(both)
      const [a, b] = both
      expect(plain(b), `seed ${seed}`).toEqual(plain(a))
      expect(b.snapshot().conflicts, `seed ${seed}`).toEqual(a.snapshot().conflicts)
      for (const { path } of a.snapshot().conflicts) a.choose(path, 0)
      merge(both)
      for (const each of both) expect(each.snapshot().conflicts, `seed ${seed}`).toEqual([])
    }
    expect(again).toBeGreaterThan(20) // or hardly anybody took a choice back
  })
})
