import type { DoorFile } from '@sillsight/document'

/** The invented doors that the command line ships; each is loaded when somebody opens it. */
const files = import.meta.glob<DoorFile>('../../cli/demo/*.json', { import: 'default' })

export const demoDoorNames: readonly string[] = Object.keys(files).map((path) => path.replace(/^.*\/|\.json$/g, ''))

/** @throws if there is no demonstration door of this name */
export async function demoDoor(name: string): Promise<DoorFile> {
  const load = Object.entries(files).find(([path]) => path.endsWith(`/${name}.json`))?.[1]
  if (!load) throw new Error(`demonstration door must be one of ${demoDoorNames.join(', ')}, got ${name}`)
  return load()
}
