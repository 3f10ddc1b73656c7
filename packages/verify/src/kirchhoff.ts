/** A conductance between two numbered terminals. */
export interface Conductance {
  readonly a: number
  readonly b: number
  readonly siemens: number
}

const GROUPED_AT = [1e5, 1e4, 1e3, 1e2, 1e1, 1, 1e-1, 1e-2, 1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9, 1e-10, 1e-11, 1e-12, 1e-13]
const RIGHT = 1e-9
const ROUNDING = 4 * 2 ** -52

/**
 * Whether the currents at every terminal, and at every group of terminals that joins of more than a power of ten hold together, are those that are
 * driven into it (docs/evidence.md, Wiring, where it is shown how far voltages can be off then).
 *
 * @param volt of each terminal
 * @param driven into each terminal, A
 * @param amounts of the same, without their signs
 * @returns a terminal of a group at which they are not, or -1
 */
export function unbalanced(
  joins: readonly Conductance[],
  volt: readonly number[],
  driven: readonly number[],
  amounts: readonly number[],
): number {
  const groups = groupsOf(volt.length)
  for (const level of GROUPED_AT) {
    for (const { a, b, siemens } of joins) if (siemens > level) groups.join(a, b)
    const [net, slack] = [new Float64Array(volt.length), new Float64Array(volt.length)]
    const add = (to: Float64Array, at: number, amount: number) => {
      to[at] = (to[at] as number) + amount
    }
    for (const [i, into] of driven.entries()) {
      add(net, groups.of(i), -into)
      add(slack, groups.of(i), ROUNDING * (amounts[i] as number))
    }
    for (const { a, b, siemens } of joins) {
      const [p, q] = [groups.of(a), groups.of(b)]
      if (p === q) continue
      const [from, to] = [volt[a] as number, volt[b] as number]
      const spare = RIGHT * siemens * Math.max(1, Math.abs(from), Math.abs(to))
      add(net, p, siemens * (from - to))
      add(net, q, siemens * (to - from))
      add(slack, p, spare)
      add(slack, q, spare)
    }
    // what is not a number is never balanced
    const wrong = net.findIndex((amount, i) => !(Math.abs(amount) <= (slack[i] as number)))
    if (wrong >= 0) return wrong
  }
  return -1
}

/** Which of so many numbers have been joined. */
export function groupsOf(count: number): { readonly join: (a: number, b: number) => void; readonly of: (a: number) => number } {
  const above = Int32Array.from({ length: count }, (_, i) => i)
  const of = (a: number): number => {
    let at = a
    while (above[at] !== at) {
      above[at] = above[above[at] as number] as number
      at = above[at] as number
    }
    return at
  }
  return {
    of,
    join: (a, b) => {
      above[of(a)] = of(b)
    },
  }
}
