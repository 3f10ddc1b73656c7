// node packages/cli/bench/start.ts [RUNS]: how long the command line takes to start, beside a bare Node. Commands run in turns, so that
// whatever else the machine does meets all of them alike.
import { spawnSync } from 'node:child_process'
import { cpSync, mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs'
import { cpus, tmpdir } from 'node:os'
import { join } from 'node:path'
import { buildCommandLine } from '../build.ts'

const runs = Number(process.argv[2] ?? 40)
const here = join(import.meta.dirname, '..')
const folder = mkdtempSync(join(tmpdir(), 'sillsight-bench-'))
await buildCommandLine(join(folder, 'dist'))
for (const name of ['demo', 'package.json']) cpSync(join(here, name), join(folder, name), { recursive: true })

const main = join(folder, 'dist', 'main.cjs')
const demo = join(folder, 'demo')
const smallest = readdirSync(demo)
  .map((name) => join(demo, name))
  .sort((a, b) => statSync(a).size - statSync(b).size)[0]
const commands = [
  { name: 'bare Node: node -e 0', typed: ['-e', '0'], most: 1 },
  { name: 'sillsight --help', typed: [main, '--help'], most: 1.2 },
  { name: 'sillsight judge, smallest demo door', typed: [main, 'judge', smallest ?? ''], most: 2.5 },
  { name: 'sillsight judge --json, the same', typed: [main, 'judge', '--json', smallest ?? ''], most: 2.5 },
].map((command) => ({ ...command, times_ms: [] as number[] }))

for (let i = -3; i < runs; i++) {
  for (const { typed, times_ms } of commands) {
    const start_ms = performance.now()
    spawnSync(process.execPath, typed, { stdio: 'ignore', cwd: folder })
    if (i >= 0) times_ms.push(performance.now() - start_ms) // the first rounds fill the compile cache
  }
}
rmSync(folder, { recursive: true })

const median = (times_ms: readonly number[]): number => [...times_ms].sort((a, b) => a - b)[Math.floor(times_ms.length / 2)] ?? Number.NaN
const bare_ms = median(commands[0]?.times_ms ?? [])
const least_ms = Math.min(...(commands[0]?.times_ms ?? []))
process.stdout.write(
  `${runs} runs each, in turns; Node ${process.version}, ${cpus().length} x ${cpus()[0]?.model ?? 'unknown processor'}\n`,
)
process.stdout.write(`${''.padEnd(38)}median    min  spread   x bare  (min)   target\n`)
for (const { name, times_ms, most } of commands) {
  const sorted = [...times_ms].sort((a, b) => a - b)
  const spread_ms = (sorted[Math.floor(runs * 0.9)] ?? 0) - (sorted[Math.floor(runs * 0.1)] ?? 0)
  const figures = [median(times_ms), Math.min(...times_ms), spread_ms].map((ms) => `${ms.toFixed(1).padStart(6)} `)
  const ratios = [median(times_ms) / bare_ms, Math.min(...times_ms) / least_ms].map((ratio) => ratio.toFixed(2).padStart(7))
  process.stdout.write(`${name.padEnd(37)}${figures.join(' ')}${ratios.join('')}${`<= ${most}`.padStart(9)}\n`)
}
