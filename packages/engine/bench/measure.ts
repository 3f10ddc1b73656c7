import { cpus } from 'node:os'

export interface Timing {
  readonly median_ms: number
  readonly least_ms: number
  readonly spread_ms: number // between the quartiles
  readonly runs: number
}

/** Runs `work` to warm up, then `runs` times; wall-clock milliseconds. */
export function time(work: () => unknown, runs: number, warmUp = Math.ceil(runs / 2)): Timing {
  for (let i = 0; i < warmUp; i++) work()
  const took = Array.from({ length: runs }, () => {
    const start = performance.now()
    work()
    return performance.now() - start
  }).sort((a, b) => a - b)
  const at = (share: number) => took[Math.min(runs - 1, Math.floor(share * runs))] as number
  return { median_ms: at(0.5), least_ms: at(0), spread_ms: at(0.75) - at(0.25), runs }
}

export function machine(): string {
  const all = cpus()
  return `${all.length} x ${all[0]?.model.trim() ?? 'unknown processor'}, Node ${process.versions.node} (V8 ${process.versions.v8})`
}

/** One line of the table; `limit_ms` is what was aimed at. */
export function line(name: string, { median_ms, least_ms, spread_ms, runs }: Timing, note = ''): string {
  const figure = (ms: number) => (ms < 10 ? ms.toFixed(3) : ms.toFixed(1)).padStart(9)
  return `${name.padEnd(44)}${figure(median_ms)}${figure(least_ms)}${figure(spread_ms)}${String(runs).padStart(6)}  ${note}`
}

export const heading = `${''.padEnd(44)}${'median'.padStart(9)}${'least'.padStart(9)}${'spread'.padStart(9)}${'runs'.padStart(6)}  ms`
