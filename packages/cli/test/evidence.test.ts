import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { builtProgram } from './program.ts'

const { run, work } = await builtProgram()
const hatch = readFileSync(new URL('../demo/box-hatch.json', import.meta.url), 'utf8')

describe('evidence, written and re-checked', () => {
  it('shows of the box hatch with a quick filter that nobody is struck, and nothing of the kind with its slow one', () => {
    const verified = (text: string, name: string) => {
      const [door, evidence] = [join(work, `${name}.json`), join(work, `${name}.evidence.json.gz`)]
      writeFileSync(door, text)
      expect(run(['evidence', door, '--out', evidence]).code).toBe(0)
      return run(['verify', door, evidence])
    }
    const quick = verified(hatch.replaceAll('"response_s": 0.15', '"response_s": 0.03'), 'quick')
    expect([quick.code, quick.out]).toEqual([
      0,
      expect.stringContaining('lane boxes, as-surveyed: the closing leaf strikes nobody (6 ways past it)'),
    ])
    const slow = verified(hatch, 'slow')
    expect([slow.code, slow.out.includes('strikes nobody')]).toEqual([0, false])
  })

  it('is refused for the door with the slow filter, although its names are the same', () => {
    const [door, evidence] = [join(work, 'door.json'), join(work, 'door.evidence.json')]
    writeFileSync(door, hatch.replaceAll('"response_s": 0.15', '"response_s": 0.03'))
    run(['evidence', door, '--out', evidence])
    writeFileSync(door, hatch)
    const refused = run(['verify', door, evidence])
    expect([refused.code, refused.told]).toEqual([3, expect.stringContaining('hash of the door file')])
  })
})
