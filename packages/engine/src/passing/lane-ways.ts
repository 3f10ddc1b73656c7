import type { Stance } from '../coverage/scene.ts'
import { partsOf } from '../model/body.ts'
import type { Lane } from '../model/traffic.ts'
import { radians } from '../space/trigonometry.ts'
import { withAnother } from './follow-on.ts'
import type { MetPart } from './leaf-plane.ts'
import type { Stretch } from './output.ts'

const HALF_TURN_RAD = radians(180)

/** A stance on its way through the doorway, from the sides from which it looks like this. */
export interface Passing {
  readonly stance: Stance
  readonly sides: Lane['from']
  /** Another body is so close; undefined where it passes alone. */
  readonly company: 'ahead' | 'behind' | undefined
  readonly other?: Stance
}

/** Every stance that passes: by itself and, where one follows another, with each other one ahead of it and behind. */
export function allPassing(all: readonly Stance[], { from, followGap_mm }: Lane): readonly Passing[] {
  const passing = all.filter((stance) => !isFallen(stance, all))
  const alone = passing.flatMap((stance) => waysThrough(stance, from))
  if (followGap_mm === undefined) return alone
  const pairs = passing.flatMap((self) =>
    passing.flatMap((other) => (['ahead', 'behind'] as const).map((company) => ({ self, other, company }))),
  )
  const together = pairs.flatMap(({ self, other, company }) =>
    waysThrough(withAnother(self, other, followGap_mm, company === 'ahead'), from).map((each) => ({ ...each, company, other })),
  )
  return [...alone, ...together]
}

/** Every stance from which somebody falls, with each posture in which the same body then lies, turned alike. */
export function allFalls(
  all: readonly Stance[],
  { from, falls }: Lane,
): readonly { readonly upright: Stance; readonly lying: Stance; readonly sides: Lane['from'] }[] {
  if (falls !== true) return []
  return all
    .filter((stance) => !isFallen(stance, all))
    .flatMap((upright) =>
      all
        .filter((lying) => lying.posture.lies === true && lying.body.id === upright.body.id)
        .flatMap((lying) => from.map((side) => ({ upright: turnedFor(upright, side), lying: turnedFor(lying, side), sides: [side] }))),
    )
}

/** A posture that comes about by a fall does not pass, unless its body has no other. */
function isFallen({ body, posture }: Stance, all: readonly Stance[]): boolean {
  return posture.lies === true && all.some((other) => other.body.id === body.id && other.posture.lies !== true)
}

/** A body of several parts goes forward: from side A it is turned by half a turn. All others look alike from both. */
function waysThrough(stance: Stance, from: Lane['from']): readonly Passing[] {
  if (partsOf(stance.posture) === undefined) return [{ stance, sides: from, company: undefined }]
  return from.map((side) => ({ stance: turnedFor(stance, side), sides: [side], company: undefined }))
}

function turnedFor(stance: Stance, side: 'a' | 'b'): Stance {
  return side === 'b' || partsOf(stance.posture) === undefined ? stance : { ...stance, yaw_rad: stance.yaw_rad + HALF_TURN_RAD }
}

/** The middle of a body that keeps to the lane: at both edges and between; only in the middle where the lane is as narrow as the body. */
export function placesAcross({ xMin_mm, xMax_mm }: Lane, half_mm: number): readonly number[] {
  const middle_mm = (xMin_mm + xMax_mm) / 2
  const left_mm = xMin_mm + half_mm
  const right_mm = xMax_mm - half_mm
  return left_mm < right_mm ? [left_mm, middle_mm, right_mm] : [middle_mm]
}

/** Stretches along y as they lie along the way: of whoever comes from side A, y falls. */
export function alongWay(alongY: readonly Stretch[], from: 'a' | 'b'): readonly Stretch[] {
  return from === 'b' ? alongY : alongY.map(({ from_mm, to_mm }) => ({ from_mm: -to_mm, to_mm: -from_mm })).reverse()
}

/** Where on its way the body's middle is while a part of it is in the leaf's plane. */
export function stretchInPlane(
  { from_mm, to_mm }: MetPart,
  from: 'a' | 'b',
  half_mm: number,
): { readonly enter_mm: number; readonly leave_mm: number } {
  const [front_mm, back_mm] = from === 'b' ? [to_mm, from_mm] : [-from_mm, -to_mm]
  return { enter_mm: -half_mm - front_mm, leave_mm: half_mm - back_mm }
}
