import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import type { DoorId } from '../src/store/contract.ts'
import { inBrowser } from './in-browser.ts'
import { doorPage, opened, type Reach, reopened, storePage } from './store.ts'

const at = inBrowser(storePage)

/** Sets a field of the open door and waits until it is written, or cannot be. */
function set(page: Page, field: string, value: string): Promise<string> {
  return page.evaluate(
    async ([field, value]) => {
      const { door } = globalThis as unknown as Reach
      door.edit({ deed: 'set', path: field as string }, (draft) => {
        ;(draft as Record<string, unknown>)[field as string] = value
      })
      await door.settled()
      return door.snapshot().saving.kind
    },
    [field, value],
  )
}

const field = (page: Page, name: string) =>
  page.evaluate((name) => (globalThis as unknown as Reach).door.snapshot().file[name as 'note'], name)

describe('two tabs', () => {
  it('see what the other wrote, also while the door was being opened', async () => {
    const one = await doorPage(at.browser, at.served.url)
    const two = await opened(await one.context().newPage(), at.served.url)
    const complaints: string[] = []
    for (const each of [one, two]) each.on('pageerror', ({ message }) => complaints.push(message))
    const writing = one.evaluate(async () => {
      const { door } = globalThis as unknown as Reach
      for (let i = 1; i <= 150; i++) {
        door.edit({ deed: 'set', path: 'note' }, (draft) => {
          ;(draft as Record<string, unknown>)['note'] = String(i)
        })
        await new Promise((done) => setTimeout(done, 5))
      }
      await door.settled()
    })
    await reopened(two, 'doors')
    await writing
    await expect.poll(() => field(two, 'note'), { timeout: 30_000 }).toBe('150')
    await set(two, 'name', 'from two')
    await expect.poll(() => field(one, 'name')).toBe('from two')
    expect(complaints).toEqual([])
    await one.context().close()
  })
  it('leave a whole door when one is closed before its edit was on the disk', async () => {
    const one = await doorPage(at.browser, at.served.url)
    const two = await reopened(await opened(await one.context().newPage(), at.served.url), 'doors')
    await one.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('no room', 'QuotaExceededError')
      }
    })
    expect(await set(one, 'note', 'never written')).toBe('not-saved')
    await two.waitForTimeout(200) // for whatever the first tab has told the second
    expect(await set(two, 'name', 'from two')).toBe('saved')
    await one.close()
    await two.reload()
    await reopened(await opened(two, at.served.url), 'doors')
    expect(await field(two, 'name')).toBe('from two')
    await two.context().close()
  })
  it('show what one had written and could tell nobody as soon as it has gone, closed or crashed', async () => {
    for (const end of ['closed', 'crashed']) {
      const one = await doorPage(at.browser, at.served.url)
      const two = await reopened(await opened(await one.context().newPage(), at.served.url), 'doors')
      const three = await reopened(await opened(await one.context().newPage(), at.served.url), 'doors')
      await one.evaluate(() => {
        BroadcastChannel.prototype.postMessage = () => {}
      })
      expect(await set(one, 'note', end)).toBe('saved')
      await two.waitForTimeout(200) // it would have heard by now
      expect(await field(two, 'note')).toBeUndefined()
      if (end === 'closed') await one.close()
      else {
        const crash = one.waitForEvent('crash')
        one.goto('chrome://crash').catch(() => undefined)
        await crash
      }
      await expect.poll(() => field(two, 'note')).toBe(end)
      await expect.poll(() => field(three, 'note')).toBe(end)
      const listed = () => two.evaluate(() => (globalThis as unknown as Reach).doors.cards().map(({ note }) => note))
      await expect.poll(listed).toEqual([end])
      await two.context().close()
    }
  })
  it('keep a door that somebody works on, although one threw it away and went before it could tell', async () => {
    const one = await doorPage(at.browser, at.served.url)
    const two = await reopened(await opened(await one.context().newPage(), at.served.url), 'doors')
    await one.evaluate(async () => {
      BroadcastChannel.prototype.postMessage = () => {}
      const { doors, door } = globalThis as unknown as Reach
      await doors.throwAway(door.id)
    })
    await one.close()
    expect(await set(two, 'note', 'still here')).toBe('saved')
    const anew = await reopened(await opened(await two.context().newPage(), at.served.url), 'doors')
    await expect.poll(() => field(anew, 'note')).toBe('still here')
    await two.context().close()
  })
  it('list a door no more, and do not call it damaged, that one threw away and could not tell', async () => {
    const one = await doorPage(at.browser, at.served.url)
    const two = await reopened(await opened(await one.context().newPage(), at.served.url), 'doors')
    await two.evaluate(() => (globalThis as unknown as Reach).door.close())
    await one.evaluate(async () => {
      BroadcastChannel.prototype.postMessage = () => {}
      const { doors, door } = globalThis as unknown as Reach
      await doors.throwAway(door.id)
    })
    const left = await two.evaluate(async () => {
      const reach = globalThis as unknown as Reach
      const found = await reach.doors.open(reach.door.id)
      const listed = [reach.doors.cards()]
      const anew = reach.openDoors('doors')
      await anew.open('none' as DoorId) // it has read the list by then
      return { found, listed: [...listed, anew.cards()].map((cards) => cards.length) }
    })
    expect(left).toEqual({ found: undefined, listed: [0, 0] })
    await one.context().close()
  })
  it('keep a door whole that one threw away while another was opening it', async () => {
    const one = await doorPage(at.browser, at.served.url)
    const two = await reopened(await opened(await one.context().newPage(), at.served.url), 'doors')
    await two.evaluate(() => {
      const reach = globalThis as unknown as Reach
      reach.door.close()
      const { getAll } = IDBIndex.prototype
      IDBIndex.prototype.getAll = function (...given) {
        IDBIndex.prototype.getAll = getAll
        const asked = getAll.apply(this, given)
        const late = (event: Event) => {
          event.stopImmediatePropagation()
          asked.removeEventListener('success', late)
          new BroadcastChannel('doors').onmessage = ({ data }) => {
            if (data.kind === 'thrown') setTimeout(() => asked.dispatchEvent(new Event('success')), 200)
          }
        }
        asked.addEventListener('success', late)
        return asked
      }
      void reach.doors.open(reach.door.id).then((door) => {
        if (door) reach.door = door
        Object.assign(globalThis, { found: door !== undefined })
      })
    })
    await two.waitForTimeout(100)
    await one.evaluate(() => {
      const { doors, door } = globalThis as unknown as Reach
      return doors.throwAway(door.id)
    })
    await two.waitForFunction(() => 'found' in globalThis)
    expect(await set(two, 'note', 'still here')).toBe('saved')
    const anew = await reopened(await opened(await two.context().newPage(), at.served.url), 'doors')
    expect([await field(anew, 'name'), await field(anew, 'note')]).toEqual(['start', 'still here'])
    await one.context().close()
  })
  it('share one document where one tab opens a door twice at the same time', async () => {
    const page = await doorPage(at.browser, at.served.url)
    await page.reload()
    await reopened(await opened(page, at.served.url), 'doors')
    const seen = await page.evaluate(async () => {
      const reach = globalThis as unknown as Reach
      reach.door.close()
      const [one, two] = await Promise.all([reach.doors.open(reach.door.id), reach.doors.open(reach.door.id)])
      one?.edit({ deed: 'set', path: 'note' }, (draft) => {
        ;(draft as Record<string, unknown>)['note'] = 'seen'
      })
      return two?.snapshot().file.note
    })
    expect(seen).toBe('seen')
    await page.context().close()
  })
})

describe('an older program', () => {
  it('beside a newer format reads, writes nothing at all, and says why', async () => {
    const page = await doorPage(at.browser, at.served.url)
    await page.evaluate(
      () =>
        new Promise<void>((done) => {
          const asked = indexedDB.open('doors')
          asked.onsuccess = () => {
            asked.result.transaction('about', 'readwrite').objectStore('about').put(99, 'format').onsuccess = () => {
              asked.result.close()
              done()
            }
          }
        }),
    )
    await page.reload()
    await reopened(await opened(page, at.served.url), 'doors')
    const told = await page.evaluate(async () => {
      const { doors, door } = globalThis as unknown as Reach
      const everything = () =>
        new Promise<string>((done) => {
          const asked = indexedDB.open('doors')
          asked.onsuccess = async () => {
            const all = ['changes', 'cards', 'about'].map(
              (name) =>
                new Promise((got) => {
                  const found = asked.result.transaction(name).objectStore(name).getAll()
                  found.onsuccess = () => got(found.result)
                }),
            )
            const text = JSON.stringify(await Promise.all(all))
            asked.result.close()
            done(text)
          }
        })
      const before = await everything()
      const edited = door.edit({ deed: 'set' }, () => {})
      doors.putAway(door.id, true)
      doors.setAuthor('Ida')
      const file = JSON.parse(JSON.stringify(door.snapshot().file))
      const made = await doors.make(file, { deed: 'made' })
      await made.settled()
      const read = await doors.read(new TextEncoder().encode(JSON.stringify(file)), 'x')
      await door.settled()
      return {
        edited,
        unchanged: (await everything()) === before,
        readOnly: door.snapshot().readOnly,
        made: made.snapshot().saving.kind,
        read: read.ok || read.issues[0]?.code,
      }
    })
    expect(told).toEqual({ edited: false, unchanged: true, readOnly: 'newer-version', made: 'not-saved', read: 'newer-version' })
    await page.context().close()
  })
  it('is told what a program writes that comes beside it, although that one gets no lock', async () => {
    const page = await opened(await (await at.browser.newContext()).newPage(), at.served.url)
    const told = await page.evaluate(async () => {
      LockManager.prototype.request = () => new Promise(() => {})
      const heard = new Promise((done) => {
        new BroadcastChannel('doors').onmessage = ({ data }) => done(data.kind)
      })
      const doors = (globalThis as unknown as Reach).openDoors('doors')
      await doors.open('none' as DoorId) // it is open by then
      return Promise.race([heard, new Promise((done) => setTimeout(() => done('nothing'), 2000))])
    })
    expect(told).toBe('format')
    await page.context().close()
  })
  it('lets go of the database when a newer one wants to change it', async () => {
    const page = await doorPage(at.browser, at.served.url)
    const other = await opened(await page.context().newPage(), at.served.url)
    const upgraded = await other.evaluate(
      () =>
        new Promise<boolean>((done) => {
          const asked = indexedDB.open('doors', 2)
          asked.onsuccess = () => done(true)
          asked.onblocked = () => done(false)
        }),
    )
    expect(upgraded).toBe(true)
    await expect.poll(() => page.evaluate(() => (globalThis as unknown as Reach).door.snapshot().readOnly)).toBe('newer-version')
    const id = await page.evaluate(() => (globalThis as unknown as Reach).door.id)
    await other.close()
    // started again, it still lists and opens what it understands of the rebuilt database, to read
    await page.reload()
    await reopened(await opened(page, at.served.url), 'doors')
    const again = await page.evaluate(() => {
      const { doors, door } = globalThis as unknown as Reach
      return { id: door.id, readOnly: door.snapshot().readOnly, listed: doors.cards().map((card) => card.id) }
    })
    expect(again).toEqual({ id, readOnly: 'newer-version', listed: [id] })
    await page.context().close()
  })
})

describe('the health of storage', () => {
  it('is low before there is no room, from what the browser estimates', async () => {
    const page = await opened(await (await at.browser.newContext()).newPage(), at.served.url)
    const low = (free: number) =>
      page.evaluate(async (free) => {
        navigator.storage.estimate = async () => ({ usage: 1_000_000_000, quota: 1_000_000_000 + free })
        const doors = (globalThis as unknown as Reach).openDoors(`room-${free}`)
        while (doors.health().free_bytes === undefined) await new Promise((done) => setTimeout(done, 5))
        return [doors.health().low, doors.health().free_bytes]
      }, free)
    expect(await low(10_000_000)).toEqual([true, 10_000_000])
    expect(await low(900_000_000)).toEqual([false, 900_000_000])
    await page.context().close()
  })
})
