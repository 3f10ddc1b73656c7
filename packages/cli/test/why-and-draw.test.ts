import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { beamDoor, text } from './doors.ts'
import { builtProgram } from './program.ts'

const { run, work } = await builtProgram()
writeFileSync(join(work, 'bad.json'), text(beamDoor({ beam_mm: 900 })))
writeFileSync(join(work, 'broken.json'), '{"sillsight": 1}')
const read = (name: string): string => readFileSync(join(work, name), 'utf8')

describe('sillsight why', () => {
  it('explains a finding that judge named, with exit 0 whatever its verdict', () => {
    const { findings } = JSON.parse(run(['judge', '--json', 'bad.json']).out).doors[0]
    for (const { id } of findings) {
      const { code, out, told } = run(['why', 'bad.json', id])
      expect({ id, code, told }).toEqual({ id, code: 0, told: '' })
      expect(out).toContain(id)
    }
  })

  it('takes a part of an id that only one finding has: a rule, the letter of a pocket', () => {
    const whole = run(['why', 'bad.json', 'blind-pocket:line/A']).out
    expect(run(['why', 'bad.json', 'A']).out).toBe(whole)
    expect(run(['why', 'bad.json', 'blind-pocket']).out).toBe(whole)
    expect(run(['why', 'bad.json', 'line'])).toMatchObject({ code: 3, out: '' }) // several have it
  })

  it('lists near ids for an unknown one, and all without one', () => {
    const unknown = run(['why', 'bad.json', 'blindpocket:line/A'])
    expect(unknown).toMatchObject({ code: 3, out: '' })
    expect(unknown.told).toMatch(/did you mean[\s\S]*\n {4}blind-pocket:line\/A/)
    expect(run(['why', 'bad.json']).told).toMatch(/write one of these:(\n {4}\S+:\S+)+/)
  })

  it('refuses a file that cannot be judged', () => {
    expect(run(['why', 'broken.json', 'x'])).toMatchObject({ code: 3, out: '' })
  })
})

describe('sillsight draw', () => {
  it('prints the drawing into a pipe, and writes the same with --out', () => {
    const { code, out, told } = run(['draw', 'bad.json'])
    expect({ code, told }).toEqual({ code: 0, told: '' })
    expect(out).toMatch(/^(<\?xml[\s\S]*?\?>\s*)?<svg[\s\S]*<\/svg>\s*$/)
    expect(run(['draw', 'bad.json', '--out', 'bad.svg'])).toMatchObject({ code: 0, out: '' })
    expect(read('bad.svg')).toBe(out)
    expect(run(['draw', 'bad.json', '--out', '-']).out).toBe(out)
  })

  it('never replaces a file unless forced, and leaves no parts behind', () => {
    writeFileSync(join(work, 'mine.svg'), 'mine')
    const refused = run(['draw', 'bad.json', '--out', 'mine.svg'])
    expect(refused.code).toBe(3)
    expect(refused.told).toMatch(/mine\.svg: expected a name that is free.*\[already-there\]\n {2}repair: .*--force/)
    expect(read('mine.svg')).toBe('mine')
    expect(run(['draw', 'bad.json', '--out', 'mine.svg', '--force']).code).toBe(0)
    expect(read('mine.svg')).toContain('<svg')
    expect(run(['draw', 'bad.json', '--out', 'none/x.svg']).told).toContain('make the folder none first')
    expect(readdirSync(work).filter((name) => name.includes('.part'))).toEqual([])
  })

  it('writes nothing for a file that cannot be judged, a scale or a state that is none', () => {
    expect(run(['draw', 'broken.json', '--out', 'b.svg'])).toMatchObject({ code: 3, out: '' })
    expect(run(['draw', 'bad.json', '--out', 'b.svg', '--scale', '1:0']).told).toContain('a scale from 1:1 to 1:1000')
    expect(run(['draw', 'bad.json', '--out', 'b.svg', '--state', 'as-surveid']).told).toContain('did you mean as-surveyed?')
    expect(run(['draw', 'bad.json', '--out', 'b.svg', '--zone', 'lin']).told).toContain('did you mean line?')
    expect(existsSync(join(work, 'b.svg'))).toBe(false)
  })

  it('draws to the scale, in the state, of the zone and in the units that are asked for', () => {
    const plain = run(['draw', 'bad.json', '--scale', '1:25']).out
    expect(plain).toContain('1:25')
    expect(run(['draw', 'bad.json', '--scale', '25', '--state', 'as-surveyed', '--zone', 'line']).out).toBe(plain)
    expect(run(['draw', 'bad.json', '--scale', '1:50']).out).toContain('1:50')
    expect(run(['draw', 'bad.json', '--units', 'ft-in']).out).not.toBe(run(['draw', 'bad.json']).out)
  })

  it('draws one finding over time, the worst if none is named, and says where there is none', () => {
    const demo = join(import.meta.dirname, '../demo/box-hatch.json')
    const { code, out } = run(['draw', demo, '--view', 'timeline'])
    expect(code).toBe(0)
    expect(out).toContain('In time: Struck by the closing leaf')
    expect(run(['draw', demo, '--view', 'timeline', '--finding', 'struck-by-leaf']).out).toBe(out)
    expect(run(['draw', demo, '--view', 'timeline', '--finding', 'zone-covered']).told).toContain('unknown-finding')
    expect(run(['draw', demo, '--finding', 'struck-by-leaf']).told).toContain('--view timeline')
    expect(run(['draw', 'bad.json', '--view', 'timeline']).told).toContain('nothing-in-time')
    expect(run(['draw', 'bad.json', '--view', 'wiring']).told).toContain('no-wiring')
    expect(run(['draw', demo, '--view', 'wiring']).out).toContain('single faults')
  })
})
