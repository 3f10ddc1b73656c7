import type { CoverGuard, DangerPoint, Guard, SensingGuard } from '../model/danger.ts'
import type { Step } from '../model/finding.ts'
import type { InputPath } from '../model/source.ts'
import { in_mm } from '../values/in-mm.ts'
import { NOTHING, quantity, step } from './drafts.ts'
import { CONCEPT, DANGERS, OPENING_HEIGHT } from './paths.ts'
import type { Context, RestsOn } from './rule.ts'
import { zoneCovered } from './zone-covered.ts'

/** What one guard does for a danger point. `unknown` says what would settle it; without needs nothing in the door file would. */
export interface Guarding {
  readonly how: Guard['how']
  readonly answer: 'suffices' | 'not-enough' | 'unknown'
  readonly needs: readonly InputPath[]
  readonly steps: readonly Step[]
  readonly restsOn: RestsOn
}

export function dangerPath({ door }: Context, point: DangerPoint): InputPath {
  return `${DANGERS}/points/${door.dangers?.points.indexOf(point) ?? -1}`
}

/** @param place where it is in the plan, as computed or as written */
export function guardings(context: Context, point: DangerPoint, place: DangerPoint['place']): readonly Guarding[] {
  const path = dangerPath(context, point)
  return point.guards.map((guard, i) => guarding(context, point, place, guard, `${path}/guards/${i}`))
}

function guarding(context: Context, point: DangerPoint, place: DangerPoint['place'], guard: Guard, path: InputPath): Guarding {
  switch (guard.how) {
    case 'cover':
      return covered(context, point, guard, path)
    case 'presence':
      return watched(context, point, place, guard, path)
    case 'edge':
      return edged(context, guard, path)
    case 'nothing-to-hold':
      return { ...plain(guard.how, path), answer: point.kind === 'lifting' ? 'suffices' : 'not-enough' }
    case 'load-stop': // no load at which a drive must stop is among the values
      return { ...plain(guard.how, path), answer: point.kind === 'lifting' ? 'unknown' : 'not-enough' }
  }
}

function plain(how: Guard['how'], path: InputPath): Omit<Guarding, 'answer'> {
  return { how, needs: [], steps: [], restsOn: { ...NOTHING, inputs: [path] } }
}

/** How far behind an opening a danger has to lie; Infinity where the table ends. */
export function farEnough_mm(table: readonly number[], shape: CoverGuard['shape'], opening_mm: number): number {
  if (opening_mm === 0) return 0
  const column = { slot: 1, square: 2, round: 3 }[shape]
  for (let row = 0; row < table.length; row += 4) if (opening_mm <= (table[row] as number)) return table[row + column] as number
  return Infinity
}

/** Up to the guarded height or as high as the opening is, and nobody reaches through. The table is about people of 14 and older: where the public passes it decides only that it is not enough. */
function covered({ door, values }: Context, point: DangerPoint, guard: CoverGuard, path: InputPath): Guarding {
  const up = quantity(guard.upTo_mm, 'mm')
  const needed = quantity(Math.min(in_mm(values.guardedHeight), door.opening.height_mm), 'mm')
  const far = quantity(guard.distance_mm, 'mm')
  const reach = quantity(farEnough_mm(values.reachThrough.value, guard.shape, guard.opening_mm), 'mm')
  const isHighEnough = up.value >= needed.value || point.kind === 'leaf-opening'
  const isOut = far.value >= reach.value
  const forAll = guard.opening_mm === 0 || door.concept?.people === 'trained'
  const by = 'judge/danger-guards'
  const steps = [
    step('cover reaches up to', up, by, { inputs: [`${path}/upTo_mm`] }),
    step('to be guarded', needed, by, { inputs: [OPENING_HEIGHT], values: [values.guardedHeight] }, 'min(guarded height, clear height)'),
    step('danger behind the openings', far, by, { inputs: [`${path}/distance_mm`] }),
    ...(Number.isFinite(reach.value)
      ? [step('far enough behind the openings', reach, by, { inputs: [`${path}/opening_mm`], values: [values.reachThrough] })]
      : []),
  ]
  return {
    how: 'cover',
    answer: !isHighEnough || !isOut ? 'not-enough' : forAll ? 'suffices' : 'unknown',
    needs: isHighEnough && isOut && !forAll && door.concept === undefined ? [CONCEPT] : [],
    steps,
    restsOn: { ...NOTHING, inputs: [path, CONCEPT, OPENING_HEIGHT], values: [values.guardedHeight, values.reachThrough] },
  }
}

/** The zone holds the place, its coverage is in order in every state, and its output stops this movement too. */
function watched(context: Context, point: DangerPoint, place: DangerPoint['place'], guard: SensingGuard, path: InputPath): Guarding {
  const zone = context.door.zones.find(({ id }) => id === guard.id)
  const base = plain('presence', path)
  if (zone === undefined || zone.function !== 'presence' || guard.stops === false) return { ...base, answer: 'not-enough' }
  const needs = [
    ...(place === undefined ? [`${dangerPath(context, point)}/x_mm`, `${dangerPath(context, point)}/y_mm`] : []),
    ...(guard.stops === undefined ? [`${path}/stops`] : []),
  ]
  if (place === undefined) return { ...base, needs, answer: 'unknown' }
  const isThere = place.x_mm >= zone.xMin_mm && place.x_mm <= zone.xMax_mm && place.y_mm >= zone.yMin_mm && place.y_mm <= zone.yMax_mm
  if (!isThere) return { ...base, answer: 'not-enough' }
  const answers = zoneCovered.judge(context).filter(({ subject }) => subject.id === zone.id)
  const inputs = answers.flatMap(({ restsOn }) => restsOn.inputs)
  const first = answers[0]?.restsOn ?? NOTHING
  const rests = { ...base, restsOn: { ...first, inputs: [...new Set([path, ...inputs])] } }
  if (answers.some(({ verdict }) => verdict === 'fail')) return { ...rests, answer: 'not-enough' }
  const open = answers.flatMap((each) => (each.verdict === 'undetermined' ? each.needs : []))
  const isCovered = answers.length > 0 && answers.every(({ verdict }) => verdict === 'pass')
  return { ...rests, needs: [...needs, ...open], answer: isCovered && guard.stops === true ? 'suffices' : 'unknown' }
}

/** A sensitive edge lets itself be touched: whether gently enough is measured, not computed. */
function edged({ door }: Context, guard: SensingGuard, path: InputPath): Guarding {
  const base = plain('edge', path)
  const acts = door.sensors.some(
    (sensor) =>
      sensor.id === guard.id &&
      (sensor.kind === 'zone-only' ? sensor.function === 'presence' : sensor.fields.some((field) => field.function === 'presence')),
  )
  if (!acts || guard.stops === false) return { ...base, answer: 'not-enough' }
  return { ...base, needs: guard.stops === undefined ? [`${path}/stops`] : [], answer: 'unknown' }
}
