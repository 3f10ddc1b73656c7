import { gzipSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { randomNumbers } from '../packages/engine/cases/random-numbers.ts'
import { TEMPTING } from './verify-py.claims.ts'
import { CORRUPTIONS, corrupt } from './verify-py.corruptions.ts'
import { randomDoorFile } from './verify-py.doors.ts'
import type { Draft } from './verify-py.draft.ts'
import { DEMOS, demoDoor, type Pair, type Proved, proved, ran, verdicts } from './verify-py.files.ts'

const demos: readonly Proved[] = DEMOS.map((name) => must(proved(demoDoor(name))))
const [first = must<Proved>(undefined)] = demos

describe('the Python verifier', () => {
  it('accepts the true evidence of every demo door, as written and over its tolerances', () => {
    expect(verdicts(demos.map(asPair)).filter(({ exit }) => exit !== 0)).toEqual([])
  })
  it('accepts the true evidence of random doors (seeds 1 to 60)', () => {
    const doors = Array.from({ length: 60 }, (_, i) => proved(JSON.stringify(randomDoorFile(i + 1)))).filter((each) => each !== undefined)
    expect(doors.length).toBeGreaterThan(50)
    expect(verdicts(doors.map(asPair)).filter(({ exit }) => exit !== 0)).toEqual([])
  })
  it('says in words and in JSON what is proved', () => {
    const inWords = ran(asPair(first))
    expect(inWords.code).toBe(0)
    expect(inWords.stdout).toMatch(/^freezer-leaf, state as-surveyed, as written: 0\.\d{4} m2 stay open/)
    const { accepted, proved: found } = JSON.parse(ran(asPair(first), '--json').stdout)
    expect(accepted).toBe(true)
    expect(found[0]).toMatchObject({ zone: 'freezer-leaf', allSeen: false })
    expect(found[0].largestOpen.mm2).toBeLessThanOrEqual(found[0].open_mm2 + 1e-6)
  })
  it('reads evidence that gzip packed', () => {
    expect(ran({ door: first.text, evidence: gzipSync(first.evidence) }).code).toBe(0)
  })
  it.each(TEMPTING)('refuses a claim that only looks proved: $title', ({ door, evidence }) => {
    expect(verdicts([{ door, evidence }])).toMatchObject([{ exit: 1, issues: [{ place: expect.stringMatching(/^coverages\/0/) }] }])
  })
  it('refuses every corruption of the evidence of demo doors, each at a place', () => {
    const broken = Object.keys(CORRUPTIONS).flatMap((name, i) => must(corruptedOnce(name, i)))
    expect(broken.length).toBeGreaterThanOrEqual(60)
    const found = verdicts(broken.map(({ pair }) => pair))
    expect(broken.filter((_, i) => found[i]?.exit !== 1 || !found[i]?.issues[0]?.place).map(({ title }) => title)).toEqual([])
  })
})

describe('bad input', () => {
  const withEvidence = (evidence: string | Uint8Array) => ran({ door: first.text, evidence })

  it('is refused when it is evidence of another door, of another version, or none', () => {
    const other = first.evidence.replace(/"doorSha256":"./, '"doorSha256":"g')
    expect(withEvidence(other)).toMatchObject({ code: 1, stdout: expect.stringContaining('doorSha256: expected') })
    expect(withEvidence('{"sillsightEvidence":2}')).toMatchObject({ code: 1, stdout: expect.stringContaining('version 1, got 2') })
    expect(withEvidence('[]').code).toBe(1)
  })
  it('is unreadable when it is cut off, no JSON, nested without end, or says one thing twice', () => {
    const packed = gzipSync(first.evidence)
    for (const evidence of [
      first.evidence.slice(0, -40),
      packed.subarray(0, packed.length - 20),
      '',
      '{"sillsightEvidence":NaN}',
      '['.repeat(1e6),
      `{"sillsightEvidence":1,${first.evidence.slice(1)}`,
      `{"sillsightEvidence":${'1'.repeat(5000)}}`,
    ])
      expect(withEvidence(evidence), String(evidence.slice(0, 40))).toMatchObject({
        code: 3,
        stdout: '',
        stderr: expect.stringMatching(/^evidence: /),
      })
  })
  it('is refused when it is more than anybody proves: a hundred million leaves, however packed, and trees nested deeper than halves go', () => {
    const leaves = (count: number) => first.evidence.replace(/"trees":\[\[.*?\]/, () => `"trees":[[${'-2,'.repeat(count)}-2]`)
    expect(withEvidence(gzipSync(leaves(3e7)))).toMatchObject({ code: 1, stdout: expect.stringContaining('bytes') })
    expect(withEvidence(leaves(1.3e7))).toMatchObject({ code: 1, stdout: expect.stringContaining('values') })
    expect(withEvidence(leaves(2.5e6))).toMatchObject({ code: 1, stdout: expect.stringContaining('nodes') })
    const deep = first.evidence.replace(/"trees":\[\[.*?\]/, () => `"trees":[[${'-1,'.repeat(1e5)}-2]`)
    expect(withEvidence(deep)).toMatchObject({ code: 1, stdout: expect.stringContaining('at most 64 nested splits') })
  })
  it('never breaks the program: any value of the evidence put in place of any other is accepted, refused or unreadable', () => {
    const random = randomNumbers(1)
    const strange = [null, true, -1, 0.5, 1e300, '', 'a', [], [[]], {}, [null], { id: 1 }, -0]
    const pairs = Array.from({ length: 150 }, (): Pair => {
      const demo = random.pick([first, ...demos.slice(1, 2)])
      const draft: unknown = JSON.parse(demo.evidence)
      putSomewhere(draft, random.pick([null, ...strange]), random)
      return { door: demo.text, evidence: JSON.stringify(draft) }
    })
    expect(verdicts(pairs).filter(({ exit }) => ![0, 1].includes(exit))).toEqual([])
  })
  it('is unreadable when the door file is not there or lacks what it must have', () => {
    const { survey, ...without } = JSON.parse(first.text)
    expect(ran({ door: JSON.stringify(without), evidence: first.evidence })).toMatchObject({
      code: 3,
      stderr: expect.stringContaining('door file, survey: expected an object, got null'),
    })
  })
})

/** The named corruption of each demo door that has something to corrupt; of at least one of them. */
function corruptedOnce(name: string, seed: number): { title: string; pair: Pair }[] | undefined {
  const found = demos.flatMap((demo, d) => {
    const random = randomNumbers(1000 * seed + d)
    const draft: Draft = JSON.parse(demo.evidence)
    const coverage = draft.coverages[random.whole(0, draft.coverages.length - 1)]
    if (coverage === undefined || !corrupt(name, coverage, demo.door, random)) return []
    return [{ title: `${name}, ${DEMOS[d]}`, pair: { door: demo.text, evidence: JSON.stringify({ ...draft, coverages: [coverage] }) } }]
  })
  return found.length === 0 ? undefined : found.slice(0, 2)
}

function putSomewhere(inside: unknown, value: unknown, random: ReturnType<typeof randomNumbers>): void {
  if (typeof inside !== 'object' || inside === null) return
  const holder = inside as Record<string, unknown>
  const [name, ...others] = Object.keys(holder)
  if (name === undefined) return
  const key = random.pick([name, ...others])
  const next = holder[key]
  if (typeof next !== 'object' || next === null || random.chance(0.25)) holder[key] = value
  else putSomewhere(next, value, random)
}

function asPair({ text, evidence }: Proved): Pair {
  return { door: text, evidence }
}

function must<T extends object>(value: T | undefined): T {
  if (value === undefined) throw new Error('value must be there')
  return value
}
