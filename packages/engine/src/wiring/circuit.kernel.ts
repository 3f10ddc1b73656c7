// Elimination of a planned network, for two right-hand sides at once: what the supply drives, and what is drawn. Siemens, amperes, volts.

/**
 * KERNEL. Writes into `out[2 node]` and `out[2 node + 1]` the voltages of both right-hand sides, V. `between` holds the conductance of each slot and
 * `flow` the currents into each node, laid out like `out`; both are used up. `program` and `starts` are the plan's, `pivots` has one place for each start.
 */
export function eliminate(
  out: Float64Array,
  between: Float64Array,
  flow: Float64Array,
  pivots: Float64Array,
  program: Int32Array,
  starts: Int32Array,
): void {
  // nodes go one by one: what each carried is shared among its neighbours
  for (let s = 0; s < starts.length; s++) {
    const at = starts[s]! + 2
    const node = program[at - 2]!
    const n = program[at - 1]!
    let pivot = 0
    for (let i = 0; i < n; i++) pivot += between[program[at + 2 * i + 1]!]!
    pivots[s] = pivot
    if (pivot === 0) continue
    const first = flow[2 * node]!
    const second = flow[2 * node + 1]!
    let pair = at + 2 * n
    for (let i = 0; i < n; i++) {
      const share = between[program[at + 2 * i + 1]!]! / pivot
      const other = 2 * program[at + 2 * i]!
      flow[other] = flow[other]! + share * first
      flow[other + 1] = flow[other + 1]! + share * second
      for (let j = 0; j < i; j++) {
        const slot = program[pair++]!
        between[slot] = between[slot]! + share * between[program[at + 2 * j + 1]!]!
      }
    }
  }

  // and come back in turn, each between its neighbours
  out.fill(0)
  for (let s = starts.length - 1; s >= 0; s--) {
    const pivot = pivots[s]!
    if (pivot === 0) continue
    const at = starts[s]! + 2
    const node = program[at - 2]!
    const n = program[at - 1]!
    let first = flow[2 * node]!
    let second = flow[2 * node + 1]!
    for (let i = 0; i < n; i++) {
      const conductance = between[program[at + 2 * i + 1]!]!
      const other = 2 * program[at + 2 * i]!
      first += conductance * out[other]!
      second += conductance * out[other + 1]!
    }
    out[2 * node] = first / pivot
    out[2 * node + 1] = second / pivot
  }
}
