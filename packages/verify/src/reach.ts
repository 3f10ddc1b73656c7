import type { Sensor } from './plain.ts'
import { growthOf } from './sine.ts'

/** How far a body of this reflectance is seen at this incidence (docs/method.md, section 2); 0 where none of its light returns. */
export function reachOf({ maxRange, rangeRef, reflectanceRef }: Sensor, reflectance: number, extinction: number, cosine: number): number {
  if (!(cosine > 0)) return 0
  const inClearAir = rangeRef * Math.sqrt((reflectance * cosine) / reflectanceRef)
  const most = Math.min(maxRange, inClearAir)
  const isWithin = (t: number) => t * growthOf(extinction * t) <= inClearAir
  if (extinction === 0 || isWithin(most)) return most
  let [near, far] = [0, most]
  for (let i = 0; i < 60; i++) {
    const middle = (near + far) / 2
    if (isWithin(middle)) near = middle
    else far = middle
  }
  return near
}
