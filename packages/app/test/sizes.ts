import type { Page } from 'playwright-core'

export interface Size {
  readonly width: number
  readonly height: number
  /** Size of the text that somebody asked the browser for. */
  readonly text_percent: number
}

export const PHONE: Size = { width: 360, height: 740, text_percent: 100 }
export const TABLET: Size = { width: 820, height: 1180, text_percent: 100 }
export const DESK: Size = { width: 1440, height: 900, text_percent: 100 }
/** A narrow window and text three times as large. */
export const LARGE_TEXT: Size = { width: 320, height: 640, text_percent: 300 }
export const SIZES: readonly Size[] = [PHONE, TABLET, DESK, LARGE_TEXT]

/** Takes a size on and waits until drawings have followed: each asks for its room, and is drawn anew. */
export async function become(page: Page, { width, height, text_percent }: Size): Promise<void> {
  await page.evaluate((percent) => {
    document.documentElement.style.fontSize = percent === 100 ? '' : `${percent}%`
  }, text_percent)
  await page.setViewportSize({ width, height })
  await page.evaluate(async () => {
    const frame = () => new Promise((done) => requestAnimationFrame(done))
    const follows = (drawing: Element) => Number(drawing.getAttribute('width')) === Math.floor(drawing.parentElement?.clientWidth ?? 0)
    await frame()
    await frame()
    while (![...document.querySelectorAll('.stage-room:not([hidden]) > .drawing')].every(follows)) await frame()
    await frame()
    await frame()
  })
}
