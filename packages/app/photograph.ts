// Photographs every screen in every theme, language and size, and measures what of it can be measured: `npm run photograph -w packages/app`.
// Words after it: the folder for the pictures, then any of themes, languages, widths, to take these alone: `-- out/german dark de 360`.
// Ends with 1 where something is found.
import { existsSync, mkdirSync, readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { build } from 'vite'
import { serveBuild } from './serve.ts'
import { launch } from './test/browser.ts'
import { drawingFaults } from './test/drawing-faults.ts'
import { everyScreen, LANGUAGES, LOOKS, THEMES, TOUCH_PX } from './test/every-screen.ts'
import { pageFaults } from './test/page-faults.ts'
import { become, SIZES } from './test/sizes.ts'

const root = join(import.meta.dirname, '../..')
const [folder = join(root, 'out/photographs'), ...asked] = process.argv.slice(2)
/** Those that were asked for; all where none of their kind was. */
const chosen = <T extends string | number>(all: readonly T[]) =>
  all.some((each) => asked.includes(String(each))) ? all.filter((each) => asked.includes(String(each))) : all
const [themes, languages, widths] = [chosen(THEMES), chosen(LANGUAGES), chosen(SIZES.map(({ width }) => width))]
mkdirSync(folder, { recursive: true })
if (isOld()) await build({ configFile: join(import.meta.dirname, 'vite.config.ts'), logLevel: 'warn' })
const served = await serveBuild()
const browser = await launch()
let [pictures, faults] = [0, 0]
try {
  for (const look of LOOKS.filter(({ theme, language }) => themes.includes(theme) && languages.includes(language)))
    await everyScreen(browser, served.url, look, async (name, page) => {
      for (const size of SIZES.filter(({ width }) => widths.includes(width))) {
        await become(page, size)
        const called = `${name.replace(/[^a-z0-9]+/g, '-')}_${look.theme}-${look.language}_${size.width}${size.text_percent === 100 ? '' : `-text-${size.text_percent}`}`
        await page.screenshot({ path: join(folder, `${called}.png`) })
        pictures++
        for (const fault of [...(await pageFaults(page, TOUCH_PX[look.theme])), ...(await drawingFaults(page))]) {
          faults++
          process.stdout.write(`${called}: ${fault}\n`)
        }
      }
    })
} finally {
  await browser.close()
  await served.close()
}
process.stdout.write(`${pictures} pictures in ${folder}, ${faults} faults\n`)
if (faults > 0) process.exitCode = 1

/** Whether some source is newer than the build, or there is none. */
function isOld(): boolean {
  const built = join(import.meta.dirname, 'dist/index.html')
  if (!existsSync(built)) return true
  const since_ms = statSync(built).mtimeMs
  return ['app', 'document', 'engine', 'report'].some((each) => {
    const sources = join(root, 'packages', each, 'src')
    return readdirSync(sources, { recursive: true, encoding: 'utf8' }).some((file) => statSync(join(sources, file)).mtimeMs > since_ms)
  })
}
