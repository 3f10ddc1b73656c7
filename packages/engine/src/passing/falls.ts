import type { Closing } from '../motion/leaf-run.ts'
import type { Stretch, View } from './output.ts'
import type { Quiet } from './start-of-closing.ts'
import { type Contact, foundStanding, newTally, type Tally, worstOfPassage } from './worst-passage.ts'

/** Somebody who comes upright, falls anywhere that brings the lying body into the leaf's plane, and stays. Places along the way, mm. */
export interface Fall {
  /** Middles of the lying body with which it is in the plane. */
  readonly enter_mm: number
  readonly leave_mm: number
  /** The lying body is met where the edge has less than this still to go. */
  readonly clear: number
  readonly views: readonly FallView[]
  readonly quiet?: Quiet | undefined
}
/** One output: where its field sees the body upright, and where lying and for as long as it may lie. */
export interface FallView {
  readonly upright: readonly Stretch[]
  readonly lying: readonly Stretch[]
  readonly response_s: number
  readonly hold_s: number
}

/** Falls where a field sees the body only once it lies are settled in steps of this. */
const STEP_MM = 50
/** A lying body stays for longer than any closing lasts. */
const STAYS_S = 1e4

/**
 * All phases, paces and places to fall: the fastest contact goes to the tally. Where each field that sees the lying body saw it upright as well, to fall
 * at once is the worst of a stretch: everything after is the same. Elsewhere a stretch is cut into steps, each with its earliest fall and its latest sight.
 */
export function worstOfFalls(closing: Closing, fall: Fall, speeds: readonly [slowest: number, fastest: number], tally: Tally): void {
  for (const { from_mm, to_mm } of pieces(fall)) {
    const seeing = lyingAt(fall.views, (from_mm + to_mm) / 2)
    const lying = seeing.map(({ view }) => view)
    if (lying.length === 0) {
      foundStanding(closing, { enter_mm: from_mm, leave_mm: to_mm, clear: fall.clear, views: [], standing: [] }, tally)
      continue
    }
    const isUnbroken = seeing.every(({ sawUpright }) => sawUpright)
    const steps = isUnbroken ? 1 : Math.ceil((to_mm - from_mm) / STEP_MM)
    for (let k = 0; k < steps; k++) {
      const a_mm = from_mm + (k * (to_mm - from_mm)) / steps
      const b_mm = from_mm + ((k + 1) * (to_mm - from_mm)) / steps
      const found = fallAt(closing, fall, lying, speeds, a_mm, a_mm)
      keep(found, a_mm, tally)
      if (!isUnbroken && found.struck === undefined) {
        const atWorst = fallAt(closing, fall, lying, speeds, a_mm, b_mm)
        if (atWorst.struck !== undefined || atWorst.unproved.struck > 0) tally.unproved.struck++
        tally.gapAtLeast = Math.min(tally.gapAtLeast, atWorst.gapAtLeast)
      }
    }
  }
}

/** It lies from one place of its way on, and is seen lying from another. */
function fallAt(
  closing: Closing,
  { clear, views, quiet }: Fall,
  lying: readonly FallView[],
  speeds: readonly [number, number],
  lies_mm: number,
  seen_mm: number,
): Tally {
  const { stays_mm, views: asViews } = viewsOfFall(views, lying, lies_mm, seen_mm, speeds[1])
  const tally = newTally()
  const passage = { enter_mm: lies_mm, leave_mm: stays_mm, clear, views: asViews, standing: [{ from_mm: lies_mm, to_mm: stays_mm }], quiet }
  worstOfPassage(closing, passage, speeds, tally)
  return tally
}

/** The fields that see the lying body at a place, and whether each saw it upright there. */
export function lyingAt(
  views: readonly FallView[],
  place_mm: number,
): readonly { readonly view: FallView; readonly sawUpright: boolean }[] {
  const sees = (stretches: readonly Stretch[]) => stretches.some((each) => each.from_mm <= place_mm && place_mm <= each.to_mm)
  return views.filter(({ lying }) => sees(lying)).map((view) => ({ view, sawUpright: sees(view.upright) }))
}

/** What the outputs see of somebody who lies from one place of the way on, is seen lying from another, and stays for longer than any closing lasts: as if it went on. */
export function viewsOfFall(
  views: readonly FallView[],
  lying: readonly FallView[],
  lies_mm: number,
  seen_mm: number,
  fastest: number,
): { readonly views: readonly View[]; readonly stays_mm: number } {
  const stays_mm = lies_mm + STAYS_S * fastest
  const asViews = views.map((view): View => {
    const before = view.upright.flatMap(({ from_mm, to_mm }) => (from_mm < lies_mm ? [{ from_mm, to_mm: Math.min(to_mm, lies_mm) }] : []))
    const last = before[before.length - 1]
    const { response_s, hold_s } = view
    if (!lying.includes(view)) return { visible: before, response_s, hold_s }
    const goesOn = last !== undefined && last.to_mm >= seen_mm
    const after = { from_mm: goesOn ? last.from_mm : seen_mm, to_mm: stays_mm + 1 }
    return { visible: [...(goesOn ? before.slice(0, -1) : before), after], response_s, hold_s }
  })
  return { views: asViews, stays_mm }
}

/** A body that lies has no speed of its own, and nobody walks into the leaf lying. */
function keep(found: Tally, lies_mm: number, tally: Tally): void {
  tally.unproved.struck += found.unproved.struck
  tally.gapAtLeast = Math.min(tally.gapAtLeast, found.gapAtLeast)
  tally.gap = Math.min(tally.gap, found.gap)
  const { struck } = found
  if (struck === undefined) return
  const contact: Contact = { ...struck, bodySpeed: 0, relativeSpeed: struck.leafSpeed, place_mm: lies_mm, stands: true }
  tally.struckAtMost = Math.max(tally.struckAtMost, contact.relativeSpeed, Math.min(found.struckAtMost, struck.run.closing.profile.peak))
  if (tally.struck === undefined || contact.relativeSpeed > tally.struck.relativeSpeed) tally.struck = contact
}

/** The places to fall, cut where sight changes. */
export function pieces({ enter_mm, leave_mm, views }: Pick<Fall, 'enter_mm' | 'leave_mm' | 'views'>): readonly Stretch[] {
  const ends = views.flatMap(({ upright, lying }) => [...upright, ...lying].flatMap(({ from_mm, to_mm }) => [from_mm, to_mm]))
  const cuts = [...new Set([enter_mm, ...ends, leave_mm])].filter((cut) => enter_mm <= cut && cut <= leave_mm).sort((a, b) => a - b)
  return cuts.slice(1).map((to_mm, i) => ({ from_mm: cuts[i] as number, to_mm }))
}
