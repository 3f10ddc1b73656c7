import { describe, expect, it } from 'vitest'
import { type VerifyResult, verifyEvidence } from '../src/index.ts'
import { sha256 } from './random-door-files.ts'

const door = {
  sillsight: 1,
  survey: { opening: { width_mm: 1500, height_mm: 2100 } },
  sensors: [{ use: 'demo-single-curtain', side: 'a', mountingHeight_mm: 2000, offset_mm: 100 }],
}
const doorText = JSON.stringify(door)
const slices = [0, 1, 2].map((posture) => ({ body: 'presence-reference-body', posture, part: 0, of: 1, trees: [[-2]] }))
const coverage = {
  zone: 'leaf-a',
  state: 'as-surveyed',
  tolerances: null,
  smallest_mm: 5,
  fields: ['sensor-1/leaf'],
  obstacles: [],
  sights: [],
  slices,
  worstCases: [],
}
const evidence = { sillsightEvidence: 1, doorSha256: sha256(doorText), coverages: [coverage] }

function resultOf(given: object | string, text = doorText): VerifyResult {
  return verifyEvidence({ doorText: text, evidenceText: typeof given === 'string' ? given : JSON.stringify(given), sha256 })
}
/** Codes and places of what is wrong. */
function wrong(given: object | string, text = doorText): readonly string[] {
  const result = resultOf(given, text)
  return result.ok ? [] : result.issues.map(({ code, path }) => `${code} ${path}`)
}
const withCoverage = (change: object) => ({ ...evidence, coverages: [{ ...coverage, ...change }] })
const withTree = (tree: readonly unknown[]) => withCoverage({ slices: [{ ...slices[0], trees: [tree] }, ...slices.slice(1)] })
const tree = 'coverages/0/slices/0/trees/0'

describe('evidence that claims nothing', () => {
  it('is in order, and shows that everything is open', () => {
    expect(resultOf(evidence)).toEqual({
      ok: true,
      proved: [
        {
          zone: 'leaf-a',
          state: 'as-surveyed',
          tolerances: false,
          allSeen: false,
          open_mm2: 1500 * 1000,
          largestOpen_mm: Math.sqrt(1500 * 1500 + 1000 * 1000),
          slices: 3,
          leaves: { seen: 0, notFree: 0, open: 3 },
          worstCases: [],
        },
      ],
      passages: [],
      contacts: [],
      wiring: undefined,
      notShown: [],
      silent: [],
    })
  })
})

describe('evidence that leaves something out', () => {
  it('is in order, and what it leaves out is named: zones, over tolerances too, lanes and wiring', () => {
    const lanes = [{ id: 'boxes' }, { id: 'people' }]
    const tolerances = { length_mm: 5, position_mm: 5, tilt_deg: 0, roll_deg: 0, yaw_deg: 0, floor_mm: 0, range_percent: 0 }
    const more = JSON.stringify({ ...door, survey: { ...door.survey, lanes }, tolerances, wiring: {} })
    const result = resultOf({ ...evidence, doorSha256: sha256(more) }, more)
    const state = 'as-surveyed'
    expect(result.ok && result.silent).toEqual([
      { kind: 'zone', zone: 'leaf-a', state, tolerances: true },
      { kind: 'lane', lane: 'boxes', state },
      { kind: 'lane', lane: 'people', state },
      { kind: 'wiring' },
    ])
    const none = resultOf({ ...evidence, coverages: [] })
    expect(none.ok && none.silent).toEqual([{ kind: 'zone', zone: 'leaf-a', state, tolerances: false }])
  })
})

describe('evidence of which this program cannot show a part', () => {
  it('is in order, and that part is named beside what is left out; where anything else does not hold it is refused', () => {
    const strange = JSON.stringify({ ...door, wiring: { siren: 1 } })
    const claims = { ...evidence, doorSha256: sha256(strange), wiring: {} }
    const result = resultOf(claims, strange)
    expect(result.ok && [result.notShown.map(({ code, path }) => `${code} ${path}`), result.silent]).toEqual([
      ['cannot-show wiring/siren'],
      [{ kind: 'wiring' }],
    ])
    expect(wrong({ ...claims, coverages: [{ ...coverage, zone: 'nowhere' }] }, strange)).toEqual(['unknown-id coverages/0/zone'])
  })
})

describe('evidence is refused', () => {
  it('when it is of another door, of another version, or of a door file that is none', () => {
    expect(wrong(evidence, `${doorText} `)).toEqual(['another-door doorSha256'])
    expect(wrong({ ...evidence, doorSha256: undefined })).toEqual(['another-door doorSha256'])
    for (const version of [0, 2, '1', null])
      expect(wrong({ ...evidence, sillsightEvidence: version })).toEqual(['version sillsightEvidence'])
    const newer = JSON.stringify({ ...door, sillsight: 2 })
    expect(wrong({ ...evidence, doorSha256: sha256(newer) }, newer)).toEqual(['version door/sillsight'])
    expect(wrong({ ...evidence, doorSha256: sha256('{') }, '{')).toEqual(['not-json door'])
  })
  it('when it is no JSON, breaks off anywhere, or is nothing of the kind', () => {
    const text = JSON.stringify(evidence)
    for (let end = 0; end < text.length; end++) expect(wrong(text.slice(0, end)).length).toBe(1)
    for (const given of ['null', '[]', '5', '"x"', '{}', '{"sillsightEvidence":1}', `${text}x`, '\u0000'])
      expect(wrong(given).length).toBe(1)
  })
  it('when any part is missing or of another kind', () => {
    for (const name of Object.keys(coverage))
      for (const value of [undefined, 5, 'x', {}, [[]], [null], -1e300]) {
        if (name === 'smallest_mm' && value === 5) continue
        expect({ name, value, count: wrong(withCoverage({ [name]: value })).length }).toEqual({ name, value, count: 1 })
      }
    for (const name of ['body', 'posture', 'part', 'of', 'trees'])
      for (const value of [undefined, 7, 'x', {}, [], [5]])
        expect(wrong(withCoverage({ slices: [{ ...slices[0], [name]: value }, ...slices.slice(1)] })).length).toBe(1)
  })
  it('when slices or roots are missing or stand twice', () => {
    expect(wrong(withCoverage({ slices: slices.slice(1) }))).toEqual(['missing-slice coverages/0/slices'])
    expect(wrong(withCoverage({ slices: [...slices, slices[0]] }))).toEqual(['duplicate-slice coverages/0/slices/3/part'])
    expect(wrong(withCoverage({ slices: slices.map((each) => ({ ...each, trees: [] })) }))).toEqual([
      'missing-root coverages/0/slices/0/trees',
    ])
    expect(wrong({ ...evidence, coverages: [coverage, coverage] })).toEqual(['duplicate coverages/1'])
  })
  it('when an index is out of range, a field does not count, or tolerances are not those of the door', () => {
    expect(wrong(withTree([0]))).toEqual([`out-of-range ${tree}/0`])
    expect(wrong(withTree([-3]))).toEqual([`out-of-range ${tree}/0`])
    expect(wrong(withCoverage({ sights: [[1, 0, 0, [7, 7, 7]]] }))).toEqual(['out-of-range coverages/0/sights/0/0'])
    expect(wrong(withCoverage({ sights: [[0, 1, 0, [7, 7, 7]]] }))).toEqual(['out-of-range coverages/0/sights/0/1'])
    expect(wrong(withCoverage({ sights: [[0, 0, 161, [7, 7, 7]]] }))).toEqual(['out-of-range coverages/0/sights/0/2'])
    expect(wrong(withCoverage({ sights: [[0, 0, 0, [7, 7]]] }))).toEqual(['too-few coverages/0/sights/0/3'])
    expect(wrong(withCoverage({ fields: ['sensor-2/leaf'] }))).toEqual(['unknown-id coverages/0/fields/0'])
    expect(wrong(withCoverage({ fields: ['sensor-1/leaf', 'sensor-1/leaf'] }))).toEqual(['duplicate-id coverages/0/fields/1'])
    expect(wrong(withCoverage({ tolerances: {} }))).toEqual(['wrong-tolerances coverages/0/tolerances'])
  })
  it('before any work, when it has 10^8 leaves or is nested 10^6 deep', () => {
    const head = JSON.stringify(evidence).replace(/"trees":\[\[-2\]\].*$/s, '"trees":[[')
    expect(wrong(`${head}${'-2,'.repeat(1e8)}-2]]}]}]}`)).toEqual(['too-large evidence'])
    expect(wrong(`${'['.repeat(1e6)}${']'.repeat(1e6)}`)).toEqual(['too-deep evidence'])
    expect(wrong(`${'{"a":'.repeat(1e6)}1${'}'.repeat(1e6)}`)).toEqual(['too-deep evidence'])
    expect(wrong(withTree(Array(1e6).fill(-1)))).toEqual([`too-deep ${tree}/80`])
  })
  it('when it would take too long: more open leaves than any door has', () => {
    const full = (depth: number, leaf: number): number[] =>
      depth === 0 ? [leaf] : [-1, ...full(depth - 1, leaf), ...full(depth - 1, leaf)]
    const block = full(12, -2)
    const blocks = full(9, -99).flatMap((code) => (code === -1 ? [-1] : block))
    expect(wrong(withTree(blocks))).toEqual([`too-much ${tree}`])
  })
})
