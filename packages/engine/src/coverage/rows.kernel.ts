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

/** Cells (row * columns + column) that hang on a tie, and the rows touched since somebody last looked. */
export interface Pending {
  count: number
  touchedFirst: number
  touchedLast: number
  readonly cells: Int32Array
}

export function newOutline(): Outline {
  const line = () => new Float64Array(24)
  return {
    clipFirst: 0, clipLast: -1, rowLow: 0, rowHigh: 0, rowTie: 0, firstRow: 0, lastRow: -1, lowerCount: 0, upperCount: 0, tie: 0, lowerP: line(), lowerQ: line(), upperP: line(), upperQ: line(),
    firstSure: 0, lastSure: -1, unsure: false,
  }
}

const TIE = 1e-6 // columns or rows: 25 nm on the usual grid; more only sends more cells to the predicate

/** KERNEL. Starts an outline: the rows first..last and every column. */
export function beginOutline(outline: Outline, firstRow: number, lastRow: number, columns: number): void {
  outline.clipFirst = firstRow
  outline.clipLast = lastRow
  outline.rowLow = firstRow - 0.5
  outline.rowHigh = lastRow + 0.5
  outline.rowTie = TIE
  outline.tie = TIE
  outline.unsure = false
  outline.lowerCount = 1
  outline.lowerP[0] = -0.5
  outline.lowerQ[0] = 0
  outline.upperCount = 1
  outline.upperP[0] = columns - 0.5
  outline.upperQ[0] = 0
}

/** KERNEL. Keeps the placements with a x + b y < c (doorway frame, mm). */
export function keepHalfPlane(
  outline: Outline, x0: number, y0: number, pitch: number, columns: number, a: number, b: number, c: number,
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
  for (let r = firstRow; r <= lastRow; r++) {
    let low = lowerP[0]! + lowerQ[0]! * r
    for (let k = 1; k < lowerCount; k++) {
      const bound = lowerP[k]! + lowerQ[k]! * r
      if (bound > low) low = bound
    }
    let high = upperP[0]! + upperQ[0]! * r
    for (let k = 1; k < upperCount; k++) {
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
