import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { appPage, DESK, KEPT_OFFLINE, openDemo, PARTS, typed } from './app-page.ts'
import { objectionsInThemes, wear } from './axe.ts'
import { builtApp } from './built.ts'
import { inBrowser } from './in-browser.ts'
import { become } from './sizes.ts'

const at = inBrowser(() => builtApp())

const PHONE = { width: 360, height: 740 }

const page = (size = DESK, options = {}) => appPage(at.browser, at.served.url, size, {}, options)

describe('a newcomer', () => {
  it('comes by touch from an empty app to a judged door of his own, without a network, on the number pad alone', async () => {
    const { page: on, context, complaints } = await page(PHONE, KEPT_OFFLINE)
    await on.evaluate(() => navigator.serviceWorker.ready)
    await on.reload()
    await context.setOffline(true)
    await on.getByRole('link', { name: 'New door' }).tap()
    for (const [taken, keys] of ['3 4 6 0', '2 . 8 m', '2 8 0 0', '1 5 0'].entries()) {
      if (taken === 2) await on.reload() // a phone closes pages that nobody looks at
      await expect.poll(() => on.locator('.first-figure[data-missing]').count()).toBe(4 - taken)
      await on.locator('.first-go button').tap()
      for (const key of keys.split(' '))
        await on
          .locator('.pad-keys')
          .getByRole('button', { name: key === '.' ? 'Point' : key, exact: true })
          .tap()
      await on.getByRole('button', { name: 'Enter', exact: true }).tap()
    }
    await on.getByRole('button', { name: 'Judge it' }).tap()
    await on.locator('.finding').first().waitFor()
    expect(await on.locator('.findings-head h2').textContent()).toMatch(/fail|not settled|in order/)
    await on.waitForFunction(() => document.querySelector('.head-saved')?.textContent?.startsWith('saved'))
    await on.reload()
    await on.locator('.finding').first().waitFor()
    expect(complaints).toEqual([])
    await context.close()
  })
  it('comes there by keyboard alone', async () => {
    const { page: on, context, complaints } = await page()
    const tabTo = async (name: RegExp) => {
      for (let i = 0; i < 60; i++) {
        await on.keyboard.press('Tab')
        const label = await on.evaluate(
          () => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '',
        )
        if (name.test(label)) return
      }
      throw new Error(`Tab must come to ${name}`)
    }
    await tabTo(/^New door$/)
    await on.keyboard.press('Enter')
    for (const [label, text] of [
      [/^Clear width/, '3460'],
      [/^Clear height/, '9\' 2 1/4"'],
      [/^Height of the sensor/, '2.8 m'],
      [/^Out from the leaf/, '150'],
    ] as const) {
      await tabTo(label)
      await on.keyboard.press('Enter')
      await on.getByRole('dialog').waitFor()
      await on.keyboard.type(text)
      await on.keyboard.press('Enter')
      await on.getByRole('dialog').waitFor({ state: 'detached' })
    }
    await tabTo(/^Judge it$/)
    await on.keyboard.press('Enter')
    await on.locator('.finding').first().waitFor()
    await on.goto(on.url().replace('judge', 'place'))
    await on
      .getByRole('button', { name: /^height above the floor/ })
      .first()
      .click()
    await on.getByRole('dialog').getByText('2.8 m').waitFor()
    await on.keyboard.press('Escape')
    await on.getByRole('link', { name: 'All doors' }).click()
    await on.getByRole('link', { name: 'New door', exact: true }).click()
    expect(await on.locator('.first-figure[data-missing]').count()).toBe(4)
    expect(complaints).toEqual([])
    await context.close()
  })
})

describe('an open door', () => {
  it('is changed in a sentence, on the drawing and by the arrow keys, and undone across a restart', async () => {
    const { page: on, context, complaints } = await page()
    await openDemo(on)
    const address = on.url()
    await on.goto(address.replace('judge', 'measure'))
    const width = on.getByRole('button', { name: /^Clear width:/ })
    await width.click()
    await typed(on, '3.5 m')
    await expect.poll(() => width.textContent()).toContain('3500 mm')
    await on.getByRole('button', { name: 'Change clear height' }).click()
    await typed(on, '13\' 1 1/2"')
    const height = on.getByRole('button', { name: /^Clear height:/ })
    await expect.poll(() => height.textContent()).toContain('4000.5 mm')
    await on.goto(address.replace('judge', 'place'))
    const along = on.getByRole('button', { name: /^along the leaf from the left jamb:/ })
    await on.getByRole('button', { name: /^scanner in the top corner .*Arrow keys/ }).focus()
    await on.keyboard.press('ArrowLeft')
    await expect.poll(() => along.textContent()).toContain('3320 mm')
    await on.keyboard.press('Shift+ArrowLeft')
    await expect.poll(() => along.textContent()).toContain('3319 mm')
    await on.waitForFunction(() => document.querySelector('.head-saved')?.textContent?.startsWith('saved'))
    await on.reload()
    await along.waitFor()
    for (let i = 0; i < 4; i++) await on.getByRole('button', { name: 'Undo' }).click()
    await expect.poll(() => along.textContent()).toContain('3330 mm')
    expect(await on.getByRole('button', { name: 'Undo' }).isEnabled()).toBe(false)
    await on.goto(address.replace('judge', 'measure'))
    await expect.poll(() => width.textContent()).toContain('3460 mm')
    expect(complaints).toEqual([])
    await context.close()
  })
  it('answers while something is dragged, says that it is provisional, and keeps one edit of the whole drag', async () => {
    const { page: on, context } = await page()
    await openDemo(on)
    await on.goto(on.url().replace('judge', 'place'))
    const grip = on.getByRole('button', { name: /^bollard at the left guide\. Arrow/ })
    const box = await grip.locator('.grip-mark').boundingBox()
    if (!box) throw new Error('the grip must be on the screen')
    await on.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
    await on.mouse.down()
    for (let i = 1; i <= 12; i++) await on.mouse.move(box.x + box.width / 2 + 8 * i, box.y + box.height / 2)
    await on.mouse.up()
    await on.goto(on.url().replace('place', 'measure'))
    const sentence = on
      .locator('.thing')
      .filter({ has: on.getByRole('button', { name: /^radius:/ }) })
      .first()
    await expect.poll(() => sentence.textContent()).toMatch(/radius|110 mm/)
    await expect.poll(() => sentence.textContent()).not.toContain('420 mm')
    await on.getByRole('button', { name: 'Undo' }).click()
    await expect.poll(() => sentence.textContent()).toContain('420 mm')
    expect(await on.getByRole('button', { name: 'Undo' }).isEnabled()).toBe(false)
    await context.close()
  })
  it('shows what sees a test body, or why nothing does', async () => {
    const { page: on, context } = await page()
    await openDemo(on)
    await on.goto(on.url().replace('judge', 'place'))
    await on.getByRole('button', { name: 'Test body', exact: true }).click()
    await expect.poll(() => on.locator('.key-note').textContent()).toMatch(/^seen by scanner/)
    await on.getByRole('button', { name: /^Test body .*Arrow keys/ }).focus()
    for (let i = 0; i < 75; i++) await on.keyboard.press('ArrowDown')
    await expect.poll(() => on.locator('.key-note').textContent()).toMatch(/^seen by nothing: /)
    await context.close()
  })
  it('is seen and written by two tabs at once', async () => {
    const { page: one, context } = await page()
    await openDemo(one)
    await one.goto(one.url().replace('judge', 'measure'))
    const two = await context.newPage()
    await two.goto(one.url())
    await two.getByRole('button', { name: /^Thickness of the leaf:/ }).click()
    await typed(two, '60')
    await expect.poll(() => one.getByRole('button', { name: /^Thickness of the leaf:/ }).textContent()).toBe('60 mm')
    await one.getByRole('button', { name: /^How far the leaf stands out:/ }).click()
    await typed(one, '35')
    await expect.poll(() => two.getByRole('button', { name: /^How far the leaf stands out:/ }).textContent()).toBe('35 mm')
    await context.close()
  })
})

describe('every screen', () => {
  it('has nothing that axe objects to, in any theme', async () => {
    const { page: on, context } = await page(PHONE)
    await on.getByRole('link', { name: 'New door' }).waitFor()
    const found: string[] = [...(await objectionsInThemes(on))]
    await on.getByRole('link', { name: 'New door' }).click()
    await on.locator('.first-figure').first().waitFor()
    found.push(...(await objectionsInThemes(on)))
    await on.goto(at.served.url)
    await openDemo(on)
    const address = on.url()
    for (const part of PARTS) {
      await on.goto(address.replace('judge', part))
      await on.locator('main h2').first().waitFor({ state: 'attached' })
      await on.waitForTimeout(300)
      found.push(...(await objectionsInThemes(on)).map((each) => `${part}: ${each}`))
    }
    await on.goto(address.replace('judge', 'measure'))
    await on.getByRole('button', { name: /^Clear width:/ }).click()
    await on.getByRole('dialog').waitFor()
    found.push(...(await objectionsInThemes(on, '[role=dialog]')).map((each) => `pad: ${each}`))
    expect(found).toEqual([])
    await context.close()
  })
  it('fits phone, tablet and desk: nothing is wider than the screen', async () => {
    const sizes = [PHONE, { width: 820, height: 1180 }, DESK, { width: 320, height: 640 }]
    const { page: on, context } = await page(PHONE)
    const wide = () => on.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
    const fits = async (screen: string) => {
      for (const size of sizes) {
        await become(on, { ...size, text_percent: 100 })
        expect({ screen, ...size, wider_px: await wide() }).toEqual({ screen, ...size, wider_px: 0 })
      }
    }
    await on.getByRole('link', { name: 'New door' }).waitFor()
    await fits('list')
    await openDemo(on)
    const address = on.url()
    for (const part of PARTS) {
      await on.goto(address.replace('judge', part))
      await on.locator('main').waitFor()
      await fits(part)
    }
    await context.close()
  })
  it('gives a thumb 48 px, and 64 in the theme for the field', async () => {
    const { page: on, context } = await page(PHONE)
    await openDemo(on)
    for (const [theme, least] of [
      ['paper', 48],
      ['sun', 64],
    ] as const) {
      await wear(on, theme)
      const small = await on.evaluate(
        (px) =>
          [...document.querySelectorAll<HTMLElement>('main button, main select, .tape a, .head button')]
            .map((each) => ({
              label: each.getAttribute('aria-label') ?? each.textContent,
              height: Math.round(each.getBoundingClientRect().height),
            }))
            .filter(({ height }) => height > 0 && height < px),
        least,
      )
      expect({ theme, small }).toEqual({ theme, small: [] })
    }
    await context.close()
  })
})

describe('the build', () => {
  it.each(['judge', 'measure', 'place'])(
    'loads at most 200 kB of compressed script until a door is on the screen, where %s opens first; the judging worker comes beside it',
    (part) => {
      const index = readFileSync(join(at.served.folder, 'index.html'), 'utf8')
      const named = [...index.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.js)"/g)].map(([, file]) => file ?? '')
      const loaded = new Set<string>()
      const follow = (file: string) => {
        if (loaded.has(file)) return
        loaded.add(file)
        for (const [, next] of readFileSync(join(at.served.folder, file), 'utf8').matchAll(
          /from\s*["']\.\/([^"']+\.js)["']|import\s*["']\.\/([^"']+\.js)["']/g,
        ))
          if (next) follow(`assets/${next}`)
      }
      for (const file of named) follow(file)
      const files = readdirSync(join(at.served.folder, 'assets'))
      for (const name of files.filter((file) => new RegExp(`^(door-(?!menu)|${part}-)`).test(file)))
        if (name.endsWith('.js')) follow(`assets/${name}`)
      const bytes = [...loaded].reduce((sum, file) => sum + gzipSync(readFileSync(join(at.served.folder, file))).length, 0)
      expect(loaded.size).toBeGreaterThan(3)
      expect(bytes).toBeLessThanOrEqual(200_000)
    },
  )
  it('asks nobody else for anything', async () => {
    const { page: on, context } = await page(DESK, KEPT_OFFLINE)
    const foreign: string[] = []
    on.on('request', (request) => {
      if (!request.url().startsWith(at.served.url) && !/^(blob|data):/.test(request.url())) foreign.push(request.url())
    })
    await openDemo(on)
    await on.waitForTimeout(1500)
    expect(foreign).toEqual([])
    await context.close()
  })
  it('starts again without a network', async () => {
    const { page: on, context } = await page(DESK, KEPT_OFFLINE)
    await openDemo(on)
    const address = on.url()
    await on.evaluate(() => navigator.serviceWorker.ready)
    await on.reload()
    await context.setOffline(true)
    await on.goto('about:blank')
    await on.goto(address)
    await on.locator('.finding').first().waitFor()
    await context.close()
  })
})
