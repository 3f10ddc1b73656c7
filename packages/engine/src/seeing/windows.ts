import type { Field } from '../model/sensor.ts'
import type { FloorPieces } from '../space/floor.ts'
import type { Beams } from './beams.ts'
import { heightWindows } from './windows.kernel.ts'

/** For each beam the stretches in which an entry point counts: those of beam i are `first[i]` up to (not with) `first[i + 1]`. mm along the beam. */
export interface Windows {
  readonly first: Int32Array
  readonly from: Float64Array
  readonly to: Float64Array
}

/** Limits of a field that can be lifted, to ask which one hides a body. */
export interface FieldLimits {
  readonly xMin_mm: number
  readonly xMax_mm: number
  readonly yMin_mm: number
  readonly yMax_mm: number
  readonly clearance_mm: number
  readonly top_mm: number
}

/** Per beam, how far inside the limits the entry point must stay. mm. */
export interface Insets {
  readonly x: Float64Array
  readonly y: Float64Array
  readonly height: Float64Array
}

/**
 * Where along each beam a body's entry point lies in the field and before the background (docs/method.md, section 2, rules 1 and 3,
 * and the cap of the range). Reach by brightness depends on the face that is entered and is not in here.
 *
 * @param ends_mm per beam: background less margin, or the length of a segment
 */
export function fieldWindows(
  beams: Beams,
  floor: FloorPieces,
  limits: FieldLimits,
  ends_mm: Float64Array,
  maxRange_mm: number,
  insets?: Insets,
): Windows {
  const most = beams.count * floor.count
  const windows = { first: new Int32Array(beams.count + 1), from: new Float64Array(most), to: new Float64Array(most) }
  const heightsCount = limits.clearance_mm > -Infinity || limits.top_mm < Infinity
  let end = 0
  for (let i = 0; i < beams.count; i++) {
    windows.first[i] = end
    const inX = insets?.x[i] ?? 0
    const inY = insets?.y[i] ?? 0
    const inHeight = insets?.height[i] ?? 0
    const x = between(beams.originX[i] as number, beams.directionX[i] as number, limits.xMin_mm + inX, limits.xMax_mm - inX)
    const y = between(beams.originY[i] as number, beams.directionY[i] as number, limits.yMin_mm + inY, limits.yMax_mm - inY)
    const near = Math.max(0, x[0], y[0])
    const far = Math.min(ends_mm[i] as number, maxRange_mm, x[1], y[1])
    if (!(near <= far)) continue
    if (heightsCount)
      end = heightWindows(
        windows.from,
        windows.to,
        end,
        beams,
        i,
        floor,
        near,
        far,
        limits.clearance_mm + inHeight,
        limits.top_mm - inHeight,
      )
    else {
      windows.from[end] = near
      windows.to[end] = far
      end++
    }
  }
  windows.first[beams.count] = end
  return windows
}

/** Stretch of t in which low <= origin + t direction <= high; empty as [Infinity, -Infinity]. */
function between(origin: number, direction: number, low: number, high: number): readonly [number, number] {
  if (direction > 0) return [(low - origin) / direction, (high - origin) / direction]
  if (direction < 0) return [(high - origin) / direction, (low - origin) / direction]
  return low <= origin && origin <= high ? [-Infinity, Infinity] : [Infinity, -Infinity]
}

/** The limits that a field of a ranging sensor sets. */
export function limitsOf(field: Field): FieldLimits {
  const { xMin_mm, xMax_mm, yMin_mm, yMax_mm, clearance_mm, top_mm } = field
  return { xMin_mm, xMax_mm, yMin_mm, yMax_mm, clearance_mm, top_mm }
}

/** The stretches that lie in both. */
export function commonWindows(a: Windows, b: Windows): Windows {
  const count = a.first.length - 1
  const first = new Int32Array(count + 1)
  const from: number[] = []
  const to: number[] = []
  for (let i = 0; i < count; i++) {
    first[i] = from.length
    for (let v = a.first[i] as number; v < (a.first[i + 1] as number); v++)
      for (let w = b.first[i] as number; w < (b.first[i + 1] as number); w++) {
        const near = Math.max(a.from[v] as number, b.from[w] as number)
        const far = Math.min(a.to[v] as number, b.to[w] as number)
        if (near > far) continue
        from.push(near)
        to.push(far)
      }
  }
  first[count] = from.length
  return { first, from: Float64Array.from(from), to: Float64Array.from(to) }
}
