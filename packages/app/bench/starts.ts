import { serveBuild } from '../serve.ts'
import { bareBrowser } from './bare-browser.ts'

/** Milliseconds until a build can be used, by what is started. */
export type Starts = Map<string, number[]>

const LIST = 'a[href$="/new"]'
const KEPT_DOOR = 'a.door-link'
const FINDING = '.finding'

/**
 * Starts builds of the app, one after the other in each round, so that what else the machine does falls on all of them alike.
 *
 * @param folders the builds
 * @param rounds how often; `visits` the first time with the CPU slowed four times and not, `relaunches` without a server
 */
export async function starts(
  folders: readonly string[],
  rounds: { readonly visits: number; readonly relaunches: number },
): Promise<Starts[]> {
  const browser = await bareBrowser()
  const found: Starts[] = folders.map(() => new Map())
  const add = (i: number, what: string, time_ms: number) => found[i]?.set(what, [...(found[i].get(what) ?? []), time_ms])
  const served = await Promise.all(folders.map((folder) => serveBuild(0, folder)))
  try {
    for (let round = 0; round < rounds.visits; round++)
      for (const slowdown of [4, 1])
        for (const [i, { url }] of served.entries()) {
          const visitor = await browser.visitor()
          await visitor.slow(slowdown)
          add(i, `first visit, list of doors usable, CPU slowed ${slowdown} times`, await visitor.usable(url, LIST))
          await visitor.close()
        }
    const kept = []
    for (const { url } of served) {
      const visitor = await browser.visitor()
      await visitor.usable(url, LIST)
      await visitor.evaluate("[...document.querySelectorAll('button')].find((each) => /^Loading door/.test(each.textContent)).click()")
      await visitor.evaluate(`(${until})(${JSON.stringify(FINDING)})`)
      const door = String(await visitor.evaluate('location.href'))
      await visitor.evaluate('navigator.serviceWorker.ready.then(() => true)')
      await visitor.usable('about:blank', 'body')
      await visitor.usable(door, FINDING) // from here on the service worker answers
      kept.push({ visitor, url, door })
    }
    for (const { close } of served) await close() // nobody answers any more: without a network
    for (let round = 0; round < rounds.relaunches; round++)
      for (const [i, { visitor, url, door }] of kept.entries())
        for (const [what, address, sought] of [
          ['started again offline, list of doors', url, KEPT_DOOR],
          ['started again offline, a door with its first findings', door, FINDING],
        ] as const) {
          await visitor.usable('about:blank', 'body')
          add(i, what, await visitor.usable(address, sought))
        }
  } finally {
    await browser.close()
    for (const { close } of served) await close().catch(() => undefined)
  }
  return found
}

/** Runs in the page. */
async function until(sought: string): Promise<true> {
  while (!document.querySelector(sought)) await new Promise((done) => setTimeout(done, 50))
  return true
}
