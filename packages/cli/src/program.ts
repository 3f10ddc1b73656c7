import { relative } from 'node:path'

/** How this program is started, for hints that can be copied: `sillsight`, or from a checkout its source under the Node that runs it. */
export function program(): string {
  const main = process.argv[1] ?? ''
  if (!main.endsWith('.ts')) return 'sillsight'
  const node = process.execPath.includes('.runtime') ? relative('.', process.execPath) : 'node'
  return `${node} ${relative('.', main)}`
}
