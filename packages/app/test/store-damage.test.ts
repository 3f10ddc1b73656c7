import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { inBrowser } from './in-browser.ts'
import { doorPage, opened, type Reach, reopened, storePage } from './store.ts'

const at = inBrowser(storePage)

type Harm = 'spoil' | 'remove'

/** A page whose database holds the door `good` and the door `start` with notes 1, 2 and 3, one record of which was harmed. */
async function harmed(harm: Harm, which: 'first' | 'second' | 'last'): Promise<{ page: Page; backup: string }> {
  const page = await doorPage(at.browser, at.served.url)
  const backup = await page.evaluate(
    async ({ harm, at }) => {
      const { doors, door } = globalThis as unknown as Reach
      const good = await doors.make({ ...JSON.parse(JSON.stringify(door.snapshot().file)), name: 'good' }, { deed: 'made' })
      const bytes = new Uint8Array([1, 2, 3])
      const hash = Array.from(new Uint8Array(await crypto.subtle.digest('SHA-256', bytes)), (byte) => byte.toString(16).padStart(2, '0'))
      await door.addPhoto({ id: hash.join(''), takenAt_ms: 1, caption: '', width_px: 1, height_px: 1 }, bytes)
      for (const note of ['1', '2', '3'])
        door.edit({ deed: 'set', path: 'note' }, (draft) => {
          ;(draft as Record<string, unknown>)['note'] = note
        })
      await good.settled()
      const whole = new TextDecoder().decode(await doors.backup())
      const order = door.history().map(({ moment }) => moment as string) // newest first
      const hit = order.at(at) as string
      await new Promise<void>((done) => {
        const asked = indexedDB.open('doors')
        asked.onsuccess = () => {
          const store = asked.result.transaction('changes', 'readwrite').objectStore('changes')
          const finish = () => {
            asked.result.close()
            done()
          }
          if (harm === 'remove') store.delete([door.id, hit]).onsuccess = finish
          else {
            const found = store.get([door.id, hit])
            found.onsuccess = () => {
              crypto.getRandomValues(found.result.bytes.subarray(10))
              store.put(found.result).onsuccess = finish
            }
          }
        }
      })
      return whole
    },
    { harm, at: { first: -1, second: -2, last: 0 }[which] },
  )
  await page.reload()
  await opened(page, at.served.url)
  return { page, backup }
}

const state = (page: Page) =>
  page.evaluate(async () => {
    const reach = globalThis as unknown as Reach
    const doors = reach.openDoors('doors')
    reach.doors = doors
    while (doors.cards().length < 2) await new Promise((done) => setTimeout(done, 5))
    const notes = []
    for (const { id, name } of doors.cards()) {
      const door = await doors.open(id)
      notes.push([name, door ? (door.snapshot().file.note ?? '') : 'cannot be opened'])
    }
    const cards = doors.cards().map(({ name, damaged }) => [name, damaged])
    return { notes: notes.sort(), cards: cards.sort() }
  })

const OPENS = {
  notes: [
    ['good', ''],
    ['start', '3'],
  ],
  cards: [
    ['good', false],
    ['start', false],
  ],
}
const DAMAGED = {
  notes: [
    ['good', ''],
    ['start', 'cannot be opened'],
  ],
  cards: [
    ['good', false],
    ['start', true],
  ],
}

describe.each<[Harm, 'first' | 'second' | 'last', string | undefined]>([
  ['spoil', 'first', undefined],
  ['spoil', 'second', ''],
  ['spoil', 'last', '2'],
  ['remove', 'first', undefined],
  ['remove', 'second', ''],
  ['remove', 'last', '2'],
])('a database with one record harmed: %s the %s', (harm, which, readable) => {
  it('opens the other door, names the damaged one, keeps what was found, and gives out all that can be read', async () => {
    const { page, backup } = await harmed(harm, which)
    expect(await state(page)).toEqual(DAMAGED)
    expect(await state(page)).toEqual(DAMAGED) // a second look finds the same
    const aside = await page.evaluate(
      () =>
        new Promise<number>((done) => {
          const asked = indexedDB.open('doors')
          asked.onsuccess = () => {
            const counted = asked.result.transaction('damaged').objectStore('damaged').count()
            counted.onsuccess = () => {
              asked.result.close()
              done(counted.result)
            }
          }
        }),
    )
    expect(aside).toBe(harm === 'spoil' ? 1 : 0)
    const given = await page.evaluate(async () => {
      const { doors, openDoors } = globalThis as unknown as Reach
      const found = []
      for (const [name, bytes] of [
        ['rescued', await doors.rescue()],
        ['backed-up', await doors.backup()],
      ] as const) {
        const device = openDoors(name)
        const result = await device.read(bytes as Uint8Array, 'x')
        const notes = []
        for (const { id, name } of device.cards()) {
          const door = await device.open(id)
          const photo = door?.snapshot().photos[0]
          notes.push([name, door?.snapshot().file.note ?? '', photo ? (await door?.photoBytes(photo.id))?.length : 0])
        }
        found.push([result.ok, notes.sort()])
      }
      return found
    })
    const photo = which === 'last' ? 3 : 0
    const expected = [true, [['good', '', 0], ...(readable === undefined ? [] : [['start', readable, photo]])]]
    expect(given).toEqual([expected, expected])
    await page.evaluate(async (text) => {
      await (globalThis as unknown as Reach).doors.read(new TextEncoder().encode(text), 'x')
    }, backup)
    expect(await state(page)).toEqual(OPENS) // in this visit
    await page.reload()
    await opened(page, at.served.url)
    expect(await state(page)).toEqual(OPENS) // and in the next
    await page.context().close()
  })
})

describe('a full device', () => {
  it('still hands out and reopens the edits that it could not write, and writes them by itself once there is room', async () => {
    const page = await doorPage(at.browser, at.served.url)
    const told = await page.evaluate(async () => {
      const { doors, door, openDoors } = globalThis as unknown as Reach
      const { put } = IDBObjectStore.prototype
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('no room', 'QuotaExceededError')
      }
      door.edit({ deed: 'set', path: 'note' }, (draft) => {
        ;(draft as Record<string, unknown>)['note'] = 'unwritten'
      })
      await door.settled()
      door.close()
      const again = await doors.open(door.id)
      const file = await doors.exportDoor(door.id)
      IDBObjectStore.prototype.put = put
      const device = openDoors('other')
      await device.read(file, 'x')
      const there = await device.open(door.id)
      return [again?.snapshot().file.note, again?.snapshot().saving.kind, there?.snapshot().file.note]
    })
    expect(told).toEqual(['unwritten', 'not-saved', 'unwritten'])
    const saving = () =>
      page.evaluate(async () => {
        const { doors, door } = globalThis as unknown as Reach
        return (await doors.open(door.id))?.snapshot().saving.kind
      })
    await expect.poll(saving, { timeout: 30_000 }).toBe('saved')
    await page.reload()
    await reopened(await opened(page, at.served.url), 'doors')
    expect(await page.evaluate(() => (globalThis as unknown as Reach).door.snapshot().file.note)).toBe('unwritten')
    await page.context().close()
  })
  it('writes the edits behind a photo that finds no room, and is saved once that photo was taken away', async () => {
    const page = await doorPage(at.browser, at.served.url)
    const told = await page.evaluate(async () => {
      const { door } = globalThis as unknown as Reach
      const { put } = IDBObjectStore.prototype
      IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...given) {
        if (this.name === 'photos') throw new DOMException('no room', 'QuotaExceededError')
        return put.apply(this, given)
      }
      const id = 'a'.repeat(64)
      await door.addPhoto({ id, takenAt_ms: 1, caption: '', width_px: 1, height_px: 1 }, new Uint8Array(9))
      door.edit({ deed: 'set', path: 'note' }, (draft) => {
        ;(draft as Record<string, unknown>)['note'] = 'behind it'
      })
      await door.settled()
      const { saving } = door.snapshot()
      return [saving.kind === 'not-saved' && saving.reason, (await door.photoBytes(id))?.length]
    })
    expect(told).toEqual(['full', 9])
    const other = await reopened(await opened(await page.context().newPage(), at.served.url), 'doors')
    expect(await other.evaluate(() => (globalThis as unknown as Reach).door.snapshot().file.note)).toBe('behind it')
    const after = await page.evaluate(async () => {
      const { door } = globalThis as unknown as Reach
      door.removePhoto('a'.repeat(64))
      await door.settled()
      return door.snapshot().saving.kind
    })
    expect(after).toBe('saved')
    await page.context().close()
  })
})

describe('a door from elsewhere', () => {
  it.each([
    ['a caption that is no text', { caption: 7 }],
    ['a photo that is nowhere on the drawing', { onDrawing: { view: 'plan', u_mm: 'left', v_mm: 0 } }],
    ['a pin beside the picture', { 'pin 0a': { across: 2, down: 0, text: '', setAt_ms: 1 } }],
  ])('is refused with %s', async (_what, wrong) => {
    const page = await doorPage(at.browser, at.served.url)
    const read = await page.evaluate(async (wrong) => {
      const { doors, door, openDoors } = globalThis as unknown as Reach
      const id = 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855' // SHA-256 of nothing
      const photo = { id, takenAt_ms: 1, caption: '', width_px: 1, height_px: 1 }
      await door.addPhoto(photo, new Uint8Array(0))
      const fine = await openDoors('fine').read(await doors.exportDoor(door.id), 'x')
      await door.addPhoto({ ...photo, ...(wrong as object) }, new Uint8Array(0))
      await door.settled()
      const device = openDoors('careful')
      const refused = await device.read(await doors.exportDoor(door.id), 'x')
      return [refused.ok, device.cards().length, fine.ok || fine.issues]
    }, wrong)
    expect(read).toEqual([false, 0, true])
    await page.context().close()
  })
})
