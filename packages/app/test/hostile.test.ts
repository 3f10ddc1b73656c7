import { describe, expect, it } from 'vitest'
import { PARTS } from './app-page.ts'
import { builtApp } from './built.ts'
import { watched, written } from './hostile.ts'
import { HOSTILE } from './hostile-strings.ts'
import { inBrowser } from './in-browser.ts'

const at = inBrowser(builtApp)

describe('500 hostile strings', () => {
  it('are 500, and each is one of its own', () => {
    expect(new Set(HOSTILE).size).toBe(500)
  })
  it('run nowhere as file names and as what files say: names, notes, ids and keys of doors', async () => {
    const { page, context, traces } = await watched(at.browser, at.served.url)
    const files = HOSTILE.map((text, i) => {
      const said = JSON.stringify(text.slice(0, 200).replace(/[\u0000-\u001f\u202a-\u202e\u2066-\u2069]/g, ''))
      const door = `"survey":{"opening":{"width_mm":3000,"height_mm":2500}}`
      const content = [
        `{"sillsight":1,"name":${said},"note":${said},"sides":{"a":${said},"b":"hall"},${door}}`,
        `{"sillsight":1,${JSON.stringify(text)}:1,"__proto__":{"hit":1},${door}}`,
        `{"sillsight":1,"name":${JSON.stringify(text)},"zones":[{"id":${said}}],${door}}`,
        text,
      ][i % 4]
      return {
        name: `${text.slice(0, 60).replace(/[/\u0000]/g, '')}${i}.json`,
        mimeType: 'application/json',
        buffer: Buffer.from(content ?? ''),
      }
    })
    await page.locator('input[type=file]').setInputFiles(files)
    await page.getByRole('status').filter({ hasText: 'could not be brought in' }).waitFor({ timeout: 110_000 })
    const doors = page.locator('.door-list').first().getByRole('link')
    expect(await doors.count()).toBeGreaterThan(100)
    expect(await written(page, HOSTILE, 25)).toBe(500) // the search
    await page.getByRole('searchbox').fill('')
    await doors.first().click()
    await page.locator('.finding').first().waitFor()
    const address = page.url()
    for (const part of PARTS) {
      await page.goto(address.replace('judge', part))
      await page.locator('main').waitFor()
    }
    expect(await traces()).toEqual([])
    await context.close()
  })
})
