import type { DoorFile } from '@sillsight/document'

/** The invented doors that the command line ships; each is loaded when somebody opens it. */
const files = import.meta.glob<DoorFile>('../../cli/demo/*.json', { import: 'default' })

export const demoDoorNames: readonly string[] = Object.keys(files).map((path) => path.replace(/^.*\/|\.json$/g, ''))

/**
 * @param said how the reader's language calls what the file calls in English
 * @throws if there is no demonstration door of this name
 */
export async function demoDoor(name: string, said: (text: string) => string): Promise<DoorFile> {
  const load = Object.entries(files).find(([path]) => path.endsWith(`/${name}.json`))?.[1]
  if (!load) throw new Error(`demonstration door must be one of ${demoDoorNames.join(', ')}, got ${name}`)
  return worded(await load(), said) as DoorFile
}

/** What people read in a door file; everything else in it is read by the program. */
const READ = ['name', 'note', 'a', 'b', 'place', 'instrument', 'by']

function worded(value: unknown, said: (text: string) => string, key = ''): unknown {
  if (typeof value === 'string') return READ.includes(key) ? said(value) : value
  if (Array.isArray(value)) return value.map((each) => worded(each, said))
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, worded(each, said, name)]))
}
