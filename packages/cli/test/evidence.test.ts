import { createHash } from 'node:crypto'
import { copyFileSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { builtProgram } from './program.ts'

const { run, work } = await builtProgram()
const hatch = readFileSync(new URL('../demo/box-hatch.json', import.meta.url), 'utf8')

describe('evidence, written and re-checked', () => {
  it('shows of the box hatch with a quick filter that nobody is struck, and one case in which somebody is with its slow one', () => {
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
    expect([slow.code, slow.out]).toEqual([1, expect.stringContaining('lane boxes, as-surveyed: box is struck, in one case at 0.')])
    expect(slow.out).not.toContain('strikes nobody')
  })

  it('holds for every door that comes along', { timeout: 600_000 }, () => {
    for (const name of readdirSync(new URL('../demo/', import.meta.url))) {
      const [door, evidence] = [join(work, name), join(work, `${name}.gz`)]
      copyFileSync(new URL(`../demo/${name}`, import.meta.url), door)
      run(['evidence', door, '--out', evidence])
      const { code, told } = run(['verify', door, evidence])
      expect([name, [0, 1, 2].includes(code ?? -1), told]).toEqual([name, true, ''])
    }
  })

  it('ends with what its worst part says, whichever that is: 1 against the door, 2 not shown, 3 refused', () => {
    const quick = hatch.replaceAll('"response_s": 0.15', '"response_s": 0.03')
    const [door, evidence] = [join(work, 'parts.json'), join(work, 'parts.evidence.json')]
    writeFileSync(door, quick)
    run(['evidence', door, '--out', evidence, '--force'])
    const written = JSON.parse(readFileSync(evidence, 'utf8'))
    const verified = (change: object, text = quick) => {
      writeFileSync(door, text)
      writeFileSync(evidence, JSON.stringify({ ...written, doorSha256: createHash('sha256').update(text).digest('hex'), ...change }))
      const { code, out, told } = run(['verify', door, evidence])
      return [code, `${out}${told}`]
    }
    expect(verified({})).toEqual([0, expect.stringContaining('all 69 single faults do what is claimed')])
    expect(verified({ wiring: undefined })).toEqual([2, expect.stringContaining('wiring: nothing is claimed')])
    expect(verified({ passages: [] })).toEqual([2, expect.stringContaining('lane boxes, as-surveyed: nothing is claimed')])
    expect(verified({ coverages: [] })).toEqual([2, expect.stringContaining('sill, as-surveyed, over all tolerances: nothing is claimed')])
    const [first, ...others] = written.wiring.faults
    const lying = { ...written.wiring, faults: [{ ...first, effect: 'no-effect' }, ...others] }
    expect(verified({ wiring: lying })).toEqual([3, expect.stringContaining('wiring/faults/0/effect')])
    const unknown = quick.replace('"closedWhile"', '"closedUntil": 3, "closedWhile"')
    expect(verified({}, unknown)).toEqual([2, expect.stringContaining('cannot show wiring/control/test/closedUntil')])
    const deaf = JSON.parse(readFileSync(new URL('../demo/freezer-door.json', import.meta.url), 'utf8'))
    writeFileSync(door, JSON.stringify(deaf))
    run(['evidence', door, '--out', evidence, '--force'])
    const shown = run(['verify', door, evidence])
    expect([shown.code, shown.out]).toEqual([1, expect.stringContaining('7 hidden-and-dangerous')])
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
