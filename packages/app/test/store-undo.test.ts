import { describe, expect, it } from 'vitest'
import { inBrowser } from './in-browser.ts'
import { doorPage, opened, type Reach, reopened, storePage } from './store.ts'

const at = inBrowser(storePage)

describe('undo', () => {
  it('goes past an own edit that somebody else has overwritten, to the one before, and back', async () => {
    const page = await doorPage(at.browser, at.served.url)
    const seen = await page.evaluate(async () => {
      const { openDoors, doors, door } = globalThis as unknown as Reach
      const other = openDoors('their-device')
      const put = (at: typeof door, field: string, value: string) =>
        at.edit({ deed: 'set', path: field }, (draft) => {
          ;(draft as Record<string, unknown>)[field] = value
        })
      put(door, 'note', 'mine first')
      put(door, 'name', 'mine second')
      await other.read(await doors.exportDoor(door.id), 'x')
      const theirs = await other.open(door.id)
      if (!theirs) throw new Error('the other device must have the door')
      put(theirs, 'name', 'theirs')
      await doors.read(await other.exportDoor(door.id), 'x')
      const states: unknown[] = []
      const look = () => {
        const { file, undo, redo } = door.snapshot()
        states.push([file.name, file.note ?? null, undo?.path ?? null, redo?.path ?? null])
      }
      look()
      door.undo()
      look()
      door.undo()
      look()
      door.redo()
      look()
      door.redo()
      look()
      return states
    })
    expect(seen).toEqual([
      ['theirs', 'mine first', 'name', null],
      ['theirs', 'mine first', 'note', 'name'],
      ['theirs', null, null, 'note'],
      ['theirs', 'mine first', 'note', 'name'],
      ['theirs', 'mine first', 'name', null],
    ])
    await page.context().close()
  })
  it('takes back each edit once where one author works in two tabs that did not see each other', async () => {
    const page = await doorPage(at.browser, at.served.url)
    const seen = await page.evaluate(async () => {
      const { door } = globalThis as unknown as Reach
      const put = (field: string) =>
        door.edit({ deed: 'set', path: field }, (draft) => {
          ;(draft as Record<string, unknown>)[field] = `new ${field}`
        })
      put('note')
      return door.id
    })
    const two = await reopened(await opened(await page.context().newPage(), at.served.url), 'doors')
    // both at once: neither has heard of the other's edit when it writes its own
    await Promise.all([
      page.evaluate(() => {
        const { door } = globalThis as unknown as Reach
        door.edit({ deed: 'set', path: 'name' }, (draft) => {
          ;(draft as Record<string, unknown>)['name'] = 'one'
        })
        door.undo()
      }),
      two.evaluate(() => {
        const { door } = globalThis as unknown as Reach
        door.edit({ deed: 'set', path: 'survey/opening/width_mm' }, (draft) => {
          ;(draft.survey.opening as { width_mm: number }).width_mm = 1234
        })
      }),
    ])
    expect(seen).toBeTruthy()
    const length = () => page.evaluate(() => (globalThis as unknown as Reach).door.history().length)
    await expect.poll(length).toBe(5)
    const paths = await page.evaluate(() => {
      const { door } = globalThis as unknown as Reach
      const left = []
      while (door.snapshot().undo) {
        left.push(door.snapshot().undo?.path)
        door.undo()
        if (left.length > 9) break
      }
      const { file } = door.snapshot()
      return [left.sort(), file.name, file.note ?? null, file.survey.opening.width_mm]
    })
    expect(paths).toEqual([['note', 'survey/opening/width_mm'], 'start', null, 3000])
    await page.context().close()
  })
  it('and redo are each other’s opposite at every step of random edits, across a restart (seeds 1 to 20)', async () => {
    const page = await doorPage(at.browser, at.served.url)
    await page.evaluate(async () => {
      const { door } = globalThis as unknown as Reach
      for (let seed = 1; seed <= 20; seed++) {
        const path = ['name', 'note', 'width', 'posts'][seed % 4] as string
        door.edit({ deed: 'set', path }, (draft) => {
          const free = draft as unknown as { posts?: { id: string; r: number }[] } & Record<string, unknown>
          if (path === 'width') (draft.survey.opening as { width_mm: number }).width_mm = 1000 + seed
          else if (path !== 'posts') free[path] = `${seed}`
          else if (!free.posts) free.posts = [{ id: 'a', r: 1 }]
          else if (seed % 8 === 3) free.posts.splice(0, 1)
          else free.posts.push({ id: `p${seed}`, r: seed })
        })
      }
      await door.settled()
    })
    await page.reload()
    await reopened(await opened(page, at.served.url), 'doors')
    const steps = await page.evaluate(async () => {
      const { door } = globalThis as unknown as Reach
      const sorted = (value: unknown): unknown =>
        typeof value === 'object' && value !== null && !Array.isArray(value)
          ? Object.entries(value)
              .sort()
              .map(([key, each]) => [key, sorted(each)])
          : value
      const now = () => JSON.stringify(sorted(JSON.parse(JSON.stringify(door.snapshot().file))))
      const down = [now()]
      while (door.snapshot().undo) {
        door.undo()
        const here = now()
        door.redo()
        if (now() !== down.at(-1)) return `redo after undo ${down.length} differs`
        door.undo()
        if (now() !== here) return `undo after redo ${down.length} differs`
        down.push(here)
      }
      for (const expected of down.reverse()) {
        if (now() !== expected) return 'all the way back differs'
        door.redo()
      }
      return down.length
    })
    expect(steps).toBe(21)
    await page.context().close()
  })
})

describe('choosing between two values', () => {
  it('of one entry of a list leaves its neighbours alone', async () => {
    const page = await doorPage(at.browser, at.served.url)
    const chosen = await page.evaluate(async () => {
      const { openDoors, doors, door } = globalThis as unknown as Reach
      const results = []
      for (const which of [0, 1]) {
        const list = (at: typeof door, change: (list: number[]) => void) =>
          at.edit({ deed: 'set', path: 'list' }, (draft) => {
            const free = draft as unknown as { list?: number[] }
            free.list ??= [1, 2, 3]
            change(free.list)
          })
        list(door, (all) => {
          all[0] = 1
        })
        const other = openDoors(`list-${which}`)
        await other.read(await doors.exportDoor(door.id), 'x')
        const theirs = await other.open(door.id)
        if (!theirs) throw new Error('the other device must have the door')
        list(door, (all) => {
          all[0] = 10
        })
        list(theirs, (all) => {
          all[0] = 20
        })
        await doors.read(await other.exportDoor(door.id), 'x')
        const [conflict] = door.snapshot().conflicts
        door.choose(conflict?.path ?? '', which)
        const { file, conflicts } = door.snapshot()
        const now = (file as unknown as { list: number[] }).list
        results.push([conflict?.path, now[0] === conflict?.values[which]?.value, now.slice(1), conflicts.length])
      }
      return results
    })
    expect(chosen).toEqual([
      ['list/0', true, [2, 3], 0],
      ['list/0', true, [2, 3], 0],
    ])
    await page.context().close()
  })
})
