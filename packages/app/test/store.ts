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

/** The store alone on a page, as the bundler packs it for the app. */
export async function storePage(): Promise<Serving> {
  const outDir = mkdtempSync(join(tmpdir(), 'store-page-'))
  await build({
    configFile: false,
    root: join(import.meta.dirname, 'store-page'),
    base: './',
    logLevel: 'error',
    worker: { format: 'es' },
    build: { target: 'es2022', outDir, emptyOutDir: true },
  })
  return serveBuild(0, outDir)
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
 * Two devices that edit, take back and exchange files in a seeded order, in one page.
 *
 * @returns what each device holds after a last exchange both ways, and how many of the changes each had made were found again on both
 */
export function schedules(
  page: Page,
  seeds: readonly number[],
): Promise<{ seed: number; same: boolean; lost: number; conflicts: number }[]> {
  return page.evaluate(
    async ({ seeds, file }) => {
      const { openDoors } = globalThis as unknown as Reach
      const results = []
      for (const seed of seeds) {
        let state = seed * 2_654_435_761
        const dice = (below: number) => {
          state = (Math.imul(state ^ (state >>> 15), 2_246_822_519) + 1) | 0
          return (state >>> 1) % below
        }
        const devices = ['a', 'b'].map((name) => openDoors(`schedule-${seed}-${name}`))
        const [first, second] = devices as [Doors, Doors]
        const door = await first.make(file as never, { deed: 'made' })
        await second.read(await first.exportDoor(door.id), 'x')
        const other = await second.open(door.id)
        if (!other) throw new Error('the other device must have the door')
        const both = [door, other]
        const made = new Set<string>()
        for (let step = 0; step < 14; step++) {
          const which = dice(2)
          const mine = both[which] as OpenDoor
          const act = dice(8)
          if (act < 4) {
            const path = ['name', 'note', 'survey/opening/width_mm'][dice(3)] as string
            mine.edit({ deed: 'set', path }, (draft) => {
              if (path === 'survey/opening/width_mm') (draft.survey.opening as { width_mm: number }).width_mm = 1000 + dice(5000)
              else (draft as Record<string, unknown>)[path] = `${seed} ${step} ${dice(9)}`
            })
          } else if (act === 4) mine.undo()
          else if (act === 5) mine.redo()
          else if (act === 6) {
            const conflict = mine.snapshot().conflicts[0]
            if (conflict) mine.choose(conflict.path, dice(conflict.values.length))
          } else await (devices[1 - which] as Doors).read(await (devices[which] as Doors).exportDoor(door.id), 'x')
          await mine.settled()
          for (const { moment } of mine.history()) made.add(moment)
        }
        await second.read(await first.exportDoor(door.id), 'x')
        await first.read(await second.exportDoor(door.id), 'x')
        const sorted = (value: unknown): unknown =>
          typeof value === 'object' && value !== null && !Array.isArray(value)
            ? Object.entries(value)
                .sort()
                .map(([key, each]) => [key, sorted(each)])
            : value
        const [one, two] = both.map((each) => JSON.stringify(sorted(each.snapshot().file)))
        const lost = both.flatMap((each) => {
          const known = new Set<string>(each.history().map(({ moment }) => moment))
          return [...made].filter((moment) => !known.has(moment))
        }).length
        results.push({ seed, same: one === two, lost, conflicts: door.snapshot().conflicts.length })
      }
      return results
    },
    { seeds, file: DOOR },
  )
}

/** Edits as fast as the page can, kills it at a random moment, and says what a new page finds. */
export async function killed(page: Page, url: string, name: string, after_ms: number): Promise<{ promised: number; found: number }> {
  await opened(page, url)
  const context = page.context()
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
  const again = await opened(await context.newPage(), url)
  const found = await again.evaluate(async (called) => {
    const doors = (globalThis as unknown as Reach).openDoors(called)
    await new Promise<void>((done) => {
      const look = () => (doors.cards().length > 0 ? done() : setTimeout(look, 10))
      look()
    })
    const door = await doors.open(doors.cards()[0]?.id as DoorId)
    return Number(door?.snapshot().file.note ?? 0)
  }, name)
  await again.close()
  return { promised, found }
}
