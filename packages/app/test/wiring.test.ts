import type { Page } from 'playwright-core'
import { beforeAll, describe, expect, it } from 'vitest'
import { appPage, openDemo, typed } from './app-page.ts'
import { objections } from './axe.ts'
import { builtApp } from './built.ts'
import { inBrowser } from './in-browser.ts'

const at = inBrowser(() => builtApp())

const boardOf = (on: Page) => on.getByRole('region', { name: 'Wiring diagram', exact: true })
const chapter = (on: Page, title: string) => boardOf(on).locator('summary').filter({ hasText: title })
const undo = (on: Page) => on.getByRole('button', { name: /^Undo/ }).click()

describe('the wiring of a door', () => {
  let on: Page
  let complaints: string[]
  beforeAll(async () => {
    const opened = await appPage(at.browser, at.served.url)
    on = opened.page
    complaints = opened.complaints
    await openDemo(on, /Freezer door/)
    await on.goto(on.url().replace(/judge$/, 'fit'))
    await boardOf(on).waitFor()
  }, 120_000)

  it('is drawn; each fault can be played on it by keys, and says what the control then believes', async () => {
    const board = boardOf(on)
    await board.getByRole('combobox', { name: 'How it stands', exact: true }).selectOption('Somebody before over-leaf')
    await board.getByText('stop and reverse: somebody there', { exact: true }).waitFor()
    await chapter(on, 'Every single fault').focus()
    await on.keyboard.press('Enter')
    const hidden = board.locator('[data-effect="hidden-and-dangerous"]')
    await hidden.getByRole('button', { name: 'Core W1.4 touching plus', exact: true }).focus()
    await on.keyboard.press('Enter')
    await board.getByText('stop and reverse: nobody there', { exact: true }).waitFor()
    expect(await board.locator('[aria-live]').textContent()).toContain('Wrong: core W1.4 touching plus.')
    await board.getByRole('button', { name: 'Nothing wrong again', exact: true }).click()
    await board.getByText('stop and reverse: somebody there', { exact: true }).waitFor()
    await board.getByRole('combobox', { name: 'How it stands', exact: true }).selectOption('Nobody there')
    expect(complaints).toEqual([])
  }, 120_000)

  it('goes on being drawn where the core goes whose fault is played', async () => {
    const board = boardOf(on)
    await board.getByRole('button', { name: 'Cores W1.3 and W1.4 touching', exact: true }).click()
    await board.getByText('Wrong: cores W1.3 and W1.4 touching.').waitFor()
    await on.getByRole('button', { name: /core W1\.3$/ }).click()
    await board.getByText('Nothing is wrong.').waitFor()
    await undo(on)
    await on.getByRole('combobox', { name: 'where core W1.3 begins', exact: true }).waitFor()
    await chapter(on, 'Every single fault').click()
    expect(complaints).toEqual([])
  }, 120_000)

  it('is put right by dragging the end of a core to another terminal, and is in order then', async () => {
    const board = boardOf(on)
    const end = board.locator('[data-core="W1.5"][data-end="from"]')
    await end.scrollIntoViewIfNeeded()
    const box = await end.boundingBox()
    const words = await board
      .locator('svg text')
      .filter({ hasText: /^test$/ })
      .first()
      .boundingBox()
    if (!box || !words) throw new Error('the end and the terminal must be on the screen')
    await on.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
    await on.mouse.down()
    await on.mouse.move(words.x + words.width + 8, words.y + words.height / 2, { steps: 8 })
    await on.mouse.up()
    const from = on.getByRole('combobox', { name: 'where core W1.5 begins', exact: true })
    await expect.poll(() => from.inputValue()).toBe('control.test')
    const does = on.getByRole('combobox', { name: 'what the control does where its test fails', exact: true })
    await on.locator('summary').filter({ hasText: 'Supply, sensors and control' }).click()
    await does.selectOption('does not close')
    await board.getByText('none hides', { exact: true }).waitFor({ timeout: 90_000 })
    await undo(on)
    await expect.poll(() => does.inputValue()).toBe('nothing')
    await undo(on)
    await expect.poll(() => from.inputValue()).toBe('control.24V')
    expect(complaints).toEqual([])
  }, 240_000)

  it('is searched for a better one, which is looked at on the drawing, taken by keys, judged anew and taken back', async () => {
    const board = boardOf(on)
    await chapter(on, 'Better wiring').click()
    await board.getByRole('button', { name: 'Search for connections', exact: true }).click()
    const found = board.getByRole('region', { name: 'Connections that were found', exact: true })
    await found.getByText('Connection 1 is better.').waitFor()
    await found.getByText('ways to connect were tried').waitFor()
    await found.getByRole('button', { name: 'Core over-leaf.3 touching plus', exact: true }).first().click()
    const told = board.locator('[aria-live]').first()
    await expect.poll(() => told.textContent()).toContain('On the drawing: Connection 1, not written into the door.')
    expect(await told.textContent()).toContain('Wrong: core over-leaf.3 touching plus.')
    expect(await board.locator('.core-ends').count()).toBe(0)
    expect(await objections(on)).toEqual([])
    await found.getByRole('button', { name: 'Write it into the door: Connection 1', exact: true }).focus()
    await on.keyboard.press('Enter')
    await expect.poll(() => on.evaluate(() => document.activeElement?.textContent)).toContain('Connection 1 is written into the door')
    await expect.poll(() => on.getByRole('combobox', { name: 'where core over-leaf.3 begins', exact: true }).inputValue()).toBe('control.S')
    await expect.poll(() => chapter(on, 'Every single fault').textContent(), { timeout: 60_000 }).toContain('5 hide')
    await undo(on)
    await on.getByRole('combobox', { name: 'where core W1.5 begins', exact: true }).waitFor()
    await expect.poll(() => chapter(on, 'Every single fault').textContent(), { timeout: 60_000 }).toContain('7 hide')
    expect(complaints).toEqual([])
  }, 240_000)

  it('is searched in a worker that ends when it is stopped', async () => {
    const board = boardOf(on)
    const searching = () => on.workers().filter((each) => each.url().includes('searching')).length // those that judge come and go meanwhile
    // it is asked nothing, or a fast machine is done before anybody can stop it
    await on.evaluate(() => {
      const kept = globalThis as unknown as { post: typeof Worker.prototype.postMessage }
      kept.post = Worker.prototype.postMessage
      Worker.prototype.postMessage = () => {}
    })
    await board.getByRole('button', { name: 'Search for connections', exact: true }).click()
    await expect.poll(searching).toBe(1)
    await on.evaluate(() => {
      Worker.prototype.postMessage = (globalThis as unknown as { post: typeof Worker.prototype.postMessage }).post
    })
    await board.locator('.repairs-trying').getByRole('button', { name: 'stop', exact: true }).click()
    await board.getByRole('button', { name: 'Search for connections', exact: true }).waitFor()
    await expect.poll(searching, { timeout: 10_000 }).toBe(0)
    await chapter(on, 'Better wiring').click()
    expect(complaints).toEqual([])
  }, 120_000)

  it('is traced by a meter: what fits is left, the next place is named and drawn, and readings outlive a reload', async () => {
    const board = boardOf(on)
    await chapter(on, 'Find a fault on site').focus()
    await on.keyboard.press('Enter')
    const next = board.locator('.next-measurement')
    await next.getByText('Measure next from over-leaf.3 to over-leaf.4, with somebody before over-leaf.').waitFor()
    expect(await board.locator('.meter-leads [data-lead]').count()).toBe(2)
    await board.getByRole('button', { name: /^Enter what it shows from/ }).click()
    expect(await on.getByRole('dialog').textContent()).toContain('red lead at over-leaf.3, black lead at over-leaf.4')
    await on.keyboard.press('Escape')
    await on.getByRole('dialog').waitFor({ state: 'detached' })
    const readings = board.getByRole('region', { name: 'What was measured and seen', exact: true })
    // the stop line carries nothing: entered by keys, terminals, standing and figure
    await readings.getByRole('button', { name: 'Another voltage', exact: true }).click()
    await readings.getByRole('combobox', { name: 'red lead of reading 1', exact: true }).selectOption('over-leaf.4')
    await readings.getByRole('button', { name: /^voltage of reading 1/ }).focus()
    await on.keyboard.press('Enter')
    await typed(on, '24')
    await readings.getByRole('button', { name: 'What the control shows', exact: true }).click()
    await readings.getByRole('combobox', { name: 'what reading 2 shows', exact: true }).selectOption('somebody there')
    const suspects = board.getByRole('region', { name: 'What can be wrong', exact: true })
    await suspects.getByText('All 2 readings are explained by:').waitFor()
    expect(await suspects.getByRole('button').allTextContents()).toContain('Core W1.4 broken')
    await suspects.getByRole('button', { name: 'Core W1.4 broken', exact: true }).click()
    await board.getByText('Wrong: core W1.4 broken.').waitFor()
    await readings.getByRole('button', { name: 'What a sensor shows', exact: true }).click() // half a reading
    expect(await objections(on)).toEqual([])
    await on.reload()
    await chapter(on, 'Find a fault on site').click()
    await suspects.getByText('All 2 readings are explained by:').waitFor()
    await readings.getByRole('combobox', { name: 'what reading 3 shows', exact: true }).waitFor()
    await readings.getByRole('button', { name: 'Begin anew', exact: true }).click()
    await suspects.waitFor({ state: 'detached' })
    expect(complaints).toEqual([])
  }, 240_000)

  it('has a second channel, a line that the control feeds, a joint and a resistor entered by keys', async () => {
    const board = boardOf(on)
    const press = async (name: string) => {
      await on.getByRole('button', { name, exact: true }).focus()
      await on.keyboard.press('Enter')
    }
    const choice = (name: string) => on.getByRole('combobox', { name, exact: true })
    await on.locator('summary').filter({ hasText: 'Supply, sensors and control' }).click()
    await press('One more input')
    await choice('Input stop has a second channel').selectOption({ index: 1 })
    const other = await choice('the other channel of input stop').inputValue()
    await expect.poll(() => choice(`the other channel of input ${other}`).inputValue()).toBe('stop')
    await press(`how long input ${other} and the other channel may disagree: 0.5 s. Change`)
    await typed(on, '0.2')
    await on.getByRole('button', { name: /^how long input stop and the other channel may disagree: 0.2 s/ }).waitFor()
    await press('The control feeds the line of stop itself')
    await expect.poll(() => choice('terminal from which the control feeds input stop').inputValue()).toBe('control.24V')
    await press('One more resistor')
    await board
      .locator('svg text')
      .filter({ hasText: /^R-1\w*, 8200/ })
      .waitFor()
    await press('One more joint')
    const joint = await choice('where core W1.3 begins').locator('option[value^="joint."]').getAttribute('value')
    await choice('where core W1.3 begins').selectOption(joint)
    await board.locator('.core-ends [data-core="W1.3"]').first().waitFor()
    expect(await objections(on)).toEqual([])
    await press('Remove second channel of input stop')
    await choice(`the other channel of input ${other}`).waitFor({ state: 'detached' })
    await choice(`Input ${other} has a second channel`).waitFor()
    expect(complaints).toEqual([])
  }, 240_000)

  it('is begun where nobody described one, and a core goes where it is chosen to go', async () => {
    const { page, context, complaints: others } = await appPage(at.browser, at.served.url)
    await openDemo(page, /Loading door/)
    await page.goto(page.url().replace(/judge$/, 'fit'))
    await page.getByRole('button', { name: 'How it is wired', exact: true }).click()
    await page.locator('[data-at="wiring"]:focus').waitFor()
    await page.keyboard.press('Enter')
    await boardOf(page).waitFor()
    const to = page.getByRole('combobox', { name: 'where core W1.4 ends', exact: true })
    await to.selectOption('corner.closed-when-seen')
    await expect.poll(() => to.inputValue()).toBe('corner.closed-when-seen')
    await boardOf(page).getByText(/hide/).first().waitFor()
    expect(others).toEqual([])
    await context.close()
  }, 120_000)
})
