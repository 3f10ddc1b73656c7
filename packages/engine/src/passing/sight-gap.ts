import type { Stretch, View } from './output.ts'

/** The stretch of a body's way, some of it in the leaf's plane, over which no output's field sees it; and for how long outputs hold on from its start. */
export interface SightGap {
  readonly from_mm: number
  readonly to_mm: number
  readonly gap_s: number
  readonly held_s: number
}

/**
 * The gap in sight that its hold bridges worst, at an even speed: the slowest of a lane is the worst, as gaps grow with slowness and holds do not. It
 * begins where the body was last seen (or where it enters the plane, if never), and ends where it is seen again or has left the plane.
 *
 * @returns undefined where the body is seen all the time that any of it is in the plane
 */
export function worstSightGap(views: readonly View[], enter_mm: number, leave_mm: number, slowest_mm_per_s: number): SightGap | undefined {
  const gaps = gapsIn(
    views.flatMap(({ visible }) => visible),
    enter_mm,
    leave_mm,
  )
  let worst: SightGap | undefined
  for (const { from_mm, to_mm } of gaps) {
    const gap = { from_mm, to_mm, gap_s: (to_mm - from_mm) / slowest_mm_per_s, held_s: heldFrom(views, from_mm, slowest_mm_per_s) }
    if (worst === undefined || isWorse(gap, worst)) worst = gap
  }
  return worst
}

/** By what the hold leaves open, then by the gap itself. */
export function isWorse(a: SightGap, b: SightGap): boolean {
  const [openA_s, openB_s] = [a.gap_s - a.held_s, b.gap_s - b.held_s]
  return openA_s > openB_s || (openA_s === openB_s && a.gap_s > b.gap_s)
}

function gapsIn(visible: readonly Stretch[], enter_mm: number, leave_mm: number): readonly Stretch[] {
  const gaps: Stretch[] = []
  let seen_mm: number | undefined
  for (const { from_mm, to_mm } of [...visible].sort((a, b) => a.from_mm - b.from_mm)) {
    if (from_mm >= leave_mm) break
    const since_mm = seen_mm ?? Math.min(enter_mm, from_mm)
    if (from_mm > since_mm && from_mm > enter_mm) gaps.push({ from_mm: since_mm, to_mm: from_mm })
    seen_mm = Math.max(seen_mm ?? to_mm, to_mm)
  }
  const last_mm = seen_mm ?? enter_mm
  return last_mm < leave_mm ? [...gaps, { from_mm: last_mm, to_mm: leave_mm }] : gaps
}

/** How long after a place of its way some output still holds for a body that it saw before. */
function heldFrom(views: readonly View[], from_mm: number, speed: number): number {
  let held_s = 0
  for (const { visible, hold_s } of views)
    for (const { to_mm } of visible) if (to_mm <= from_mm) held_s = Math.max(held_s, hold_s - (from_mm - to_mm) / speed)
  return held_s
}
