import { describe, expect, it } from 'vitest'
import { Refusal } from './json.ts'
import { rootsOf, walkTree } from './tile-tree.ts'

const root = { xMin: 0, xMax: 8, yMin: 0, yMax: 4 }

function walked(tree: readonly unknown[]): readonly unknown[] | string {
  const leaves: unknown[] = []
  try {
    walkTree(tree, root, 'tree', (leaf, { xMin, xMax, yMin, yMax }) => leaves.push([leaf, xMin, xMax, yMin, yMax]))
    return leaves
  } catch (thrown) {
    return thrown instanceof Refusal ? thrown.issue.code : String(thrown)
  }
}

describe('a tree of tiles', () => {
  it('is split across its longer side, across x if both are equal, lower half first (hand calculation)', () => {
    expect(walked([5])).toEqual([[5, 0, 8, 0, 4]])
    expect(walked([-1, -2, -1, 7, -1, -3, -4])).toEqual([
      [-2, 0, 4, 0, 4],
      [7, 4, 6, 0, 4],
      [-3, 6, 8, 0, 2],
      [-4, 6, 8, 2, 4],
    ])
  })
  it('is refused where it ends early or late, holds no whole numbers, or is split without end', () => {
    expect(walked([])).toBe('tree-too-short')
    expect(walked([-1, 0])).toBe('tree-too-short')
    expect(walked([-1, 0, 1, 2])).toBe('tree-too-long')
    expect(walked([0.5])).toBe('wrong-type')
    expect(walked(['0'])).toBe('wrong-type')
    expect(walked([1e12])).toBe('out-of-range')
    expect(walked(Array(1_000_000).fill(-1))).toBe('too-deep')
  })
})

describe('the roots of a zone', () => {
  it('are cut at each bend of the floor that lies strictly inside, each on its own straight piece (hand calculation)', () => {
    const floor = {
      profile: [
        [-1, 10],
        [1, 20],
        [3, 0],
        [4, 100],
      ] as const,
      slope: 0.5,
    }
    expect(rootsOf(root, floor).map(({ tile, floor: [c, x, y] }) => [tile.yMin, tile.yMax, c, x, y])).toEqual([
      [0, 1, 15, 0.5, 5],
      [1, 3, 30, 0.5, -10],
      [3, 4, -300, 0.5, 100],
    ])
  })
  it('stand on a level floor beyond the ends of the profile', () => {
    const floors = (profile: readonly (readonly [number, number])[]) => rootsOf(root, { profile, slope: 0 }).map(({ floor }) => floor)
    expect(
      floors([
        [7, 70],
        [9, 0],
      ]),
    ).toEqual([[70, 0, 0]])
    expect(
      floors([
        [-9, 0],
        [-7, 70],
      ]),
    ).toEqual([[70, 0, 0]])
    expect(floors([[2, 30]])).toEqual([
      [30, 0, 0],
      [30, 0, 0],
    ])
  })
})
