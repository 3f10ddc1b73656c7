import type { DoorFile } from '@sillsight/document'
import { EXPECTED_DANGERS } from '@sillsight/engine'

/** The facts about the control that findings ask for. */
export const CONTROL_FACTS = ['sensorFault', 'powerReturn', 'fire', 'escape', 'interlock'] as const

/** How many facts about the control somebody stated. */
export function statedFacts({ survey: { control } }: DoorFile): number {
  return CONTROL_FACTS.filter((fact) => control?.[fact] !== undefined).length
}

/** The kinds of danger to look for with such a leaf, and which of them nobody has said anything about. */
export function dangersToLookFor({ survey: { leaf, dangers } }: DoorFile) {
  const expected = leaf ? EXPECTED_DANGERS[leaf.travel] : []
  const points = dangers?.points ?? []
  const open = expected.filter((kind) => !dangers?.none?.includes(kind) && !points.some((point) => point.kind === kind))
  return { expected, open }
}
