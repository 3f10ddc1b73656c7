import { eliminate } from './circuit.kernel.ts'

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
  const slotAt = new Int32Array(nodes * nodes).fill(-1)
  const neighboursOf = Array.from({ length: nodes }, (): number[] => [])
  const degrees = new Int32Array(nodes)
  let slots = 0
  const slotBetween = (a: number, b: number): number => {
    const known = slotAt[a * nodes + b] as number
    if (known >= 0) return known
    slotAt[a * nodes + b] = slots
    slotAt[b * nodes + a] = slots
    neighboursOf[a]?.push(b)
    neighboursOf[b]?.push(a)
    degrees[a] = (degrees[a] as number) + 1
    degrees[b] = (degrees[b] as number) + 1
    return slots++
  }
  const slotOf = Int32Array.from(joins, ([a, b]) => (a === b ? -1 : slotBetween(a, b)))
  const program: number[] = []
  const starts: number[] = []
  const Gone = nodes // more neighbours than any node has
  while (starts.length < nodes - 1) {
    let node = -1
    for (let each = 1; each < nodes; each++) {
      const degree = degrees[each] as number
      if (degree < (node < 0 ? Gone : (degrees[node] as number))) node = each
    }
    degrees[node] = Gone
    const neighbours = (neighboursOf[node] ?? []).filter((other) => degrees[other] !== Gone)
    starts.push(program.length)
    program.push(node, neighbours.length)
    for (const other of neighbours) {
      degrees[other] = (degrees[other] as number) - 1
      program.push(other, slotAt[node * nodes + other] as number)
    }
    // what is eliminated joins its neighbours to each other
    for (let i = 1; i < neighbours.length; i++)
      for (let j = 0; j < i; j++) program.push(slotBetween(neighbours[i] as number, neighbours[j] as number))
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
export function solved(plan: Plan, siemens: Float64Array, into: Float64Array): Float64Array {
  const flow = new Float64Array(2 * plan.nodes)
  for (const [node, ampere] of into.entries()) flow[2 * node] = ampere
  const both = solvedTwice(plan, bySlot(plan, siemens), flow)
  return into.map((_, node) => both[2 * node] as number)
}

/** The conductance of each slot of a plan: joins of the same two nodes add up. */
export function bySlot({ slotOf, slots }: Plan, siemens: Float64Array): Float64Array {
  const between = new Float64Array(slots)
  for (let join = 0; join < slotOf.length; join++) {
    const slot = slotOf[join] as number
    if (slot >= 0) between[slot] = (between[slot] as number) + (siemens[join] as number)
  }
  return between
}

/**
 * Two solutions of one network at the price of one: the voltages of node i stand at 2 i and 2 i + 1.
 *
 * @param between conductance of each slot; used up
 * @param flow currents into the nodes, A, laid out like the voltages; used up
 */
export function solvedTwice({ nodes, program, starts }: Plan, between: Float64Array, flow: Float64Array): Float64Array {
  const volt = new Float64Array(2 * nodes)
  eliminate(volt, between, flow, new Float64Array(starts.length), program, starts)
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
  for (let i = 0; i < joins.length; i++) {
    if (siemens[i] === 0) continue
    const [a, b] = joins[i] as Join
    const p = root(a)
    const q = root(b)
    lowest[p < q ? q : p] = p < q ? p : q
  }
  // a node's root is lower than itself, so it stands already
  for (let node = 0; node < nodes; node++) lowest[node] = lowest[lowest[node] as number] as number
  return lowest
}
