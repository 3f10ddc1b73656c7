import { describe, expect, it } from 'vitest'
import { plainTwoRelayParts } from '../../cases/plain-two-relay-parts.ts'
import { twoRelayDoor } from '../../cases/two-relay-door.ts'
import { meaningOfVolt } from './connecting.ts'
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
