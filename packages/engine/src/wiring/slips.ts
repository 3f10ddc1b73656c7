import type { Terminal, Wiring } from '../model/wiring.ts'

/** Something about a wiring that cannot be meant, with both ends of it. */
export type Slip =
  /** Two transistors drive one line: each feeds back into the other. */
  | { readonly kind: 'two-drivers'; readonly a: Terminal; readonly b: Terminal }
  /** No core leads to this input, or none leads back. */
  | { readonly kind: 'input-floating'; readonly a: Terminal; readonly b: Terminal }
  /** A sensor whose supply terminals do not hang on the supply. */
  | { readonly kind: 'no-supply'; readonly a: Terminal; readonly b: Terminal }
  /** A contact both of whose sides are one piece of copper: it switches nothing. */
  | { readonly kind: 'bridged-contact'; readonly a: Terminal; readonly b: Terminal }

/** All slips of a wiring, in an order that depends on it alone. */
export function slipsOf({ supply, sensors, control, cables }: Wiring): readonly Slip[] {
  const net = copperOf(cables.flatMap(({ cores }) => cores))
  const switches = sensors.flatMap((sensor) => sensor.outputs.map((each) => ({ each, sensor })))
  const transistors = switches.filter(({ each, sensor: { power } }) => each.from === power.plus || each.from === power.minus)
  const cored = new Set(cables.flatMap(({ cores }) => cores.flatMap(({ from, to }) => [from, to])))
  return [
    ...transistors.flatMap(({ each: a }, i) =>
      transistors
        .slice(i + 1)
        .filter(({ each: b }) => net(a.to) === net(b.to))
        .map(({ each: b }): Slip => ({ kind: 'two-drivers', a: a.to, b: b.to })),
    ),
    ...control.inputs
      .filter(({ plus, minus, fedFrom }) => !cored.has(plus) && !(fedFrom && cored.has(minus)))
      .map(({ plus, minus }): Slip => ({ kind: 'input-floating', a: plus, b: minus })),
    ...sensors
      .filter(({ power }) => net(power.plus) !== net(supply.plus) || net(power.minus) !== net(supply.minus))
      .map(({ power }): Slip => ({ kind: 'no-supply', a: power.plus, b: power.minus })),
    ...switches
      .filter(({ each }) => cored.has(each.from) && net(each.from) === net(each.to))
      .map(({ each }): Slip => ({ kind: 'bridged-contact', a: each.from, b: each.to })),
  ]
}

/** Which terminals are one piece of copper. */
function copperOf(cores: readonly { readonly from: Terminal; readonly to: Terminal }[]): (terminal: Terminal) => Terminal {
  const above = new Map<Terminal, Terminal>()
  const root = (terminal: Terminal): Terminal => {
    let at = terminal
    for (let next = above.get(at); next !== undefined; next = above.get(at)) at = next
    return at
  }
  for (const { from, to } of cores) {
    const [a, b] = [root(from), root(to)]
    if (a !== b) above.set(a, b)
  }
  return root
}
