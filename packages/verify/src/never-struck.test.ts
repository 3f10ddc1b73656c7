import { describe, expect, it } from 'vitest'
import { Refusal } from './json.ts'
import { closingOf } from './leaf-motion.ts'
import { checkParts, checkStrips, type Way } from './never-struck.ts'

/** The leaf of method-cases T2, past which a body runs at 1000 mm/s that is seen from 3000 to 500 mm before the leaf, and from 400 mm on. */
const drive = { speed: 500, accel: 1000, jerk: undefined, delay: 0.1, decel: 1000, curve: undefined }
const way = (half: number, clear: number): Way => ({
  closing: closingOf(2000, drive),
  enter: -half,
  leave: half,
  clear,
  cycle: { warning: 0, cancels: false, pause: undefined },
  views: [
    {
      visible: [
        [-3000, -500],
        [-400, 400],
      ],
      response: 0.1,
      hold: 0,
    },
  ],
})

/** Every window halved ten times along the phases; two changes, none after them, and the two that a body brings about which stands. */
function codeOf(given: Way, windows = 5): string {
  const full = (depth: number): number[] => (depth === 0 ? [0] : [-2, ...full(depth - 1), ...full(depth - 1)])
  const parts = [{ to: 1 / 1000, trees: Array.from({ length: windows }, () => full(10)) }]
  try {
    checkParts(given, [1 / 1000, 1 / 1000], parts, { left: 1e6 }, 'parts')
    return 'shown'
  } catch (thrown) {
    if (thrown instanceof Refusal) return `${thrown.issue.code} ${thrown.issue.path.replace(/\/\d+$/, '')}`
    throw thrown
  }
}

describe('checkParts', () => {
  // Hand calculation: a closing runs for 0.2 s at most before it is told to stop, and 0.1 s more: 45 mm, 300 mm/s, and 45 mm of braking.
  // The body comes 0.2 s after the stop and has left after 0.4 s, when the leaf has just come to rest, at 1910 mm
  it('asks for the height of the leaf when the body has left', () => {
    expect(codeOf(way(100, 1908))).toBe('shown')
    expect(codeOf(way(100, 1912))).toBe('not-shown parts/0/trees/1')
  })

  // Hand calculation: a shorter body has left after 0.32 s, when the leaf stands at 1913.2 mm; one that stands there is still there at its rest
  it('asks about a body that stands, which is still there when the leaf comes to rest', () => {
    expect(codeOf(way(20, 1908))).toBe('shown')
    expect(codeOf(way(20, 1912))).toBe('not-shown parts/0/trees/4')
  })

  // Hand calculation: out of sight for 2 s, seen again 0.1 s and a response of 0.1 s before it comes: a closing that begins between is then 925 mm down, and no
  // closing does that waits for 2 s after the first change, which lasts for 1.9 s
  it('knows what the control waits for after an output let go, and that a command may be on its way through a change which a warning outlasts', () => {
    const lost = (warning: number, cancels: boolean, pause: number | undefined): Way => {
      const visible = [[-4300, -2300] as const, [-300, 300] as const]
      return { ...way(100, 1500), views: [{ visible, response: 0.1, hold: 0 }], cycle: { warning, cancels, pause } }
    }
    expect(codeOf(lost(0, false, undefined))).toBe('not-shown parts/0/trees/1')
    expect([lost(0, false, 2), lost(2, true, undefined), lost(1, true, 1), lost(1.5, false, 0.5)].map((one) => codeOf(one))).toEqual(
      Array(4).fill('shown'),
    )
    expect([lost(0, false, 0.5), lost(2, false, undefined), lost(6, false, 2)].map((one) => codeOf(one))).toEqual(
      Array(3).fill('not-shown parts/0/trees/1'),
    )
  })

  it('asks for a tree for every window, and for parts up to the slowest body', () => {
    expect(codeOf(way(100, 1908), 4)).toBe('too-few parts/0/trees')
    expect(() => checkParts(way(100, 1908), [1 / 1000, 1 / 900], [], { left: 1e6 }, 'parts')).toThrow(Refusal)
  })

  it('asks that whoever stands in the way of the leaf is seen there', () => {
    const { views, ...rest } = way(100, 1908)
    expect(codeOf({ ...rest, views: views.map((view) => ({ ...view, visible: [[-3000, 90]] })) }, 2)).toBe('not-shown parts')
  })
})

/** A strip of 100 mm past a leaf that turns, which is over in 2.5 s, at 100 mm/s; the leaf meets the body as soon as it moves. */
function codeOfStrip(views: Way['views'], trees: readonly (readonly number[])[], to_mm = 100): string {
  const closing = closingOf(1000, drive)
  const passing = { closing, enter: 0, leave: 100, views, cycle: { warning: 0, cancels: false, pause: undefined } }
  const strips = [{ to_mm, clear_mm: 1000, parts: [{ to: 0.01, trees }] }]
  try {
    checkStrips(passing, [0.01, 0.01], strips, { left: 1e6 }, 'strips', () => closing.from)
    return 'shown'
  } catch (thrown) {
    if (thrown instanceof Refusal) return `${thrown.issue.code} ${thrown.issue.path}`
    throw thrown
  }
}

describe('checkStrips', () => {
  // Hand calculation: seen until it is 150 mm on, at 1.5 s, and again from 500 mm on, at 5 s. It leaves the strip at 1 s: a closing that the second change stops has
  // begun after that if it has run for less than 4 s, and none begins that has run for more than 3.5 s. Root from 0 to 7.5 s: the halves meet at 3.75 s
  it('takes a closing for harmless that begins after the body has left the strip, and no longer one', () => {
    const views = [{ visible: [[-1000, 150] as const, [500, 600] as const], response: 0, hold: 0 }]
    expect(codeOfStrip(views, [[0], [-2, 0, 0], [0], [0]])).toBe('shown')
    expect(codeOfStrip(views, [[0], [0], [0], [0]])).toBe('not-shown strips/0/parts/0/trees/1/0')
    expect(codeOfStrip(views, [[0], [-2, 0, 0], [0], [0]], 99)).toBe('missing-part strips')
  })

  it('asks that whoever stands anywhere on the strip is seen', () => {
    const held = (to: number) => [{ visible: [[-1000, to] as const], response: 0, hold: 10 }]
    expect(codeOfStrip(held(100), [[0], [0], [0]])).toBe('shown')
    expect(codeOfStrip(held(99), [[0], [0], [0]])).toBe('not-shown strips/0/parts')
  })
})
