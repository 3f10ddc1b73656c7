// Drawing convex sets of placements as bit rows. Bounds are in columns: cell c lies at c, the row number is r.

/**
 * A convex set of placements, as bounds on the column of each row: c > P + Q r for each lower line, c < P + Q r for each upper one,
 * in the rows `firstRow..lastRow`. Whatever lies within `tie` columns of a bound goes to `pending` and is settled by the predicate.
 * The owner fills it anew for each shape drawn; nothing in it is allocated per shape.
 */
export interface Outline {
  /** While it is being made: rows r with rowLow < r < rowHigh, either end known within `rowTie` rows. */
  clipFirst: number
  clipLast: number
  rowLow: number
  rowHigh: number
  rowTie: number
  firstRow: number
  lastRow: number
  lowerCount: number
  upperCount: number
  tie: number
  readonly lowerP: Float64Array
  readonly lowerQ: Float64Array
  readonly upperP: Float64Array
  readonly upperQ: Float64Array
  /** Rows that lie on an edge: all their cells between the bounds are pending. */
  firstSure: number
  lastSure: number
  /** Every cell is pending. */
  unsure: boolean
}

/** Cells (row * columns + column) that hang on a tie, and the rows and words touched since somebody last looked. */
export interface Pending {
  count: number
  touchedFirst: number
  touchedLast: number
  touchedWord: number
  touchedEnd: number
  readonly cells: Int32Array
}

export function newOutline(): Outline {
  const line = () => new Float64Array(24)
  return {
    clipFirst: 0,
    clipLast: -1,
    rowLow: 0,
    rowHigh: 0,
    rowTie: 0,
    firstRow: 0,
    lastRow: -1,
    lowerCount: 0,
    upperCount: 0,
    tie: 0,
    lowerP: line(),
    lowerQ: line(),
    upperP: line(),
    upperQ: line(),
    firstSure: 0,
    lastSure: -1,
    unsure: false,
  }
}

const TIE = 1e-6 // columns or rows: 25 nm on the usual grid; more only sends more cells to the predicate

/** KERNEL. Starts an outline: the rows first..last and every column. */
export function beginOutline(outline: Outline, firstRow: number, lastRow: number): void {
  outline.clipFirst = firstRow
  outline.clipLast = lastRow
  outline.rowLow = firstRow - 0.5
  outline.rowHigh = lastRow + 0.5
  outline.rowTie = TIE
  outline.tie = TIE
  outline.unsure = false
  outline.lowerCount = 0
  outline.upperCount = 0
}

/** KERNEL. Keeps the placements with a x + b y < c (doorway frame, mm). */
export function keepHalfPlane(
  outline: Outline,
  x0: number,
  y0: number,
  pitch: number,
  columns: number,
  a: number,
  b: number,
  c: number,
): void {
  const sizeA = a < 0 ? -a : a
  const sizeB = b < 0 ? -b : b
  if (sizeA < 1e-12 && sizeB < 1e-12) {
    // The same for every placement, within 1e-7 mm over 100 m.
    if (c < -1e-6) outline.rowHigh = -Infinity
    else if (c <= 1e-6) outline.unsure = true
    return
  }
  if (sizeA <= 1e-7 * sizeB) {
    // All columns of a row alike, or nearly so: what they differ by widens the tie.
    const row = (c / b - y0) / pitch - 0.5
    const spread = a === 0 ? 0 : ((sizeA / sizeB) * (Math.abs(x0) + columns * pitch)) / pitch
    if (spread > outline.rowTie - TIE) outline.rowTie = TIE + spread
    if (b > 0) {
      if (row < outline.rowHigh) outline.rowHigh = row
    } else if (row > outline.rowLow) outline.rowLow = row
    return
  }
  const p = ((c - b * (y0 + 0.5 * pitch)) / a - x0) / pitch - 0.5
  const q = -b / a
  const tie = TIE + 1e-10 * (q < 0 ? -q : q)
  if (tie > outline.tie) outline.tie = tie
  if (a > 0) {
    const k = outline.upperCount++
    outline.upperP[k] = p
    outline.upperQ[k] = q
  } else {
    const k = outline.lowerCount++
    outline.lowerP[k] = p
    outline.lowerQ[k] = q
  }
}

/** KERNEL. Ends the making of an outline: settles which rows are sure. */
export function endOutline(outline: Outline): void {
  const { rowLow, rowHigh, rowTie } = outline
  outline.firstRow = Math.max(outline.clipFirst, Math.ceil(rowLow - rowTie))
  outline.lastRow = Math.min(outline.clipLast, Math.floor(rowHigh + rowTie))
  outline.firstSure = Math.floor(rowLow + rowTie) + 1
  outline.lastSure = Math.ceil(rowHigh - rowTie) - 1
}

/** KERNEL. Sets the bits of all cells strictly inside the outline and lists those on its edge. */
export function fillOutline(bits: Int32Array, words: number, columns: number, outline: Outline, pending: Pending): void {
  const { firstRow, lastRow, lowerCount, upperCount, tie, lowerP, lowerQ, upperP, upperQ, firstSure, lastSure, unsure } = outline
  // the first three lines of each side stay in registers; a box rarely has more
  const p0 = lowerCount > 0 ? lowerP[0]! : -0.5
  const q0 = lowerCount > 0 ? lowerQ[0]! : 0
  const p1 = lowerCount > 1 ? lowerP[1]! : -0.5
  const q1 = lowerCount > 1 ? lowerQ[1]! : 0
  const p2 = lowerCount > 2 ? lowerP[2]! : -0.5
  const q2 = lowerCount > 2 ? lowerQ[2]! : 0
  const u0 = upperCount > 0 ? upperP[0]! : columns - 0.5
  const v0 = upperCount > 0 ? upperQ[0]! : 0
  const u1 = upperCount > 1 ? upperP[1]! : columns - 0.5
  const v1 = upperCount > 1 ? upperQ[1]! : 0
  const u2 = upperCount > 2 ? upperP[2]! : columns - 0.5
  const v2 = upperCount > 2 ? upperQ[2]! : 0
  for (let r = firstRow; r <= lastRow; r++) {
    let low = p0 + q0 * r
    const lowB = p1 + q1 * r
    if (lowB > low) low = lowB
    const lowC = p2 + q2 * r
    if (lowC > low) low = lowC
    for (let k = 3; k < lowerCount; k++) {
      const bound = lowerP[k]! + lowerQ[k]! * r
      if (bound > low) low = bound
    }
    let high = u0 + v0 * r
    const highB = u1 + v1 * r
    if (highB < high) high = highB
    const highC = u2 + v2 * r
    if (highC < high) high = highC
    for (let k = 3; k < upperCount; k++) {
      const bound = upperP[k]! + upperQ[k]! * r
      if (bound < high) high = bound
    }
    if (low < -1) low = -0.5
    if (high > columns) high = columns - 0.5
    if (!(low < high + tie)) continue
    if (unsure || r < firstSure || r > lastSure) {
      pendRow(pending, r * columns, Math.max(0, Math.ceil(low - tie)), Math.min(columns - 1, Math.floor(high + tie)))
      continue
    }
    const lowFloor = Math.floor(low)
    const lowPart = low - lowFloor
    let first = lowFloor + 1
    if (lowPart < tie) pend(pending, r * columns, columns, lowFloor)
    else if (lowPart > 1 - tie) {
      pend(pending, r * columns, columns, first)
      first++
    }
    let last = Math.floor(high)
    const highPart = high - last
    if (highPart < tie) {
      pend(pending, r * columns, columns, last)
      last--
    } else if (highPart > 1 - tie) pend(pending, r * columns, columns, last + 1)
    if (first <= last) setBits(bits, r * words, first, last)
  }
}

/**
 * KERNEL. Draws what a rectangle sweeps: in the row at height y the part of the stretch (xA, yA)-(xB, yB), yA <= yB, whose y lies within
 * [y - below, y + above], widened to x + left .. x + right. All in cells: x in columns, y in rows, cell c or row r at c or r.
 * This one shape is the top of an upright box (a stretch without length), each of its sides, and all of it together.
 */
export function fillSweep(
  bits: Int32Array,
  words: number,
  columns: number,
  pending: Pending,
  firstClip: number,
  lastClip: number,
  xA: number,
  yA: number,
  xB: number,
  yB: number,
  below: number,
  above: number,
  left: number,
  right: number,
): void {
  const rise = yB - yA
  // Where the stretch runs along the rows, all of it lies in each row that it touches, and its slant is lost in the tie.
  const slant = rise > TIE / 4 ? (xB - xA) / rise : 0
  // never half a column: then a cell could hang on both ends of its column and be left out
  const tie = Math.min(0.25, TIE + 1e-9 * (slant < 0 ? -slant : slant))
  const rowLow = yA - above
  const rowHigh = yB + below
  let first = Math.ceil(rowLow - TIE)
  if (first < firstClip) first = firstClip
  let last = Math.floor(rowHigh + TIE)
  if (last > lastClip) last = lastClip
  const level = slant === 0
  const lowX = level && xB < xA ? xB : xA
  const highX = level && xB < xA ? xA : xB
  // rows that surely lie inside, and among them those that hold the whole stretch: all of these are alike
  const sureFirst = Math.floor(rowLow + TIE) + 1
  const sureLast = Math.ceil(rowHigh - TIE) - 1
  let alikeFirst = level ? first : Math.ceil(yB - above)
  if (alikeFirst < sureFirst) alikeFirst = sureFirst
  let alikeLast = level ? last : Math.floor(yA + below)
  if (alikeLast > sureLast) alikeLast = sureLast
  if (alikeLast > last) alikeLast = last
  for (let r = first; r <= last; r++) {
    // the ends of the part within this row
    let a = lowX
    let b = highX
    if (!level) {
      const start = r - below
      if (start > yA) a = xA + (start - yA) * slant
      const end = r + above
      if (end < yB) b = xA + (end - yA) * slant
      if (slant < 0) {
        const swap = a
        a = b
        b = swap
      }
    }
    let low = a + left
    let high = b + right
    if (low < -0.75) low = -0.5 // nearer to the first column, the tie there must still be found
    if (high > columns) high = columns - 0.5
    if (!(low < high + tie)) continue
    if (r < sureFirst || r > sureLast) {
      pendRow(pending, r * columns, Math.max(0, Math.ceil(low - tie)), Math.min(columns - 1, Math.floor(high + tie)))
      continue
    }
    let from = Math.floor(low)
    let to = Math.floor(high)
    const lowPart = low - from
    const highPart = high - to
    const until = r >= alikeFirst && r < alikeLast ? alikeLast : r
    if (lowPart < tie || lowPart > 1 - tie || highPart < tie || highPart > 1 - tie) {
      for (let row = r; row <= until; row++) {
        if (lowPart < tie) pend(pending, row * columns, columns, from)
        else if (lowPart > 1 - tie) pend(pending, row * columns, columns, from + 1)
        if (highPart < tie) pend(pending, row * columns, columns, to)
        else if (highPart > 1 - tie) pend(pending, row * columns, columns, to + 1)
      }
      if (lowPart > 1 - tie) from++
      if (highPart < tie) to--
    }
    from++
    if (from <= to) {
      const headMask = -1 << (from & 31)
      const tailMask = -1 >>> (31 - (to & 31))
      let head = r * words + (from >> 5)
      let tail = r * words + (to >> 5)
      const end = until * words + (from >> 5)
      if (head === tail) {
        const mask = headMask & tailMask
        for (; head <= end; head += words) bits[head] = bits[head]! | mask
      } else
        for (; head <= end; head += words) {
          bits[head] = bits[head]! | headMask
          for (let w = head + 1; w < tail; w++) bits[w] = -1
          bits[tail] = bits[tail]! | tailMask
          tail += words
        }
    }
    r = until
  }
}

/** KERNEL. Sets the bits first..last (0 <= first <= last) of the row that starts at word `base`. */
export function setBits(bits: Int32Array, base: number, first: number, last: number): void {
  const a = base + (first >> 5)
  const b = base + (last >> 5)
  const headMask = -1 << (first & 31)
  const tailMask = -1 >>> (31 - (last & 31))
  if (a === b) {
    bits[a] = bits[a]! | (headMask & tailMask)
    return
  }
  bits[a] = bits[a]! | headMask
  for (let w = a + 1; w < b; w++) bits[w] = -1
  bits[b] = bits[b]! | tailMask
}

function pend(pending: Pending, base: number, columns: number, column: number): void {
  if (column >= 0 && column < columns) pending.cells[pending.count++] = base + column
}

/** KERNEL. Lists the cells first..last of a row as pending. */
export function pendRow(pending: Pending, base: number, first: number, last: number): void {
  for (let c = first; c <= last; c++) pending.cells[pending.count++] = base + c
}
