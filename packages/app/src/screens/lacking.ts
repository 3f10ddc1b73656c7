import type { Judgement } from '@sillsight/engine'
import { useDoor } from './at-door.ts'

interface Lacking {
  readonly need: string
  /** How many findings it would settle. */
  readonly count: number
}

const known = new WeakMap<Judgement, readonly Lacking[]>()

/** The needs of all findings that are not settled, those that settle most first. */
export function lackingIn(judgement: Judgement): readonly Lacking[] {
  const found = known.get(judgement) ?? asked(judgement)
  known.set(judgement, found)
  return found
}

function asked({ findings }: Judgement): readonly Lacking[] {
  const counts = new Map<string, number>()
  for (const finding of findings) {
    if (finding.verdict !== 'undetermined') continue
    for (const need of new Set(finding.needs)) counts.set(need, (counts.get(need) ?? 0) + 1)
  }
  return [...counts].map(([need, count]) => ({ need, count })).sort((a, b) => b.count - a.count || (a.need < b.need ? -1 : 1))
}

/** How many values that findings ask for are entered at one of these places or below. */
export function useMissingIn(places: readonly string[]): number {
  const { shown } = useDoor().answers
  if (!shown) return 0
  return lackingIn(shown.judgement).filter(({ need }) => places.some((place) => need === place || need.startsWith(`${place}/`))).length
}
