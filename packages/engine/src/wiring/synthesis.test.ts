import { describe, expect, it } from 'vitest'
import { plainTwoRelayParts } from '../../cases/plain-two-relay-parts.ts'
import { twoRelayDoor } from '../../cases/two-relay-door.ts'
import type { ControlInput, Wiring } from '../model/wiring.ts'
import { meaningOfVolt, partsFrom } from './connecting.ts'
import { comparedScores, type Proposal, type Synthesis, scoreOf, synthesis } from './synthesis.ts'

function all(parts: Parameters<typeof synthesis>[0], bounds: Partial<Parameters<typeof synthesis>[1]> = {}): Synthesis {
  const search = synthesis(parts, { mostTried: 1e6, mostJudged: 1e5, most: 4, ...bounds })
  let step = search.next()
  while (!step.done) step = search.next()
  return step.value
}

function bestOf(found: Synthesis): Proposal & { readonly presence: readonly string[]; readonly opening: readonly string[] } {
  const [best] = found.proposals
  const [choice] = best?.choices ?? []
  if (!best || !choice) throw new Error('nothing found')
  return { ...best, presence: choice.presence[0]?.closedIn ?? [], opening: choice.opening?.closedIn ?? [] }
}

const tested = all(plainTwoRelayParts())
const untested = all(plainTwoRelayParts({ isTested: false }))

describe('a plain sensor with two relays (common practice, no source)', () => {
  for (const [name, found] of [['with', tested] as const, ['without', untested] as const]) {
    const { wiring, presence, opening } = bestOf(found)
    it(`has its presence contact closed when clear, open on detection and without power, ${name} a test output`, () => {
      expect(presence).toEqual(['clear'])
      const stop = wiring.control.inputs.find(({ acts }) => acts === 'stop')
      expect([stop && meaningOfVolt(stop, 24), stop && meaningOfVolt(stop, 0)]).toEqual(['clear', 'seen'])
    })
    it(`has its opening contact closed on detection alone, ${name} a test output`, () => {
      expect(opening).toEqual(['seen'])
    })
  }
  it('has its test line on the test output, and then nothing dangerous is hidden', () => {
    const best = bestOf(tested)
    expect(best.choices[0]?.testTie).toBe('test-output')
    expect(best.wiring.control.test).toBeDefined()
    expect(best.hidden).toEqual([])
  })
  it('has its test line tied to the supply where the control has no test, and what stays hidden is named', () => {
    const best = bestOf(untested)
    expect(best.choices[0]?.testTie).toBe('plus')
    expect(best.hidden).toContainEqual({ kind: 'sensor-stuck', sensor: 'scanner', in: 'clear' })
    expect(best.hidden).toContainEqual(expect.objectContaining({ kind: 'switch-stuck', at: 'closed' }))
  })
})

describe('a search for connections', () => {
  it('leaves nothing out without a bound, and says how many ways a bound left out', () => {
    const whole = untested
    expect(whole.left).toBe(0)
    const bounded = all(plainTwoRelayParts({ isTested: false }), { mostTried: 100 })
    expect([bounded.tried, bounded.left]).toEqual([100, whole.tried - 100])
    expect(all(plainTwoRelayParts({ isTested: false }), { mostJudged: 3 })).toMatchObject({ judged: 3 })
  })
  it('ranks as the whole search does when it gives up early on what cannot be better', () => {
    const few = all(plainTwoRelayParts({ isTested: false }), { most: 1 })
    const many = all(plainTwoRelayParts({ isTested: false }), { most: 1000 })
    expect(few.proposals[0]?.score).toEqual(many.proposals[0]?.score)
    for (const [i, { score, wiring }] of many.proposals.entries()) {
      expect(scoreOf(wiring)?.score).toEqual(score)
      const next = many.proposals[i + 1]
      if (next) expect(comparedScores(score, next.score)).toBeLessThanOrEqual(0)
    }
  })
  it('finds no less than a wiring that somebody drew: the usual one of seven cores scores no better than the best', () => {
    const [best] = tested.proposals
    const drawn = scoreOf(twoRelayDoor())
    if (!best || !drawn) throw new Error('nothing to compare')
    expect(comparedScores(best.score, drawn.score)).toBeLessThanOrEqual(0)
  })
  it('would let a break open the door for one hidden short less, where the control lets its opening input be turned', () => {
    const parts = { isTested: false, mayTurn: ['stop', 'open'] } as const
    const [turned, usual] = [bestOf(all(plainTwoRelayParts(parts))), bestOf(untested)]
    expect(turned.opening).toContain('clear')
    expect(turned.score.hiddenAndDangerous).toBe(usual.score.hiddenAndDangerous - 1)
    expect(turned.score.opensUnasked).toBeGreaterThan(usual.score.opensUnasked)
  })
  it('connects alike sensors alike, each on an input of its own or all on one', () => {
    const [best] = all(plainTwoRelayParts({ sensors: 2 }), { mostJudged: 60 }).proposals
    expect(best?.choices.map(({ testTie, presenceFeed }) => [testTie, presenceFeed])).toEqual([
      [best?.choices[0]?.testTie, best?.choices[0]?.presenceFeed],
      [best?.choices[0]?.testTie, best?.choices[0]?.presenceFeed],
    ])
  })
})

describe('parts of a door file that can be set either way', () => {
  /** The usual door, whose stop input says "clear" where it should say "seen", and the other way round. */
  function wrong({ turns }: { readonly turns: boolean }): Wiring {
    const door = twoRelayDoor({ presence: ['seen'] })
    const inputs = door.control.inputs.map((input) => ({ ...input, turns: turns && input.acts === 'stop' }))
    const outputs = door.sensors.map((sensor) => ({
      ...sensor,
      outputs: sensor.outputs.map((each) => ({ ...each, turns: turns && each.acts === 'presence' })),
    }))
    return { ...door, sensors: outputs, control: { ...door.control, inputs } }
  }
  it('are tried in every way, as they are set first, and what has to be turned is named', () => {
    const { sensors, inputs } = partsFrom(wrong({ turns: true }))
    const presence = sensors[0]?.map(({ outputs }) => outputs.find(({ acts }) => acts === 'presence')?.closedIn)
    expect(presence).toEqual([['seen'], ['clear']])
    expect(inputs.map((settings) => settings.length)).toEqual([2, 1])
    const [best] = all(partsFrom(wrong({ turns: true }))).proposals
    const [stuck] = all(partsFrom(wrong({ turns: false }))).proposals
    expect(best?.turned).toEqual(['scanner/presence', 'stop'])
    expect(best?.score.hiddenAndDangerous).toBe(0)
    expect(stuck?.turned).toEqual([])
    expect(stuck?.score.hiddenAndDangerous).toBeGreaterThan(0)
  })
  it('keep their other states and their faults: only "clear" and "seen" change places', () => {
    const door = wrong({ turns: true })
    const [sensor] = door.sensors
    const [input] = door.control.inputs
    if (!sensor || !input) throw new Error('the case has no parts')
    const outputs = sensor.outputs.map((each) => ({ ...each, closedIn: ['seen', 'fault', 'unpowered'] as const }))
    const bands = [...input.bands, { from_V: 6, to_V: 8, means: 'fault' as const }]
    const { sensors, inputs } = partsFrom({
      ...door,
      sensors: [{ ...sensor, outputs }],
      control: { ...door.control, inputs: [{ ...input, bands }] },
    })
    expect(sensors[0]?.[1]?.outputs[0]?.closedIn).toEqual(['clear', 'fault', 'unpowered'])
    expect(inputs[0]?.[1]?.bands.map(({ means }) => means)).toEqual([
      ...input.bands.map(({ means }) => (means === 'clear' ? 'seen' : 'clear')),
      'fault',
    ])
  })
})

describe('a line whose input wants a resistor at its end', () => {
  /** Fed by the control through 2200 ohm: 8200 ohm leave 18.2 to 19.0 V, a short 0 V, a break 23.0 to 24.0 V (worked by hand, 100 kilohm beside the line). */
  function monitored(change: Partial<ControlInput> = {}, sensors = 1): Wiring {
    const door = twoRelayDoor({ isTested: false, sensors })
    const inputs = door.control.inputs.flatMap((input): readonly ControlInput[] => {
      if (input.acts !== 'stop') return [input]
      if (input.plus !== 'control.stop') return []
      const bands = [
        { from_V: -50, to_V: 2, means: 'fault' },
        { from_V: 17.5, to_V: 19.6, means: 'clear' },
        { from_V: 22, to_V: 50, means: 'seen' },
      ] as const
      const fedFrom = { terminal: 'control.24V', ohm: 2200 }
      return [{ ...input, ohm: 100_000, fedFrom, bands, endOfLine_ohm: 8200, ...change }]
    })
    return { ...door, supply: { ...door.supply, least_V: 23.5, largest_V: 24.5 }, control: { ...door.control, inputs } }
  }
  /** Cores between the resistor and the input, and what of them stays hidden. */
  const hiddenOn = ({ wiring, hidden }: Proposal, ends: readonly string[]) => {
    const cores = wiring.cables.flatMap((cable) => cable.cores.filter(({ from, to }) => ends.some((end) => from === end || to === end)))
    return hidden.filter((fault) => cores.some(({ id }) => JSON.stringify(fault).includes(`"${id}"`)))
  }
  it('gets it in series behind a contact that is closed when clear, and then nothing that its core touches hides anybody', () => {
    const [best] = all(partsFrom(monitored())).proposals
    if (!best) throw new Error('nothing found')
    const [resistor, ...others] = best.wiring.resistors
    expect(others).toEqual([])
    expect(resistor).toMatchObject({ from: expect.stringContaining('scanner.'), to: 'scanner.end1', ohm: 8200 })
    expect(hiddenOn(best, ['scanner.end1'])).toEqual([])
    const [plain] = all(partsFrom(twoRelayDoor({ isTested: false }))).proposals
    expect(plain && hiddenOn(plain, ['control.stop']).length).toBeGreaterThan(0)
  })
  it('gets it across a contact that is open when clear, where a short says that somebody is there', () => {
    const bands = [
      { from_V: -50, to_V: 2, means: 'seen' },
      { from_V: 17.5, to_V: 19.6, means: 'clear' },
      { from_V: 22, to_V: 50, means: 'fault' },
    ] as const
    const door = monitored({ bands })
    const sensors = door.sensors.map((sensor) => ({
      ...sensor,
      outputs: sensor.outputs.map((each) =>
        each.acts === 'presence' ? { ...each, closedIn: ['seen', 'unpowered', 'warming-up', 'fault'] as const } : each,
      ),
    }))
    const [best] = all(partsFrom({ ...door, sensors })).proposals
    const contact = best?.choices[0]?.presence[0]
    expect(best?.wiring.resistors).toMatchObject([{ from: contact?.from, to: contact?.to }])
    expect(best?.hidden.filter(({ kind }) => kind === 'core-open' || kind === 'cable-off')).toEqual([])
  })
  it('of several sensors has one, at the farthest, which does not tell what bridges a nearer contact', () => {
    const [best] = all(partsFrom(monitored({}, 2)), { mostJudged: 60 }).proposals
    if (!best) throw new Error('nothing found')
    expect(best.wiring.resistors).toMatchObject([{ to: 'scanner1.end1' }])
    const touching = best.hidden.filter(({ kind }) => kind === 'cores-shorted' || kind === 'core-to-rail')
    expect(touching.some((fault) => JSON.stringify(fault).includes('scanner2'))).toBe(true)
    const first = best.wiring.cables.flatMap(({ cores }) =>
      cores.flatMap(({ id, from, to }) => ([from, to].includes('scanner1.end1') ? [`"${id}"`] : [])),
    )
    expect(touching.filter((fault) => first.some((core) => JSON.stringify(fault).includes(core)))).toEqual([])
  })
  it('cannot be connected without it', () => {
    expect(all(partsFrom(monitored({ endOfLine_ohm: undefined }))).proposals).toEqual([])
  })
})
