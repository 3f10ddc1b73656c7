/** A stretch along one axis, mm. */
export interface Stretch {
  readonly from_mm: number
  readonly to_mm: number
}

/** The same stretches with those joined that overlap or touch, in rising order; stretches without length are left out. */
export function joined(stretches: readonly Stretch[]): readonly Stretch[] {
  const rising = stretches.filter(({ from_mm, to_mm }) => from_mm < to_mm).sort((a, b) => a.from_mm - b.from_mm || a.to_mm - b.to_mm)
  const result: { from_mm: number; to_mm: number }[] = []
  for (const { from_mm, to_mm } of rising) {
    const last = result[result.length - 1]
    if (last && from_mm <= last.to_mm) last.to_mm = Math.max(last.to_mm, to_mm)
    else result.push({ from_mm, to_mm })
  }
  return result
}

/** What is left of some stretches outside of others, in rising order. */
export function without(stretches: readonly Stretch[], others: readonly Stretch[]): readonly Stretch[] {
  let left = joined(stretches)
  for (const { from_mm, to_mm } of joined(others))
    left = left
      .flatMap((stretch) => [
        { from_mm: stretch.from_mm, to_mm: Math.min(stretch.to_mm, from_mm) },
        { from_mm: Math.max(stretch.from_mm, to_mm), to_mm: stretch.to_mm },
      ])
      .filter((stretch) => stretch.from_mm < stretch.to_mm)
  return left
}

/** Together, overlaps counted once. */
export function totalLength_mm(stretches: readonly Stretch[]): number {
  return joined(stretches).reduce((sum, { from_mm, to_mm }) => sum + to_mm - from_mm, 0)
}
