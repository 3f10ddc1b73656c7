import type { HandTestFigures, Wiring } from '../model/wiring.ts'
import type { Fault } from './faults.ts'

const DAYS_OF_YEAR = 365

/** A part that can fail so that nobody notices and a body goes unheeded. */
export interface HiddenPart {
  readonly kind: 'sensor' | 'cable' | 'supply' | 'resistor' | 'control'
  /** Of a sensor, cable or resistor. */
  readonly id: string
  /** Mean years until it fails dangerously; undefined where nobody said. */
  readonly mean_y: number | undefined
}

/** How often somebody has to test by hand. */
export interface HandTest {
  readonly parts: readonly HiddenPart[]
  /** Until the first of them fails dangerously; undefined where one of them is not known. */
  readonly mean_y: number | undefined
  /** Between two tests at the most; undefined where the share or a part is not known. */
  readonly longest_d: number | undefined
  /** What it is for; undefined where nobody said. */
  readonly mostHidden_percent: number | undefined
  /** What is not known: parts by kind and id, and `share`. */
  readonly missing: readonly string[]
}

/**
 * The longest time between two tests by hand for which the share of time with a hidden fault stays within what is allowed. Parts fail at a constant rate, the
 * sum of theirs; between two tests T apart the share is 1 - (1 - exp(-T / M)) / (T / M), at most T / (2 M), so that T = 2 share M is never too long. All
 * failures of a part count as those that hide, because no sheet tells them apart: that shortens the time.
 *
 * @param hidden faults that are hidden and dangerous
 * @param meanOf mean years to dangerous failure of a sensor, by its id
 */
export function handTest(
  wiring: Pick<Wiring, 'handTest' | 'cables'>,
  hidden: readonly Fault[],
  meanOf: (sensor: string) => number | undefined,
): HandTest {
  const figures = wiring.handTest
  const named = new Map(hidden.flatMap((fault) => partsOf(wiring, fault)).map((part) => [`${part.kind} ${part.id}`, part]))
  const parts = [...named.values()].map(
    ({ kind, id }): HiddenPart => ({ kind, id, mean_y: kind === 'sensor' ? meanOf(id) : meanIn(figures, kind) }),
  )
  const rates = parts.map(({ mean_y }) => (mean_y === undefined ? undefined : 1 / mean_y))
  const rate = rates.reduce<number | undefined>((sum, each) => (sum === undefined || each === undefined ? undefined : sum + each), 0)
  const mean_y = rate === undefined || rate === 0 ? undefined : 1 / rate
  const share = figures?.mostHidden_percent === undefined ? undefined : figures.mostHidden_percent / 100
  const missing = [
    ...parts.flatMap(({ kind, id, mean_y: mean }) => (mean === undefined ? [id === '' ? kind : `${kind} ${id}`] : [])),
    ...(share === undefined ? ['share'] : []),
  ]
  return {
    parts,
    mean_y,
    missing,
    mostHidden_percent: figures?.mostHidden_percent,
    longest_d: mean_y === undefined || share === undefined ? undefined : 2 * share * mean_y * DAYS_OF_YEAR,
  }
}

function meanIn(figures: HandTestFigures | undefined, kind: Exclude<HiddenPart['kind'], 'sensor'>): number | undefined {
  return figures?.[`${kind}_y`]
}

type Part = Pick<HiddenPart, 'kind' | 'id'>

/** A core belongs to its cable. */
function partsOf({ cables }: Pick<Wiring, 'cables'>, fault: Fault): readonly Part[] {
  const cableOf = (core: string): readonly Part[] =>
    cables.flatMap(({ id, cores }) => (cores.some((each) => each.id === core) ? [{ kind: 'cable', id }] : []))
  switch (fault.kind) {
    case 'core-open':
    case 'core-to-rail':
      return cableOf(fault.core)
    case 'cores-shorted':
      return cableOf(fault.cores[0])
    case 'cable-off':
      return [{ kind: 'cable', id: fault.cable }]
    case 'resistor-open':
    case 'resistor-shorted':
      return [{ kind: 'resistor', id: fault.resistor }]
    case 'switch-stuck':
    case 'output-stuck':
    case 'sensor-stuck':
      return [{ kind: 'sensor', id: fault.sensor }]
    case 'test-stuck':
      return [{ kind: 'control', id: '' }]
    default:
      return [{ kind: 'supply', id: '' }]
  }
}
