/**
 * A linear network of direct current: conductances between nodes, and currents into them. It is solved by eliminating the nodes one by one, the
 * least connected first: what a door's wiring consists of is nearly a tree, so that this costs little more than reading it.
 */
export interface Circuit {
  readonly nodes: number
  readonly conductances: readonly Conductance[]
  readonly sources: readonly VoltageSource[]
  readonly draws: readonly Draw[]
}

/** Siemens between two nodes, > 0. */
export interface Conductance {
  readonly a: number
  readonly b: number
  readonly siemens: number
}

/** With an inner resistance > 0: nothing here is ideal, and a short has an answer. */
export interface VoltageSource {
  readonly plus: number
  readonly minus: number
  readonly volt: number
  readonly ohm: number
}

/** What a device takes at `from` and gives back at `to`, A. */
export interface Draw {
  readonly from: number
  readonly to: number
  readonly ampere: number
}

/**
 * Voltages of all nodes. Of nodes that hang together the first is taken as 0 V; between parts of the network that do not, no voltage is defined,
 * which `partOf` tells.
 */
export interface Solution {
  readonly volt: Float64Array
  /** The lowest node of the part that each node belongs to. */
  readonly partOf: Int32Array
}

/** Source: Kirchhoff's current law at each node, Norton's form of each source. */
export function solved({ nodes, conductances, sources, draws }: Circuit): Solution {
  const rows = Array.from({ length: nodes }, () => new Map<number, number>())
  const into = new Float64Array(nodes)
  const join = (a: number, b: number, siemens: number) => {
    if (a === b) return
    rows[a]?.set(b, (rows[a].get(b) ?? 0) + siemens)
    rows[b]?.set(a, (rows[b].get(a) ?? 0) + siemens)
  }
  for (const { a, b, siemens } of conductances) join(a, b, siemens)
  for (const { plus, minus, volt, ohm } of sources) {
    join(plus, minus, 1 / ohm)
    if (plus === minus) continue
    into[plus] = (into[plus] ?? 0) + volt / ohm
    into[minus] = (into[minus] ?? 0) - volt / ohm
  }
  for (const { from, to, ampere } of draws) {
    if (from === to) continue
    into[from] = (into[from] ?? 0) - ampere
    into[to] = (into[to] ?? 0) + ampere
  }
  const partOf = partsOf(rows)
  const order = eliminated(rows, into, partOf)
  const volt = new Float64Array(nodes)
  for (const { node, pivot, row } of order.reverse()) {
    let sum = into[node] ?? 0
    for (const [other, siemens] of row) sum += siemens * (volt[other] ?? 0)
    volt[node] = sum / pivot
  }
  return { volt, partOf }
}

function partsOf(rows: readonly ReadonlyMap<number, number>[]): Int32Array {
  const partOf = new Int32Array(rows.length).fill(-1)
  for (let first = 0; first < rows.length; first++) {
    if (partOf[first] !== -1) continue
    const open = [first]
    partOf[first] = first
    for (let at = open.pop(); at !== undefined; at = open.pop())
      for (const other of rows[at]?.keys() ?? []) {
        if (partOf[other] !== -1) continue
        partOf[other] = first
        open.push(other)
      }
  }
  return partOf
}

interface Step {
  readonly node: number
  readonly pivot: number
  readonly row: ReadonlyMap<number, number>
}

/**
 * Every node but the first of its part; `into` becomes what flows in once the nodes before are gone. Each pivot is the sum of a row, all of one
 * sign: nothing is ever subtracted, so a short beside a leak of a gigaohm costs no digits. Source: Grassmann, Taksar, Heyman 1985, from memory.
 */
function eliminated(rows: Map<number, number>[], into: Float64Array, partOf: Int32Array): Step[] {
  const left = new Set(rows.keys())
  for (const first of new Set(partOf)) left.delete(first)
  const order: Step[] = []
  while (left.size > 0) {
    let [node, least] = [-1, Infinity]
    for (const each of left) {
      const degree = rows[each]?.size ?? 0
      if (degree < least) [node, least] = [each, degree]
      if (least <= 1) break
    }
    left.delete(node)
    const row = rows[node] as Map<number, number>
    let pivot = 0
    for (const siemens of row.values()) pivot += siemens
    order.push({ node, pivot, row: new Map(row) })
    for (const [a, toA] of row) {
      const share = toA / pivot
      into[a] = (into[a] as number) + share * (into[node] as number)
      const ofA = rows[a] as Map<number, number>
      ofA.delete(node)
      for (const [b, toB] of row) if (b !== a) ofA.set(b, (ofA.get(b) ?? 0) + share * toB)
    }
  }
  return order
}
