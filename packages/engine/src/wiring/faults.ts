import type { SensorState, Terminal, Wiring } from '../model/wiring.ts'

/** One thing that is wrong. Where a short lies along a core is left out: a core's own resistance is next to nothing beside what it feeds. */
export type Fault =
  | { readonly kind: 'core-open'; readonly core: string }
  | { readonly kind: 'cable-off'; readonly cable: string }
  | { readonly kind: 'short'; readonly a: Terminal; readonly b: Terminal; readonly what: ShortName }
  | { readonly kind: 'supply-lost' }
  | { readonly kind: 'supply-reversed' }
  | { readonly kind: 'supply-low'; readonly volt: number }
  | { readonly kind: 'switch-stuck'; readonly sensor: string; readonly switch: string; readonly at: 'open' | 'closed' }
  | { readonly kind: 'test-stuck'; readonly at: 'open' | 'closed' }
  | { readonly kind: 'sensor-stuck'; readonly sensor: string; readonly in: SensorState & ('clear' | 'seen') }

type ShortName =
  | { readonly kind: 'cores'; readonly cores: readonly [string, string] }
  | { readonly kind: 'rail'; readonly core: string; readonly rail: 'plus' | 'minus' }

/** Every single fault that the model knows, each once, in an order that depends on the wiring alone. */
export function singleFaults({ supply, sensors, control, cables }: Wiring): readonly Fault[] {
  return [
    ...cables.flatMap(({ id, cores }): Fault[] => [
      ...cores.map((core): Fault => ({ kind: 'core-open', core: core.id })),
      ...cores.flatMap((a, i) =>
        cores.slice(i + 1).map((b): Fault => ({ kind: 'short', a: a.from, b: b.from, what: { kind: 'cores', cores: [a.id, b.id] } })),
      ),
      ...cores.flatMap((core): Fault[] =>
        (['plus', 'minus'] as const).map((rail) => ({
          kind: 'short',
          a: core.from,
          b: supply[rail],
          what: { kind: 'rail', core: core.id, rail },
        })),
      ),
      { kind: 'cable-off', cable: id },
    ]),
    { kind: 'supply-lost' },
    { kind: 'supply-reversed' },
    { kind: 'supply-low', volt: supply.least_V / 2 },
    ...sensors.flatMap((sensor): Fault[] => [
      ...sensor.outputs.flatMap(({ name }) =>
        (['open', 'closed'] as const).map((at): Fault => ({ kind: 'switch-stuck', sensor: sensor.id, switch: name, at })),
      ),
      ...(['clear', 'seen'] as const).map((state): Fault => ({ kind: 'sensor-stuck', sensor: sensor.id, in: state })),
    ]),
    ...(control.test ? (['open', 'closed'] as const).map((at): Fault => ({ kind: 'test-stuck', at })) : []),
  ]
}
