import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { appPage, openDemo, typed } from './app-page.ts'
import { builtApp } from './built.ts'
import { inBrowser } from './in-browser.ts'

const at = inBrowser(() => builtApp())

async function measuring(demo: RegExp, size?: { width: number; height: number }) {
  const { page: on, context, complaints } = await appPage(at.browser, at.served.url, size)
  await openDemo(on, demo)
  await on.goto(on.url().replace('judge', 'measure'))
  await on.locator('.missing').waitFor()
  return { on, context, complaints }
}

/** Keeps to the keyboard: the chapter's title is a stop of the Tab key, and Enter opens it. */
async function opened(on: Page, title: string): Promise<void> {
  const head = on.locator('.chapter > summary').filter({ hasText: title })
  await head.focus()
  await on.keyboard.press('Enter')
}

const choice = (on: Page, name: string) => on.getByRole('combobox', { name, exact: true })
const figure = (on: Page, name: string) => on.getByRole('button', { name: new RegExp(`^${name}: .*Change$`) })

describe('what is known beside the opening', () => {
  it('takes what the control does in sentences, says how it is known, and is taken back and brought back', async () => {
    const { on, context, complaints } = await measuring(/Loading door/)
    await opened(on, 'What the control does')
    const fire = choice(on, 'What happens in a fire')
    await fire.waitFor()
    expect(await fire.evaluate((each) => (each as HTMLSelectElement).selectedOptions[0]?.text)).toBe('nobody knows yet what happens')
    await fire.selectOption('it closes, and presence still stops it')
    const basis = choice(on, 'How it is known: What happens in a fire')
    expect(await basis.inputValue()).toBe('from memory')
    await basis.selectOption('a trial at the door')
    const where = on.getByLabel('who says so, and how: What happens in a fire', { exact: true })
    await where.fill('A. Reader, on the lift')
    await where.press('Enter')
    expect(await on.locator('.chapter > summary').filter({ hasText: 'What the control does' }).textContent()).toContain('1 of 5 known')
    for (let i = 0; i < 3; i++) await on.getByRole('button', { name: 'Undo', exact: true }).click()
    expect(await fire.inputValue()).toBe('')
    for (let i = 0; i < 3; i++) await on.getByRole('button', { name: 'Redo', exact: true }).click()
    expect(await where.inputValue()).toBe('A. Reader, on the lift')
    await fire.selectOption('nobody knows yet what happens')
    expect(await basis.count()).toBe(0)
    await on.getByRole('button', { name: 'What was done', exact: true }).click()
    await on.locator('.history li').filter({ hasText: 'What happens in a fire: it closes, and presence still stops it' }).first().waitFor()
    expect(complaints).toEqual([])
    await context.close()
  }, 120_000)

  it('lists dangers: looked for, found, placed, guarded, taken away; a gap that is hardly meant is asked about', async () => {
    const { on, context, complaints } = await measuring(/Freezer door/, { width: 360, height: 740 })
    await on.locator('.chapter > summary').filter({ hasText: 'Where else it can hurt' }).tap()
    await choice(on, 'Whether it is there: Riding up with the leaf').selectOption('somebody looked, and it is not there')
    await choice(on, 'Whether it is there: Where the moving leaf goes into something').selectOption('it is there')
    const danger = on.locator('.danger')
    await danger.waitFor()
    await figure(on, 'smallest gap on the whole way').tap()
    await on.getByRole('dialog').getByRole('textbox').fill('9000')
    expect(await on.getByRole('dialog').textContent()).toContain('large for this')
    await typed(on, '35')
    await danger.getByRole('combobox', { name: 'The largest part that can get in', exact: true }).selectOption('A hand')
    await figure(on, 'where the danger is along the leaf').tap()
    await typed(on, '300')
    await figure(on, 'how far out the danger is, toward side A counted up').tap()
    await typed(on, '-120')
    await danger.getByRole('combobox', { name: /^Do something against it/ }).selectOption('a cover before it')
    for (const [name, text] of [
      ['height of the cover', '2500'],
      ['widest opening of the cover; 0 for a plate', '0'],
      ['from the openings to the danger', '0'],
    ] as const) {
      await figure(on, name.replace(/[;]/g, '.')).tap()
      await typed(on, text)
    }
    await danger.getByText('A cover before it is').waitFor()
    await danger.getByRole('button', { name: /^Remove a cover before it/ }).tap()
    await danger.getByText('Nothing is done against it yet.').waitFor()
    await on.getByRole('button', { name: 'Remove Where the moving leaf goes into something', exact: true }).tap()
    expect(await danger.count()).toBe(0)
    expect(complaints).toEqual([])
    await context.close()
  }, 120_000)

  it('takes who passes by and both temperatures, and asks about a temperature that is hardly meant', async () => {
    const { on, context, complaints } = await measuring(/Freezer door/)
    await opened(on, 'Who passes by')
    await on.getByRole('button', { name: 'A way past the door', exact: true }).click()
    await figure(on, 'where the way begins, toward side A counted up').click()
    await typed(on, '1.5 m')
    await figure(on, 'where the way ends, toward side A counted up').click()
    await typed(on, '2500')
    await figure(on, 'passers-by in a day, both directions together').click()
    await typed(on, '180')
    await figure(on, 'temperature on the side .*').first().click()
    await on.getByRole('dialog').getByRole('textbox').fill('55')
    expect(await on.getByRole('dialog').textContent()).toContain('55 °C is large for this')
    await typed(on, '-24')
    await figure(on, 'temperature on the side .*').nth(1).click()
    await typed(on, '6')
    await figure(on, 'air that may be lost in a day by needless openings').click()
    await typed(on, '400')
    const said = await on.locator('.chapter[open]').textContent()
    expect(said).toContain('1500 mm')
    expect(said).toContain('-24 °C')
    expect(said).toContain('400 m³')
    expect(complaints).toEqual([])
    await context.close()
  }, 120_000)
})
