import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { inBrowser } from './in-browser.ts'
import { doorPage, opened, type Reach, reopened, storePage } from './store.ts'

const at = inBrowser(storePage)

/** More than are read one by one. */
const EDITS = 220

/** A saved door whose note and name were edited that often. */
async function edited(): Promise<Page> {
  const page = await doorPage(at.browser, at.served.url)
  await page.evaluate(async (edits) => {
    const { door } = globalThis as unknown as Reach
    for (let i = 1; i <= edits; i++)
      door.edit({ deed: 'set', path: i % 2 ? 'note' : 'name' }, (draft) => {
        ;(draft as Record<string, unknown>)[i % 2 ? 'note' : 'name'] = String(i)
      })
    await door.settled()
  }, EDITS)
  return page
}

/** The names of the records that the database holds of changes; hashes are counted only. */
const records = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<string[]>((done) => {
        const asked = indexedDB.open('doors')
        asked.onsuccess = () => {
          const keys = asked.result.transaction('changes').objectStore('changes').getAllKeys()
          keys.onsuccess = () => {
            asked.result.close()
            const names = keys.result.map((key) => (key as string[])[1] ?? '')
            const loose = names.filter((name) => !name.startsWith('pack')).length
            done([...names.filter((name) => name.startsWith('pack')), ...(loose > 0 ? [`${loose} changes`] : [])])
          }
        }
      }),
  )

/** All that a door knows of itself, as text; in what order an object names its fields is of no account. */
const known = (page: Page) =>
  page.evaluate(() => {
    const { door } = globalThis as unknown as Reach
    const { file, undo, redo, typed } = door.snapshot()
    const history = door.history()
    const [early, late] = [history.at(-3), history[100]]
    const sorted = (value: unknown): unknown =>
      Array.isArray(value)
        ? value.map(sorted)
        : typeof value === 'object' && value !== null
          ? Object.fromEntries(
              Object.entries(value)
                .sort(([a], [b]) => (a < b ? -1 : 1))
                .map(([key, each]) => [key, sorted(each)]),
            )
          : value
    return JSON.stringify(
      sorted({
        ...{ file, undo, redo, typed, history },
        earlier: [early, late].map((entry) => entry && door.fileAt(entry.moment)),
      }),
    )
  })

async function openedAgain(page: Page): Promise<Page> {
  return reopened(await opened(page, at.served.url), 'doors')
}

describe('a door that was edited often', () => {
  it('is packed when it is opened: the same file, history, earlier moments and undo, in two records', async () => {
    const page = await edited()
    const before = await known(page)
    expect(await records(page)).toEqual([`${EDITS + 1} changes`])
    await openedAgain(page)
    expect(await known(page)).toBe(before)
    await expect.poll(() => records(page)).toEqual(['pack 1', 'pack 2'])
    await openedAgain(page)
    expect(await known(page)).toBe(before)
    const undone = await page.evaluate(async () => {
      const { door } = globalThis as unknown as Reach
      for (let i = 0; i < 3; i++) door.undo()
      door.redo()
      await door.settled()
      const { name, note } = door.snapshot().file
      return { name, note }
    })
    // the last three edits were of name, note and name; the third is there again
    expect(undone).toEqual({ name: String(EDITS - 2), note: String(EDITS - 3) })
    expect(await records(page)).toEqual(['pack 1', 'pack 2', '4 changes'])
    await openedAgain(page)
    expect(await page.evaluate(() => (globalThis as unknown as Reach).door.history().length)).toBe(EDITS + 5)
    await page.context().close()
  })
  it('merges after packing with a device that knew it before', async () => {
    const page = await edited()
    const merged = await page.evaluate(async () => {
      const { openDoors, doors, door } = globalThis as unknown as Reach
      const other = openDoors('their-device')
      await other.read(await doors.exportDoor(door.id), 'x')
      const theirs = await other.open(door.id)
      theirs?.edit({ deed: 'set', path: 'note' }, (draft) => {
        ;(draft as Record<string, unknown>)['note'] = 'theirs'
      })
      await theirs?.settled()
      return [...(await other.exportDoor(door.id))]
    })
    await openedAgain(page)
    await expect.poll(() => records(page)).toEqual(['pack 1', 'pack 2'])
    await openedAgain(page)
    const found = await page.evaluate(async (bytes) => {
      const { doors, door } = globalThis as unknown as Reach
      door.edit({ deed: 'set', path: 'note' }, (draft) => {
        ;(draft as Record<string, unknown>)['note'] = 'mine'
      })
      const [how] = await doors.read(Uint8Array.from(bytes), 'x').then((read) => (read.ok ? read.doors : []))
      const { conflicts } = door.snapshot()
      return { how: how?.how, values: conflicts.flatMap(({ values }) => values.map(({ value }) => value)).sort() }
    }, merged)
    expect(found).toEqual({ how: 'merged', values: ['mine', 'theirs'] })
    await page.context().close()
  })
  it('opens from the other copy where one pack is spoiled, and has two sound ones again', async () => {
    const page = await edited()
    await openedAgain(page)
    await expect.poll(() => records(page)).toEqual(['pack 1', 'pack 2'])
    const before = await known(page)
    const seals = () =>
      page.evaluate(
        () =>
          new Promise<boolean[]>((done) => {
            const asked = indexedDB.open('doors')
            asked.onsuccess = () => {
              const all = asked.result.transaction('changes').objectStore('changes').getAll()
              all.onsuccess = async () => {
                asked.result.close()
                const hex = async (bytes: Uint8Array) =>
                  Array.from(new Uint8Array(await crypto.subtle.digest('SHA-256', bytes as BufferSource)), (byte) =>
                    byte.toString(16).padStart(2, '0'),
                  ).join('')
                done(await Promise.all(all.result.map(async ({ bytes, sha256 }) => (await hex(bytes)) === sha256)))
              }
            }
          }),
      )
    const spoil = (name: string) =>
      page.evaluate(
        (name) =>
          new Promise<void>((done) => {
            const asked = indexedDB.open('doors')
            asked.onsuccess = () => {
              const store = asked.result.transaction('changes', 'readwrite').objectStore('changes')
              const found = store.get([(globalThis as unknown as Reach).door.id, name])
              found.onsuccess = () => {
                found.result.bytes[40] ^= 1
                store.put(found.result).onsuccess = () => {
                  asked.result.close()
                  done()
                }
              }
            }
          }),
        name,
      )
    await spoil('pack 1')
    expect(await seals()).toEqual([false, true])
    await openedAgain(page)
    expect(await known(page)).toBe(before)
    await expect.poll(seals).toEqual([true, true])
    await page.context().close()
  })
  it('keeps everything where two tabs open it at once and both go on writing', async () => {
    const page = await edited()
    const two = await page.context().newPage()
    await Promise.all([openedAgain(page), openedAgain(two)])
    await Promise.all(
      [page, two].map((tab, which) =>
        tab.evaluate(async (which) => {
          const { door } = globalThis as unknown as Reach
          for (let i = 0; i < 10; i++)
            door.edit({ deed: 'set', path: 'note' }, (draft) => {
              ;(draft as Record<string, unknown>)['note'] = `tab ${which}: ${i}`
            })
          await door.settled()
        }, which),
      ),
    )
    await two.close()
    await openedAgain(page)
    expect(await page.evaluate(() => (globalThis as unknown as Reach).door.history().length)).toBe(EDITS + 21)
    expect(await page.evaluate(() => (globalThis as unknown as Reach).doors.cards()[0]?.damaged)).toBe(false)
    await page.context().close()
  })
  it('loses nothing where the page is killed while it packs', async () => {
    const page = await edited()
    const { length } = await known(page)
    for (const after_ms of [0, 5, 15, 40]) {
      const killed = await opened(await page.context().newPage(), at.served.url)
      const crash = killed.waitForEvent('crash')
      await reopened(killed, 'doors')
      await killed.waitForTimeout(after_ms)
      killed.goto('chrome://crash').catch(() => undefined)
      await crash
      await killed.close()
    }
    await openedAgain(page)
    expect((await known(page)).length).toBe(length)
    await page.context().close()
  })
  it('stays thrown away where it is packed at the same moment', async () => {
    const page = await edited()
    await openedAgain(page)
    await page.evaluate(async () => {
      const { doors, door } = globalThis as unknown as Reach
      await doors.throwAway(door.id)
    })
    await page.waitForTimeout(300) // what would be written now would be written by then
    expect(await records(page)).toEqual([])
    await page.context().close()
  })
})
