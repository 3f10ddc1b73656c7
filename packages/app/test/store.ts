import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { build } from 'vite'
import { type Serving, serveBuild } from '../serve.ts'
import type { DoorId, Doors, OpenDoor } from '../src/store/contract.ts'

/** What runs inside of the page. */
export interface Reach {
  readonly openDoors: (name: string) => Doors
  doors: Doors
  door: OpenDoor
  id: DoorId
}

export const DOOR = { sillsight: 1, name: 'start', survey: { opening: { width_mm: 3000, height_mm: 2500 } } }

/** Where this process has built it: the files of one worker share a build. */
let built: Promise<string> | undefined

/** The store alone on a page, as the bundler packs it for the app. */
export async function storePage(): Promise<Serving> {
  built ??= buildPage()
  return serveBuild(0, await built)
}

async function buildPage(): Promise<string> {
  const outDir = mkdtempSync(join(tmpdir(), 'store-page-'))
  await build({
    configFile: false,
    root: join(import.meta.dirname, 'store-page'),
    base: './',
    logLevel: 'error',
    worker: { format: 'es' },
    build: { target: 'es2022', outDir, emptyOutDir: true },
  })
  return outDir
}

export async function opened(page: Page, url: string): Promise<Page> {
  await page.goto(url)
  await page.waitForFunction(() => 'openDoors' in globalThis)
  return page
}

/** A page of its own with a new door, saved. */
export async function doorPage(browser: Browser, url: string, name = 'doors'): Promise<Page> {
  const page = await opened(await (await browser.newContext()).newPage(), url)
  await page.evaluate(
    async ({ name, file }) => {
      const reach = globalThis as unknown as Reach
      reach.doors = reach.openDoors(name)
      reach.door = await reach.doors.make(file as never, { deed: 'made' })
      await reach.door.settled()
    },
    { name, file: DOOR },
  )
  return page
}

/** Opens the newest door that the database holds. */
export async function reopened(page: Page, name: string): Promise<Page> {
  await page.evaluate(async (name) => {
    const reach = globalThis as unknown as Reach
    reach.doors = reach.openDoors(name)
    while (reach.doors.cards().length === 0) await new Promise((done) => setTimeout(done, 5))
    const door = await reach.doors.open(reach.doors.cards()[0]?.id as DoorId)
    if (!door) throw new Error('the door must open')
    reach.door = door
  }, name)
  return page
}

/**
 * Edits in a page of its own as fast as it can, kills it at a random moment, and says what another finds.
 *
 * @param other a page of the same browser profile, open already: it opens the database only now, and has never seen the door
 * @param name of a database that is not there yet
 */
export async function killed(other: Page, url: string, name: string, after_ms: number): Promise<{ promised: number; found: number }> {
  const page = await opened(await other.context().newPage(), url)
  let promised = 0
  await page.exposeFunction('promise', (count: number) => {
    promised = Math.max(promised, count)
  })
  await page.evaluate(
    async ({ name, file }) => {
      const reach = globalThis as unknown as Reach & { promise: (count: number) => void }
      const door = await reach.openDoors(name).make(file as never, { deed: 'made' })
      await door.settled()
      let count = 0
      door.subscribe(() => {
        const { saving, file: now } = door.snapshot()
        if (saving.kind === 'saved') reach.promise(Number(now.note ?? 0))
      })
      const next = () => {
        count++
        door.edit({ deed: 'set', path: 'note' }, (draft) => {
          ;(draft as Record<string, unknown>)['note'] = String(count)
        })
        setTimeout(next, count % 5)
      }
      next()
    },
    { name, file: DOOR },
  )
  await page.waitForTimeout(after_ms)
  const crash = page.waitForEvent('crash')
  page.goto('chrome://crash').catch(() => undefined)
  await crash
  await page.close()
  const found = await other.evaluate(async (called) => {
    const doors = (globalThis as unknown as Reach).openDoors(called)
    await new Promise<void>((done) => {
      const look = () => (doors.cards().length > 0 ? done() : setTimeout(look, 10))
      look()
    })
    const door = await doors.open(doors.cards()[0]?.id as DoorId)
    return Number(door?.snapshot().file.note ?? 0)
  }, name)
  return { promised, found }
}
