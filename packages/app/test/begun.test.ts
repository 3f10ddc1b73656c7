import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { appPage, openDemo, openFile, typed } from './app-page.ts'
import { builtApp } from './built.ts'
import { inBrowser } from './in-browser.ts'

const at = inBrowser(() => builtApp())

const opening = { width_mm: 3000, height_mm: 2500 }
const figure = (on: Page, name: string) => on.getByRole('button', { name: new RegExp(`^${name}: .*Change$`) })
const choice = (on: Page, name: string) => on.getByRole('combobox', { name, exact: true })
const line = (on: Page, name: string) => on.getByRole('textbox', { name, exact: true })
const button = (on: Page, name: string) => on.getByRole('button', { name, exact: true })
const saidOf = async (on: Page, name: string) =>
  (await figure(on, name).getAttribute('aria-label'))?.replace(/\. Change$/, '').split(': ')[1]

async function enter(on: Page, name: string, text: string): Promise<void> {
  await figure(on, name).click()
  await typed(on, text)
}

/** The page as somebody finds it who comes back: loaded anew, once the screen has said that all is saved. */
async function comesBack(on: Page): Promise<void> {
  await on.waitForFunction(() => document.querySelector('.head-saved')?.getAttribute('data-state') === 'saved')
  await on.reload()
}

async function begin(survey: object, part: string) {
  const { page, context, complaints } = await appPage(at.browser, at.served.url)
  await openFile(page, { name: 'Begun door', survey: { opening, ...survey } }, part)
  return { on: page, context, complaints }
}

describe('what is only begun when the page is loaded anew', () => {
  it('is there again of a measured force: figures, words and days; it can be left, taken back, and finished', {
    timeout: 120_000,
  }, async () => {
    const { on, context, complaints } = await begin({}, 'test')
    await button(on, 'A measured force').click()
    await enter(on, 'what was left between leaf and counterpart', '12 1/2 in')
    await line(on, 'where on the closing edge').fill('the middle')
    await line(on, 'where on the closing edge').press('Enter')
    await on.getByLabel('day of the measurement', { exact: true }).fill('2026-03-04')
    await comesBack(on)
    expect(await saidOf(on, 'what was left between leaf and counterpart')).toBe('317.5 mm')
    expect(await line(on, 'where on the closing edge').inputValue()).toBe('the middle')
    expect(await on.getByLabel('day of the measurement', { exact: true }).inputValue()).toBe('2026-03-04')
    expect(await button(on, 'Keep it').isDisabled()).toBe(true)
    await button(on, 'Leave it: A measured force').click()
    await on.getByText('No force was measured yet.').waitFor()
    await button(on, 'Undo').click()
    expect(await line(on, 'where on the closing edge').inputValue()).toBe('the middle')
    await enter(on, 'peak of the force', '390')
    await enter(on, 'how long the force stayed above what may last', '0.3')
    await enter(on, 'mean of the force after the peak', '120')
    for (const name of ['the instrument and its number', 'who measured']) {
      await line(on, name).fill(`${name} A`)
      await line(on, name).press('Enter')
    }
    await button(on, 'Keep it').click()
    await button(on, 'Remove force at the middle').waitFor()
    await comesBack(on)
    await figure(on, 'what was left between leaf and counterpart: the middle').click()
    await on.getByText('was typed as 12 1/2 in').waitFor()
    await on.keyboard.press('Escape')
    expect(await button(on, 'Keep it').count()).toBe(0)
    // the next one begins with instrument and name of this one, and what is taken away of them stays away
    await button(on, 'A measured force').click()
    expect(await line(on, 'who measured').inputValue()).toBe('who measured A')
    await on.getByLabel('day of the measurement', { exact: true }).fill('')
    await comesBack(on)
    expect(await on.getByLabel('day of the measurement', { exact: true }).inputValue()).toBe('')
    expect(await line(on, 'who measured').inputValue()).toBe('who measured A')
    expect(complaints).toEqual([])
    await context.close()
  })

  it('is there again on Measure, in the chapter where it was begun too: a lane, a leaf and how it hangs, where it stands, a note in mid-word', {
    timeout: 120_000,
  }, async () => {
    const { on, context, complaints } = await begin({}, 'measure')
    await choice(on, 'How the leaf travels').selectOption('turning')
    await comesBack(on)
    expect(await choice(on, 'How the leaf travels').inputValue()).toBe('turning')
    await enter(on, 'Thickness of the leaf', '1 1/2 in')
    await choice(on, 'Where the leaf hangs').selectOption('at-width')
    await choice(on, 'Side to which the leaf opens').selectOption('b')
    await enter(on, 'length from the hinge line to the edge; where it folds, of the panel on the hinge', '1480')
    await button(on, 'A lane').click()
    await enter(on, 'where the lane begins', '1 ft')
    await on.locator('.chapter > summary').filter({ hasText: 'Where the open leaf stands' }).click()
    await enter(on, 'top of the open leaf', '2200')
    await on.locator('.chapter > summary').filter({ hasText: 'A note about this door' }).click()
    await line(on, 'Anything worth saying about this door').fill('the gate drags on')
    expect(await saidOf(on, 'Thickness of the leaf')).toBe('38.1 mm')
    await comesBack(on)
    expect(await saidOf(on, 'where the lane begins')).toBe('304.8 mm')
    expect(await choice(on, 'Where the leaf hangs').inputValue()).toBe('at-width')
    expect(await choice(on, 'Side to which the leaf opens').inputValue()).toBe('b')
    expect(await saidOf(on, 'length from the hinge line to the edge; where it folds, of the panel on the hinge')).toBe('1480 mm')
    expect(await saidOf(on, 'top of the open leaf')).toBe('2200 mm')
    await on.locator('.chapter > summary').filter({ hasText: 'A note about this door' }).click()
    expect(await line(on, 'Anything worth saying about this door').inputValue()).toBe('the gate drags on')
    await enter(on, 'angle when it is fully open', '95')
    await enter(on, 'where the lane ends', '2700')
    await figure(on, 'length of the second panel').waitFor()
    await button(on, 'Remove lane').waitFor()
    await button(on, 'Undo').click()
    expect(await saidOf(on, 'where the lane begins')).toBe('304.8 mm')
    expect(await button(on, 'Remove lane').count()).toBe(0)
    await figure(on, 'where the lane begins').click()
    await on.getByText('was typed as 1 ft').waitFor()
    expect(complaints).toEqual([])
    await context.close()
  })

  it('is there again on Judge: two answers of how the door is protected, and the page that somebody holds in hand', {
    timeout: 120_000,
  }, async () => {
    const { page: on, context, complaints } = await appPage(at.browser, at.served.url)
    await openDemo(on)
    await button(on, 'I hold the standard in hand').first().click()
    await on.getByLabel('Document', { exact: true }).fill('a standard')
    await on.getByLabel('Edition', { exact: true }).fill('2024')
    await comesBack(on)
    await button(on, 'I hold the standard in hand').first().click()
    expect(await on.getByLabel('Document', { exact: true }).inputValue()).toBe('a standard')
    expect(await on.getByLabel('Edition', { exact: true }).inputValue()).toBe('2024')
    await on.goto(at.served.url)
    await openFile(on, { name: 'Begun door', survey: { opening } }, 'judge')
    await choice(on, 'Who passes').selectOption('trained')
    await choice(on, 'What guards the closing edge').selectOption('presence-aid')
    await comesBack(on)
    expect(await choice(on, 'Who passes').inputValue()).toBe('trained')
    expect(await choice(on, 'What guards the closing edge').inputValue()).toBe('presence-aid')
    expect(await choice(on, 'How it is driven').inputValue()).toBe('')
    await choice(on, 'How it is driven').selectOption('automatic')
    await choice(on, 'Whether it may touch with low energy').waitFor()
    await button(on, 'Undo').click()
    await choice(on, 'Whether it may touch with low energy').waitFor({ state: 'detached' })
    expect(await choice(on, 'Who passes').inputValue()).toBe('trained')
    expect(complaints).toEqual([])
    await context.close()
  })
})
