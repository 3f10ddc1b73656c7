import { describe, expect, it } from 'vitest'
import { closingFrom, type LeafDrive } from '../motion/leaf-run.ts'
import type { Stretch, View } from './output.ts'
import { newTally, worstOfPassage } from './worst-passage.ts'

const drive: LeafDrive = {
  way: 2000,
  close: { speed: 400, accel: 1000 },
  open: { speed: 400, accel: 1000 },
  stopDelay_s: 0.1,
  stopDecel: 2000,
  reverseDelay_s: 0.2,
}
const stretches = (...pairs: readonly (readonly [number, number])[]): Stretch[] => pairs.map(([from_mm, to_mm]) => ({ from_mm, to_mm }))
const view = (visible: Stretch[], actsFrom_mm?: number): View => ({ visible, response_s: 0.1, hold_s: 0, actsFrom_mm })

/** A body 500 high that is in the leaf's plane from -200 to 200. */
function worst(views: readonly View[], speeds: readonly [number, number]) {
  const tally = newTally()
  const standing = views[0]?.visible ?? []
  worstOfPassage(closingFrom(drive, 2000), { enter_mm: -200, leave_mm: 200, clear: 500, views, standing }, speeds, tally)
  return tally
}

describe('an output that sees the body only while the leaf is high', () => {
  const wide = stretches([-1500, 300])

  it('stops what it sees in time if it always acts, and nothing once the leaf is too low', () => {
    expect(worst([view(wide)], [500, 1000])).toMatchObject({ struck: undefined, unproved: { struck: 0 } })
    const { struck } = worst([view(wide, 1000)], [500, 1000])
    // a closing that was below 1000 when the body came into sight goes on to shut
    expect(struck).toMatchObject({ leafSpeed: 400, stop_s: undefined })
  })

  // Hand calculation: at 400 mm/s the leaf needs 40 mm through the delay, 40 mm to brake and 40 mm through the response: 620 is high enough, for a body that is
  // seen 1300 mm, 2.6 s and more, before it is in the plane
  it('is enough down to where a stop still comes in time, if the leaf is shut before the body comes', () => {
    const late = worst([view(wide, 600)], [250, 500])
    expect(late).toMatchObject({ struck: undefined, unproved: { struck: 0 } })
    // faster, the body is there before the last 600 mm are closed (1.5 s and slowing)
    expect(worst([view(wide, 600)], [1000, 1500]).struck).toBeDefined()
  })

  it('helps beside one that sees less and acts to the end', () => {
    const near = view(stretches([-400, 300]))
    expect(worst([near], [600, 1000]).struck).toBeDefined()
    expect(worst([view(wide, 650), near], [250, 500])).toMatchObject({ struck: undefined, unproved: { struck: 0 } })
  })

  // The closing begins between two sights. Whoever goes on is through 0.2 s later; whoever stops in the plane is seen there by an open leaf alone
  it('does not save whoever stops where only an open leaf would see him', () => {
    const seen = stretches([-2000, -1500], [-201, 250])
    const { struck } = worst([view(seen, 2000), view(stretches([-2000, -1500]))], [2000, 2000])
    expect(struck).toMatchObject({ stands: true, leafSpeed: 400 })
    expect(worst([view(seen, 2000), view(seen)], [2000, 2000]).struck).toBeUndefined()
  })
})
