import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { builtProgram } from './program.ts'

const { run, demo, work } = await builtProgram()
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
  it('says how often to test by hand for what stays hidden, or what is missing to say so, and what to set the other way round', () => {
    const freezer = JSON.parse(readFileSync(join(demo, 'freezer-door.json'), 'utf8'))
    const missing = run(['connect', join(demo, 'freezer-door.json'), '--most', '1', '--width', '400'])
    expect([missing.code, missing.out]).toEqual([
      2,
      expect.stringContaining(
        'How often that has to be cannot be said without: years to dangerous failure of cable over-leaf, sensor over-leaf; the share',
      ),
    ])
    const [wired] = freezer.wiring.sensors
    Object.assign(freezer.sensors[0], { declares: { mttfd_y: 100, source: { basis: 'from memory' } } })
    Object.assign(freezer.wiring, {
      handTest: { mostHidden_percent: 0.1, cable_y: 1000, source: { basis: 'measured', note: 'A. Reader' } },
    })
    const file = join(work, 'tested.json')
    writeFileSync(file, JSON.stringify(freezer))
    expect(run(['why', file, 'single-fault', '--width', '400']).out).toContain('longest time between tests by hand = ')
    Object.assign(wired.outputs[0], { settable: 'either-way', energisedIn: ['seen'] })
    writeFileSync(file, JSON.stringify(freezer))
    const { code, out, told } = run(['connect', file, '--most', '1', '--width', '400'])
    expect([code, told]).toEqual([2, ''])
    // 2 x 0.001 x 365 / (1 / 100 + 1 / 1000)
    expect(out).toContain(
      'test it by hand at least every 66 days: then such a fault stands for at most 0.1 % of the time on average (by figures that are only remembered)',
    )
    expect(out.split('As it is wired now')[0]).toContain(`Set the other way round: ${wired.sensor}/${wired.outputs[0].name}.`)
    const { proposals } = JSON.parse(run(['connect', '--json', '--most', '1', file]).out)
    expect(proposals[0]).toMatchObject({
      turned: [`${wired.sensor}/${wired.outputs[0].name}`],
      byHand: { longest_d: expect.closeTo(66.36, 2), isRemembered: true },
    })
  })
  it('proposes the resistor that an input wants at the end of its line', () => {
    const freezer = JSON.parse(readFileSync(join(demo, 'freezer-door.json'), 'utf8'))
    const [input] = freezer.wiring.control.inputs
    Object.assign(input, {
      ohm: 100_000,
      fedFrom: { terminal: freezer.wiring.supply.plus, ohm: 2200 },
      endOfLine_ohm: 8200,
      bands: [
        { from_V: -50, to_V: 2, means: 'fault' },
        { from_V: 17.5, to_V: 19.6, means: 'clear' },
        { from_V: 22, to_V: 50, means: 'seen' },
      ],
    })
    Object.assign(freezer.wiring.supply, { least_V: 23.5, largest_V: 24.5 })
    const file = join(work, 'monitored.json')
    writeFileSync(file, JSON.stringify(freezer))
    expect(run(['connect', file, '--most', '1', '--width', '400']).out).toMatch(
      /^Connection 1\n[\s\S]*resistor R1, 8200 ohm: over-leaf\.\S+ to over-leaf\.end1\n/,
    )
  })
  it('says it in German', () => {
    expect(run(['connect', '--language', 'de', door]).out).toMatch(
      /^Anschluss 1\n(?:Kein einzelner Fehler|Ein einzelner|\d+ einzelne Fehler)/,
    )
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
