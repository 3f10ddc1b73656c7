import type { DoorFile } from '@sillsight/document'
import { describe, expect, it } from 'vitest'
import { devices, dice, merge, plain } from '../../test/devices.ts'
import { pushAt, putAt, takeAt } from '../entry/places.ts'
import type { OpenDoor } from './contract.ts'

const first = { sillsight: 1, name: 'A door', survey: { opening: { width_mm: 3000, height_mm: 2500 } } } as unknown as DoorFile

const lane = (id: string) => ({ id, name: id, who: 'both', xMin_mm: 100, xMax_mm: 2900, speed_m_per_s: 1 })
const furnished = {
  ...first,
  survey: { ...first.survey, lanes: ['one', 'two', 'three'].map(lane) },
  wiring: { cables: [{ id: 'W1', length_m: 1 }] },
} as unknown as DoorFile
const LENGTH = 'wiring/cables/0/length_m'
const speedsIn = (door: OpenDoor) => plain(door).survey.lanes?.map((each) => (each as ReturnType<typeof lane>).speed_m_per_s) ?? []
const speedOf = (i: number) => `survey/lanes/${i}/speed_m_per_s`

const put = (door: OpenDoor, path: string, value: unknown) => door.edit({ deed: 'set', path }, (draft) => putAt(draft, path, value))
const writeOver = (door: OpenDoor, ...cables: readonly object[]) =>
  door.edit({ deed: 'mended', path: 'wiring' }, (draft) => putAt(draft, 'wiring/cables', cables))

const write = (door: OpenDoor, path: 'name' | 'note', value: string) =>
  door.edit({ deed: 'set', path }, (draft) => {
    ;(draft as Record<string, unknown>)[path] = value
  })

/** Both wrote the name, and took in what the other wrote. */
const asked = (file = first, names?: readonly [string, string]) => {
  const both = devices(file, names)
  write(both[0], 'name', 'of a')
  write(both[1], 'name', 'of b')
  merge(both)
  return both
}

describe('who takes an edit back where somebody else wrote without having seen it', () => {
  it('takes away no value of the other: both stay to choose from', () => {
    const both = asked()
    const { conflicts, file } = both[0].snapshot()
    const [mine, theirs] = file.name === 'of a' ? both : [both[1], both[0]]
    mine.undo()
    merge(both)
    for (const each of both) expect(each.snapshot().conflicts).toEqual(conflicts)
    mine.redo()
    expect(mine.snapshot().conflicts).toEqual(conflicts)
    theirs.undo()
    merge(both)
    for (const each of both) expect(each.snapshot().conflicts).toEqual(conflicts)
  })

  it('takes away no list of the other, and nothing that was written while a choice was made', () => {
    const began = devices(first)
    for (const [i, door] of began.entries())
      door.edit({ deed: 'added', path: 'bodies' }, (draft) => pushAt(draft, 'bodies', { id: `body-${i}`, use: 'presence-reference-body' }))
    merge(began)
    for (const door of began) door.undo()
    merge(began)
    expect(began[0].snapshot().conflicts.map(({ path }) => path)).toEqual(['bodies'])
    const [a, b] = asked()
    a.choose('name', 0)
    write(b, 'name', 'later')
    merge([a, b])
    a.undo()
    const held = a.snapshot().conflicts.flatMap(({ values }) => values.map(({ value }) => value))
    expect([plain(a).name, ...held]).toContain('later')
  })
})

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
    const shown = plain(rewritten[0]).name
    rewritten[0].choose('name', 1)
    rewritten[0].undo()
    write(rewritten[0], 'name', 'another')
    expect(rewritten[0].snapshot().conflicts).toEqual([])
    write(rewritten[0], 'name', shown ?? '')
    expect(rewritten[0].snapshot().conflicts).toEqual([])
    rewritten[0].undo()
    rewritten[0].undo()
    expect(rewritten[0].snapshot().conflicts.map(({ path }) => path)).toEqual(['name']) // what was written since was taken back as well
    const both = asked()
    const before = plain(both[0]).name
    both[0].choose('name', 1)
    merge(both)
    write(both[1], 'name', before ?? '')
    merge(both)
    both[0].undo()
    expect(both[0].snapshot().conflicts).toEqual([])
    const chosen = asked()
    const [a, b] = chosen
    a.choose('name', 1)
    a.undo()
    b.choose('name', 0)
    merge(chosen)
    for (const each of chosen) expect(each.snapshot().conflicts).toEqual([])
  })

  it('is asked again although a wiring was written over later, of which the choice knew nothing', () => {
    const both = asked(furnished)
    both[0].choose('name', 0)
    both[0].undo()
    merge(both)
    const [question] = both[0].snapshot().conflicts
    for (const [i, door] of both.entries()) writeOver(door, { id: `W1${i}` })
    merge(both)
    for (const { snapshot } of both) {
      expect(snapshot().conflicts.map(({ path }) => path)).toEqual(['wiring', 'name'])
      expect(snapshot().conflicts[1]).toEqual(question)
    }
  })

  it('is asked about the same thing when what stood before it in its list has gone, and about no other', () => {
    const both = devices(furnished)
    for (const [i, door] of both.entries()) put(door, speedOf(1), 2 + i)
    merge(both)
    const [a] = both
    put(a, speedOf(2), speedsIn(a)[1])
    const [question] = a.snapshot().conflicts
    a.choose(speedOf(1), 1)
    a.undo()
    const drop = (i: number) => a.edit({ deed: 'removed', path: 'survey/lanes' }, (draft) => takeAt(draft, 'survey/lanes', i))
    drop(0)
    expect(a.snapshot().conflicts).toEqual([{ ...question, path: speedOf(0) }])
    a.undo()
    drop(1)
    expect(a.snapshot().conflicts).toEqual([])
    a.undo()
    drop(0)
    a.choose(speedOf(0), 1)
    expect(speedsIn(a)[0]).toBe(question?.values[1]?.value)
    expect(a.snapshot().conflicts).toEqual([])
  })

  it('is not asked about a part of a wiring that was written over or chosen whole since, or that is asked about whole', () => {
    for (const hasSeen of [true, false]) {
      const both = devices(furnished)
      for (const [i, door] of both.entries()) put(door, LENGTH, 5 + i)
      merge(both)
      const [a, b] = both
      const [length_m] = a.snapshot().conflicts[0]?.values.map(({ value }) => value) ?? []
      a.choose(LENGTH, 1)
      a.undo()
      if (hasSeen) merge(both)
      writeOver(b, { id: 'W1', length_m, voltage_V: 24 })
      expect(b.snapshot().conflicts).toEqual([])
      put(a, 'wiring/cables/0/gauge', 7)
      merge(both)
      for (const each of both) expect(each.snapshot().conflicts.map(({ path }) => path)).toEqual(['wiring'])
      a.choose('wiring', 1)
      expect(a.snapshot().conflicts).toEqual([])
    }
  })

  it('is asked alike in two tabs that both took it back, where one of them brought it back', () => {
    const tabs = asked(first, ['a', 'a'])
    tabs[0].choose('name', 0)
    merge(tabs)
    for (const tab of tabs) tab.undo()
    tabs[0].redo()
    for (const tab of tabs) expect(tab.snapshot().conflicts.length).toBe(tab === tabs[0] ? 0 : 1)
    merge(tabs)
    for (const tab of tabs) expect(tab.snapshot().conflicts).toEqual([])
  })

  it('sees what the other device sees, in 200 random orders of writing, choosing, taking back and merging (seeds 1 to 200)', () => {
    const edits: readonly ((door: OpenDoor, step: number, roll: (below: number) => number) => void)[] = [
      (door, step, roll) => write(door, roll(2) === 0 ? 'name' : 'note', `${step} ${roll(3)}`),
      (door, _step, roll) => speedsIn(door).length > 0 && put(door, speedOf(roll(speedsIn(door).length)), 1 + roll(2)),
      (door, _step, roll) => door.edit({ deed: 'removed', path: 'survey/lanes' }, (draft) => takeAt(draft, 'survey/lanes', roll(3))),
      (door, _step, roll) => put(door, LENGTH, roll(3)),
      (door, _step, roll) => writeOver(door, { id: 'W1', length_m: roll(3) }),
    ]
    let again = 0
    for (let seed = 1; seed <= 200; seed++) {
      const roll = dice(seed)
      const both = devices(furnished)
      for (let step = 0; step < 32; step++) {
        const door = both[roll(2)] as (typeof both)[0]
        const act = roll(7)
        const [conflict] = door.snapshot().conflicts
        const paths = door.snapshot().conflicts.map(({ path }) => path)
        expect(new Set(paths).size, `seed ${seed}`).toBe(paths.length)
        if (act < 2) edits[roll(edits.length)]?.(door, step, roll)
        else if (act < 4 && conflict) door.choose(conflict.path, roll(conflict.values.length))
        else if (act === 4) door.undo()
        else if (act === 5) door.redo()
        else merge(both)
        if (act === 4 && door.snapshot().conflicts.length > paths.length) again++
      }
      merge(both)
      const [a, b] = both
      expect(plain(b), `seed ${seed}`).toEqual(plain(a))
      expect(b.snapshot().conflicts, `seed ${seed}`).toEqual(a.snapshot().conflicts)
      for (let [next] = a.snapshot().conflicts; next; [next] = a.snapshot().conflicts) a.choose(next.path, 0)
      merge(both)
      for (const each of both) expect(each.snapshot().conflicts, `seed ${seed}`).toEqual([])
    }
    expect(again).toBeGreaterThan(20) // or hardly anybody took a choice back
  })
})
