import type { Page } from 'playwright-core'
import type { en } from '../src/words/en.ts'

/** What a walk needs for the screens that want a sensor, a lack or a harm first. */
interface Rare {
  readonly page: Page
  readonly words: typeof en
  readonly shown: (name: string) => Promise<void>
  /** Opens a part of the door of this name in the list of demonstration doors. */
  readonly openDoor: (name: keyof typeof en.demoDoors, part: string) => Promise<void>
}

/** The spirit level in the number pad of a device that has one: before it reads anything, and while it stands on an edge. */
export async function spiritLevel({ page, words, shown, openDoor }: Rare): Promise<void> {
  await openDoor('loading-door', 'place')
  const session = await page.context().newCDPSession(page)
  await page.locator('[data-at$="/tilt_deg"]').first().tap()
  await page.getByRole('button', { name: words.level.open, exact: true }).tap()
  await page.locator('.level').waitFor()
  await shown('spirit level, waiting')
  await session.send('DeviceOrientation.setDeviceOrientationOverride', { alpha: 0, beta: 0.8, gamma: -89 })
  await page.locator('.level .pad-done').waitFor()
  await shown('spirit level')
}

/** A word of the trade, touched where it stands. */
export async function explanation({ page, shown, openDoor }: Rare): Promise<void> {
  await openDoor('loading-door', 'judge')
  await page.locator('.finding .term').first().click()
  await page.locator('.explanation').waitFor()
  await shown('a word explained')
  await page.keyboard.press('Escape')
}

/** Forces that were measured, on the part Test. */
export async function forces({ page, shown, openDoor }: Rare): Promise<void> {
  await openDoor('box-hatch', 'test')
  await page.locator('[data-at^="forceRecords/0"]').first().scrollIntoViewIfNeeded()
  await shown('test, forces measured')
}

/** A browser that draws nothing in space. */
export async function withoutSpace({ page, words, shown, openDoor }: Rare): Promise<void> {
  await page.addInitScript(() => {
    const get = HTMLCanvasElement.prototype.getContext
    HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, kind: string, ...more: unknown[]) {
      return kind.startsWith('webgl') ? null : (get as (...all: unknown[]) => unknown).call(this, kind, ...more)
    } as typeof get
  })
  await openDoor('loading-door', 'judge')
  await page.getByRole('radio', { name: words.views.solid, exact: true }).click()
  await page.locator('.solid-missing').waitFor()
  await shown('judge, nothing in space')
}

/** A door of which a record in the local database cannot be read. */
export async function damaged({ page, words, shown }: Rare, list: string): Promise<void> {
  await page.evaluate(
    () =>
      new Promise<void>((done, failed) => {
        const asked = indexedDB.open('sillsight')
        asked.onerror = () => failed(asked.error)
        asked.onsuccess = () => {
          const transaction = asked.result.transaction('changes', 'readwrite')
          transaction.objectStore('changes').openCursor().onsuccess = ({ target }) => {
            const cursor = (target as IDBRequest<IDBCursorWithValue | null>).result
            if (!cursor) return
            crypto.getRandomValues((cursor.value as { bytes: Uint8Array<ArrayBuffer> }).bytes.subarray(10))
            cursor.update(cursor.value)
            cursor.continue()
          }
          transaction.oncomplete = () => {
            asked.result.close()
            done()
          }
        }
      }),
  )
  await page.goto(list)
  await page.locator('.door-list a.door-link').first().click()
  await page.getByText(words.missingDoor).waitFor()
  await page.getByRole('link', { name: words.backToDoors, exact: true }).click()
  await page.getByText(words.doors.damagedNote).waitFor()
  await shown('doors, one damaged')
}
