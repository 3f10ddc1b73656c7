import { describe, expect, it } from 'vitest'
import { diceOf } from './random-numbers.ts'
import { type Changeable, demoText, verifiedWiring, wiringEvidenceOf } from './wired-door-files.ts'

const TEXTS = { 'box-hatch': demoText('box-hatch'), 'freezer-door': demoText('freezer-door') }
const TRUE = {
  'box-hatch': wiringEvidenceOf(TEXTS['box-hatch'], { isJudged: true }),
  'freezer-door': wiringEvidenceOf(TEXTS['freezer-door'], { isJudged: true }),
}
type Name = keyof typeof TEXTS
type Fault = Changeable['faults'][number]

/** What the verifier says first against evidence of a door after a change to it. */
function refusal(name: Name, change: (wiring: Changeable) => void): string {
  const wiring = structuredClone(TRUE[name])
  change(wiring)
  const result = verifiedWiring(TEXTS[name], wiring)
  return result.ok ? 'accepted' : `${result.issues[0]?.code} ${result.issues[0]?.path.replaceAll(/\d+/g, 'N')}`
}

function first(wiring: Changeable, is: (each: Fault) => boolean): Fault {
  const found = wiring.faults.find((each) => is(each) && !isChasing(each))
  if (found === undefined) throw new Error('evidence must have such a fault')
  return found
}
const isChasing = ({ says }: Fault) => says.flat().some((said) => said.startsWith('~'))
function firstChasing({ faults }: Changeable): Fault {
  const found = faults.find((each) => isChasing(each) && each.says.flat().some((said) => said.includes('w') && said.includes('e')))
  if (found === undefined) throw new Error('evidence must have a fault whose states chase each other')
  return found
}
/** Changes what is said where states chase each other, in one fault. */
function chasing(wiring: Changeable, change: (said: string) => string): void {
  const found = firstChasing(wiring)
  found.says = found.says.map((all) => all.map((said) => (said.startsWith('~') ? change(said) : said)))
}
const isOpenCore = ({ fault }: Fault) => fault.kind === 'core-open'
const isNuisance = ({ effect }: Fault) => effect === 'keeps-from-closing'
const isHidden = ({ effect }: Fault) => effect === 'hidden-and-dangerous'

const CORRUPTIONS: Readonly<Record<string, readonly [expected: string, name: Name, change: (wiring: Changeable) => void]>> = {
  'a fault left out': ['missing wiring/faults', 'box-hatch', ({ faults }) => faults.splice(7, 1)],
  'a fault doubled': ['unknown-fault wiring/faults/N/fault', 'box-hatch', ({ faults }) => faults.push(faults[3] as Fault)],
  'one fault in place of another': [
    'unknown-fault wiring/faults/N/fault',
    'box-hatch',
    ({ faults }) => faults.splice(7, 1, faults[8] as Fault),
  ],
  'a supply that is less low': [
    'unknown-fault wiring/faults/N/fault',
    'box-hatch',
    ({ faults }) => {
      for (const { fault } of faults) if (fault.kind === 'supply-low') fault.volt += 1
    },
  ],
  'a state changed': [
    'does-not-follow wiring/faults/N/says',
    'box-hatch',
    (wiring) => edited(first(wiring, isOpenCore), (said) => `s${said.slice(1)}`),
  ],
  'a band misread': [
    'does-not-follow wiring/faults/N/says',
    'box-hatch',
    (wiring) => edited(first(wiring, isNuisance), (said) => said.replace(/.$/, (last) => (last === 'c' ? 's' : 'c'))),
  ],
  'states said to chase each other that settle': [
    'does-not-follow wiring/faults/N/says',
    'box-hatch',
    (wiring) => edited(first(wiring, isNuisance), (said) => said.replace(/^(.)(.)/, '~$1u,$2')),
  ],
  'states said to settle that chase each other': [
    'does-not-follow wiring/faults/N/says',
    'box-hatch',
    (wiring) => chasing(wiring, () => 'cc:cc'),
  ],
  'states said to be too many to follow': ['does-not-follow wiring/faults/N/says', 'box-hatch', (wiring) => chasing(wiring, () => '~:ee')],
  'a state that a sensor goes through left out': [
    'does-not-follow wiring/faults/N/says',
    'box-hatch',
    (wiring) => chasing(wiring, (said) => said.replace('w', '')),
  ],
  'a state that no sensor goes through': [
    'does-not-follow wiring/faults/N/says',
    'box-hatch',
    (wiring) => chasing(wiring, (said) => said.replace(',', 'f,')),
  ],
  'a belief that holds in one of the states alone': [
    'does-not-follow wiring/faults/N/says',
    'box-hatch',
    (wiring) => chasing(wiring, (said) => said.replace('e', 's')),
  ],
  'voltages of one of the states left out': [
    'missing wiring/faults/N/solutions',
    'box-hatch',
    (wiring) => firstChasing(wiring).solutions.pop(),
  ],
  'voltages of one of the states moved': [
    'kirchhoff wiring/faults/N/solutions',
    'box-hatch',
    (wiring) => {
      const at = firstChasing(wiring).solutions.at(-1) ?? -1
      const volts = wiring.solutions[at]?.drawn ?? []
      for (const i of volts.keys()) if (i % 2 === 0) volts[i] = (volts[i] ?? 0) + 0.5
    },
  ],
  'an effect bettered of states that chase each other': [
    'does-not-follow wiring/faults/N/effect',
    'box-hatch',
    (wiring) => Object.assign(firstChasing(wiring), { effect: 'no-effect', isHidden: false, sensors: [] }),
  ],
  'a situation left out': ['does-not-follow wiring/faults/N/says', 'box-hatch', (wiring) => first(wiring, isOpenCore).says[0]?.pop()],
  'a supply left out': ['does-not-follow wiring/faults/N/says', 'box-hatch', (wiring) => first(wiring, isOpenCore).says.pop()],
  'a hidden danger bettered': [
    'does-not-follow wiring/faults/N/effect',
    'freezer-door',
    (wiring) => {
      first(wiring, isHidden).effect = 'keeps-from-closing'
    },
  ],
  'a danger that is said to be found': [
    'does-not-follow wiring/faults/N/effect',
    'freezer-door',
    (wiring) => Object.assign(first(wiring, isHidden), { effect: 'found-by-test', within_s: 900, isHidden: false }),
  ],
  'a danger laid at another sensor': [
    'does-not-follow wiring/faults/N/sensors',
    'box-hatch',
    (wiring) => {
      const found = first(wiring, ({ sensors }) => sensors[0] === 'grid')
      found.sensors = ['grid-belt']
    },
  ],
  'a test that comes sooner': [
    'does-not-follow wiring/faults/N/within_s',
    'box-hatch',
    (wiring) => {
      first(wiring, ({ effect }) => effect === 'found-by-test').within_s = 1
    },
  ],
  'a hidden fault said to be seen': [
    'does-not-follow wiring/faults/N/isHidden',
    'box-hatch',
    (wiring) => {
      first(wiring, ({ effect, isHidden: hidden }) => effect === 'no-effect' && hidden).isHidden = false
    },
  ],
  'a count of the finding': [
    'does-not-follow wiring/findings/N/hidden',
    'freezer-door',
    ({ findings }) => Object.assign(findings[0] ?? {}, { hidden: 6 }),
  ],
  'a finding doubled': ['duplicate wiring/findings/N', 'freezer-door', ({ findings }) => findings.push(...findings)],
  'voltages left out': ['missing wiring/faults/N/solutions', 'box-hatch', (wiring) => first(wiring, isOpenCore).solutions.pop()],
  'voltages of another fault in the same setting': [
    'kirchhoff wiring/faults/N/solutions',
    'box-hatch',
    (wiring) => {
      const settingOf = (at: number) => `${wiring.solutions[at]?.closed} ${wiring.solutions[at]?.drawing}`
      const [one, other] = wiring.faults.filter(isOpenCore)
      for (const [k, at] of (one?.solutions ?? []).entries()) {
        const twin = other?.solutions.find((each) => settingOf(each) === settingOf(at))
        if (one && twin !== undefined) one.solutions[k] = twin
      }
    },
  ],
  'a setting in which another switch is closed': [
    'kirchhoff wiring/faults/N/solutions',
    'box-hatch',
    ({ solutions }) => {
      for (const each of solutions) each.closed = (each.closed.startsWith('1') ? '0' : '1') + each.closed.slice(1)
    },
  ],
  'a setting in which nothing draws': [
    'duplicate wiring/faults/N/solutions',
    'box-hatch',
    ({ solutions }) => {
      for (const each of solutions) each.drawing = '00'
    },
  ],
  'a sensor that draws nothing': [
    'kirchhoff wiring/faults/N/solutions',
    'box-hatch',
    ({ solutions }) => {
      for (const each of solutions) each.drawn.fill(0)
    },
  ],
  'a terminal left out': ['too-few wiring/terminals', 'box-hatch', ({ terminals }) => terminals.pop()],
  'two terminals in each other’s place': ['kirchhoff wiring/faults/N/solutions', 'box-hatch', ({ terminals }) => terminals.reverse()],
}

function edited(claim: Fault, change: (said: string) => string): void {
  claim.says = claim.says.map((all, i) => all.map((said, k) => (i === 0 && k === 0 ? change(said) : said)))
}

describe('corrupted evidence of a wiring', () => {
  it.each(Object.entries(CORRUPTIONS))('is refused for %s', (_what, [expected, name, change]) => {
    expect(refusal(name, change)).toBe(expected)
  })

  it('is refused for a voltage moved by 0.5 V, wherever it counts (60 of them, seed 5)', () => {
    const dice = diceOf(5)
    const { faults, terminals } = TRUE['freezer-door']
    const settles = faults.filter((each) => !isChasing(each))
    for (let n = 0; n < 60; n++) {
      const at = dice.pick(dice.pick(settles).solutions)
      // alone in its part earthed metal may have any voltage
      const terminal = terminals.indexOf(dice.pick(terminals.filter((each) => each !== '(earth)')))
      const column = dice.pick(['unit', 'drawn'] as const)
      const told = refusal('freezer-door', ({ solutions }) => {
        const volts = solutions[at]?.[column] ?? []
        volts[terminal] = (volts[terminal] ?? 0) + (column === 'unit' ? 0.5 / 24 : 0.5)
      })
      expect(told, `${column} of ${terminals[terminal]} in solution ${at}`).toMatch(/kirchhoff|does-not-follow|accepted/)
      if (told === 'accepted') expect(isAlone(at, terminal), `${terminals[terminal]} in solution ${at}`).toBe(true)
    }
  })

  it.each([
    ['thinner cores', '"area_mm2": 0.5', '"area_mm2": 0.75', /kirchhoff/],
    ['another threshold of the test input', '"off_V": 6', '"off_V": -6', /says|missing/],
    ['another range of the input', '"to_V": 5', '"to_V": -5', /says/],
    ['a supply that gives more', '"largest_V": 26.5', '"largest_V": 36.5', /says|missing/],
    ['a test less often', '"every_s": 600', '"every_s": 900', /within_s/],
    ['a name that nobody knows', '"closedWhile"', '"closedUntil": 3, "closedWhile"', /closedUntil/],
  ])('is refused for a door with %s', (_what, before, after, expected) => {
    const text = TEXTS['box-hatch'].replaceAll(before, after)
    expect(text).not.toBe(TEXTS['box-hatch'])
    const result = verifiedWiring(text, TRUE['box-hatch'])
    expect(result.ok ? 'accepted' : `${result.issues[0]?.code} ${result.issues[0]?.path}`).toMatch(expected)
  })

  it('ends in a refusal, never in an error, whatever stands in it', () => {
    const junk = [null, 7, [], {}, '', { ...TRUE['freezer-door'], faults: [null] }, { ...TRUE['freezer-door'], solutions: [{}] }]
    for (const each of junk) expect(verifiedWiring(TEXTS['freezer-door'], each).ok).toBe(false)
  })
})

/** Whether no fault that uses these voltages leaves anything joined to the terminal. */
function isAlone(at: number, terminal: number): boolean {
  const { faults, terminals } = TRUE['freezer-door']
  const users = faults.filter(({ solutions }) => solutions.includes(at)).map(({ fault }) => fault)
  const cores = ['over-leaf.1', 'over-leaf.2'].map((end) => terminals.indexOf(end))
  return cores.includes(terminal) && users.every(({ kind }) => kind === 'core-open' || kind === 'cable-off')
}
