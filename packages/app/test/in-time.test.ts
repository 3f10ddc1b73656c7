import { describe, expect, it } from 'vitest'
import { appPage, openDemo, typed } from './app-page.ts'
import { builtApp } from './built.ts'
import { inBrowser } from './in-browser.ts'

const at = inBrowser(() => builtApp())

describe('a finding over time', () => {
  it('is drawn beside its sentence, with a slider that moves leaf and body by keys and says where they are', async () => {
    const { page: on, context, complaints } = await appPage(at.browser, at.served.url)
    await openDemo(on, /Box hatch/)
    const failing = on.locator('.finding[data-verdict="fail"]').filter({ hasText: 'strikes' })
    const shows = failing.getByRole('button', { name: /^over time/ })
    await shows.focus()
    await on.keyboard.press('Enter')
    const slider = failing.getByRole('slider')
    await slider.waitFor()
    await failing.getByRole('img').waitFor()
    const contact = (await slider.getAttribute('aria-valuetext')) ?? ''
    expect(contact).toMatch(/^4\.87 s after .* 53 mm to go; the middle of the body is 21\d mm from the leaf line, toward the counter/)
    const leaf = on.locator('.moving-leaf')
    const before = await leaf.getAttribute('d')
    await on.getByRole('radio', { name: 'Elevation', exact: true }).click()
    await slider.focus()
    for (let i = 0; i < 5; i++) await on.keyboard.press('ArrowLeft')
    expect(await slider.getAttribute('aria-valuetext')).toMatch(/^4\.82 s/)
    expect(await leaf.getAttribute('d')).not.toBe(before)
    await failing.getByRole('button', { name: 'Step forward', exact: true }).click()
    expect(await slider.getAttribute('aria-valuetext')).toMatch(/^4\.86 s .*an output forbids closing$/)
    await failing.getByRole('button', { name: 'Play, slowed down', exact: true }).click()
    await expect.poll(() => slider.getAttribute('aria-valuetext'), { timeout: 20_000 }).not.toMatch(/^4\.86 s/)
    await failing.getByRole('button', { name: 'Pause', exact: true }).click()
    await shows.click()
    await leaf.waitFor({ state: 'detached' })
    expect(complaints).toEqual([])
    await context.close()
  }, 120_000)

  it('plays nothing where motion is not wanted: it is stepped', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url)
    await on.emulateMedia({ reducedMotion: 'reduce' })
    await openDemo(on, /Box hatch/)
    await on
      .getByRole('button', { name: /^over time/ })
      .first()
      .click()
    await on.getByRole('button', { name: 'Step back', exact: true }).waitFor()
    expect(await on.getByRole('button', { name: 'Play, slowed down', exact: true }).count()).toBe(0)
    await context.close()
  }, 120_000)

  it('is in order once a repair in time is written into the door', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url)
    await openDemo(on, /Box hatch/)
    const failing = on.locator('.finding[data-verdict="fail"]').filter({ hasText: 'strikes' })
    await failing.getByRole('button', { name: /^search for repairs/ }).click()
    const offer = failing.getByRole('button', { name: /^Write it into the door: Set the response of OUT 1/ })
    await offer.click({ timeout: 90_000 })
    await failing.waitFor({ state: 'detached', timeout: 60_000 })
    await context.close()
  }, 180_000)
})

describe('the drive', () => {
  it('is entered in sentences, in its own units, and a value that hardly occurs is asked about in place', async () => {
    const { page: on, context } = await appPage(at.browser, at.served.url)
    await openDemo(on, /Box hatch/)
    await on.getByRole('link', { name: 'Measure' }).first().click()
    await on.getByRole('button', { name: /^closing speed: 0\.3 m\/s/ }).click()
    const pad = on.getByRole('dialog')
    await pad.getByRole('textbox').fill('30')
    await pad.getByText('Is the unit right?').waitFor()
    await typed(on, '0.25')
    await on.getByRole('button', { name: /^closing speed: 0\.25 m\/s/ }).waitFor()
    // what the control does around a closing stands beside it
    await on.getByRole('button', { name: /^pre-warning: 0\.8 s/ }).click()
    await typed(on, '1.5')
    await on.getByRole('button', { name: /^pre-warning: 1\.5 s/ }).waitFor()
    await on.getByRole('combobox', { name: 'What a presence output does during the warning', exact: true }).selectOption('cancels')
    await on.getByRole('combobox', { name: 'How the leaf comes to rest', exact: true }).selectOption('none')
    await on.getByText('comes to rest by itself').waitFor()
    await on.getByRole('button', { name: /^way from the end of the delay at full speed to rest/ }).waitFor()
    await context.close()
  }, 120_000)
})
