import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { appPage, openFile, typed } from './app-page.ts'
import { builtApp } from './built.ts'
import { inBrowser } from './in-browser.ts'

const at = inBrowser(() => builtApp())

const DOOR = { name: 'Gate 4', survey: { opening: { width_mm: 3000, height_mm: 2500 } } }
const link = (on: Page, name: string) => on.getByRole('link', { name, exact: true })
const button = (on: Page, name: string) => on.getByRole('button', { name, exact: true })
const saved = (on: Page) => on.waitForFunction(() => document.querySelector('.head-saved')?.getAttribute('data-state') === 'saved')

/** The app on a device that is as `device` makes it, from its start on. */
async function onDevice(device: () => void) {
  const made = await appPage(at.browser, at.served.url)
  await made.context.addInitScript(device)
  await made.page.reload()
  return made
}

describe('trouble with what a device keeps, as the screen tells it', () => {
  it('little room: said on the door while everything is still saved, with a way to keep it elsewhere', async () => {
    const { page: on, context } = await onDevice(() => {
      navigator.storage.estimate = async () => ({ usage: 1_000_000_000, quota: 1_010_000_000 })
    })
    await openFile(on, DOOR, 'measure')
    const notice = on.locator('.notice').filter({ hasText: 'Little room is left on this device.' })
    await notice.waitFor()
    await saved(on)
    const file = on.waitForEvent('download')
    await notice.getByRole('button', { name: 'Keep this door as a file', exact: true }).click()
    expect((await file).suggestedFilename()).toBe('Gate-4.sillsight')
    await context.close()
  })

  it('no room: the first values of a door that it did not take are there again', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url)
    await on.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('no room', 'QuotaExceededError')
      }
    })
    await link(on, 'New door').click()
    await on.locator('.first-figure').first().waitFor() // nothing is missing on a screen that is not there yet
    for (const text of ['3460', '2.8 m', '2800', '150']) {
      const left = await on.locator('.first-figure[data-missing]').count()
      await on.locator('.first-go button').click()
      await typed(on, text)
      await on.waitForFunction((count) => document.querySelectorAll('.first-figure[data-missing]').length < count, left)
    }
    await button(on, 'Judge it').click()
    await on.locator('.head-saved[data-state="not-saved"]').waitFor()
    expect(await on.locator('.notice[role="alert"]').textContent()).toContain('No room is left on this device.')
    await on.evaluate(() => {
      location.hash = '#/'
    })
    await on.reload()
    await link(on, 'New door').click()
    await on.locator('.first-figure').first().waitFor()
    expect(await on.locator('.first-figure strong').allTextContents()).toEqual(['3460 mm', '2800 mm', '2800 mm', '150 mm'])
    await context.close()
  })

  it('a browser that keeps nothing: said on the door, which is edited all the same', async () => {
    const { page: on, context } = await onDevice(() => Object.defineProperty(globalThis, 'indexedDB', { value: undefined }))
    await openFile(on, DOOR, 'measure')
    await on.getByRole('alert').filter({ hasText: 'This browser keeps nothing once the window is closed.' }).waitFor()
    await on.getByRole('button', { name: /^Clear width:/ }).click()
    await typed(on, '3100')
    await on.getByRole('button', { name: /^Clear width: 3100 mm/ }).waitFor()
    await on.locator('.head-saved[data-state="not-saved"]').waitFor()
    await context.close()
  })

  it('a newer program at work: this one says so and only shows', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url)
    await openFile(on, DOOR, 'measure')
    await saved(on)
    await on.evaluate(() => new BroadcastChannel('sillsight').postMessage({ kind: 'format', format: 99 }))
    const notice = on
      .getByRole('alert')
      .filter({ hasText: 'A newer version of this program is at work on this device: this one only shows.' })
    await notice.waitFor()
    await notice.getByRole('button', { name: 'Load the newer one', exact: true }).waitFor()
    expect(await on.locator('.sheet').getAttribute('data-readonly')).toBe('true')
    await context.close()
  })

  it('a door that cannot be read: named in the list, its finds kept, what can be read handed out as a file', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url)
    await openFile(on, DOOR, 'measure')
    await on.getByRole('button', { name: /^Clear width:/ }).click()
    await typed(on, '3100')
    await on.getByRole('button', { name: /^Clear width: 3100 mm/ }).waitFor()
    await saved(on)
    const harmed = await on.evaluate(
      () =>
        new Promise<number>((done) => {
          const asked = indexedDB.open('sillsight')
          asked.onsuccess = () => {
            const changes = asked.result.transaction('changes', 'readwrite').objectStore('changes')
            const all = changes.getAll()
            all.onsuccess = () => {
              const [last] = all.result.sort((a, b) => a.bytes.length - b.bytes.length) // less than the whole door
              last.bytes[last.bytes.length >> 1] ^= 1
              changes.put(last).onsuccess = () => {
                asked.result.close()
                done(all.result.length)
              }
            }
          }
        }),
    )
    expect(harmed).toBe(2)
    await on.reload() // and finds that it cannot
    await on.getByRole('main').getByRole('link', { name: 'All doors', exact: true }).click()
    await on.getByText('A door on this device cannot be read.').waitFor()
    const file = on.waitForEvent('download')
    await on.getByRole('button', { name: 'Save what can be read', exact: true }).click()
    expect((await file).suggestedFilename()).toContain('sillsight-rescued')
    await context.close()
  })
})
