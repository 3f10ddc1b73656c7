import type { Tile } from './plain.ts'

/** What open tiles leave unproved. */
export interface Left {
  /** Of the union of all of them. */
  readonly area_mm2: number
  /** The largest diagonal of the box around tiles that touch, which is at least their diameter; 0 if there are none. */
  readonly largest_mm: number
}

/**
 * Groups the open tiles of all slices that touch. Tiles come from halving the same rectangles, so that any two either lie one within the other
 * or share no area. So those that reach a line across x, without those within others, lie beside each other, and their order by y serves to
 * find who touches whom.
 */
export function leftOpen(tiles: readonly Tile[]): Left {
  const sorted = [...tiles].sort((a, b) => a.xMin - b.xMin || a.yMin - b.yMin || b.xMax - a.xMax || b.yMax - a.yMax)
  const groups = new Groups()
  let [area_mm2, first] = [0, 0]
  let met: readonly number[] = [] // groups' members that reach the line, by rising y
  while (first < sorted.length) {
    const x = sorted[first]?.xMin ?? 0
    met = met.filter((i) => groups.tile(i).xMax >= x)
    const starting: number[] = []
    for (let tile = sorted[first]; tile !== undefined && tile.xMin === x; tile = sorted[++first]) {
      const touched = touching(met, groups, tile)
      const around = [...touched, ...starting.slice(-1)].map((i) => groups.tile(i))
      if (around.some((other) => contains(other, tile))) continue
      area_mm2 += (tile.xMax - tile.xMin) * (tile.yMax - tile.yMin)
      const self = groups.add(tile)
      starting.push(self)
      for (const other of touched) groups.join(self, other)
    }
    met = [...met.filter((i) => groups.tile(i).xMax > x), ...starting].sort((a, b) => groups.tile(a).yMin - groups.tile(b).yMin)
    for (const [k, upper] of met.entries()) {
      const lower = met[k - 1]
      if (lower !== undefined && groups.tile(lower).yMax >= groups.tile(upper).yMin) groups.join(lower, upper)
    }
  }
  return { area_mm2, largest_mm: groups.largestDiagonal() }
}

function touching(met: readonly number[], groups: Groups, tile: Tile): readonly number[] {
  let [low, high] = [0, met.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (groups.tile(met[middle] ?? 0).yMax < tile.yMin) low = middle + 1
    else high = middle
  }
  let end = low
  while (end < met.length && groups.tile(met[end] ?? 0).yMin <= tile.yMax) end++
  return met.slice(low, end)
}

function contains(other: Tile, tile: Tile): boolean {
  return other.xMin <= tile.xMin && tile.xMax <= other.xMax && other.yMin <= tile.yMin && tile.yMax <= other.yMax
}

/** Tiles in groups that grow together (union and find). */
class Groups {
  private readonly tiles: Tile[] = []
  private readonly parents: number[] = []

  tile(i: number): Tile {
    const tile = this.tiles[i]
    if (tile === undefined) throw new Error(`i must be a tile's number, got ${i}`)
    return tile
  }

  add(tile: Tile): number {
    this.parents.push(this.tiles.length)
    return this.tiles.push(tile) - 1
  }

  join(a: number, b: number): void {
    this.parents[this.rootOf(a)] = this.rootOf(b)
  }

  largestDiagonal(): number {
    const boxes = new Map<number, { xMin: number; xMax: number; yMin: number; yMax: number }>()
    for (const [i, tile] of this.tiles.entries()) {
      const box = boxes.get(this.rootOf(i))
      if (box === undefined) boxes.set(this.rootOf(i), { ...tile })
      else {
        box.xMin = Math.min(box.xMin, tile.xMin)
        box.xMax = Math.max(box.xMax, tile.xMax)
        box.yMin = Math.min(box.yMin, tile.yMin)
        box.yMax = Math.max(box.yMax, tile.yMax)
      }
    }
    let largest = 0
    for (const { xMin, xMax, yMin, yMax } of boxes.values()) {
      const [width, depth] = [xMax - xMin, yMax - yMin]
      largest = Math.max(largest, Math.sqrt(width * width + depth * depth))
    }
    return largest
  }

  private rootOf(i: number): number {
    let at = i
    for (let parent = this.parents[at]; parent !== undefined && parent !== at; parent = this.parents[at]) {
      this.parents[at] = this.parents[parent] ?? parent // halves the way for the next one
      at = parent
    }
    return at
  }
}
