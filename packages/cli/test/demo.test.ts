import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { builtProgram } from './program.ts'

const { run, work, demo } = await builtProgram()
const doors = readdirSync(demo).filter((name) => name.endsWith('.json'))
const first = run(['demo', '--out', 'out'])

describe('sillsight demo', () => {
  it('judges four or more doors, prints their findings, and ends with 0 though doors fail', () => {
    expect(doors.length).toBeGreaterThanOrEqual(4)
    expect(first).toMatchObject({ code: 0, told: '' })
    for (const door of doors) expect(first.out).toContain(door)
    expect(first.out).toContain('fails')
  })

  it('writes drawing, result and door file of each, and nothing else', () => {
    const names = doors.flatMap((door) => ['.json', '.result.json', '.svg'].map((end) => door.replace('.json', end)))
    expect(readdirSync(join(work, 'out')).sort()).toEqual(names.sort())
    for (const door of doors) {
      const record = JSON.parse(readFileSync(join(work, 'out', door.replace('.json', '.result.json')), 'utf8'))
      expect(record.ok).toBe(true)
      expect(first.out).toContain(record.sha256)
      expect(readFileSync(join(work, 'out', door.replace('.json', '.svg')), 'utf8')).toMatch(/<svg[\s\S]*<\/svg>\s*$/)
    }
  })

  it('says what to do next in commands that work as they stand', () => {
    const commands = [...first.out.slice(first.out.indexOf('What next')).matchAll(/sillsight (why|judge|new) (.*)/g)]
    expect(commands.map(([, command]) => command)).toEqual(['why', 'judge', 'new'])
    for (const [, command = '', rest = ''] of commands) {
      expect([0, 1, 2]).toContain(run([command, ...rest.split(' ')], { input: '2400\n2600\n\n\n\n\n' }).code)
    }
  })

  it('leaves a door file alone that somebody changed, and renews the rest', () => {
    const [door = ''] = doors
    writeFileSync(join(work, 'out', door), 'mine')
    writeFileSync(join(work, 'out', door.replace('.json', '.svg')), 'old')
    const second = run(['demo', '--out', 'out'])
    expect(second.code).toBe(0)
    expect(second.told).toContain('stays as it is')
    expect(second.out).toBe(first.out)
    expect(readFileSync(join(work, 'out', door), 'utf8')).toBe('mine')
    expect(readFileSync(join(work, 'out', door.replace('.json', '.svg')), 'utf8')).toContain('<svg')
  })

  it('says that everything in them is invented', () => {
    expect(first.out).toMatch(/invented/)
  })

  it('refuses a place where it cannot write', () => {
    writeFileSync(join(work, 'taken'), '')
    expect(run(['demo', '--out', 'taken'])).toMatchObject({ code: 3 })
  })
})
