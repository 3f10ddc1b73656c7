import { describe, expect, it } from 'vitest'
import { inBrowser } from './in-browser.ts'
import { doorPage, opened, type Reach, reopened, storePage } from './store.ts'

const at = inBrowser(storePage)

describe('what is begun beside the door file', () => {
  it('is kept over a restart, goes with a copy and a backup, and leaves the door on this device alone until a backup holds it', async () => {
    const page = await doorPage(at.browser, at.served.url)
    const before = await page.evaluate(async () => {
      const { openDoors, doors, door } = globalThis as unknown as Reach
      const { revision } = door.snapshot()
      door.edit({ deed: 'set', path: 'concept' }, () => undefined, {}, { thing: 'concept', values: { people: { value: 'public' } } })
      door.edit(
        { deed: 'set', path: 'survey/lanes' },
        () => undefined,
        {},
        { thing: 'survey/lanes/+1', values: { xMin_mm: { value: 304.8, typed: '1 ft' } } },
      )
      await door.settled()
      const text = await doors.exportFile(door.id)
      const afterFile = doors.cards()[0]?.onlyHere
      const other = openDoors('their-device')
      const read = await other.read(await doors.exportDoor(door.id), 'x')
      const theirs = await other.open(door.id)
      const copy = await doors.open(await doors.copy(door.id, 'copy'))
      return {
        isJudgedAnew: door.snapshot().revision !== revision,
        inFile: /begun|304/.test(text),
        afterFile,
        afterBackup: doors.cards().find(({ id }) => id === door.id)?.onlyHere,
        ok: read.ok,
        all: [door, theirs, copy].map((each) => each?.snapshot().begun),
      }
    })
    const begun = { concept: { people: { value: 'public' } }, 'survey/lanes/+1': { xMin_mm: { value: 304.8, typed: '1 ft' } } }
    expect(before).toEqual({
      isJudgedAnew: false,
      inFile: false,
      afterFile: true,
      afterBackup: false,
      ok: true,
      all: [begun, begun, begun],
    })
    const again = await reopened(await opened(await page.context().newPage(), at.served.url), 'doors')
    expect(await again.evaluate(() => (globalThis as unknown as Reach).door.snapshot().begun)).toEqual(begun)
    await page.context().close()
  })
  it('is taken back and brought back one by one, and comes back whole where what it became is taken back', async () => {
    const page = await doorPage(at.browser, at.served.url)
    const seen = await page.evaluate(() => {
      const { door } = globalThis as unknown as Reach
      const thing = 'survey/lanes/+1'
      const say = (name: string, value: number) =>
        door.edit({ deed: 'set', path: thing }, () => undefined, {}, { thing, values: { [name]: { value } } })
      say('xMin_mm', 100)
      say('xMin_mm', 200)
      door.edit(
        { deed: 'added', path: 'survey/lanes' },
        (draft) => {
          ;(draft.survey as unknown as Record<string, unknown>)['lanes'] = [{ id: 'lane-1', who: 'both', xMin_mm: 200, xMax_mm: 900 }]
        },
        {},
        { thing, values: undefined },
      )
      const states: unknown[] = []
      const look = () =>
        states.push([door.snapshot().file.survey.lanes?.length ?? 0, door.snapshot().begun[thing]?.['xMin_mm']?.value ?? null])
      look()
      for (let i = 0; i < 3; i++) {
        door.undo()
        look()
      }
      for (let i = 0; i < 3; i++) {
        door.redo()
        look()
      }
      return states
    })
    expect(seen).toEqual([
      [1, null],
      [0, 200],
      [0, 100],
      [0, null],
      [0, 100],
      [0, 200],
      [1, null],
    ])
    await page.context().close()
  })
  it('of two devices that worked apart is all kept; of one value entered twice both are shown, and one is chosen', async () => {
    const page = await doorPage(at.browser, at.served.url)
    const seen = await page.evaluate(async () => {
      const { openDoors, doors, door } = globalThis as unknown as Reach
      const other = openDoors('their-device')
      await other.read(await doors.exportDoor(door.id), 'x')
      const theirs = await other.open(door.id)
      if (!theirs) throw new Error('the other device must have the door')
      const say = (on: typeof door, thing: string, name: string, value: number | string) =>
        on.edit({ deed: 'set', path: thing }, () => undefined, {}, { thing, values: { [name]: { value } } })
      say(door, 'survey/lanes/+mine', 'xMin_mm', 1)
      say(theirs, 'survey/lanes/+theirs', 'xMin_mm', 2)
      say(door, 'concept', 'people', 'public')
      say(theirs, 'concept', 'people', 'trained')
      say(theirs, 'concept', 'drive', 'automatic')
      const exchange = async () => {
        await other.read(await doors.exportDoor(door.id), 'x')
        await doors.read(await other.exportDoor(door.id), 'x')
      }
      await exchange()
      const merged = [door, theirs].map((each) => JSON.stringify(each.snapshot().begun))
      const { conflicts } = door.snapshot()
      const which = conflicts[0]?.values.findIndex(({ value }) => (value as { value: string }).value === 'trained') ?? -1
      door.choose(conflicts[0]?.path ?? '', which)
      await exchange()
      return {
        same: merged[0] === merged[1],
        conflicts: conflicts.map(({ path, values }) => [path, values.map(({ value }) => (value as { value: string }).value).sort()]),
        begun: theirs.snapshot().begun,
        left: [door, theirs].map((each) => each.snapshot().conflicts.length),
      }
    })
    expect(seen).toEqual({
      same: true,
      conflicts: [['begun concept people', ['public', 'trained']]],
      begun: {
        concept: { drive: { value: 'automatic' }, people: { value: 'trained' } },
        'survey/lanes/+mine': { xMin_mm: { value: 1 } },
        'survey/lanes/+theirs': { xMin_mm: { value: 2 } },
      },
      left: [0, 0],
    })
    await page.context().close()
  })
  it('is refused from elsewhere where it is no figure and no line of text', async () => {
    const page = await doorPage(at.browser, at.served.url)
    const read = await page.evaluate(async () => {
      const { openDoors, doors, door } = globalThis as unknown as Reach
      const found: boolean[] = []
      for (const [i, value] of [Number.NaN, 'two\nlines', 'x'.repeat(201), { deep: 1 }, 5, 'a line'].entries()) {
        const made = await doors.open(await doors.copy(door.id, `copy ${i}`))
        if (!made) throw new Error('the copy must open')
        made.edit({ deed: 'set' }, () => undefined, {}, { thing: 'concept', values: { people: { value: value as string } } })
        await made.settled()
        found.push((await openDoors('their-device').read(await doors.exportDoor(made.id), 'x')).ok)
      }
      return found
    })
    expect(read).toEqual([false, false, false, false, true, true])
    await page.context().close()
  })
})
