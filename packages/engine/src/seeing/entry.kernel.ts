// Where a line enters a body. Doorway frame, mm. `out` gets [0] the entry distance, [1] the cosine of incidence there, [2] the exit distance.

/**
 * KERNEL. A box standing at (x, y) on z = floor, its interior between floor + low and floor + high, half sizes and yaw as given.
 * Returns false where the line misses the interior; a graze along a face or edge is a miss. At an edge the smaller cosine counts.
 * The distances may be negative: the caller decides what lies behind the origin.
 */
export function enterBox(
  out: Float64Array,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  x: number,
  y: number,
  floor: number,
  halfA: number,
  halfB: number,
  low: number,
  high: number,
  cosYaw: number,
  sinYaw: number,
): boolean {
  const px = ox - x
  const py = oy - y
  let near = -Infinity
  let far = Infinity
  let cosine = 0
  // along the body
  let o = px * cosYaw + py * sinYaw
  let d = dx * cosYaw + dy * sinYaw
  if (d !== 0) {
    const a = (-halfA - o) / d
    const b = (halfA - o) / d
    near = d > 0 ? a : b
    far = d > 0 ? b : a
    cosine = d > 0 ? d : -d
  } else if (o <= -halfA || o >= halfA) return false
  // across it
  o = py * cosYaw - px * sinYaw
  d = dy * cosYaw - dx * sinYaw
  if (d !== 0) {
    const a = (-halfB - o) / d
    const b = (halfB - o) / d
    const enter = d > 0 ? a : b
    const leave = d > 0 ? b : a
    const c = d > 0 ? d : -d
    if (enter > near) {
      near = enter
      cosine = c
    } else if (enter === near && c < cosine) cosine = c
    if (leave < far) far = leave
  } else if (o <= -halfB || o >= halfB) return false
  // between its bottom and its top
  o = oz - floor
  d = dz
  if (d !== 0) {
    const a = (low - o) / d
    const b = (high - o) / d
    const enter = d > 0 ? a : b
    const leave = d > 0 ? b : a
    const c = d > 0 ? d : -d
    if (enter > near) {
      near = enter
      cosine = c
    } else if (enter === near && c < cosine) cosine = c
    if (leave < far) far = leave
  } else if (o <= low || o >= high) return false
  out[0] = near
  out[1] = cosine
  out[2] = far
  return near < far
}

/** KERNEL. As `enterBox`, for an upright cylinder. */
export function enterCylinder(
  out: Float64Array,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
  x: number,
  y: number,
  floor: number,
  radius: number,
  low: number,
  high: number,
): boolean {
  const px = ox - x
  const py = oy - y
  let near = -Infinity
  let far = Infinity
  let cosine = 0
  // the round side: the normal is level, so the cosine there is the level part of the direction times the one of the circle
  const level = dx * dx + dy * dy
  if (level > 0) {
    const speed = Math.sqrt(level)
    const offset = px * (dy / speed) - py * (dx / speed) // dx / speed is exactly 1 along an axis: a tangent there stays one
    const chord = radius * radius - offset * offset
    if (chord <= 0) return false
    const middle = -(px * dx + py * dy) / level
    const half = Math.sqrt(chord / level)
    near = middle - half
    far = middle + half
    cosine = (Math.sqrt(level) * Math.sqrt(chord)) / radius
  } else if (px * px + py * py >= radius * radius) return false
  // between its bottom and its top
  const o = oz - floor
  if (dz !== 0) {
    const a = (low - o) / dz
    const b = (high - o) / dz
    const enter = dz > 0 ? a : b
    const leave = dz > 0 ? b : a
    const c = dz > 0 ? dz : -dz
    if (enter > near) {
      near = enter
      cosine = c
    } else if (enter === near && c < cosine) cosine = c
    if (leave < far) far = leave
  } else if (o <= low || o >= high) return false
  out[0] = near
  out[1] = cosine
  out[2] = far
  return near < far
}
