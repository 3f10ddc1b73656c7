import { CAUGHT_PARTS, type DangerKind, type DangerPoint } from '../model/danger.ts'
import type { DoorState } from '../model/door.ts'
import type { Step } from '../model/finding.ts'
import type { InputPath, Quantity } from '../model/source.ts'
import { type SweepGap, sweepGaps } from '../motion/leaf-sweep.ts'
import { floorHeight, floorPieces } from '../space/floor.ts'
import { in_mm } from '../values/in-mm.ts'
import { stateFacts } from './coverage-drafts.ts'
import { dangerPath, type Guarding, guardings } from './danger-guards.ts'
import { type Facts, NOTHING, notApplicable, orNoSubject, quantity, step } from './drafts.ts'
import { CONCEPT, LEAF, OBSTACLES, OPENING_WIDTH, PARKED } from './paths.ts'
import type { Context, Draft, RestsOn, Rule } from './rule.ts'

const BY = 'judge/danger-point'

/**
 * Besides the closing edge nobody is crushed, sheared, drawn in or lifted, while the door opens or closes: each such place lies too high, leaves the
 * least gap for the part of a body that can get in, or has a guard that is enough. The gaps of a leaf that slides or swings are computed against
 * every obstacle, and enough only if they are so with everything off by the stated tolerance; others are measured. One finding for each place that somebody listed, each obstacle that comes nearer to the leaf than the
 * least gap for a whole body (of the others the nearest), and where obstacles count, state. Measured is the height, the gap, or the number of guards that are enough.
 *
 * Facts: `danger` (id), `dangerName`, `kind`, `caught` (largest part that gets in), `by` (`height`, `gap`, a guard, or `nothing`), `guards` (number), [`gap_mm`, `needed_mm`, `obstacle`,
 * `obstacleName`, `height_mm`], `stateFacts`.
 */
export const dangerPoint: Rule = {
  id: 'danger-point',
  source: {
    basis: 'common practice',
    note: 'places that crush, shear, draw in or lift besides the closing edge, while the door opens too',
  },
  judge: (context) => {
    const { concept } = context.door
    if (concept?.drive === 'hold-to-run') return [notApplicable('not-required-by-concept', { drive: concept.drive })]
    const { states, dangers } = context.door
    const measured = (dangers?.points ?? []).filter((point) => !isComputed(point))
    return orNoSubject([
      ...states.flatMap((state) => computedPlaces(context, state).map((place) => draftOf(context, state, place))),
      ...measured.map((point) => draftOf(context, undefined, { point, isListed: true, found: undefined })),
    ])
  },
}

interface Place {
  readonly point: DangerPoint
  readonly isListed: boolean
  readonly found: SweepGap | undefined
}

/** Depends on the state, as obstacles do; what somebody measured does not. */
function computedPlaces(context: Context, state: DoorState): readonly Place[] {
  const { dangers } = context.door
  const gaps = sweepGaps(context.door, state) ?? []
  const listed = (dangers?.points ?? []).filter(isComputed).map((point): Place => {
    const found = gaps.find(({ kind, obstacle }) => kind === point.kind && obstacle.id === point.obstacle)
    return { point, isListed: true, found }
  })
  const others = gaps.filter((gap) => !listed.some(({ found }) => found === gap))
  const narrow = others.filter(({ gap_mm }) => gap_mm < leastGap_mm(context, 'body'))
  const nearest = others.reduce<SweepGap | undefined>((best, each) => (best && best.gap_mm <= each.gap_mm ? best : each), undefined)
  const shown = narrow.length > 0 || !nearest ? narrow : [nearest]
  return [...listed, ...shown.map((found) => ({ point: unlisted(found), isListed: false, found }))]
}

/** What geometry alone says of a gap that nobody listed: no part, no guard. */
function unlisted({ kind, obstacle }: SweepGap): DangerPoint {
  const nothing = { gap_mm: undefined, part: undefined, from_mm: undefined, place: undefined, guards: [] }
  return { id: `${kind}/${obstacle.id}`, name: obstacle.name, kind, obstacle: obstacle.id, ...nothing }
}

function leastGap_mm({ values }: Context, part: (typeof CAUGHT_PARTS)[number]): number {
  return values.minimumGap.value[CAUGHT_PARTS.indexOf(part)] ?? Infinity
}

/** Where a gap says nothing: what rides up, and what reaches through the leaf. */
const WITHOUT_GAP: readonly DangerKind[] = ['lifting', 'leaf-opening']

function draftOf(context: Context, state: DoorState | undefined, { point, isListed, found }: Place): Draft {
  const { values } = context
  const path = isListed ? dangerPath(context, point) : OBSTACLES
  const { kind, part = 'body' } = point
  const gap_mm = WITHOUT_GAP.includes(kind) ? undefined : isComputed(point) ? found?.gap_mm : point.gap_mm
  const needed_mm = leastGap_mm(context, part)
  const height_mm = found && state ? Math.max(0, found.from_mm - floorAt(state, found)) : (point.from_mm ?? 0)
  const place = found ? { x_mm: found.at[0], y_mm: found.at[1] } : point.place
  const guards = guardings(context, point, place)
  const facts: Facts = {
    danger: point.id,
    dangerName: point.name,
    kind,
    caught: part,
    guards: guards.length,
    height_mm,
    ...(gap_mm === undefined ? {} : { gap_mm, needed_mm }),
    ...(found ? { obstacle: found.obstacle.id, obstacleName: found.obstacle.name, gapX_mm: found.at[0], gapY_mm: found.at[1] } : {}),
    ...(state ? stateFacts(state) : {}),
  }
  const inputs: readonly InputPath[] = [path, ...(found ? [OBSTACLES, LEAF, OPENING_WIDTH] : [])]
  const frame = { subject: { kind: 'danger', id: point.id } as const, ...(state ? { state: state.id } : {}) }
  const high = quantity(height_mm, 'mm')
  const guarded = quantity(in_mm(values.guardedHeight), 'mm')
  const heightStep = step('begins at height', high, found ? 'motion/leaf-sweep' : BY, { inputs })
  if (high.value >= guarded.value) {
    const steps = [heightStep, step('to be guarded', guarded, BY, { values: [values.guardedHeight] })]
    const restsOn = { ...NOTHING, inputs, values: [values.guardedHeight] }
    return { ...frame, verdict: 'pass', measured: high, limit: guarded, steps, facts: { ...facts, by: 'height' }, restsOn }
  }
  const gaps = gap_mm === undefined ? undefined : { measured: quantity(gap_mm, 'mm'), limit: quantity(needed_mm, 'mm') }
  const steps: readonly Step[] = [heightStep, ...(gaps ? gapSteps(context, gaps, found, inputs) : [])]
  if (gaps && gaps.measured.value >= gaps.limit.value) {
    const restsOn = { ...NOTHING, inputs, values: [values.minimumGap] }
    const enough = { ...frame, ...gaps, steps, facts: { ...facts, by: 'gap' }, restsOn }
    if (found && gaps.measured.value - mostOff_mm(context) < gaps.limit.value)
      return { ...enough, verdict: 'undetermined', reason: 'within-tolerance', needs: ['tolerances/length_mm'] }
    return { ...enough, verdict: 'pass' }
  }
  return { ...frame, ...byGuards({ guards, gaps, steps, inputs, needsGap: needsGap(context, point, path) }, context, facts) }
}

/** The face of the obstacle and the leaf's may each be off: a computed gap is smaller by both at the most. */
function mostOff_mm({ door }: Context): number {
  return 2 * (door.tolerances?.length_mm ?? 0)
}

function gapSteps(
  { values }: Context,
  gaps: { measured: Quantity; limit: Quantity },
  found: SweepGap | undefined,
  inputs: readonly InputPath[],
) {
  const formula = found ? 'distance in the plan between the obstacle and what the leaf sweeps' : undefined
  return [
    step('smallest gap on the way', gaps.measured, found ? 'motion/leaf-sweep' : BY, { inputs }, formula),
    step('least gap', gaps.limit, BY, { inputs: inputs.slice(0, 1), values: [values.minimumGap] }),
  ]
}

/** A gap that geometry would give if it were known how the leaf runs is not asked for by tape. */
function needsGap({ door }: Context, point: DangerPoint, path: InputPath): InputPath {
  if (!isComputed(point)) return `${path}/gap_mm`
  return door.leaf === undefined ? LEAF : PARKED
}

function isComputed({ kind, obstacle }: DangerPoint): boolean {
  return obstacle !== undefined && (kind === 'tail' || kind === 'sweep')
}

interface ByGuards {
  readonly guards: readonly Guarding[]
  readonly gaps: { readonly measured: Quantity; readonly limit: Quantity } | undefined
  readonly steps: readonly Step[]
  readonly inputs: readonly InputPath[]
  readonly needsGap: InputPath
}

/** The gap, if there is one, is too small: a guard that is enough carries it, one of which that is not known leaves it unsettled. */
function byGuards({ guards, gaps, steps, inputs, needsGap }: ByGuards, { values }: Context, facts: Facts) {
  const enough = guards.find(({ answer }) => answer === 'suffices')
  const all = [...steps, ...guards.flatMap((guard) => guard.steps)]
  const count = quantity(enough ? 1 : 0, '1')
  const counted = step('guards that are enough', count, 'judge/danger-guards', { inputs })
  if (enough) {
    const restsOn: RestsOn = { ...enough.restsOn, inputs: [...inputs, ...enough.restsOn.inputs] }
    const measured = { measured: count, limit: quantity(1, '1') }
    return { verdict: 'pass' as const, ...measured, steps: [...all, counted], facts: { ...facts, by: enough.how }, restsOn }
  }
  const restsOn: RestsOn = { ...NOTHING, inputs: [...inputs, CONCEPT], values: gaps ? [values.minimumGap] : [] }
  const frame = { steps: all, facts: { ...facts, by: 'nothing' }, restsOn, ...(gaps ?? {}) }
  const unknown = guards.filter(({ answer }) => answer === 'unknown')
  const needs = [...new Set(unknown.flatMap((guard) => guard.needs))]
  if (unknown.length > 0)
    return needs.length > 0
      ? { ...frame, verdict: 'undetermined' as const, reason: 'missing-input' as const, needs }
      : {
          ...frame,
          facts: { ...facts, by: unknown[0]?.how ?? 'nothing' },
          verdict: 'undetermined' as const,
          reason: 'not-computable' as const,
          needs,
        }
  if (gaps) return { ...frame, verdict: 'fail' as const, ...gaps }
  if (facts['kind'] === 'lifting' || facts['kind'] === 'leaf-opening')
    return { ...frame, steps: [...all, counted], verdict: 'fail' as const, measured: count, limit: quantity(1, '1') }
  return { ...frame, verdict: 'undetermined' as const, reason: 'missing-input' as const, needs: [needsGap] }
}

function floorAt({ floor }: DoorState, { at }: SweepGap): number {
  return floorHeight(floorPieces(floor), at[0], at[1])
}
