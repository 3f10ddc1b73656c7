import { describe, expect, it } from 'vitest'
import { randomNumbers } from '../../cases/random-numbers.ts'
import { STEP_S, stepPass } from '../../cases/stepped-leaf.ts'
import type { View } from './output.ts'
import { worstSightGap } from './sight-gap.ts'

const view = (visible: readonly (readonly [number, number])[], hold_s = 0): View => ({
  visible: visible.map(([from_mm, to_mm]) => ({ from_mm, to_mm })),
  response_s: 0,
  hold_s,
})

// Hand calculation throughout
describe('worstSightGap', () => {
  it('finds none where the body is seen all the time that it is in the plane', () => {
    expect(worstSightGap([view([[-500, 500]])], -400, 400, 200)).toBeUndefined()
    expect(worstSightGap([view([[-500, 0]]), view([[0, 500]])], -400, 400, 200)).toBeUndefined()
    expect(worstSightGap([view([[-900, -800], [-500, 500], [700, 800]])], -400, 400, 200)).toBeUndefined() // biome-ignore format: stretches
  })

  it('lasts from the last sight to the next, at the given speed', () => {
    const seen = view([[-500, -100], [250, 500]], 1) // biome-ignore format: stretches
    expect(worstSightGap([seen], -400, 400, 200)).toEqual({ from_mm: -100, to_mm: 250, gap_s: 1.75, held_s: 1 })
  })

  it('begins before the plane where the body was last seen there, and at its edge where it never was', () => {
    expect(worstSightGap([view([[-900, -600], [-200, 500]], 3)], -400, 400, 200)).toEqual({ from_mm: -600, to_mm: -200, gap_s: 2, held_s: 3 }) // biome-ignore format: stretches
    expect(worstSightGap([], -400, 400, 200)).toEqual({ from_mm: -400, to_mm: 400, gap_s: 4, held_s: 0 })
  })

  it('takes what another output still holds, less the time since that one saw anything', () => {
    const short = view([[-500, -100], [300, 500]], 0.5) // biome-ignore format: stretches
    const long = view([[-500, -200]], 4)
    expect(worstSightGap([short, long], -400, 400, 200)).toMatchObject({ from_mm: -100, held_s: 3.5 })
  })

  // Second method, ours: the stepped output, which holds over the gap or lets go
  it('is bridged by the hold exactly where the stepped output never lets go while the body is in the plane (seeds 1 to 200)', () => {
    const kinds = new Set<boolean>()
    for (let seed = 1; seed <= 200; seed++) {
      const random = randomNumbers(seed)
      const speed = random.between(100, 500)
      const [from, gap] = [random.between(-900, -500), random.between(20, 300)]
      const middle = random.between(-300, 300)
      const visible = [[from, middle], [middle + gap, 900]] as const // biome-ignore format: stretches
      const hold_s = Math.round(random.between(0, 1.5) / STEP_S) * STEP_S
      const found = worstSightGap([view(visible, hold_s)], -400, 400, speed)
      if (!found || Math.abs(found.gap_s - found.held_s) < 0.001) continue
      const rest = {
        way: 1000,
        from: 1000,
        closeSpeed: 1,
        closeAccel: 1,
        openSpeed: 1,
        openAccel: 1,
        delay_s: 0,
        decel: 1,
        dwell_s: 0,
        clear: 1,
      }
      const pass = stepPass({ ...rest, enter_mm: -400, leave_mm: 400, visible, response_s: 0, hold_s }, { speed, stopsAt_mm: undefined })
      let letsGo = false
      for (let k = 0; k < pass.steps; k++) {
        const place = pass.start_mm + speed * k * STEP_S
        if (place > -399 && place < 399 && pass.forbids[k] === 0) letsGo = true
      }
      kinds.add(letsGo)
      expect({ seed, letsGo }).toEqual({ seed, letsGo: found.gap_s > found.held_s })
    }
    expect(kinds.size).toBe(2)
  })
})
