/**
 * A linear network of direct current: conductances between nodes, and currents into them. It is solved by eliminating the nodes one by one, the
 * least connected first: what a door's wiring consists of is nearly a tree, so that this costs little more than reading it. Which node goes when
 * depends on what is joined alone; so it is planned once, and each solution is one run over a list of whole numbers.
 */
export interface Plan {
  readonly nodes: number
  readonly joins: readonly Join[]
  /** Where the conductance of each join is summed up; joins of the same two nodes share one. */
  readonly slotOf: Int32Array
  readonly slots: number
  /** For each node in turn: node, n, then n times (neighbour, slot), then the slots between neighbour i and each j < i. */
  readonly program: Int32Array
  /** Where each node's part of the program begins. */
  readonly starts: Int32Array
}

export type Join = readonly [a: number, b: number]

/** The order of elimination: the node with the fewest neighbours first, the lower number where several have as few; node 0 stays as the reference. */
export function planned(nodes: number, joins: readonly Join[]): Plan {
  const rows = Array.from({ length: nodes }, () => new Map<number, number>())
  let slots = 0
  const slotBetween = (a: number, b: number): number => {
    const known = rows[a]?.get(b)
    if (known !== undefined) return known
    rows[a]?.set(b, slots)
    rows[b]?.set(a, slots)
    return slots++
  }
  const slotOf = Int32Array.from(joins, ([a, b]) => (a === b ? -1 : slotBetween(a, b)))
  const program: number[] = []
  const starts: number[] = []
  const left = new Set(rows.keys())
  left.delete(0)
  while (left.size > 0) {
    let [node, least] = [-1, Infinity]
    for (const each of left) {
      const degree = rows[each]?.size ?? 0
      if (degree < least) [node, least] = [each, degree]
    }
    left.delete(node)
    // what is eliminated joins its neighbours to each other
    const neighbours = [...(rows[node] as Map<number, number>)]
    rows[node]?.clear()
    starts.push(program.length)
    program.push(node, neighbours.length)
    for (const [other, slot] of neighbours) {
      rows[other]?.delete(node)
      program.push(other, slot)
    }
    for (const [i, [a]] of neighbours.entries()) for (const [b] of neighbours.slice(0, i)) program.push(slotBetween(a, b))
  }
  return { nodes, joins, slotOf, slots, program: Int32Array.from(program), starts: Int32Array.from(starts) }
}

/**
 * Voltages of all nodes, V; of nodes that hang together one is 0 V, and between nodes that do not, no voltage is defined: `partsOf` tells.
 * Source: Kirchhoff's current law at each node.
 *
 * Each pivot is a sum of conductances, all of one sign: nothing is ever subtracted, so a short beside a leak of a gigaohm costs no digits
 * (Grassmann, Taksar, Heyman 1985, from memory).
 *
 * @param siemens of each join, 0 for one that is open
 * @param into current into each node, A
 */
export function solved({ nodes, slotOf, slots, program, starts }: Plan, siemens: Float64Array, into: Float64Array): Float64Array {
  const between = new Float64Array(slots)
  for (let join = 0; join < slotOf.length; join++) {
    const slot = slotOf[join] as number
    if (slot >= 0) between[slot] = (between[slot] as number) + (siemens[join] as number)
  }
  const flow = into.slice()
  const pivots = new Float64Array(starts.length)
  for (let s = 0; s < starts.length; s++) {
    let at = starts[s] as number
    const node = program[at++] as number
    const n = program[at++] as number
    let pivot = 0
    for (let i = 0; i < n; i++) pivot += between[program[at + 2 * i + 1] as number] as number
    pivots[s] = pivot
    if (pivot === 0) continue
    let pair = at + 2 * n
    for (let i = 0; i < n; i++) {
      const share = (between[program[at + 2 * i + 1] as number] as number) / pivot
      const other = program[at + 2 * i] as number
      flow[other] = (flow[other] as number) + share * (flow[node] as number)
      for (let j = 0; j < i; j++) {
        const slot = program[pair++] as number
        between[slot] = (between[slot] as number) + share * (between[program[at + 2 * j + 1] as number] as number)
      }
    }
  }
  const volt = new Float64Array(nodes)
  for (let s = starts.length - 1; s >= 0; s--) {
    const pivot = pivots[s] as number
    if (pivot === 0) continue
    let at = starts[s] as number
    const node = program[at++] as number
    const n = program[at++] as number
    let sum = flow[node] as number
    for (let i = 0; i < n; i++)
      sum += (between[program[at + 2 * i + 1] as number] as number) * (volt[program[at + 2 * i] as number] as number)
    volt[node] = sum / pivot
  }
  return volt
}

/** For each node the lowest of those that it hangs together with. */
export function partsOf({ nodes, joins }: Pick<Plan, 'nodes' | 'joins'>, siemens: Float64Array): Int32Array {
  const lowest = Int32Array.from({ length: nodes }, (_, node) => node)
  const root = (node: number): number => {
    let at = node
    while (lowest[at] !== at) at = lowest[at] as number
    return at
  }
  for (const [i, [a, b]] of joins.entries()) {
    if (siemens[i] === 0) continue
    const [p, q] = [root(a), root(b)]
    lowest[Math.max(p, q)] = Math.min(p, q)
  }
  return lowest.map((_, node) => root(node))
}
