// What the app costs in a real browser. Prints figures and asserts none: `npm run bench -w packages/app`.
import { cpus } from 'node:os'
import type { CDPSession, Page } from 'playwright-core'
import { launch } from '../test/browser.ts'
import { builtApp } from '../test/built.ts'
import { referenceDoorFile } from './reference-door-file.ts'
import { starts } from './starts.ts'

const served = await builtApp()
const say = (what: string, figure: string) => process.stdout.write(`${what.padEnd(64)} ${figure}\n`)

const [started] = await starts([served.folder], { visits: 5, relaunches: 7 }) // in a browser of their own, before the other one is there
const browser = await launch()
try {
  process.stdout.write(`Sillsight in Chromium ${browser.version()}, ${cpus()[0]?.model} x ${cpus().length}, Node ${process.version}\n\n`)
  for (const [what, times_ms] of started ?? []) say(what, shown(times_ms))
  await drags()
  await turns()
} finally {
  await browser.close()
  await served.close()
}

/** From a pointer that moves to a picture that shows the answer of that very place. */
async function drags(): Promise<void> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
  const page = await context.newPage()
  const session = await context.newCDPSession(page)
  await page.goto(served.url)
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'reference.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(referenceDoorFile())) })
  await page.getByRole('link', { name: /Reference job/ }).click()
  await page.locator('.finding').first().waitFor()
  await page.goto(page.url().replace('judge', 'place'))
  const grip = page.locator('.grip[aria-label^="scanner"]')
  await grip.waitFor()
  await page.waitForTimeout(4000) // until the exact answer is there
  const box = await grip.locator('.grip-mark').boundingBox()
  if (!box) throw new Error('the grip must be on the screen')
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
  await watchAnswers(page)
  await page.mouse.move(x, y)
  await page.mouse.down()
  const times: number[] = []
  const heap: number[] = []
  for (let i = 1; i <= 1000; i++) {
    await page.mouse.move(x + 60 * Math.sin(i / 9), y + 40 * Math.sin(i / 7))
    const answered = await page.evaluate(() => (globalThis as unknown as Watched).answered())
    if (i > 50 && answered !== undefined) times.push(answered)
    if (i === 100 || i === 1000) heap.push(await usedHeap(session))
  }
  await page.mouse.up()
  say('a sensor of the reference job dragged, to the re-judged picture', shown(times))
  say('memory after 100 and after 1,000 moves', heap.map((bytes) => `${(bytes / 1e6).toFixed(1)} MB`).join(', '))
  await context.close()
}

/** The view in space turned by keys as fast as the software renderer of the browser allows. */
async function turns(): Promise<void> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } })
  const page = await context.newPage()
  await page.goto(served.url)
  await page.getByRole('button', { name: /Loading door/ }).click()
  await page.locator('.finding').first().waitFor()
  await page.getByRole('radio', { name: '3D', exact: true }).click()
  await page.locator('.solid-canvas').focus()
  await page.waitForTimeout(1500)
  const times = await page.evaluate(async () => {
    const canvas = document.querySelector('.solid-canvas')
    const found: number[] = []
    for (let i = 0; i < 120; i++) {
      const from = performance.now()
      canvas?.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowLeft', bubbles: true }))
      await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))
      found.push((performance.now() - from) / 2) // the second frame begins when the first is drawn
    }
    return found
  })
  say('a frame of the view in space, 1440 x 900, drawn without a graphics card', shown(times))
  await context.close()
}

interface Watched {
  answered: () => Promise<number | undefined>
}

/** Measures from now to the next change of the drawing's marks, or gives up where the move changed nothing. */
async function watchAnswers(page: Page): Promise<void> {
  await page.evaluate(() => {
    const drawing = document.querySelector('.drawing > g')
    if (!drawing) throw new Error('the drawing must be there')
    ;(globalThis as unknown as Watched).answered = () => {
      const from = performance.now()
      return new Promise((done) => {
        const timer = setTimeout(() => finish(undefined), 200)
        const watch = new MutationObserver(() => finish(performance.now() - from))
        const finish = (value: number | undefined) => {
          clearTimeout(timer)
          watch.disconnect()
          done(value)
        }
        watch.observe(drawing, { subtree: true, childList: true, attributes: true })
      })
    }
  })
}

async function usedHeap(session: CDPSession): Promise<number> {
  await session.send('HeapProfiler.collectGarbage')
  const { usedSize } = (await session.send('Runtime.getHeapUsage')) as { usedSize: number }
  return usedSize
}

function shown(times_ms: readonly number[]): string {
  const sorted = [...times_ms].sort((a, b) => a - b)
  const at = (share: number) => (sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN).toFixed(1)
  return `median ${at(0.5)} ms, least ${at(0)} ms, nine of ten within ${at(0.9)} ms (${sorted.length})`
}
