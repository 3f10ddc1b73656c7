import { describe, expect, it } from 'vitest'
import { inBrowser } from './in-browser.ts'
import { doorPage, type Reach, storePage } from './store.ts'

const at = inBrowser(storePage)

/** Its bytes are none, and this is the SHA-256 of nothing. */
const PHOTO = {
  id: 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855',
  takenAt_ms: 1,
  caption: 'terminals',
  width_px: 1600,
  height_px: 1200,
}

describe('pins on a photo', () => {
  it('of two devices that worked apart are all kept, also on a photo that had none, and a move beside a new word loses neither', async () => {
    const page = await doorPage(at.browser, at.served.url)
    const seen = await page.evaluate(async (photo) => {
      const { openDoors, doors, door } = globalThis as unknown as Reach
      await door.addPhoto(photo, new Uint8Array(0))
      const other = openDoors('their-device')
      await other.read(await doors.exportDoor(door.id), 'x')
      const theirs = await other.open(door.id)
      if (!theirs) throw new Error('the other device must have the door')
      const exchange = async () => {
        await other.read(await doors.exportDoor(door.id), 'x')
        await doors.read(await other.exportDoor(door.id), 'x')
      }
      const mine = door.addPin(photo.id, { across: 0.25, down: 0.75 }) ?? ''
      door.changePin(photo.id, mine, { text: 'terminal 5' })
      await new Promise((done) => setTimeout(done, 5))
      const their = theirs.addPin(photo.id, { across: 0.5, down: 0.5 }) ?? ''
      theirs.changePin(photo.id, their, { text: 'bracket here' })
      await exchange()
      theirs.changePin(photo.id, mine, { text: 'terminal 6' })
      door.changePin(photo.id, mine, { across: 0.3, down: 0.75 })
      await exchange()
      return [door, theirs].map((each) => each.snapshot().photos[0]?.pins.map(({ across, down, text }) => [across, down, text]))
    }, PHOTO)
    const both = [
      [0.3, 0.75, 'terminal 6'],
      [0.5, 0.5, 'bracket here'],
    ]
    expect(seen).toEqual([both, both])
    await page.context().close()
  })
  it('are taken back and brought back one by one, by whoever set them, and stand in history', async () => {
    const page = await doorPage(at.browser, at.served.url)
    const seen = await page.evaluate(async (photo) => {
      const { door } = globalThis as unknown as Reach
      await door.addPhoto(photo, new Uint8Array(0))
      const pin = door.addPin(photo.id, { across: 0.1, down: 0.2 }) ?? ''
      door.changePin(photo.id, pin, { text: 'here' })
      door.changePin(photo.id, pin, { across: 0.4, down: 0.2 })
      door.removePin(photo.id, pin)
      const states: unknown[] = []
      const look = () => states.push(door.snapshot().photos[0]?.pins.map(({ across, text }) => [across, text]))
      look()
      for (let i = 0; i < 4; i++) {
        door.undo()
        look()
      }
      for (let i = 0; i < 3; i++) door.redo()
      look()
      return {
        states,
        deeds: door
          .history()
          .map(({ deed }) => `${deed.deed} ${deed.path} ${deed.typed ?? ''}`.trim())
          .slice(7),
      }
    }, PHOTO)
    expect(seen.states).toEqual([[], [[0.4, 'here']], [[0.1, 'here']], [[0.1, '']], [], [[0.4, 'here']]])
    expect(seen.deeds).toEqual([
      'removed photos/pins here',
      'moved photos/pins',
      'set photos/pins here',
      'added photos/pins',
      'added photos',
      'made undefined',
    ])
    await page.context().close()
  })
  it('stay on the picture, at most 99, with a line of 200 characters that steers nothing', async () => {
    const page = await doorPage(at.browser, at.served.url)
    const seen = await page.evaluate(async (photo) => {
      const { door } = globalThis as unknown as Reach
      await door.addPhoto(photo, new Uint8Array(0))
      const pin = door.addPin(photo.id, { across: -3, down: 7 }) ?? ''
      door.changePin(photo.id, pin, { text: `\u202eab\u0007\n${'x'.repeat(500)}` })
      for (let i = 0; i < 120; i++) door.addPin(photo.id, { across: 0.5, down: 0.5 })
      const pins = door.snapshot().photos[0]?.pins ?? []
      const first = pins.find(({ id }) => id === pin)
      return {
        count: pins.length,
        place: [first?.across, first?.down],
        text: first?.text,
        more: door.addPin('b'.repeat(64), { across: 0, down: 0 }),
      }
    }, PHOTO)
    expect(seen).toEqual({ count: 99, place: [0, 1], text: `ab  ${'x'.repeat(196)}`, more: undefined })
    await page.context().close()
  })
})
