import type { Door, Finding } from '@sillsight/engine'
import type { Units } from '../options.ts'

/** One finding as a plain sentence: what is the matter, where, and by how much. */
export function sentence(door: Door, finding: Finding, _options: { readonly units: Units }): string {
  return `${door.name}: ${finding.rule}`
}
