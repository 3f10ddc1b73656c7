/**
 * Performance level by the simplified procedure of the control-safety standard, as an estimate: a competent person decides. Bands and table are outside
 * values and come as arguments.
 */
export interface Reliability {
  /** 0 for B. */
  readonly category: number
  /** Mean time to dangerous failure, years. */
  readonly mttfd_y: number
  readonly coverage_percent: number
}

export interface SimplifiedProcedure {
  readonly coverageBands: readonly number[]
  readonly failureBands: readonly number[]
  /** Rows of five, as in `values/functional-safety.ts`. */
  readonly levels: readonly number[]
}

/**
 * 1 for a to 5 for e; 0 where the procedure covers no such device. More reliable parts and better coverage than a row asks for never lower the level.
 */
export function simplifiedLevel({ category, mttfd_y, coverage_percent }: Reliability, procedure: SimplifiedProcedure): number {
  const coverage = bandOf(coverage_percent, procedure.coverageBands)
  const failure = bandOf(mttfd_y, procedure.failureBands)
  let level = 0
  for (let i = 0; i < procedure.levels.length; i += 5) {
    const [of, least, ...byFailure] = procedure.levels.slice(i, i + 5)
    if (of === category && least !== undefined && least <= coverage) level = Math.max(level, ...byFailure.slice(0, failure))
  }
  return level
}

/** How many of the bands are reached: 0 below the first. */
function bandOf(value: number, bands: readonly number[]): number {
  return bands.filter((from) => from <= value).length
}

/** Years, of a part that wears out by operations: B10d / (share x operations in a year). */
export function meanTimeOfCycles({
  b10d,
  operations_per_y,
  share,
}: {
  readonly b10d: number
  readonly operations_per_y: number
  readonly share: number
}): number {
  return b10d / (share * operations_per_y)
}

/** Years until a device fails dangerously, as its maker declares it or by its operations; undefined where neither is known. */
export function meanYears(
  declares:
    | { readonly mttfd_y?: number | undefined; readonly b10d?: number | undefined; readonly operations_per_y?: number | undefined }
    | undefined,
  share: number,
): number | undefined {
  const { mttfd_y, b10d, operations_per_y } = declares ?? {}
  if (mttfd_y !== undefined || b10d === undefined || operations_per_y === undefined) return mttfd_y
  return meanTimeOfCycles({ b10d, operations_per_y, share })
}
