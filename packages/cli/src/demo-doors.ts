import { existsSync, readdirSync } from 'node:fs'
import { join, relative } from 'node:path'
import { shellWord } from './program.ts'

/** The folder of demonstration doors: beside `src` here, beside `dist` in the package. */
export const demoFolder = join(import.meta.dirname, '..', 'demo')

/** Full names of the demonstration doors, by name. */
export function demoDoors(): readonly string[] {
  if (!existsSync(demoFolder)) return []
  return readdirSync(demoFolder)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .map((name) => join(demoFolder, name))
}

/** A demonstration door as one can type it from here, for the examples in the help. */
export function demoDoorForHelp(): string {
  const [first = 'door.json'] = demoDoors()
  const near = relative(process.cwd(), first)
  return shellWord(near.startsWith('..') ? first : near)
}
