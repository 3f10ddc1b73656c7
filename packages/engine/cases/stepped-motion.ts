/** Measured instead of delay and braking: since the stop command, how far the leaf went on. */
export type SteppedCurve = readonly (readonly [at_s: number, way: number])[]

export interface SteppedMotion {
  readonly moved: readonly number[]
  readonly speeds: readonly number[]
}

/** From rest to rest with limited jerk: speeding up is stepped, slowing down is its mirror image, and the peak is the largest that leaves room for both. */
export function steppedMotion(
  { from, closeSpeed, closeAccel }: { readonly from: number; readonly closeSpeed: number; readonly closeAccel: number },
  jerk: number,
  step_s: number,
): SteppedMotion {
  const upTo = (peak: number) => {
    const speeds = [0]
    let [speed, accel, moved] = [0, 0, 0]
    while (speed < peak && speeds.length < 1e6) {
      const before = { speed, accel }
      // from here on the acceleration has to fall for the speed to arrive at its peak together with it at 0
      accel =
        peak - speed <= (accel * accel) / (2 * jerk) ? Math.max(0, accel - jerk * step_s) : Math.min(closeAccel, accel + jerk * step_s)
      speed = accel === 0 && before.accel === 0 ? peak : Math.min(peak, speed + ((before.accel + accel) / 2) * step_s)
      if (accel === 0) speed = peak
      moved += ((before.speed + speed) / 2) * step_s
      speeds.push(speed)
    }
    return { speeds, moved }
  }
  let [low, high] = [0, closeSpeed]
  if (2 * upTo(closeSpeed).moved > from)
    for (let i = 0; i < 40; i++) {
      const middle = (low + high) / 2
      if (2 * upTo(middle).moved > from) high = middle
      else low = middle
    }
  const peak = 2 * upTo(high).moved > from ? low : high
  const { speeds: rising, moved } = upTo(peak)
  const steady = Array.from({ length: Math.max(0, Math.round((from - 2 * moved) / peak / step_s)) }, () => peak)
  const speeds = [...rising, ...steady, ...rising.slice().reverse()]
  const way = [0]
  for (const [k, speed] of speeds.entries())
    if (k > 0) way.push((way[k - 1] as number) + ((speed + (speeds[k - 1] as number)) / 2) * step_s)
  return { speeds, moved: way }
}

/** How far the leaf went on, straight between the readings. */
export function goneOn(curve: SteppedCurve, t_s: number): number {
  let [beforeAt, beforeWay] = [0, 0]
  for (const [at_s, way] of curve) {
    if (t_s <= at_s) return beforeWay + ((way - beforeWay) * (t_s - beforeAt)) / (at_s - beforeAt)
    beforeAt = at_s
    beforeWay = way
  }
  return beforeWay
}
