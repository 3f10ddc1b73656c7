import { describe, expect, it } from 'vitest'
import { appPage, DESK, openDemo, typed } from './app-page.ts'
import { builtApp } from './built.ts'
import { inBrowser } from './in-browser.ts'

const at = inBrowser(() => builtApp())

describe('what is around the opening', () => {
  it('is entered in sentences: a lane comes in whole, and of the building it can be said what is not there', async () => {
    const { page: on, context, complaints } = await appPage(at.browser, at.served.url, DESK)
    await openDemo(on)
    await on.goto(on.url().replace('judge', 'measure'))
    const figure = (name: RegExp) => on.getByRole('button', { name })
    await on.getByRole('button', { name: 'A lane', exact: true }).click()
    await figure(/^where the lane begins: not measured/).click()
    await typed(on, '400')
    expect(await on.getByRole('button', { name: 'Remove lane' }).count()).toBe(0)
    await figure(/^where the lane ends: not measured/).click()
    await typed(on, '9\' 6"')
    await figure(/^where the lane ends: 2895.6 mm/).waitFor()
    await on.getByLabel('Who passes in it').last().selectOption('vehicles')
    await on.getByLabel('Which way').last().selectOption('from-b')
    await figure(/^fastest pace: not measured/).click()
    await typed(on, '2,5')
    await figure(/^fastest pace: 2.5 m\/s/).waitFor()
    expect(await on.getByLabel('Which way').last().inputValue()).toBe('from-b')
    await on.getByRole('button', { name: 'No hood' }).click()
    await on.getByText('There is no hood.').waitFor()
    await on.getByRole('button', { name: /^Undo/ }).click()
    await on.getByText('No hood above the opening is described.').waitFor()
    await on.getByRole('button', { name: 'Remove lane' }).click()
    await figure(/^where the lane ends: 2895.6 mm/).waitFor({ state: 'detached' })
    expect(complaints).toEqual([])
    await context.close()
  })
  it('tells what was typed only of the thing it was typed for, also after a thing before it was taken away', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url, DESK)
    await openDemo(on)
    await on.goto(on.url().replace('judge', 'measure'))
    const radius = on.getByRole('button', { name: /^radius:/ })
    await radius.first().click()
    await typed(on, '4 1/2"')
    await radius.first().click()
    await on.getByText('was typed as 4 1/2"').waitFor()
    await on.keyboard.press('Escape')
    await on
      .getByRole('button', { name: /^Remove bollard/ })
      .first()
      .click()
    await radius.first().click()
    expect(await on.getByText('was typed as').count()).toBe(0)
    await context.close()
  })
})
