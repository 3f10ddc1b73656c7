import { timeOf } from '../motion/profile.ts'
import { TOUCH_MM } from '../space/touch.ts'
import { type Span, type Stretch, spansOf, spansOfAll, timeAt, type View } from './output.ts'
import type { Problem } from './phase-bounds.ts'

type Common = Pick<Problem, 'closing' | 'clear' | 'enter_mm' | 'leave_mm'>

/** When an output begins to forbid closing, and how long a closing may have run for it to still see the body then. */
interface Stop extends Span {
  readonly actsFor_s: number
}

const AFTER_S = 1e-3
/** Rounding of a time, toward an output that acts for less. */
const SPARE_S = 1e-9

/**
 * As in `worst-passage`, for outputs some of which see the body only while the leaf is high enough (`actsFrom_mm`): a closing that has run for too long
 * when such an output would change is not stopped by it, but by the next one that still acts, or not at all. Until the closing begins the leaf is open,
 * and all of them act.
 */
export function problemsWithLeaf(common: Common, views: readonly View[], slowness: number): readonly Problem[] {
  const going = stopsOf(common, views, slowness)
  const { enter_mm, leave_mm, closing, clear } = common
  const gone = { place_mm: leave_mm, after_s: AFTER_S }
  const never: Span = { on: gone, off: gone, response_s: 0 }
  const last = spansOfAll(views, slowness).at(-1)
  const rest: readonly Problem[] =
    !last || timeAt(last.off, slowness) < timeAt(never.on, slowness)
      ? [{ ...common, next: never, isLast: true, mayStand: false, notBefore: after(last?.off) }]
      : []
  const passing = [...gapProblems(common, going, spansOfAll(views, slowness), slowness, { next: never, mayStand: false }), ...rest]
  if (clear > closing.from + TOUCH_MM) return passing // no room to stand
  const standing = standsOf(views, enter_mm, leave_mm).flatMap((place) => {
    const seen = seenStanding(views, place)
    const spans = spansOfAll(seen, slowness)
    // the leaf is shut long before: a body that stands is there for ever, and nothing stops the closing
    const longest_s = Math.max(...spans.map(({ on }) => on.after_s), 0) + 2 * slowness * Math.max(0, place.from_mm - enter_mm)
    const shut = { place_mm: enter_mm, after_s: closing.profile.end_s + longest_s + 1 }
    const unstopped = { next: { on: shut, off: shut, response_s: 0 }, mayStand: true }
    return gapProblems(common, stopsOf(common, seen, slowness), spans, slowness, unstopped)
  })
  return [...passing, ...standing]
}

function stopsOf({ closing }: Common, views: readonly View[], slowness: number): readonly Stop[] {
  const stops = views.flatMap((view) => {
    const { actsFrom_mm } = view
    const actsFor_s = actsFrom_mm === undefined ? Infinity : timeOf(closing.profile, Math.max(0, closing.from - actsFrom_mm)) - SPARE_S
    return spansOf(view, slowness).map((span): Stop => ({ ...span, actsFor_s: Math.max(0, actsFor_s) }))
  })
  return stops.sort((a, b) => timeAt(a.on, slowness) - timeAt(b.on, slowness))
}

/** Closings that begin between two times at which some output forbids it, by what stops them. */
function gapProblems(
  common: Common,
  stops: readonly Stop[],
  forbidden: readonly Span[],
  slowness: number,
  unstopped: Pick<Problem, 'next' | 'mayStand'>,
): readonly Problem[] {
  const problems: Problem[] = []
  for (const [i, { on }] of forbidden.entries()) {
    const notBefore = after(forbidden[i - 1]?.off)
    const missed: Stop[] = []
    /** It began before it was forbidden, and had run for too long for each output that it missed. */
    const ranFor = (next: Span) => [since(next, on, 0), ...missed.map((stop) => since(next, stop.on, stop.actsFor_s))]
    let isStopped = false
    for (const stop of stops) {
      if (isStopped || timeAt(stop.on, slowness) < timeAt(on, slowness)) continue
      const mayStand = unstopped.mayStand || stop.on.place_mm < common.leave_mm
      problems.push({ ...common, next: stop, isLast: false, mayStand, notBefore, actsFor_s: stop.actsFor_s, ranFor: ranFor(stop) })
      isStopped = stop.actsFor_s === Infinity
      missed.push(stop)
    }
    if (!isStopped) problems.push({ ...common, ...unstopped, isLast: true, notBefore, ranFor: ranFor(unstopped.next) })
  }
  return problems
}

/** A closing may begin as soon as the last output let go: what the control waits besides is not counted on. */
function after(off: Span['off'] | undefined): Problem['notBefore'] {
  return off === undefined ? [] : [{ at: off, quiet_s: 0 }]
}

function since({ on }: Span, instant: Span['on'], more_s: number): Span['on'] {
  return { place_mm: on.place_mm - instant.place_mm, after_s: on.after_s - instant.after_s + more_s }
}

/** Places in the leaf's plane that no output sees at every height of the leaf, cut where any sight begins or ends. */
function standsOf(views: readonly View[], enter_mm: number, leave_mm: number): readonly Stretch[] {
  const ends = views.flatMap(({ visible }) => visible.flatMap(({ from_mm, to_mm }) => [from_mm, to_mm]))
  const cuts = [enter_mm, ...ends.filter((end) => end > enter_mm && end < leave_mm), leave_mm].sort((a, b) => a - b)
  const always = views.flatMap(({ visible, actsFrom_mm }) => (actsFrom_mm === undefined ? visible : []))
  const pieces = cuts.slice(1).map((to_mm, i): Stretch => ({ from_mm: cuts[i] as number, to_mm }))
  return pieces.filter(
    (piece) => piece.to_mm - piece.from_mm > TOUCH_MM && !always.some((s) => s.from_mm <= piece.from_mm && s.to_mm >= piece.to_mm),
  )
}

/** What is seen of a body that stops within a piece and stands: what came before, and for ever what holds the piece. */
function seenStanding(views: readonly View[], piece: Stretch): readonly View[] {
  return views.map((view) => ({
    ...view,
    visible: view.visible
      .filter(({ from_mm }) => from_mm <= piece.from_mm)
      .map(({ from_mm, to_mm }) => ({ from_mm, to_mm: to_mm >= piece.to_mm ? Infinity : to_mm })),
  }))
}
