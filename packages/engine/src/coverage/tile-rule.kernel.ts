// The tile rule: whether one beam sees a body at every placement of a rectangle. Doorway frame, mm. The argument stands in docs/method.md, "Exact".

/**
 * Beams against one body in one stance on one piece of floor. The body's axes are 0 along, 1 across, 2 up; beam i has the entries
 * 3 i + axis. Along an axis the beam stands at `at + slope t` and the body reaches from `low` to `high` about a x + b y + c at the
 * placement (x, y).
 */
export interface TileBeams {
  readonly count: number
  readonly at: Float64Array
  readonly slope: Float64Array
  /** How far the beam may stand off along the axis, over all tolerances; 0 without. */
  readonly off: Float64Array
  /** How far the slope may be off. */
  readonly slopeOff: Float64Array
  /** 1 where the beam surely moves along all three axes. */
  readonly steep: Uint8Array
  /** Farthest entry by a face across the axis, at the least brightness that it can have. */
  readonly reach: Float64Array
  /** Stretches in which the entry must lie: those of beam i are `first[i]` up to (not with) `first[i + 1]`. */
  readonly first: Int32Array
  readonly from: Float64Array
  readonly to: Float64Array
  readonly segments: boolean
}

/** The body: half sizes about its centre line, heights, and how each axis moves with the placement. */
export interface TileBody {
  readonly round: boolean
  readonly low: readonly [number, number, number]
  readonly high: readonly [number, number, number]
  readonly a: readonly [number, number, number]
  readonly b: readonly [number, number, number]
  readonly c: readonly [number, number, number]
}

/** Scratch of one thread of work: per axis the entry and exit distance at the tile's middle, how much they vary, and what tolerances add. */
export interface TileScratch {
  readonly enter: Float64Array
  readonly leave: Float64Array
  readonly moveX: Float64Array
  readonly moveY: Float64Array
  readonly unsure: Float64Array
  /** Out: bit 1 the face along, 2 across, 4 up or down may be entered somewhere on the tile (a cylinder: 1 its side, 4 an end). */
  faces: number
}

export function newTileScratch(): TileScratch {
  const three = () => new Float64Array(3)
  return { enter: three(), leave: three(), moveX: three(), moveY: three(), unsure: three(), faces: 0 }
}

/** mm that every inequality must hold by, so that programs whose sines differ in the last bit agree. */
export const SPARE_MM = 2e-6

export const MISSES = 0 // at no placement of the tile, or nearly so: only saves work
export const TOUCHES = 1
export const SEES = 2 // at every placement, with something to spare: a claim

/** KERNEL. What beam i makes of the box at the placements within halfX, halfY of (x, y). Sets `scratch.faces` where it sees all. */
export function boxTile(
  beams: TileBeams,
  i: number,
  body: TileBody,
  x: number,
  y: number,
  halfX: number,
  halfY: number,
  scratch: TileScratch,
): number {
  const base = 3 * i
  if (beams.first[i]! === beams.first[i + 1]!) return MISSES
  if (!beams.segments && beams.steep[i]! === 1) return steepBoxTile(beams, i, body, x, y, halfX, halfY, scratch)
  const { enter, leave, moveX, moveY, unsure } = scratch
  // entry and exit along each axis, affine in the placement
  let sure = 0
  for (let axis = 0; axis < 3; axis++) {
    const slope = beams.slope[base + axis]!
    const steep = slope < 0 ? -slope : slope
    if (steep <= beams.slopeOff[base + axis]! || steep < 1e-9) continue
    const middle = body.a[axis]! * x + body.b[axis]! * y + body.c[axis]! - beams.at[base + axis]!
    enter[axis] = (middle + (slope > 0 ? body.low[axis]! : body.high[axis]!)) / slope
    leave[axis] = (middle + (slope > 0 ? body.high[axis]! : body.low[axis]!)) / slope
    moveX[axis] = body.a[axis]! / slope
    moveY[axis] = body.b[axis]! / slope
    unsure[axis] = beams.off[base + axis]! / steep
    sure |= 1 << axis
  }
  if (sure === 0) return MISSES
  // every face is entered before any is left
  let latest = -Infinity
  let earliest = -Infinity
  let latestAtBest = -Infinity
  let earliestAtBest = -Infinity
  let all = true
  for (let k = 0; k < 3; k++) {
    if ((sure & (1 << k)) === 0) continue
    const spread = size(moveX[k]!) * halfX + size(moveY[k]!) * halfY
    if (enter[k]! + spread + unsure[k]! > latest) latest = enter[k]! + spread + unsure[k]!
    if (enter[k]! - spread - unsure[k]! > earliest) earliest = enter[k]! - spread - unsure[k]!
    if (enter[k]! - spread + unsure[k]! > latestAtBest) latestAtBest = enter[k]! - spread + unsure[k]!
    if (enter[k]! + spread - unsure[k]! > earliestAtBest) earliestAtBest = enter[k]! + spread - unsure[k]!
    for (let j = 0; j < 3; j++) {
      if ((sure & (1 << j)) === 0) continue
      const apart = size(moveX[k]! - moveX[j]!) * halfX + size(moveY[k]! - moveY[j]!) * halfY
      const gap = enter[k]! - leave[j]! + unsure[k]! + unsure[j]!
      if (gap - apart > -SPARE_MM) return MISSES
      if (gap + apart > -SPARE_MM) all = false
    }
  }
  for (let axis = 0; axis < 3; axis++) {
    if ((sure & (1 << axis)) !== 0) continue
    for (let k = 0; k < 3; k++)
      if ((sure & (1 << k)) !== 0 && outside(beams, base, body, axis, k, x, y, halfX, halfY, scratch)) return MISSES
  }
  if (beams.segments) {
    if (latestAtBest > beams.to[beams.first[i]!]!) return MISSES
    if (!all || !betweenAll(beams, base, body, sure, x, y, halfX, halfY, scratch)) return TOUCHES
    if (earliest <= 0 && !betweenAtStart(beams, base, body, sure, x, y, halfX, halfY)) return TOUCHES
    return segmentTile(beams, i, latest, sure, halfX, halfY, scratch) ? SEES : TOUCHES
  }
  // faces that may be entered somewhere: all but those that another one is entered after, everywhere
  let faces = 0
  let reach = Infinity
  let reachAtBest = 0
  for (let m = 0; m < 3; m++) {
    let last = false
    for (let k = 0; k < 3 && !last; k++) {
      if (k === m || (sure & (1 << k)) === 0) continue
      if ((sure & (1 << m)) === 0) last = between(beams, base, body, m, k, -unsure[k]!, x, y, halfX, halfY, scratch)
      else {
        const apart = size(moveX[k]! - moveX[m]!) * halfX + size(moveY[k]! - moveY[m]!) * halfY
        last = enter[k]! - enter[m]! - apart - unsure[k]! - unsure[m]! > SPARE_MM
      }
    }
    if (last) continue
    faces |= 1 << m
    if (beams.reach[base + m]! < reach) reach = beams.reach[base + m]!
    if (beams.reach[base + m]! > reachAtBest) reachAtBest = beams.reach[base + m]!
  }
  if (latestAtBest > reachAtBest || !meetsWindow(beams, i, latestAtBest, earliestAtBest)) return MISSES
  // along an axis that the beam hardly moves on, it lies between the faces when it has entered the others
  if (!all || !betweenAll(beams, base, body, sure, x, y, halfX, halfY, scratch)) return TOUCHES
  scratch.faces = faces
  return latest < reach - SPARE_MM && inWindow(beams, i, earliest, latest) ? SEES : TOUCHES
}

/** KERNEL. `boxTile` for a beam that moves along all three axes: the same, written out. */
function steepBoxTile(
  beams: TileBeams,
  i: number,
  body: TileBody,
  x: number,
  y: number,
  halfX: number,
  halfY: number,
  scratch: TileScratch,
): number {
  const base = 3 * i
  const { low, high, a, b, c } = body
  const { at, slope, off } = beams
  const slope0 = slope[base]!
  const slope1 = slope[base + 1]!
  const slope2 = slope[base + 2]!
  const per0 = 1 / slope0
  const per1 = 1 / slope1
  const per2 = 1 / slope2
  const x0 = a[0] * per0
  const y0 = b[0] * per0
  const x1 = a[1] * per1
  const y1 = b[1] * per1
  const x2 = a[2] * per2
  const y2 = b[2] * per2
  const middle0 = a[0] * x + b[0] * y - at[base]!
  const middle1 = a[1] * x + b[1] * y - at[base + 1]!
  const middle2 = a[2] * x + b[2] * y + c[2] - at[base + 2]!
  const unsure0 = off[base]! * (per0 < 0 ? -per0 : per0)
  const unsure1 = off[base + 1]! * (per1 < 0 ? -per1 : per1)
  const unsure2 = off[base + 2]! * (per2 < 0 ? -per2 : per2)
  const enter0 = (middle0 + (per0 > 0 ? low[0] : high[0])) * per0
  const leave0 = (middle0 + (per0 > 0 ? high[0] : low[0])) * per0
  const enter1 = (middle1 + (per1 > 0 ? low[1] : high[1])) * per1
  const leave1 = (middle1 + (per1 > 0 ? high[1] : low[1])) * per1
  const enter2 = (middle2 + (per2 > 0 ? low[2] : high[2])) * per2
  const leave2 = (middle2 + (per2 > 0 ? high[2] : low[2])) * per2
  // every face is entered before any other is left
  const apart01 = size(x0 - x1) * halfX + size(y0 - y1) * halfY
  const apart02 = size(x0 - x2) * halfX + size(y0 - y2) * halfY
  const apart12 = size(x1 - x2) * halfX + size(y1 - y2) * halfY
  const gap01 = enter0 - leave1 + unsure0 + unsure1
  const gap10 = enter1 - leave0 + unsure0 + unsure1
  const gap02 = enter0 - leave2 + unsure0 + unsure2
  const gap20 = enter2 - leave0 + unsure0 + unsure2
  const gap12 = enter1 - leave2 + unsure1 + unsure2
  const gap21 = enter2 - leave1 + unsure1 + unsure2
  const worst01 = gap01 > gap10 ? gap01 : gap10
  const worst02 = gap02 > gap20 ? gap02 : gap20
  const worst12 = gap12 > gap21 ? gap12 : gap21
  if (worst01 - apart01 > -SPARE_MM || worst02 - apart02 > -SPARE_MM || worst12 - apart12 > -SPARE_MM) return MISSES
  if (enter0 - leave0 + 2 * unsure0 > -SPARE_MM || enter1 - leave1 + 2 * unsure1 > -SPARE_MM || enter2 - leave2 + 2 * unsure2 > -SPARE_MM)
    return MISSES
  const spread0 = size(x0) * halfX + size(y0) * halfY
  const spread1 = size(x1) * halfX + size(y1) * halfY
  const spread2 = size(x2) * halfX + size(y2) * halfY
  // bounds on the entry over the tile and all tolerances, and the same at the tile's placement that suits best
  const latest = most(enter0 + spread0 + unsure0, enter1 + spread1 + unsure1, enter2 + spread2 + unsure2)
  const earliest = most(enter0 - spread0 - unsure0, enter1 - spread1 - unsure1, enter2 - spread2 - unsure2)
  const latestAtBest = most(enter0 - spread0 + unsure0, enter1 - spread1 + unsure1, enter2 - spread2 + unsure2)
  const earliestAtBest = most(enter0 + spread0 - unsure0, enter1 + spread1 - unsure1, enter2 + spread2 - unsure2)
  // faces that may be entered somewhere: all but those that another one is entered after, everywhere
  const margin01 = apart01 + unsure0 + unsure1 + SPARE_MM
  const margin02 = apart02 + unsure0 + unsure2 + SPARE_MM
  const margin12 = apart12 + unsure1 + unsure2 + SPARE_MM
  let faces = 0
  let reach = Infinity
  let reachAtBest = 0
  if (!(enter1 - enter0 > margin01 || enter2 - enter0 > margin02)) {
    faces = 1
    reach = reachAtBest = beams.reach[base]!
  }
  if (!(enter0 - enter1 > margin01 || enter2 - enter1 > margin12)) {
    faces |= 2
    const far = beams.reach[base + 1]!
    if (far < reach) reach = far
    if (far > reachAtBest) reachAtBest = far
  }
  if (!(enter0 - enter2 > margin02 || enter1 - enter2 > margin12)) {
    faces |= 4
    const far = beams.reach[base + 2]!
    if (far < reach) reach = far
    if (far > reachAtBest) reachAtBest = far
  }
  if (latestAtBest > reachAtBest || !meetsWindow(beams, i, latestAtBest, earliestAtBest)) return MISSES
  if (worst01 + apart01 > -SPARE_MM || worst02 + apart02 > -SPARE_MM || worst12 + apart12 > -SPARE_MM) return TOUCHES
  scratch.faces = faces
  return latest < reach - SPARE_MM && inWindow(beams, i, earliest, latest) ? SEES : TOUCHES
}

/** KERNEL. Where the body may cover the start of a segment, the start stands between the faces that the segment hardly moves across. */
function betweenAtStart(
  beams: TileBeams,
  base: number,
  body: TileBody,
  sure: number,
  x: number,
  y: number,
  halfX: number,
  halfY: number,
): boolean {
  for (let axis = 0; axis < 3; axis++) {
    if ((sure & (1 << axis)) !== 0) continue
    const stands = beams.at[base + axis]! - (body.a[axis]! * x + body.b[axis]! * y + body.c[axis]!)
    const spread = size(body.a[axis]!) * halfX + size(body.b[axis]!) * halfY + beams.off[base + axis]!
    if (!(stands - spread > body.low[axis]! + SPARE_MM && stands + spread < body.high[axis]! - SPARE_MM)) return false
  }
  return true
}

function betweenAll(
  beams: TileBeams,
  base: number,
  body: TileBody,
  sure: number,
  x: number,
  y: number,
  halfX: number,
  halfY: number,
  scratch: TileScratch,
): boolean {
  for (let axis = 0; axis < 3; axis++) {
    if ((sure & (1 << axis)) !== 0) continue
    for (let k = 0; k < 3; k++)
      if ((sure & (1 << k)) !== 0 && !between(beams, base, body, axis, k, scratch.unsure[k]!, x, y, halfX, halfY, scratch)) return false
  }
  return true
}

/** KERNEL. The beam stands between the faces of `axis` at the time it enters (or, with a negative `later`, at the earliest can enter) face k. */
function between(
  beams: TileBeams,
  base: number,
  body: TileBody,
  axis: number,
  k: number,
  later: number,
  x: number,
  y: number,
  halfX: number,
  halfY: number,
  scratch: TileScratch,
): boolean {
  const middle = standsAt(beams, base, body, axis, k, later, x, y, scratch)
  const spread = varies(beams, base, body, axis, k, halfX, halfY, scratch) + beams.off[base + axis]!
  return middle - spread > body.low[axis]! + SPARE_MM && middle + spread < body.high[axis]! - SPARE_MM
}

/** KERNEL. At no placement of the tile does the beam stand between the faces of `axis` when it enters face k, with what tolerances take. */
function outside(
  beams: TileBeams,
  base: number,
  body: TileBody,
  axis: number,
  k: number,
  x: number,
  y: number,
  halfX: number,
  halfY: number,
  scratch: TileScratch,
): boolean {
  const middle = standsAt(beams, base, body, axis, k, scratch.unsure[k]!, x, y, scratch)
  const spread = varies(beams, base, body, axis, k, halfX, halfY, scratch) - beams.off[base + axis]!
  return middle + spread < body.low[axis]! + SPARE_MM || middle - spread > body.high[axis]! - SPARE_MM
}

function standsAt(
  beams: TileBeams,
  base: number,
  body: TileBody,
  axis: number,
  k: number,
  later: number,
  x: number,
  y: number,
  { enter }: TileScratch,
): number {
  return beams.at[base + axis]! + beams.slope[base + axis]! * (enter[k]! + later) - (body.a[axis]! * x + body.b[axis]! * y + body.c[axis]!)
}

function varies(
  beams: TileBeams,
  base: number,
  body: TileBody,
  axis: number,
  k: number,
  halfX: number,
  halfY: number,
  { moveX, moveY }: TileScratch,
): number {
  const slope = beams.slope[base + axis]!
  return size(slope * moveX[k]! - body.a[axis]!) * halfX + size(slope * moveY[k]! - body.b[axis]!) * halfY
}

/** KERNEL. A segment is interrupted where the body is entered before its end and left after its start. */
function segmentTile(
  beams: TileBeams,
  i: number,
  latest: number,
  sure: number,
  halfX: number,
  halfY: number,
  scratch: TileScratch,
): boolean {
  const { leave, moveX, moveY, unsure } = scratch
  scratch.faces = 7
  if (!(latest < beams.to[beams.first[i]!]! - SPARE_MM)) return false
  for (let j = 0; j < 3; j++)
    if ((sure & (1 << j)) !== 0 && !(leave[j]! - size(moveX[j]!) * halfX - size(moveY[j]!) * halfY - unsure[j]! > SPARE_MM)) return false
  return true
}

/** KERNEL. The entry, between two distances, lies within one stretch that counts. */
function inWindow(beams: TileBeams, i: number, earliest: number, latest: number): boolean {
  const end = beams.first[i + 1]!
  for (let w = beams.first[i]!; w < end; w++) if (earliest > beams.from[w]! + SPARE_MM && latest < beams.to[w]! - SPARE_MM) return true
  return false
}

/** KERNEL. At the placement that suits best, the entry may lie within one stretch that counts. */
function meetsWindow(beams: TileBeams, i: number, latestAtBest: number, earliestAtBest: number): boolean {
  const end = beams.first[i + 1]!
  for (let w = beams.first[i]!; w < end; w++) if (earliestAtBest > beams.from[w]! && latestAtBest < beams.to[w]!) return true
  return false
}

function most(a: number, b: number, c: number): number {
  const larger = a > b ? a : b
  return larger > c ? larger : c
}

/**
 * KERNEL. As `boxTile`, for a cylinder whose radius is `body.high[0]`. The entry by the side is convex in the placement, so what holds
 * at the corners from above holds on the tile; from below the line's middle less the radius bounds it. The cosine on the side falls with
 * the offset from the line, which is largest at a corner.
 */
export function cylinderTile(
  beams: TileBeams,
  i: number,
  body: TileBody,
  x: number,
  y: number,
  halfX: number,
  halfY: number,
  scratch: TileScratch,
): number {
  const base = 3 * i
  const dx = beams.slope[base]!
  const dy = beams.slope[base + 1]!
  const dz = beams.slope[base + 2]!
  const radius = body.high[0]!
  const off = Math.sqrt(beams.off[base]! * beams.off[base]! + beams.off[base + 1]! * beams.off[base + 1]!)
  const narrow = radius - off
  const level2 = dx * dx + dy * dy
  const level = Math.sqrt(level2)
  if (!(narrow > 0) || beams.first[i]! === beams.first[i + 1]!) return MISSES
  if (level2 > 1e-18) {
    // the middle of the tile lies farther from the line than the body and the tile together can bridge
    const aside = size((beams.at[base]! - x) * dy - (beams.at[base + 1]! - y) * dx) / level
    if (aside > radius + halfX + halfY) return MISSES
  }
  if (!cylinderNear(beams, i, body, x, y, halfX, halfY, radius)) return MISSES
  const ends = size(dz) > beams.slopeOff[base + 2]! && size(dz) > 1e-9
  const endOff = ends ? beams.off[base + 2]! / size(dz) : 0
  const slanting = level > 1e-9
  if (!beams.segments && entersTooFar(beams, i, body, x, y, halfX, halfY, ends, slanting ? level : 0)) return MISSES
  let latest = -Infinity
  // two affine bounds from below; the later of them is convex, so each stands for itself
  let earliestByEnd = ends ? Infinity : -Infinity
  let earliestBySide = slanting ? Infinity : -Infinity
  let beyond = 0
  const far = beams.to[beams.first[i + 1]! - 1]!
  const drift = level * far // of a beam that is all but upright, against its start
  let topAfterSide = ends
  let farthest = 0
  for (let corner = 0; corner < 4; corner++) {
    const cx = corner & 1 ? x + halfX : x - halfX
    const cy = corner & 2 ? y + halfY : y - halfY
    const px = beams.at[base]! - cx
    const py = beams.at[base + 1]! - cy
    let enter = -Infinity
    let leave = Infinity
    const offset = slanting ? size(px * dy - py * dx) / level : Math.sqrt(px * px + py * py) + drift
    if (offset > farthest) farthest = offset
    const chord = narrow * narrow - offset * offset
    if (!(chord > SPARE_MM * radius)) return TOUCHES
    if (slanting) {
      const middle = -(px * dx + py * dy) / level2
      const half = Math.sqrt(chord) / level
      enter = middle - half
      leave = middle + half
      const bound = middle - (radius + off) / level
      if (bound < earliestBySide) earliestBySide = bound
      if (middle - far > beyond) beyond = middle - far
    }
    const side = enter
    if (ends) {
      const floor = body.a[2]! * cx + body.b[2]! * cy + body.c[2]! - beams.at[base + 2]!
      const top = (floor + (dz > 0 ? body.low[2]! : body.high[2]!)) / dz
      const bottom = (floor + (dz > 0 ? body.high[2]! : body.low[2]!)) / dz
      if (top + endOff > enter) enter = top + endOff
      if (top - endOff < earliestByEnd) earliestByEnd = top - endOff
      if (bottom - endOff < leave) leave = bottom - endOff
      if (!(top - endOff > side + SPARE_MM)) topAfterSide = false
    } else {
      const height = beams.at[base + 2]! - (body.a[2]! * cx + body.b[2]! * cy + body.c[2]!)
      // hardly any slope: between bottom and top all along the way to the exit
      const last = slanting ? -(px * dx + py * dy) / level2 + narrow / level : 0 // affine, and no exit comes later
      const strays = size(dz) * (last > 0 ? last : 0) + beams.off[base + 2]!
      if (!(height - strays > body.low[2]! + SPARE_MM && height + strays < body.high[2]! - SPARE_MM)) return TOUCHES
    }
    if (!(enter < leave - SPARE_MM)) return TOUCHES
    if (beams.segments && !(leave > SPARE_MM)) return TOUCHES
    if (enter > latest) latest = enter
  }
  if (beams.segments) {
    scratch.faces = 5
    return latest < beams.to[beams.first[i]!]! - SPARE_MM ? SEES : TOUCHES
  }
  // the side may be entered unless the beam passes its rim everywhere before it comes down on the end
  let faces = ends ? 4 : 0
  let reach = ends ? beams.reach[base + 2]! : Infinity
  if (slanting && !topAfterSide) {
    faces |= 1
    // past the last window, what bounds the beam's points no longer does: there its direction being off counts on
    const sway = Math.sqrt(beams.slopeOff[base]! * beams.slopeOff[base]! + beams.slopeOff[base + 1]! * beams.slopeOff[base + 1]!)
    const share = (farthest + off + sway * beyond) / radius
    if (!(share < 1)) return TOUCHES
    // `reach` of axis 0 holds the reach at cosine 1 of a level normal; in clear air and fog alike the caller gives it by `sideReach`
    const side = sideReach(beams, base, Math.sqrt(1 - share * share))
    if (side < reach) reach = side
  }
  scratch.faces = faces
  return latest < reach - SPARE_MM && inWindow(beams, i, earliestByEnd > earliestBySide ? earliestByEnd : earliestBySide, latest)
    ? SEES
    : TOUCHES
}

/**
 * KERNEL. No placement of the tile is entered within the reach that a claim about it needs: an end that may be entered always counts, and a side is
 * nowhere brighter than where the beam meets its middle.
 */
function entersTooFar(
  beams: TileBeams,
  i: number,
  body: TileBody,
  x: number,
  y: number,
  halfX: number,
  halfY: number,
  ends: boolean,
  level: number,
): boolean {
  const base = 3 * i
  const last = beams.to[beams.first[i + 1]! - 1]!
  const reach = beams.reach[ends ? base + 2 : base]!
  const far = reach < last ? reach : last
  const dx = beams.slope[base]!
  const dy = beams.slope[base + 1]!
  if (level > 0) {
    const middle = ((x - beams.at[base]!) * dx + (y - beams.at[base + 1]!) * dy) / (level * level)
    const spread = (size(dx) * halfX + size(dy) * halfY) / (level * level)
    if (middle - spread - (body.high[0]! + beams.off[base]! + beams.off[base + 1]!) / level > far) return true
  }
  if (!ends) return false
  const dz = beams.slope[base + 2]!
  const floor = body.a[2]! * x + body.b[2]! * y + body.c[2]! - beams.at[base + 2]!
  const rise = size(body.a[2]!) * halfX + size(body.b[2]!) * halfY + beams.off[base + 2]!
  return (floor + (dz > 0 ? body.low[2]! : body.high[2]!)) / dz - rise / size(dz) > far
}

/** KERNEL. False where the beam passes the height of the body too far from the tile. */
function cylinderNear(
  beams: TileBeams,
  i: number,
  body: TileBody,
  x: number,
  y: number,
  halfX: number,
  halfY: number,
  radius: number,
): boolean {
  const base = 3 * i
  const dz = beams.slope[base + 2]!
  if (size(dz) < 1e-3) return true
  const floor = body.a[2]! * x + body.b[2]! * y + body.c[2]! - beams.at[base + 2]!
  const rise = size(body.a[2]!) * halfX + size(body.b[2]!) * halfY
  const a = (floor + body.low[2]! - rise) / dz
  const b = (floor + body.high[2]! + rise) / dz
  const near = Math.max(0, a < b ? a : b)
  const far = Math.min(beams.to[beams.first[i + 1]! - 1]!, a < b ? b : a)
  if (near > far) return false
  const xA = beams.at[base]! + near * beams.slope[base]!
  const xB = beams.at[base]! + far * beams.slope[base]!
  const yA = beams.at[base + 1]! + near * beams.slope[base + 1]!
  const yB = beams.at[base + 1]! + far * beams.slope[base + 1]!
  const reachX = halfX + radius + beams.off[base]!
  const reachY = halfY + radius + beams.off[base + 1]!
  return Math.min(xA, xB) < x + reachX && Math.max(xA, xB) > x - reachX && Math.min(yA, yB) < y + reachY && Math.max(yA, yB) > y - reachY
}

/** KERNEL. Reach by a side whose cosine is `share` of the greatest: in clear air as the root, and fog only shortens the longer reach more. */
function sideReach(beams: TileBeams, base: number, share: number): number {
  // R exp(sigma R) grows faster than R, so R(share b) >= sqrt(share) R(b): the root is a bound from below
  return beams.reach[base]! * Math.sqrt(share)
}

function size(value: number): number {
  return value < 0 ? -value : value
}
