import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { builtProgram } from './program.ts'

const { run, demo } = await builtProgram()
const door = join(demo, 'box-hatch.json')

describe('sillsight connect', () => {
  it('prints connections core by core, best first, and how the wiring of the file compares', () => {
    const { code, out, told } = run(['connect', door])
    expect({ code, told }).toEqual({ code: 0, told: '' })
    expect(out).toMatch(
      /^Connection 1\n[\s\S]*core grid\.1: control\.24V to grid\.plus[\s\S]*As it is wired now\n[\s\S]*were tried, \d+ of them/,
    )
  })
  it('gives them as JSON, in the same order', () => {
    const { proposals, given } = JSON.parse(run(['connect', '--json', '--most', '2', door]).out)
    expect(proposals.length).toBe(2)
    expect(proposals[0].score.hiddenAndDangerous).toBe(0)
    expect(given.score.cores).toBe(8)
  })
  it('tries second faults on top of hidden ones where that is asked for', () => {
    expect(run(['connect', door, '--most', '1', '--second']).out).toMatch(/Pairs of faults, the first unnoticed[\s\S]*0 of\s67\./)
    const { second } = JSON.parse(run(['connect', door, '--json', '--second']).out)
    expect({ pairs: second.pairs.length, left: second.left }).toEqual({ pairs: 0, left: 0 })
  })
  it('says it in German', () => {
    expect(run(['connect', '--language', 'de', door]).out).toMatch(/^Anschluss 1\nFehlerarten/)
  })
  it('refuses a door whose wiring nobody described', () => {
    expect(run(['connect', join(demo, 'sloping-gate.json')])).toMatchObject({ code: 3, out: '' })
  })
})

describe('sillsight trace', () => {
  it('names what explains a dead stop line, and where to measure next', () => {
    const { code, out } = run(['trace', door, 'control.S1,control.0V=0', 'control.S2,control.0V=24'])
    expect(code).toBe(0)
    expect(out).toMatch(/^All 2 readings are explained by:\n(- .*\n)*- core W1\.3 broken\n[\s\S]*Measure next from /)
  })
  it('begins with the first measurement to take', () => {
    expect(run(['trace', door]).out).toContain('Measure next from ')
  })
  it('says that no single fault explains what contradicts itself', () => {
    const { out } = run(['trace', door, 'control.S1,control.0V=0', 'control.S1,control.0V=24'])
    expect(out).toContain('No single fault explains all 2 readings.')
  })
  it('refuses a terminal that the door has not, with an example of its own', () => {
    const { code, told } = run(['trace', door, 'control.S9,control.0V=24'])
    expect(code).toBe(3)
    expect(told).toContain('[bad-reading]')
    expect(told).toContain('control.S1,control.0V=24.1@grid')
  })
})
