import { describe, expect, it } from 'vitest'
import { diceOf } from '../test/random-numbers.ts'
import type { Placed, Stance } from './stances.ts'
import { gapTo, type Hung, isFree, mostMoved, type Panel, panelsAt, wayOfHung, withinSweep } from './turning-leaf.ts'

const SWING: Hung = { leaves: [{ hingeX: 0, toward: 1 }], opensTo: 'a', arm: 1000, second: undefined, openAngle_deg: 90, half: 20 }
const FOLD: Hung = { ...SWING, leaves: [{ hingeX: 2100, toward: -1 }], opensTo: 'b', second: 1100 }

function solidOf(shape: { readonly size: readonly [number, number] } | { readonly radius: number }, turn_deg = 0): Placed {
  const place = { x: 0, y: 0, from: 0, reflectance: 0.1, shades: false }
  if ('radius' in shape) return { ...place, shape: 'cylinder', radius: shape.radius, height: 1000 }
  return { ...place, shape: 'box', size: [...shape.size, 1000], turn_deg }
}
function stanceOf(solid: Placed): Stance {
  const body = { id: 'body', reflectance: 0.1, ofParts: false, postures: [], passers: [] }
  return { body, posture: 0, beside: undefined, from: ['a', 'b'], ofParts: false, solids: [solid], half: [0, 0] }
}
const corners = ({ x, y, alongX, alongY, length, half }: Panel) =>
  [0, length].flatMap((u) => [-half, half].map((v) => [x + u * alongX - v * alongY, y + u * alongY + v * alongX] as const))

describe('a leaf that turns', () => {
  it('stands where a drawing has it (hand calculation)', () => {
    const [open] = panelsAt(SWING, wayOfHung(SWING))
    expect(open).toMatchObject({ x: 0, y: 0, alongX: expect.closeTo(0, 12), alongY: 1, length: 1000 })
    // 30 degrees: the joint at 1000 cos 30 from the hinge and 500 toward B, the guided end on y = 0
    const [first, second] = panelsAt(FOLD, (1000 * Math.PI) / 6)
    expect([second?.x, second?.y]).toEqual([expect.closeTo(2100 - 866.0254, 3), expect.closeTo(-500, 9)])
    expect((second?.y ?? 0) + 1100 * (second?.alongY ?? 0)).toBeCloseTo(0, 9)
    expect(first?.alongX).toBeCloseTo(-Math.cos(Math.PI / 6), 12)
  })

  it('keeps its distance from what stands beside it (hand calculation)', () => {
    const [open] = panelsAt(SWING, wayOfHung(SWING))
    if (open === undefined) throw new Error('a leaf has a panel')
    expect(gapTo(open, solidOf({ size: [200, 300] }), 500, 0, 0)).toBeCloseTo(500 - 100 - 20 + 0.001, 9)
    expect(gapTo(open, solidOf({ radius: 200 }), 320, 1300, 1300)).toBeCloseTo(Math.sqrt(300 * 300 + 300 * 300) - 200 + 0.001, 9)
    expect(gapTo(open, solidOf({ radius: 200 }), 320, 1300, 900)).toBeCloseTo(300 - 200 + 0.001, 9)
    expect(gapTo(open, solidOf({ size: [200, 300] }), 110, 500, 500)).toBeCloseTo(-10 + 0.001, 9)
    expect(withinSweep(SWING, stanceOf(solidOf({ size: [200, 300] })), 'b')).toEqual({ enter: -20 - 150, leave: 1020 + 150 })
    expect(withinSweep(SWING, stanceOf(solidOf({ size: [200, 300] })), 'a')).toEqual({ enter: -1020 - 150, leave: 20 + 150 })
  })

  it('moves no point by more than its bound, and some by nearly as much (300 random leaves, seed 5)', () => {
    const dice = diceOf(5)
    let [most, least] = [0, Infinity]
    for (let k = 0; k < 300; k++) {
      const hung = randomLeaf(dice)
      const bound = mostMoved(hung)
      const way = dice.between(0.01, 1) * (wayOfHung(hung) - 0.2)
      const [a, b] = [panelsAt(hung, way), panelsAt(hung, way + 0.1)]
      const moved = a.flatMap((panel, p) =>
        corners(panel).map(([x, y], c) => {
          const [bx = 0, by = 0] = b[p] ? (corners(b[p] as Panel)[c] ?? []) : []
          return Math.sqrt((bx - x) ** 2 + (by - y) ** 2) / 0.1
        }),
      )
      most = Math.max(most, ...moved.map((each) => each / bound))
      least = Math.min(least, Math.max(...moved) / bound)
    }
    expect(most).toBeLessThan(1 + 1e-6)
    expect(most).toBeGreaterThan(0.95)
  })

  it('is free only where no way and no place brings it to the body (150 random cases against points that are tried one by one, seed 9)', () => {
    const dice = diceOf(9)
    const wrong: number[] = []
    let [free, met] = [0, 0]
    for (let k = 0; k < 150; k++) {
      const hung = randomLeaf(dice)
      const solid = solidOf(
        dice.chance(0.5) ? { radius: dice.between(50, 300) } : { size: [dice.between(100, 500), dice.between(100, 900)] },
        dice.between(-90, 90),
      )
      const [x, y0] = [dice.between(0, 2000), dice.between(-1500, 1500)]
      const y = [y0, y0 + dice.pick([0, 30, 400])] as const
      const up = wayOfHung(hung)
      const down = dice.between(0, 1) * up
      const isSo = isFree(hung, { stance: stanceOf(solid), x, y }, [down, up], { left: 1e7 }, '')
      if (isSo) free++
      const touches = Array.from({ length: 60 }, (_, i) => down + ((up - down) * i) / 59).some((way) =>
        panelsAt(hung, way).some((panel) => [y[0], (y[0] + y[1]) / 2, y[1]].some((at) => holdsAPoint(panel, solid, x, at))),
      )
      if (touches) met++
      if (isSo && touches) wrong.push(k)
    }
    expect(wrong).toEqual([])
    expect({ free: free > 20, met: met > 20 }).toEqual({ free: true, met: true })
  })
})

function randomLeaf(dice: ReturnType<typeof diceOf>): Hung {
  const arm = dice.between(400, 1500)
  const leaf = { hingeX: dice.pick([0, 2000]), toward: dice.pick([1, -1] as const) }
  const common = { leaves: [leaf], opensTo: dice.pick(['a', 'b'] as const), arm, half: dice.between(5, 80) }
  if (dice.chance(0.5)) return { ...common, second: undefined, openAngle_deg: dice.between(20, 180) }
  return { ...common, second: arm + dice.pick([0, 0, 1, 300]), openAngle_deg: dice.between(20, 90) }
}

/** Whether one of many points of the panel lies within the body, by a millimetre. */
function holdsAPoint({ x: px, y: py, alongX, alongY, length, half }: Panel, solid: Placed, x: number, y: number): boolean {
  for (let i = 0; i <= 80; i++)
    for (const v of [-half, 0, half]) {
      const [dx, dy] = [px + (length * i * alongX) / 80 - v * alongY - x, py + (length * i * alongY) / 80 + v * alongX - y]
      if (solid.shape === 'cylinder') {
        if (Math.hypot(dx, dy) < solid.radius - 1) return true
        continue
      }
      const turn = (solid.turn_deg * Math.PI) / 180
      const [a, b] = [dx * Math.cos(turn) + dy * Math.sin(turn), dy * Math.cos(turn) - dx * Math.sin(turn)]
      if (Math.abs(a) < solid.size[0] / 2 - 1 && Math.abs(b) < solid.size[1] / 2 - 1) return true
    }
  return false
}
