import { existsSync, readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { mutatedDoors } from './mutations.ts'
import { builtProgram } from './program.ts'

const seed = 20261126
const { run, work } = await builtProgram()

describe(`500 mutated door files, each in a process of its own (seed ${seed})`, () => {
  it('end with a code of the table, leave standard output whole or empty, and draw whole or not at all', () => {
    for (const [i, door] of mutatedDoors(500, seed).entries()) {
      const file = `${i}.json`
      writeFileSync(join(work, file), door)
      const judged = run(['judge', '--json', file])
      expect([0, 1, 2, 3], `${i}: ${judged.told}`).toContain(judged.code)
      expect(JSON.parse(judged.out).doors).toHaveLength(1)
      const drawn = run(['draw', file, '--out', `${i}.svg`])
      expect({ i, code: drawn.code, out: drawn.out }).toEqual({ i, code: judged.code === 3 ? 3 : 0, out: '' })
      expect(existsSync(join(work, `${i}.svg`))).toBe(drawn.code === 0)
    }
    expect(readdirSync(work).filter((name) => name.includes('.part'))).toEqual([])
  }, 3_600_000)
})
