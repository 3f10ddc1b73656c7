// Prints every test title, grouped by file: what the product promises, as plain text.
import { execFileSync } from 'node:child_process'
import { relative } from 'node:path'

// Titles are made while the files load (seeds, cases), so the files are loaded and not only read.
const listed = execFileSync('vitest', ['list', '--staticParse=false', '--json'], {
  encoding: 'utf8',
  maxBuffer: 64 * 1024 * 1024,
  stdio: ['ignore', 'pipe', 'inherit'],
  shell: process.platform === 'win32',
})
const tests = JSON.parse(listed) as readonly { readonly name: string; readonly file: string }[]

for (const file of [...new Set(tests.map((test) => test.file))].sort()) {
  const titles = tests.filter((test) => test.file === file).map(({ name }) => `  ${name.replaceAll(' > ', ': ')}\n`)
  process.stdout.write(`${relative('.', file).replace(/\.test\.ts$/, '')}\n${titles.join('')}\n`)
}
