import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { appPage, openDemo, typed } from './app-page.ts'
import { builtApp } from './built.ts'
import { inBrowser } from './in-browser.ts'

const at = inBrowser(() => builtApp())

async function opened(demo: RegExp, part: string) {
  const { page: on, context, complaints } = await appPage(at.browser, at.served.url)
  await openDemo(on, demo)
  await on.goto(on.url().replace('judge', part))
  await on.locator('.missing').waitFor()
  return { on, context, complaints }
}

const chapter = (on: Page, title: string) => on.locator('.chapter > summary').filter({ hasText: title })
const choice = (on: Page, name: string) => on.getByRole('combobox', { name, exact: true })
const figure = (on: Page, name: string) => on.getByRole('button', { name: new RegExp(`^${name}: .*Change$`) })

describe('what moves, stops and was measured', () => {
  it('takes timed stops one after another from the keyboard, and keeps each from the first on', async () => {
    const { on, context, complaints } = await opened(/Traffic passage/, 'measure')
    await chapter(on, 'How long it takes to stop').click()
    await on.getByRole('button', { name: 'Enter timed stops', exact: true }).click()
    const field = on.getByRole('dialog').getByRole('textbox')
    const time = async (from: number, seconds: readonly string[]) => {
      for (const [i, each] of seconds.entries()) {
        await on.getByRole('dialog', { name: `stop ${from + i}` }).waitFor()
        await field.fill(each)
        await field.press('Enter')
      }
      await on.getByRole('button', { name: 'Done', exact: true }).click()
    }
    await time(1, ['0.31', '0.29'])
    await on.getByText('One more is needed before they make a bound.').waitFor()
    await on.locator('.head-saved[data-state=saved]').waitFor()
    await on.reload()
    await chapter(on, 'How long it takes to stop').click()
    await figure(on, 'stop 2').waitFor()
    await on.getByRole('button', { name: 'Enter timed stops', exact: true }).click()
    await time(3, ['0.33'])
    await figure(on, 'part of all stops that takes no longer than the bound').click()
    await typed(on, '95')
    await figure(on, 'with which confidence').click()
    await typed(on, '90')
    await expect.poll(() => chapter(on, 'How long it takes to stop').textContent()).toContain('3 are listed')
    await figure(on, 'stop 2').click()
    await on.getByRole('button', { name: 'Take away', exact: true }).click()
    await on.getByText('One more is needed before they make a bound.').waitFor()
    await on.getByRole('button', { name: 'Undo', exact: true }).click()
    await expect.poll(() => chapter(on, 'How long it takes to stop').textContent()).toContain('3 are listed')
    expect(complaints).toEqual([])
    await context.close()
  }, 120_000)

  it('judges a lane with a body that passes, out of the invented ones, which can then be moved through a zone as its parts', async () => {
    const { on, context, complaints } = await opened(/Loading door/, 'measure')
    await chapter(on, 'More about this lane').click()
    await choice(on, 'Judge it with another body').selectOption('800 x 2200 x 1700, stands for a person with a loaded pallet truck')
    await on.locator('.chosen').waitFor()
    await on.getByRole('button', { name: 'How a vehicle stops', exact: true }).click()
    await figure(on, 'from seeing the leaf stay shut until it brakes').click()
    await on.getByRole('dialog').getByRole('textbox').fill('9')
    expect(await on.getByRole('dialog').textContent()).toContain('9 s is large for this')
    await typed(on, '1.2')
    await figure(on, 'how hard a vehicle brakes with its worst load').click()
    await typed(on, '2')
    await figure(on, 'fall of the way toward the leaf, below zero where it rises').click()
    await typed(on, '-3')
    await on.getByText('toward the leaf.').waitFor()
    await on.goto(on.url().replace('measure', 'place'))
    await on.getByRole('button', { name: 'Test body', exact: true }).click()
    const bodies = choice(on, 'Which body, how it lies')
    await bodies.waitFor() // it comes with the answer
    const last = (await bodies.locator('option').count()) - 1
    await bodies.selectOption({ index: last })
    const outlines = (await on.locator('.body-outline').getAttribute('d')) ?? ''
    expect((outlines.match(/Z/g) ?? []).length).toBeGreaterThan(3)
    expect(complaints).toEqual([])
    await context.close()
  }, 120_000)

  it('takes how people come to a field, with an addend off the page that is from memory until somebody says better', async () => {
    const { on, context, complaints } = await opened(/Parcel hatch/, 'place')
    await chapter(on, 'More about this sensor').first().click()
    const way = on.getByRole('combobox', { name: /^How people come to the field/ }).first()
    await way.selectOption('along the floor')
    await figure(on, 'smallest body that it surely sees: .*').first().click()
    await typed(on, '70')
    await figure(on, 'addend of the separation distance: .*').first().click()
    await typed(on, '1200')
    expect(
      await on
        .getByRole('combobox', { name: /^How it is known: addend and supplement/ })
        .first()
        .inputValue(),
    ).toBe('from memory')
    expect(complaints).toEqual([])
    await context.close()
  }, 120_000)

  it('takes a measured force whole, going on with the instrument and the name of the one before', async () => {
    const { on, context, complaints } = await opened(/Box hatch/, 'test')
    await on.getByRole('button', { name: 'A measured force', exact: true }).click()
    const made = on.locator('.new-record')
    expect(await made.getByLabel('the instrument and its number', { exact: true }).inputValue()).toBe('force gauge, invented')
    const keep = made.getByRole('button', { name: 'Keep it', exact: true })
    expect(await keep.isDisabled()).toBe(true)
    const place = made.getByLabel('where on the closing edge', { exact: true })
    await place.fill('left end')
    await place.press('Enter')
    for (const [name, text] of [
      ['what was left between leaf and counterpart', '500'],
      ['peak of the force', '180'],
      ['how long the force stayed above what may last', '0.2'],
      ['mean of the force after the peak', '55'],
    ] as const) {
      await made.getByRole('button', { name: new RegExp(`^${name}: .*Change$`) }).click()
      await typed(on, text)
    }
    await made.getByLabel('day of the measurement', { exact: true }).fill('2026-11-20')
    await keep.click()
    await on.getByRole('button', { name: 'Remove force at left end', exact: true }).waitFor()
    expect(await on.getByLabel('day of the measurement: left end', { exact: true }).inputValue()).toBe('2026-11-20')
    expect(complaints).toEqual([])
    await context.close()
  }, 120_000)
})
