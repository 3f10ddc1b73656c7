import type { Door, Judgement } from '@sillsight/engine'
import type { PlanOptions } from './options.ts'

/** A small plan of the doorway in characters, side A at the top. */
export function terminalPlan(door: Door, _judgement: Judgement, _options: PlanOptions): string {
  return door.name
}
