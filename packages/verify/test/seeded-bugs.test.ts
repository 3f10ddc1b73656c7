import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { seedsFrom } from './evidence-holds.ts'
import { type Slip, workbench } from './seeded-bugs.ts'

const bench = workbench()
afterAll(() => bench.clear())
const SEEDS = seedsFrom(201, 208)

/** The first line of a file that holds `find`, with `replace` in its place. */
function slip(file: string, find: string, replace: string): Slip {
  const lines = readFileSync(join(bench.engine, 'src', file), 'utf8').split('\n')
  const line = lines.findIndex((text) => text.includes(find))
  if (line < 0) throw new Error(`${file} must hold ${find}`)
  const before = lines[line] as string
  return { file, line: line + 1, before: before.trim(), after: before.replace(find, replace).trim() }
}

describe('the verifier alone', () => {
  it('accepts what the engine gives out as it is', () => {
    expect(bench.tryOut(undefined, SEEDS)).toBe('harmless')
  })
  it.each([
    [
      'a body with a length and a width of the length',
      slip('coverage/tile-scene.ts', 'low: [-halfA, -halfB, low]', 'low: [-halfA, -halfA, low]'),
    ],
    [
      'a body turned the wrong way',
      slip('coverage/tile-scene.ts', 'b: [sinYaw, cosYaw, strip.slopeY]', 'b: [-sinYaw, cosYaw, strip.slopeY]'),
    ],
    [
      'a margin before the background forgotten',
      slip('coverage/scene.ts', 'const margin = lift.margin ? 0 : sensor.backgroundMargin_mm', 'const margin = 0'),
    ],
  ])('catches %s', (_what, bug) => {
    expect(bench.tryOut(bug, SEEDS)).toBe('caught')
  })
})
