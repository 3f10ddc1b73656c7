import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseDocument, toDoor } from '@sillsight/document'
import { type Finding, judge, type NotApplicableReason, OUTSIDE_VALUES, RULES, type UndeterminedReason } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { leafZone, loadingDoor, lyingBody, scanner } from '../../test/doors.ts'
import { english } from './english.ts'
import { figure, tape } from './figures.ts'
import { german } from './german.ts'
import { mend, ruleName, sentence } from './sentence.ts'

const REASONS: readonly UndeterminedReason[] = [
  'missing-input',
  'rests-on-assumption',
  'limit-from-memory',
  'nothing-free',
  'not-computable',
  'yaw-range-sampled',
  'several-parts',
]
const NOT_APPLICABLE: readonly NotApplicableReason[] = ['no-subject', 'not-required-by-concept']

/** Facts as the rules give them, all at once. */
const everyFact: Finding['facts'] = {
  zone: 'leaf-yard',
  zoneName: leafZone.name,
  purpose: leafZone.purpose,
  function: 'presence',
  state: 'as-surveyed',
  stateName: 'as surveyed',
  sensor: scanner.id,
  sensorName: scanner.name,
  field: 'front',
  fieldName: 'front field',
  output: 'out 1',
  share: 0.98,
  seen: 980,
  blind: 20,
  notFree: 5,
  pockets: 2,
  fields: 1,
  pocket: 'A',
  letter: 'A',
  cells: 12,
  area_mm2: 7500,
  diameter_mm: 180,
  xMin_mm: 100,
  xMax_mm: 250,
  yMin_mm: 0,
  yMax_mm: 100,
  body: lyingBody.id,
  bodyName: lyingBody.name,
  posture: 0,
  postureName: 'lying along',
  cause: 'hidden-behind',
  obstacle: 'bollard',
  obstacleName: 'bollard',
  gapX_mm: 900,
  gap_mm: 90,
  face: 'top',
  across_mm: 200,
  cluster: 2,
  plane: 'plane-1',
  beam: 17,
  x_mm: 700,
  y_mm: 300,
  z_mm: 200,
  yaw_rad: 0,
  depth_mm: 320,
  leftCells: 3,
  leftDiameter_mm: 80,
  tried: 9,
  largest_mm: 700,
  step_mm: 50,
  smallest_mm: 300,
  unseen_mm: 250,
  required_mm: 300,
  a_mm: 700,
  b_mm: 300,
  c_mm: 200,
  height_mm: 46,
  tolerance_mm: 10,
  travel: 'down',
  travel_mm: 4200,
  met_mm: 300,
  blanked_mm: 100,
  stretches: 2,
  from_mm: 0,
  to_mm: 200,
  heldForEver: false,
  presence_s: 60,
  stay_s: 180,
  beams: 724,
  missing: 1,
  enclosed: 4,
  blocked: 1,
  at_mm: 1200,
  needs: 'a push of 20 N',
  unwatchedA_mm: 0,
  unwatchedB_mm: 4000,
  topless: false,
  openingHeight_mm: 4200,
  bodies: 2,
  fitting: 1,
  danger: 'tail',
  dangerName: 'D',
  kind: 'tail',
  caught: 'body',
  by: 'gap',
  guards: 1,
  needed_mm: 500,
  record: 'R',
  place: 'R',
  instrument: 'I',
  on: '2026-11-01',
  exceeds: 'mean',
  mass_kg: 18,
  speed_mm_per_s: 300,
  says: 'clear',
  warmUp_s: 8,
  closesAfter_s: 3,
  beyond: 'low',
  lowest_V: 21.7,
  inrush_V: 18.2,
  hottest_degC: 30,
  core_mm2: 0.75,
  awg: 18,
  cable: 'W1',
  longest_mm: 41_300,
  inrush_A: 1.4,
  fuse_A: 1,
  limitedBy: 'fuse',
  limited: 'class-2',
  contact: 'presence',
  open_V: 27,
  most_A: 0.009,
  least_A: 0.007,
  lacks: 'level',
  performanceLevel: 'b',
  category: '2',
  required: 'c',
  requiredCategory: 2,
  level: 'b',
  mttfd_y: 29.9,
  fact: 'interlock',
  does: 'interlock-first',
  open: 'draw-in lifting',
  fault: 'core-to-rail',
  core: 'W1.4',
  rail: 'minus',
  faults: 68,
  hidden: 3,
  found: 9,
  nuisance: 12,
  within_s: 3600,
  slip: 'two-drivers',
  a: 'scanner.1',
  b: 'scanner.2',
}

const frame = { subject: { kind: 'zone', id: 'leaf-yard' }, edition: '2026-11', state: 'as-surveyed', steps: [], basis: [] } as const
const worstCase = { body: 'lying', posture: 0, x_mm: 450, y_mm: 660, z_mm: 0, yaw_rad: 0, state: 'as-surveyed' }
const against = { measured: { value: 200.04, unit: 'mm' }, limit: { value: 200, unit: 'mm' } } as const

/** Every answer that a rule could give. */
function answersOf(rule: string, facts: Finding['facts'], withCase: boolean): readonly Finding[] {
  const base = { ...frame, rule, id: `${rule}:x`, facts }
  const shown = withCase ? { ...against, worstCase } : against
  return [
    ...(['pass', 'fail'] as const).map((verdict): Finding => ({ ...base, ...shown, verdict })),
    ...REASONS.map(
      (reason): Finding => ({
        ...base,
        ...(withCase ? shown : {}),
        verdict: 'undetermined',
        reason,
        needs: withCase ? ['sensors/0/maxRange_mm', 'survey/opening/width_mm', 'confirmations/lying'] : [],
      }),
    ),
    ...NOT_APPLICABLE.map((reason): Finding => ({ ...base, verdict: 'not-applicable', reason })),
  ]
}

const WHOM: Readonly<Record<string, RegExp>> = { en: /\b(child|toddler|kid|person)\b/i, de: /\b(Kind|Kleinkind|Baby|Person)\b/i }

describe.each([english, german])('wording in $tag', (language) => {
  const metric = { units: 'metric', language } as const

  it('has words for every rule of the engine and for no other', () => {
    expect(Object.keys(language.rules).sort()).toEqual(RULES.map(({ id }) => id).sort())
  })

  describe.each(Object.keys(language.rules))('%s', (rule) => {
    const answers = [...answersOf(rule, everyFact, true), ...answersOf(rule, {}, false)]

    it('says every verdict and every reason in whole sentences, whatever facts there are', () => {
      for (const finding of answers) {
        for (const units of ['metric', 'feet-inches'] as const) {
          const said = sentence(loadingDoor, finding, { units, language })
          expect(said).toMatch(/^[A-Z][\s\S]*[.!]$/)
          expect(said).not.toMatch(/undefined|NaN|\[object| {2}|\.\.| \.| ,|\( | \)|no words yet|keine Worte/)
        }
      }
    })

    it('says what would mend a fail and settle what is not settled, and nothing else', () => {
      for (const finding of answers) {
        const said = mend(loadingDoor, finding, metric)
        if (finding.verdict === 'fail' || finding.verdict === 'undetermined') expect(said).toMatch(/^[A-Z][\s\S]*\.$/)
        else expect(said).toBe('')
        expect(said).not.toMatch(/undefined|NaN| {2}|\.\./)
      }
    })

    it('never names whom a body stands for, nor says open or holds of a verdict', () => {
      for (const finding of answers) expect(sentence(loadingDoor, finding, metric)).not.toMatch(WHOM[language.tag] as RegExp)
    })

    it('tells its verdicts apart', () => {
      const said = answersOf(rule, everyFact, true).map((finding) => sentence(loadingDoor, finding, metric))
      const [pass, fail, ...undetermined] = said
      if (rule !== 'zone-only-device') expect(pass).not.toBe(fail)
      expect(undetermined).not.toContain(pass)
    })
  })
})

/** Words that English has and German has not; names of the test door are left out. */
const ENGLISH = /\b(the|of|and|is|are|not|with|where|from|up|seen|body|beam|beams|leaf|floor|left|right)\b/i

const DEMO = join(import.meta.dirname, '../../../cli/demo')

describe('German', () => {
  const metric = { units: 'metric', language: german } as const
  const subject = { kind: 'zone', id: 'Z' } as const
  const door = { ...loadingDoor, sides: { a: 'Hof', b: 'Halle' }, zones: [], bodies: loadingDoor.bodies.map(unnamed), states: [] }

  it('leaves no English word in any sentence', () => {
    const facts = {
      ...everyFact,
      zoneName: 'Z',
      fieldName: 'F',
      sensorName: 'S',
      obstacleName: 'P',
      postureName: 'L',
      plane: 'E',
      needs: 'N',
    }
    for (const rule of Object.keys(german.rules)) {
      for (const answer of [...answersOf(rule, facts, true), ...answersOf(rule, {}, false)]) {
        const finding = { ...answer, subject }
        const said = `${sentence(door, finding, metric)} ${mend(door, finding, metric)} ${ruleName(finding.rule, metric)}`
        expect(said.match(ENGLISH)?.[0], said).toBeUndefined()
      }
    }
  })

  it('has decimals with a comma', () => {
    expect(figure({ value: 1234.56, unit: 'mm' }, metric)).toBe('1234,6 mm')
    expect(tape(3550, metric)).toBe('3,55 m')
  })

  it('has words for every step, formula and note that the demo doors get from the engine, and for what outside values mean', () => {
    const texts = new Set<string>()
    for (const name of readdirSync(DEMO).filter((file) => file.endsWith('.json'))) {
      const parsed = parseDocument(readFileSync(join(DEMO, name), 'utf8'))
      if (!parsed.ok) throw new Error(`${name} must be a door file`)
      for (const { steps, basis, verdict } of judge(toDoor(parsed.document, parsed.catalogue), { depth: 'grid' }).findings) {
        for (const { name, formula } of steps) texts.add(name).add(formula ?? name)
        for (const { source } of verdict === 'not-applicable' ? [] : basis) texts.add(source.note ?? 'what a beam sees')
      }
    }
    for (const { means, source } of OUTSIDE_VALUES) texts.add(means).add(source.note ?? means)
    expect(texts.size).toBeGreaterThan(40)
    const byPeople = /^Demonstration (?:figures: no such (?!sensor exists\. Enter)|body)|^Demonstration figures: no such sensor exists\.$/ // in the demo files
    expect([...texts].filter((text) => german.worked(text) === text && !byPeople.test(text))).toEqual([])
  })

  it('calls by words, and not by its id, what is only remembered and waits for its page', () => {
    const remembered = [...OUTSIDE_VALUES, ...RULES].filter(({ source }) => source.basis === 'from memory').map(({ id }) => id)
    expect(remembered.length).toBeGreaterThan(15)
    for (const { values } of [english, german]) expect(remembered.filter((id) => values[id] === undefined)).toEqual([])
  })

  it('has words for every step that a rule names', () => {
    const rules = join(import.meta.dirname, '../../../engine/src/judge')
    const sources = readdirSync(rules).filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts'))
    const names = sources.flatMap((file) =>
      [...readFileSync(join(rules, file), 'utf8').matchAll(/\bstep\(\s*'([^']+)'/g)].map(([, name = '']) => name),
    )
    expect(names.length).toBeGreaterThan(40)
    expect(names.filter((name) => german.worked(name) === name)).toEqual([])
  })

  it('says what a door file was expected to hold where a figure contradicts another or lies out of its range', () => {
    const said = (expected: string) => german.expected(expected)
    expect(said('a number above 0 up to 1')).toBe('eine Zahl über 0 bis 1')
    expect(said('a number from 0.001 up to 1')).toBe('eine Zahl ab 0,001 bis 1')
    expect(said('a number above xMin_mm (300)')).toBe('eine Zahl über xMin_mm (300)')
    expect(said('at least slowest_m_per_s (1.5)')).toBe('mindestens slowest_m_per_s (1,5)')
    expect(said('an angle from -89 to 89 degrees')).toBe('ein Winkel von -89 bis 89 Grad')
    expect(said('y above 700, as the profile runs along y')).toBe('ein y über 700, denn der Verlauf geht entlang y')
    expect(said('a place in the open')).toBe('ein freier Platz')
    expect(said('what nobody has words for')).toBe('what nobody has words for')
  })

  it('has words for every rule and for every reason why something was judged as it was', () => {
    expect(RULES.flatMap(({ source }) => source.note ?? []).filter((note) => german.worked(note) === note)).toEqual([])
  })
})

function unnamed<T extends { readonly name: string; readonly postures: readonly { readonly name: string }[] }>(body: T): T {
  return { ...body, name: 'K', postures: body.postures.map((posture) => ({ ...posture, name: 'Lage' })) }
}
