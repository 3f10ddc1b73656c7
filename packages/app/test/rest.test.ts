import type { Page, Worker } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { appPage, DESK, KEPT_OFFLINE, openDemo, PARTS } from './app-page.ts'
import { builtApp } from './built.ts'
import { inBrowser } from './in-browser.ts'

const at = inBrowser(() => builtApp())

/** So long nothing may be done before it is called rest. */
const WATCHED_MS = 2_000

/** What a page or a worker does by the clock, counted from when this runs in it: before any script in a page, as soon as it is known in a worker. */
interface Clocked {
  /** What was done since it was last asked. */
  done: string[]
  /** What is to be done later, however late. */
  readonly waiting: Map<unknown, string>
}

function count(): void {
  const reach = globalThis as unknown as Record<string, unknown> & { clocked?: Clocked }
  if (reach.clocked) return
  const clocked: Clocked = { done: [], waiting: new Map() }
  reach.clocked = clocked
  const posting = reach['postMessage'] as (...all: unknown[]) => unknown
  reach['postMessage'] = (...all: unknown[]) => {
    clocked.done.push('postMessage')
    return posting.apply(globalThis, all)
  }
  for (const [start, stop] of [
    ['setTimeout', 'clearTimeout'],
    ['setInterval', 'clearInterval'],
    ['requestAnimationFrame', 'cancelAnimationFrame'],
    ['requestIdleCallback', 'cancelIdleCallback'],
  ] as const) {
    const starting = reach[start] as ((...all: unknown[]) => unknown) | undefined
    const stopping = reach[stop] as (id: unknown) => void
    if (!starting) continue
    reach[start] = (then: (...given: unknown[]) => void, ...rest: unknown[]) => {
      const id = starting.call(
        globalThis,
        (...given: unknown[]) => {
          clocked.done.push(start)
          if (start !== 'setInterval') clocked.waiting.delete(id)
          then(...given)
        },
        ...rest,
      )
      clocked.waiting.set(id, `${start} ${rest}`)
      return id
    }
    reach[stop] = (id: unknown) => {
      clocked.waiting.delete(id)
      stopping.call(globalThis, id)
    }
  }
}

/** What page and workers did of themselves for a while, and what they wait for. Called again until it is nothing: see where it is called. */
async function done(on: Page): Promise<string[]> {
  const requests: string[] = []
  const heard = (request: { url(): string }) => requests.push(`asked for ${new URL(request.url()).pathname}`)
  const places: Pick<Worker, 'evaluate'>[] = [on as unknown as Worker, ...on.workers()]
  const ask = () =>
    Promise.all(
      places.map(async (place) => {
        await place.evaluate(count)
        return place.evaluate(() => {
          const { clocked } = globalThis as unknown as { clocked: Clocked }
          const told = [...clocked.done, ...[...clocked.waiting.values()].map((what) => `waits for ${what}`)]
          clocked.done = []
          return told
        })
      }),
    )
  await ask()
  on.on('request', heard)
  await on.waitForTimeout(WATCHED_MS)
  on.off('request', heard)
  return [...requests, ...(await ask()).flat()]
}

describe('the app while nobody touches it', () => {
  it('comes to rest, asks for nothing and has no clock run: the list of doors, each part of a judged door, the view in space', async () => {
    const { page: on, context, complaints } = await appPage(at.browser, at.served.url)
    await on.addInitScript(count)
    await on.reload()
    await on.getByRole('link', { name: 'New door', exact: true }).waitFor()
    await expect.poll(() => done(on)).toEqual([])
    await openDemo(on)
    for (const part of PARTS) {
      await on.goto(on.url().replace(/[a-z-]+$/, part))
      await expect.poll(() => done(on), { message: part }).toEqual([])
    }
    await on.goto(on.url().replace(/[a-z-]+$/, 'judge'))
    await on.getByRole('radio', { name: '3D', exact: true }).click()
    await on.locator('.solid-canvas').waitFor()
    await expect.poll(() => done(on)).toEqual([])
    expect(complaints).toEqual([])
    await context.close()
  }, 600_000) // only ends what hangs: it waits for rest six times
})

describe('the app', () => {
  it('can be installed: the browser that would do it finds nothing against it', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url, DESK, {}, KEPT_OFFLINE)
    await on.getByRole('link', { name: 'New door', exact: true }).waitFor()
    await on.evaluate(() => navigator.serviceWorker.ready)
    const session = await context.newCDPSession(on)
    const { installabilityErrors } = await session.send('Page.getInstallabilityErrors')
    // the profiles of tests are private ones, from which no browser installs anything
    expect(installabilityErrors.map(({ errorId }) => errorId)).toEqual(['in-incognito'])
    const { url, errors, data } = await session.send('Page.getAppManifest')
    expect(url).toMatch(/webmanifest$/)
    expect(errors).toEqual([])
    expect(JSON.parse(data ?? '{}')).toMatchObject({ display: 'standalone' })
    await context.close()
  })
})
