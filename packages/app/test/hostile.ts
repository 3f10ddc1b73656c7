import type { Browser, BrowserContext, Page } from 'playwright-core'
import { addPhoto, appPage, openDemo } from './app-page.ts'

/** A page on which whatever runs, asks for something or is held up by the policy leaves a trace. */
export async function watched(
  browser: Browser,
  url: string,
): Promise<{ page: Page; context: BrowserContext; traces: () => Promise<readonly string[]> }> {
  const { page, context, complaints } = await appPage(browser, url)
  const seen: string[] = []
  page.on('dialog', (dialog) => {
    seen.push(`dialog: ${dialog.message()}`)
    void dialog.dismiss()
  })
  page.on('request', (request) => {
    if (!request.url().startsWith(url) && !request.url().startsWith('blob:')) seen.push(`request: ${request.url().slice(0, 100)}`)
  })
  page.on('popup', (other) => seen.push(`window: ${other.url()}`))
  page.on('frameattached', () => seen.push('a frame'))
  await context.exposeFunction('heldUp', (what: string) => seen.push(what))
  await context.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', ({ violatedDirective, sample }) =>
      (globalThis as unknown as { heldUp: (what: string) => void }).heldUp(`policy: ${violatedDirective} ${sample}`),
    )
  })
  await page.reload()
  return {
    page,
    context,
    traces: async () => {
      const ran = await page.evaluate(() => [
        ...((globalThis as { hit?: number }).hit === undefined ? [] : ['a script']),
        ...(document.querySelector('base, iframe, [onerror], [onload], [onfocus], [ontoggle]') ? ['an element'] : []),
      ])
      return [...seen, ...ran, ...complaints]
    },
  }
}

/**
 * Writes every string into every text field that stands on the page (in the dialog that is open), as typing does; leaves the field after each `every`th, which keeps it.
 * The fields keep different ones: over `every` of them each string is kept somewhere.
 */
export async function written(page: Page, texts: readonly string[], every: number): Promise<number> {
  return page.evaluate(
    async ({ texts, every }) => {
      const holder = document.querySelector('[role=dialog]') ?? document
      const fields = () => [
        ...holder.querySelectorAll<HTMLInputElement | HTMLTextAreaElement>(
          'textarea, input:not([type=file], [type=radio], [type=checkbox], [type=range])',
        ),
      ]
      let count = 0
      for (const [place] of fields().entries())
        for (const [i, text] of texts.entries()) {
          const field = fields()[place]
          if (!field) continue
          const { prototype } = field instanceof HTMLTextAreaElement ? HTMLTextAreaElement : HTMLInputElement
          const isKept = (i + place) % every === 0
          if (isKept) field.focus()
          Object.getOwnPropertyDescriptor(prototype, 'value')?.set?.call(field, text)
          field.dispatchEvent(new InputEvent('input', { bubbles: true }))
          count++
          if (!isKept) continue
          field.blur()
          await new Promise((done) => setTimeout(done))
        }
      return count
    },
    { texts, every },
  )
}

/** Writes the texts into every text field of the app, screen by screen. @returns how often, and what ran or was asked for */
export async function writtenEverywhere(
  browser: Browser,
  url: string,
  texts: readonly string[],
): Promise<{ readonly count: number; readonly found: readonly string[] }> {
  const { page, context, traces } = await watched(browser, url)
  let count = 0
  await page.getByRole('link', { name: 'New door' }).click()
  await page.locator('.first-figure').first().waitFor()
  count += await written(page, texts, 25)
  await page.locator('.first-figure').first().click()
  await page.locator('.pad-figure input').waitFor()
  count += await written(page, texts, 1000) // leaving the pad's field would close nothing: it keeps what Enter enters
  await page.goto(url)
  await openDemo(page)
  await page.getByRole('button', { name: 'I hold the standard in hand' }).first().click({ timeout: 60_000 })
  await page.getByRole('dialog').waitFor()
  count += await written(page, texts, 1000)
  await page.keyboard.press('Escape')
  const address = page.url()
  for (const part of ['measure', 'place']) {
    await page.goto(address.replace('judge', part))
    await page.locator('.drawing').waitFor()
    if (part === 'measure') await addPhoto(page)
    count += await written(page, texts, 5)
    if (part !== 'measure') continue
    await page.locator('.photo-open').click()
    await page.locator('.photo-touch').click()
    await page.locator('.pin-words input').waitFor()
    count += await written(page, texts, 5)
    await page.keyboard.press('Escape')
  }
  await page.getByRole('button', { name: 'What was done' }).click()
  await page.locator('.history li').first().waitFor()
  count += await written(page, texts, 25)
  await page.keyboard.press('Escape')
  await page.goto(address)
  await page.locator('.finding').first().waitFor()
  const found = await traces()
  await context.close()
  return { count, found }
}
