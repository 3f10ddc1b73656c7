import { type CountedField, type Stance, stancesOfBodies } from '../coverage/scene.ts'
import type { Door, Leaf } from '../model/door.ts'
import type { InputPath } from '../model/source.ts'
import { halfAlong } from '../passing/leaf-plane.ts'
import { mustSee } from './coverage-drafts.ts'
import { orNoSubject, quantity, step } from './drafts.ts'
import { fieldFacts, fieldSubject, fieldsOfFunction } from './fields.ts'
import { DRIVE, fieldPath, LEAF } from './paths.ts'
import type { Draft, Rule } from './rule.ts'

/**
 * While the edge is in a blanking window, no body that has to be seen fits before it. Measured is the largest body of lanes and presence zones that does and that the leaf passes
 * before the field acts again: its height before a leaf that comes down, its extent along x before one that slides. A window that follows the leaf counts as one down to shut. One
 * finding for each presence field with windows; where another presence field acts meanwhile it is not settled, and `struck-by-leaf` tells.
 *
 * Facts: `fieldFacts`, `travel`, `from_mm`, `to_mm` (of the window; whatever is smaller than `to_mm` fits), [`body`, `bodyName`], [`least_mm` (what is smaller is seen again in time)].
 */
export const unseenInBlanking: Rule = {
  id: 'unseen-in-blanking',
  source: {
    basis: 'our decision',
    document: 'docs/method.md',
    clause: 'Time',
    note: 'what a field ignores beside the leaf, no body may be in',
  },
  judge: ({ door }) => {
    const fields = fieldsOfFunction(door, 'presence').filter((counted) => windowsOf(counted).length > 0)
    return orNoSubject(fields.map((counted) => draftOf(door, counted)))
  },
}

interface Window {
  readonly from_mm: number
  readonly to_mm: number
}

function windowsOf({ field: { blanking, leafBlanking } }: CountedField): readonly Window[] {
  return leafBlanking && leafBlanking.before_mm > 0 ? [...blanking, { from_mm: 0, to_mm: leafBlanking.before_mm }] : blanking
}

function draftOf(door: Door, counted: CountedField): Draft {
  const { sensor, field } = counted
  const path = fieldPath(door, sensor, field)
  const { leaf } = door
  const frame = {
    subject: fieldSubject(counted),
    facts: { ...fieldFacts(counted), ...(leaf ? { travel: leaf.travel } : {}) },
    restsOn: { inputs: [`${path}/blanking`, `${path}/leafBlanking`, LEAF, DRIVE, 'bodies'], values: [], bodies: [], sensors: [sensor] },
  }
  if (!leaf) return { ...frame, verdict: 'undetermined', reason: 'missing-input', needs: [LEAF], steps: [] }
  if (leaf.travel === 'turning') return { ...frame, verdict: 'undetermined', reason: 'not-computable', needs: [], steps: [] }
  const stop =
    windowsOf(counted).some(({ from_mm }) => from_mm > 0) && leaf.travel === 'down' ? wayAfterSight(door, counted) : { needs: [] }
  if (stop.needs.length > 0) return { ...frame, verdict: 'undetermined', reason: 'missing-input', needs: stop.needs, steps: [] }
  const worst = worstOf(windowsOf(counted), stancesThatMustBeSeen(door), leaf, stop.way_mm ?? Infinity)
  const measured = quantity(worst.extent_mm, 'mm')
  const found = {
    ...frame,
    measured,
    limit: quantity(0, 'mm'),
    steps: [
      step('largest body unseen', measured, 'judge/unseen-in-blanking', { inputs: [`${path}/blanking`, `${path}/leafBlanking`, 'bodies'] }),
    ],
    facts: {
      ...frame.facts,
      from_mm: worst.window.from_mm,
      to_mm: worst.window.to_mm,
      ...(worst.least_mm > 0 ? { least_mm: worst.least_mm } : {}),
      ...(worst.stance ? { body: worst.stance.body.id, bodyName: worst.stance.body.name } : {}),
    },
  }
  if (worst.extent_mm === 0) return { ...found, verdict: 'pass' }
  return actsMeanwhile(door, counted, worst.window)
    ? { ...found, verdict: 'undetermined', reason: 'not-proved', needs: [] }
    : { ...found, verdict: 'fail' }
}

interface Unseen {
  readonly window: Window
  readonly extent_mm: number
  readonly least_mm: number
  readonly stance: Stance | undefined
}

/** The largest body that fits before the edge within a window and that it meets before it stops; of windows alike the one that reaches farthest. */
function worstOf(windows: readonly Window[], stances: readonly Stance[], { travel }: Leaf, stop_mm: number): Unseen {
  let worst: Unseen | undefined
  for (const window of [...windows].sort((a, b) => b.to_mm - a.to_mm)) {
    // below the window the field acts again: what is low enough is seen before the edge comes
    const least_mm = travel === 'down' ? Math.max(0, window.from_mm - stop_mm) : 0
    const most_mm = travel === 'both-inward' ? 2 * window.to_mm : window.to_mm
    worst ??= { window, extent_mm: 0, least_mm, stance: undefined }
    for (const stance of stances) {
      const extent_mm = extentOf(stance, travel)
      if (extent_mm < most_mm && extent_mm > least_mm && extent_mm > worst.extent_mm) worst = { window, extent_mm, least_mm, stance }
    }
  }
  if (!worst) throw new Error('a field with windows must have one')
  return worst
}

function extentOf(stance: Stance, travel: Leaf['travel']): number {
  if (travel !== 'down') return 2 * halfAlong(stance).x_mm
  return stance.posture.shape === 'box' ? stance.posture.c_mm : stance.posture.height_mm
}

function stancesThatMustBeSeen(door: Door): readonly Stance[] {
  const zones = door.zones.filter((zone) => mustSee(zone) && zone.function === 'presence')
  const ids = new Set([...zones, ...(door.lanes ?? [])].flatMap(({ bodies }) => bodies))
  return stancesOfBodies(door, [...ids], 'the door').stances
}

/** From the instant at which a body could be seen until the leaf is at rest. */
function wayAfterSight({ drive }: Door, { field }: CountedField): { readonly way_mm?: number; readonly needs: readonly InputPath[] } {
  if (!drive) return { needs: [DRIVE] }
  const { closeSpeed_mm_per_s: speed, stopDelay_s, stopDecel_mm_per_s2: decel, stoppingCurve } = drive
  const after_mm = stoppingCurve[stoppingCurve.length - 1]?.way_mm
  if (speed === undefined) return { needs: [`${DRIVE}/closeSpeed_m_per_s`] }
  const response_mm = (field.response_s ?? 0) * speed
  if (after_mm !== undefined) return { way_mm: response_mm + after_mm, needs: [] }
  if (stopDelay_s === undefined) return { needs: [`${DRIVE}/stopDelay_s`] }
  if (decel === undefined) return { needs: [`${DRIVE}/stopDecel_m_per_s2`] }
  return { way_mm: response_mm + stopDelay_s * speed + (speed * speed) / (2 * decel), needs: [] }
}

function actsMeanwhile(door: Door, own: CountedField, window: Window): boolean {
  return fieldsOfFunction(door, 'presence').some(
    (other) =>
      other.field !== own.field && !windowsOf(other).some(({ from_mm, to_mm }) => from_mm <= window.to_mm && to_mm >= window.from_mm),
  )
}
