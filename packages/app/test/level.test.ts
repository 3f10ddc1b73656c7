import { builtinSensors } from '@sillsight/document'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { appPage, DESK, openFile, unfold } from './app-page.ts'
import { objectionsInThemes, wear } from './axe.ts'
import { builtApp } from './built.ts'
import { TOUCH_PX } from './every-screen.ts'
import { inBrowser } from './in-browser.ts'

const at = inBrowser(builtApp)

const PHONE = { width: 360, height: 740 }

/** On its right edge; browsers count from -90 up to, not including, 90 degrees. */
const RIGHT = 89.9999
const DOOR = {
  name: 'small',
  sides: { a: 'yard', b: 'hall' },
  survey: { opening: { width_mm: 3000, height_mm: 2500 }, floor: { profile_mm: [[0, 0]], slopeX_percent: 1 } },
  sensors: [{ id: 'one', use: builtinSensors()[0]?.id, pose: { x_mm: 1500, y_mm: 150, z_mm: 2500, tilt_deg: 60 } }],
}

/** Counts who listens to the sensor, before any script of the page runs. */
async function listeners(on: Page): Promise<() => Promise<number>> {
  await on.addInitScript(() => {
    const reach = window as unknown as { listening: number }
    reach.listening = 0
    const [add, remove] = [window.addEventListener, window.removeEventListener]
    window.addEventListener = function (this: Window, ...all: Parameters<typeof add>) {
      if (/^device/.test(all[0])) reach.listening++
      return add.apply(this, all)
    } as typeof add
    window.removeEventListener = function (this: Window, ...all: Parameters<typeof remove>) {
      if (/^device/.test(all[0])) reach.listening--
      return remove.apply(this, all)
    } as typeof remove
  })
  await on.reload()
  return () => on.evaluate(() => (window as unknown as { listening: number }).listening)
}

/** The sensor of the browser itself says this from now on. */
async function sensor(on: Page) {
  const session = await on.context().newCDPSession(on)
  return (beta: number, gamma: number) => session.send('DeviceOrientation.setDeviceOrientationOverride', { alpha: 0, beta, gamma })
}

async function atField(part: string, field: RegExp, size = PHONE, preferences: object = {}) {
  const opened = await appPage(at.browser, at.served.url, size, preferences)
  const on = opened.page
  const listening = await listeners(on)
  await openFile(on, DOOR, part)
  if (part === 'measure') await unfold(on, 'Floor')
  await on.getByRole('button', { name: field }).click()
  await on.getByRole('dialog').waitFor()
  return { ...opened, on, listening, field: on.getByRole('button', { name: field }) }
}

describe('the spirit level', () => {
  it('reads the lean of a sensor, says that it is not calibrated, is calibrated by turning round, and listens only while it is open', async () => {
    const { on, context, complaints, listening, field } = await atField('place', /^lean of the field:/)
    const says = await sensor(on)
    expect(await listening()).toBe(0)
    await on.getByRole('button', { name: 'Spirit level' }).tap()
    await says(0.8, -90) // on its left edge, the right end lower by 0.8
    await on.getByRole('button', { name: 'Take -0.8°' }).waitFor()
    await on.getByText('Not calibrated').waitFor()
    expect(await listening()).toBe(1)
    await on.getByText('back, away from there').tap()
    await on.getByRole('button', { name: 'Take 0.8°' }).tap()
    await on.getByText('spirit level, not calibrated').waitFor()
    expect(await listening()).toBe(0)
    await on.getByRole('button', { name: 'Enter', exact: true }).tap()
    await expect.poll(() => field.textContent()).toBe('0.8°')
    await on.getByRole('button', { name: 'What was done' }).click()
    await on.getByText('0.8 (spirit level, not calibrated)').waitFor()
    await on.keyboard.press('Escape')

    await field.tap()
    await on.getByRole('button', { name: 'Spirit level' }).tap()
    await says(0.8, -89.9999)
    await on.getByRole('button', { name: 'Calibrate' }).tap()
    await on.getByRole('button', { name: 'Keep the first' }).tap()
    await says(-1.6, -90) // turned round: +1.6 now; the surface falls by 1.2, the device says 0.4 too much
    await expect.poll(() => on.locator('.level-figure').textContent()).toBe('1.6°')
    await expect.poll(() => on.getByRole('button', { name: 'Keep the second' }).getAttribute('aria-disabled')).toBe('false')
    await on.getByRole('button', { name: 'Keep the second' }).tap()
    await on.getByText('its own error of 0.4° is taken off').waitFor()
    await on.getByRole('button', { name: 'Take 1.2°' }).tap()
    await on.getByText('spirit level, calibrated').waitFor()
    await on.keyboard.press('Escape')
    expect(await listening()).toBe(0)
    expect(complaints).toEqual([])
    await context.close()
  })
  it('reads the slope of a floor in percent, by keyboard', async () => {
    const { on, context, complaints, field } = await atField('measure', /^Rise of the floor along the opening:/, PHONE, {})
    const says = await sensor(on)
    await on.getByRole('button', { name: 'Spirit level' }).focus()
    await on.keyboard.press('Enter')
    await says(88, 0.0001) // upright, leaning back by 2 degrees: nothing rises
    await on.getByRole('button', { name: 'Take 0 %' }).waitFor()
    // on its right edge with the top, which points right, up by 2 degrees: 100 tan 2 = 3.49 %
    await says(2, RIGHT)
    const take = on.getByRole('button', { name: 'Take 3.5 %' })
    await take.waitFor()
    expect(await on.locator('.level-figure').textContent()).toBe('2.0°')
    await take.focus()
    await on.keyboard.press('Enter')
    await on.getByRole('dialog').getByRole('textbox').press('Enter')
    await expect.poll(() => field.textContent()).toBe('3.5 %')
    expect(complaints).toEqual([])
    await context.close()
  })
  it('reads the roll of a housing that leans: 10 degrees of rise under a tilt of 60 are 20.3 of roll', async () => {
    const { on, context } = await atField('place', /^roll of the fan:/)
    const says = await sensor(on)
    await on.getByRole('button', { name: 'Spirit level' }).tap()
    await on.getByText('to the right, as the sensor looks').first().waitFor()
    await says(10, RIGHT) // sin 10 = 0.17365, twice that 0.34730, whose angle is 20.32
    await on.getByRole('button', { name: 'Take 20.3°' }).waitFor()
    expect(await on.locator('.level-figure').textContent()).toBe('10.0°')
    await context.close()
  })
  it('takes nothing while it is moved, and nothing while it lies flat', async () => {
    const { on, context, field } = await atField('place', /^lean of the field:/)
    const before = await field.textContent()
    await on.getByRole('button', { name: 'Spirit level' }).tap()
    await on.evaluate(() => {
      let beta = 0
      setInterval(() => {
        beta = (beta + 1) % 9
        window.dispatchEvent(new DeviceOrientationEvent('deviceorientation', { alpha: 0, beta, gamma: -90 }))
      }, 60)
    })
    await on.getByText('Hold it still.').waitFor()
    const take = on.getByRole('button', { name: /^Take / })
    expect(await take.getAttribute('aria-disabled')).toBe('true')
    await take.tap({ force: true })
    expect(await on.getByRole('dialog').getByRole('textbox').count()).toBe(0)
    await on.keyboard.press('Escape')
    expect(await field.textContent()).toBe(before)
    await context.close()

    const other = await atField('place', /^lean of the field:/)
    const says = await sensor(other.on)
    await other.on.getByRole('button', { name: 'Spirit level' }).tap()
    await says(3, 4)
    await other.on.getByText('It lies flat. Stand it on an edge.').waitFor()
    expect(await other.on.getByRole('button', { name: /^Take / }).count()).toBe(0)
    await other.context.close()
  })
  it('refuses a calibration that would be no error of a device', async () => {
    const { on, context } = await atField('place', /^lean of the field:/)
    const says = await sensor(on)
    await on.getByRole('button', { name: 'Spirit level' }).tap()
    await says(-7, -90)
    await on.getByRole('button', { name: 'Calibrate' }).tap()
    await on.getByRole('button', { name: 'Keep the first' }).tap()
    await on.getByRole('button', { name: 'Keep the second' }).tap() // not turned round at all
    await on.getByText('That would be an error of 7.0°').waitFor()
    await on.getByRole('button', { name: 'Keep the first' }).waitFor()
    expect(await on.evaluate(() => localStorage.getItem('sillsight.level'))).toBe(null)
    await context.close()
  })
  it('says that no reading comes where there is no sensor, or that it was not allowed, and is not offered on a desk without touch', async () => {
    const { on, context } = await atField('place', /^lean of the field:/)
    await on.getByRole('button', { name: 'Spirit level' }).tap()
    await on.getByText('No reading comes').waitFor()
    await on.getByRole('button', { name: 'Back to the keys' }).tap()
    await on.evaluate(() => {
      ;(DeviceOrientationEvent as unknown as { requestPermission: () => Promise<string> }).requestPermission = async () => 'denied'
    })
    await on.getByRole('button', { name: 'Spirit level' }).tap()
    await on.getByText('was not allowed to read the sensor').waitFor()
    await context.close()
    const desk = await atField('place', /^lean of the field:/, DESK)
    expect(await desk.on.getByRole('button', { name: 'Spirit level' }).count()).toBe(0)
    await desk.context.close()
  })
})

describe('photos, pins and the level', () => {
  const small = (on: Page, least_px: number) =>
    on
      .getByRole('dialog')
      .locator('button, input, label')
      .evaluateAll(
        (all, least) =>
          all
            .filter((each) => each.getAttribute('type') !== 'radio') // its label is what is touched
            .map((each) => [each.getAttribute('aria-label') ?? each.textContent, Math.round(each.getBoundingClientRect().height)] as const)
            .filter(([, height]) => height < least),
        least_px,
      )

  it('have nothing that axe objects to and are as large as a thumb, in any theme', async () => {
    const { on, context } = await atField('place', /^lean of the field:/, PHONE)
    const faults = async () => {
      const found = [...(await objectionsInThemes(on, '[role=dialog]'))]
      for (const theme of ['sun', 'dark', 'paper'] as const) {
        await wear(on, theme)
        found.push(...(await small(on, TOUCH_PX[theme])).map((each) => `${theme}: ${each}`))
        expect(await on.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0)
      }
      return found
    }
    const says = await sensor(on)
    await on.getByRole('button', { name: 'Spirit level' }).tap()
    await says(2, -90)
    await on.getByRole('button', { name: 'Take -2°' }).waitFor()
    const found = await faults()
    await on.keyboard.press('Escape')
    await on.goto(on.url().replace('place', 'measure'))
    await unfold(on, 'Photos')
    const jpeg = Buffer.from(
      await on.evaluate(async () => {
        const canvas = new OffscreenCanvas(400, 300)
        canvas.getContext('2d')?.fillRect(0, 0, 90, 90)
        return [...new Uint8Array(await (await canvas.convertToBlob({ type: 'image/jpeg' })).arrayBuffer())]
      }),
    )
    await on.locator('.group input[type=file]').setInputFiles({ name: 'a.jpg', mimeType: 'image/jpeg', buffer: jpeg })
    await on.getByRole('button', { name: /: set pins$/ }).tap()
    await on.getByRole('button', { name: /^Touch a place to set a pin/ }).tap({ position: { x: 60, y: 60 } })
    await on.getByLabel('What is at pin 1').waitFor()
    found.push(...(await faults()))
    expect(found).toEqual([])
    await context.close()
  })
})
