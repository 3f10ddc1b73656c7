import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { changed } from '../../test/example-files.ts'
import { parseDocument, toDoor } from '../index.ts'

const hatch = JSON.parse(readFileSync(new URL('../../../cli/demo/box-hatch.json', import.meta.url), 'utf8'))
const parsed = (path: string, value: unknown) => parseDocument(JSON.stringify(changed(hatch, path, value)))
const issues = (path: string, value: unknown) => {
  const result = parsed(path, value)
  return result.ok ? [] : result.issues.map((issue) => ({ path: issue.path.replace('wiring/', ''), code: issue.code, got: issue.got }))
}

describe('the wiring of a door file', () => {
  it('becomes switches, and cores with the resistance of their copper', () => {
    const result = parsed('wiring/cables/0/length_mm', 10_000)
    if (!result.ok) throw new Error(JSON.stringify(result.issues))
    const { wiring } = toDoor(result.document, result.catalogue)
    expect(wiring?.sensors[0]?.outputs).toMatchObject([
      { name: 'P', from: 'grid.plus', to: 'grid.out', closedIn: ['clear'], on_ohm: 2.5, off_ohm: 220_000 },
    ])
    expect(wiring?.cables[0]?.cores[0]).toMatchObject({ id: 'W1.1', from: 'control.24V', to: 'grid.plus' })
    expect(wiring?.cables[0]?.cores[0]?.ohm).toBeCloseTo(0.39, 9) // 10 m of 0.5 mm2: 39.0 ohm/km, IEC 60228, class 5
  })

  it('knows what can be set either way, ratings of transistors, resistors at the end of lines and what tests by hand rest on', () => {
    const [output] = hatch.wiring.sensors[0].outputs
    const rating = { largest_V: 30, largest_A: 0.1 }
    const [input] = hatch.wiring.control.inputs
    const more = changed(hatch, 'wiring/handTest', { mostHidden_percent: 0.1, cable_y: 900, source: { basis: 'invented' } })
    const set = changed(more, 'wiring/control/inputs/0', { ...input, settable: 'either-way', endOfLine_ohm: 8200 })
    const result = parseDocument(JSON.stringify(changed(set, 'wiring/sensors/0/outputs', [{ ...output, rating, settable: 'either-way' }])))
    if (!result.ok) throw new Error(JSON.stringify(result.issues))
    const { wiring } = toDoor(result.document, result.catalogue)
    expect(wiring?.sensors.map(({ outputs }) => outputs[0]?.turns)).toEqual([true, false])
    expect(wiring?.sensors[0]?.outputs[0]?.rating).toMatchObject(rating)
    expect(wiring?.control.inputs.map(({ turns, endOfLine_ohm }) => [turns, endOfLine_ohm])).toEqual([
      [true, 8200],
      [false, undefined],
    ])
    expect(wiring?.handTest).toMatchObject({ mostHidden_percent: 0.1, cable_y: 900 })
  })

  it('turns a change-over contact into two, of which the second is closed whenever the first is not', () => {
    const output = { kind: 'change-over', name: 'p', acts: 'presence', common: 'grid.out', energised: 'grid.no', released: 'grid.nc' }
    const result = parsed('wiring/sensors/0/outputs', [{ ...output, energisedIn: ['clear', 'warming-up'] }])
    if (!result.ok) throw new Error(JSON.stringify(result.issues))
    expect(toDoor(result.document, result.catalogue).wiring?.sensors[0]?.outputs).toMatchObject([
      { name: 'p/energised', output: 'p', from: 'grid.out', to: 'grid.no', closedIn: ['clear', 'warming-up'], off_ohm: Infinity },
      { name: 'p/released', output: 'p', from: 'grid.out', to: 'grid.nc', closedIn: ['seen', 'unpowered', 'fault'] },
    ])
  })

  it('names an unknown terminal with what is there and the other end, and guesses nothing', () => {
    const result = parsed('wiring/cables/0/cores/2/to', 'grid.OUT9')
    expect(result.ok ? [] : result.issues).toMatchObject([
      { path: 'wiring/cables/0/cores/2/to', code: 'unknown-id', expected: expect.stringContaining('"grid.out"'), got: '"grid.OUT9"' },
    ])
    expect(result.ok ? '' : result.issues[0]?.expected).toContain('its other end is at "control.S1"')
  })

  it('refuses a core used twice, a core without length of its own, and ids that nothing has', () => {
    expect(issues('wiring/cables/0/cores/1/id', '1')).toMatchObject([{ path: 'cables/0/cores/1/id' }])
    expect(issues('wiring/cables/0/cores/0/to', 'control.24V')).toMatchObject([{ path: 'cables/0/cores/0/to', code: 'contradiction' }])
    expect(issues('wiring/sensors/0/sensor', 'nobody')).toMatchObject([{ path: 'sensors/0/sensor', code: 'unknown-id' }])
    expect(issues('wiring/control/test/expects', ['stop-9'])).toMatchObject([{ path: 'control/test/expects/0', code: 'unknown-id' }])
    expect(issues('wiring/control/inputs/0/pairedWith', { id: 'stop-1', discrepancy_s: 1 })).toMatchObject([
      { path: 'control/inputs/0/pairedWith/id', code: 'unknown-id' },
    ])
  })

  it('refuses figures that contradict each other, and a transistor that is on without power', () => {
    expect(issues('wiring/supply/largest_V', 20)).toMatchObject([{ path: 'supply/largest_V', code: 'contradiction' }])
    expect(issues('wiring/sensors/0/test/on_V', 6)).toMatchObject([{ path: 'sensors/0/test/on_V' }])
    expect(issues('wiring/sensors/0/outputs/0/onIn', ['unpowered'])).toMatchObject([{ path: 'sensors/0/outputs/0/onIn' }])
    const bands = [
      { from_V: 0, to_V: 6, means: 'seen' },
      { from_V: 5, to_V: 30, means: 'clear' },
    ]
    expect(issues('wiring/control/inputs/0/bands', bands)).toMatchObject([{ path: 'control/inputs/0/bands/1/from_V' }])
    expect(issues('wiring/cables/0/conductor', { area_mm2: -1 })).toHaveLength(1)
    expect(issues('wiring/cables/0/cores/0/colour', 'red')).toHaveLength(1)
  })

  it('refuses more cores than can be tried in pairs', () => {
    const cores = Array.from({ length: 40 }, (_, i) => ({ id: `${i}`, from: 'control.24V', to: 'grid.plus' }))
    const cables = Array.from({ length: 6 }, (_, i) => ({ id: `W${i}`, length_mm: 1000, conductor: { awg: 20 }, cores }))
    expect(issues('wiring/cables', cables)).toMatchObject([{ path: 'cables', got: '240' }])
  })
})
