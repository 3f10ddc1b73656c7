import type { ControlInput, Wiring } from '../model/wiring.ts'
import { connected, coresIn, type Parts, type SensorChoice, saysRight } from './connecting.ts'
import { beliefsOf, effectIn, effectJudge } from './fault-effects.ts'
import { type Fault, singleFaults } from './faults.ts'
import { settle, type WiringNetwork, wiringNetwork, withFaults } from './network.ts'
import { waysToConnect } from './ways.ts'

/**
 * What a wiring is ranked by, the first that differs deciding; fewer is better in each. All but the cores count ways to fail: a core that touches others
 * fails in one way, whatever it touches, or the pairs of one cable would outweigh everything that breaks; and the supply sags in one way.
 */
export interface WiringScore {
  readonly hiddenAndDangerous: number
  /** Dangerous until a test finds them. */
  readonly foundByTest: number
  /** They keep the door from closing, or stop it. */
  readonly nuisance: number
  /** With nobody there the control is told to open. */
  readonly opensUnasked: number
  readonly cores: number
}

export interface Proposal {
  readonly wiring: Wiring
  readonly choices: readonly SensorChoice[]
  /** What is to be set otherwise than it is: outputs as `sensor/output`, inputs by their ids. */
  readonly turned: readonly string[]
  readonly score: WiringScore
  /** Nothing but a test by hand finds these: the time between two such tests is how long they may last. */
  readonly hidden: readonly Fault[]
}

export interface Synthesis {
  /** Best first; empty where no way to connect the parts works. */
  readonly proposals: readonly Proposal[]
  /** Ways to connect that were thought through, and those of them whose faults were judged. */
  readonly tried: number
  readonly judged: number
  /** Ways that the bounds left out: a better one may be among them. */
  readonly left: number
}

export interface SynthesisBounds {
  readonly mostTried: number
  readonly mostJudged: number
  /** How many proposals are wanted. */
  readonly most: number
}

/**
 * The ways to connect sensors to a control, best first: every setting, either side of each contact, contacts in series or side by side on one input or
 * on one for each sensor, every feed and every place for the test line. Sensors that are alike are connected alike, and inputs that are alike set alike.
 * It pauses after each way that it judges.
 */
export function* synthesis(parts: Parts, bounds: SynthesisBounds): Generator<Pick<Synthesis, 'tried' | 'judged'>, Synthesis> {
  const all = waysToConnect(parts)
  let proposals: readonly Proposal[] = []
  let [tried, judged] = [0, 0]
  for (; tried < Math.min(all.count, bounds.mostTried) && judged < bounds.mostJudged; tried++) {
    const { choices, lines, test } = all.at(tried)
    if (!lines.every((line) => saysRight(line, parts.supply))) continue
    const wiring = connected(parts, test, choices, lines)
    if (wiring === undefined) continue
    const worst = proposals.length < bounds.most ? undefined : proposals[proposals.length - 1]?.score
    const scored = scoreWithin(wiring, worst)
    judged++
    if (scored !== undefined) {
      const better = [...proposals, { wiring, choices, turned: turnedIn(wiring, parts), ...scored }]
      proposals = better.sort((a, b) => comparedScores(a.score, b.score)).slice(0, bounds.most)
    }
    yield { tried, judged }
  }
  return { proposals, tried, judged, left: all.count - tried }
}

function turnedIn({ sensors, control }: Wiring, parts: Parts): readonly string[] {
  const outputs = sensors.flatMap(({ id, outputs }, i) =>
    outputs.flatMap(({ output, closedIn }, k) =>
      closedIn.join() === parts.sensors[i]?.[0]?.outputs[k]?.closedIn.join() ? [] : [`${id}/${output}`],
    ),
  )
  const meant = ({ bands }: ControlInput) => bands.map(({ means }) => means).join()
  const inputs = control.inputs.flatMap((input, i) => {
    const [plain] = parts.inputs[i] ?? []
    return plain === undefined || meant(plain) === meant(input) ? [] : [input.id]
  })
  return [...new Set(outputs), ...inputs]
}

/** Less than 0 where the first is better. */
export function comparedScores(a: WiringScore, b: WiringScore): number {
  return (
    a.hiddenAndDangerous - b.hiddenAndDangerous ||
    a.foundByTest - b.foundByTest ||
    a.nuisance - b.nuisance ||
    a.opensUnasked - b.opensUnasked ||
    a.cores - b.cores
  )
}

/** The score of a wiring as it is, to compare it with the best; undefined where it does not work even without a fault. */
export function scoreOf(wiring: Wiring): { readonly score: WiringScore; readonly hidden: readonly Fault[] } | undefined {
  return scoreWithin(wiring, undefined)
}

/** @param worst beyond which nobody asks: undefined is answered as soon as the score is known to be no better */
function scoreWithin(wiring: Wiring, worst: WiringScore | undefined): ReturnType<typeof scoreOf> {
  const network = wiringNetwork(wiring)
  if (effectIn(network, []).effect !== 'no-effect') return undefined
  const judge = effectJudge(network)
  const ways = { hiddenAndDangerous: new Set<string>(), foundByTest: new Set<string>(), nuisance: new Set<string>() }
  const unasked = new Set<string>()
  const hidden: Fault[] = []
  for (const fault of singleFaults(wiring)) {
    const { effect } = judge(fault)
    const add = (to: Set<string>) => {
      for (const way of waysOf(fault)) to.add(way)
    }
    if (effect === 'hidden-and-dangerous') {
      hidden.push(fault)
      add(ways.hiddenAndDangerous)
    } else if (effect === 'found-by-test') add(ways.foundByTest)
    else if (effect === 'keeps-from-closing' || effect === 'stops-the-door') {
      add(ways.nuisance)
      if (opensUnasked(network, fault)) add(unasked)
    }
    if (worst && ways.hiddenAndDangerous.size > worst.hiddenAndDangerous) return undefined
  }
  const score = {
    hiddenAndDangerous: ways.hiddenAndDangerous.size,
    foundByTest: ways.foundByTest.size,
    nuisance: ways.nuisance.size,
    opensUnasked: unasked.size,
    cores: coresIn(wiring),
  }
  return worst && comparedScores(score, worst) >= 0 ? undefined : { score, hidden }
}

function waysOf(fault: Fault): readonly string[] {
  if (fault.kind === 'cores-shorted') return fault.cores.map((core) => `${core} touches`)
  if (fault.kind === 'core-to-rail') return [`${fault.core} touches`]
  return [fault.kind === 'supply-low' ? fault.kind : JSON.stringify(fault)]
}

function opensUnasked(network: WiringNetwork, fault: Fault): boolean {
  const { supply, control } = network.wiring
  const faulty = withFaults(network, [fault])
  const said = beliefsOf(faulty, settle(faulty, { seenBy: new Set(), asking: false, supply_V: supply.least_V }))
  return control.inputs.some(({ acts }, i) => acts === 'open' && said[i] === 'seen')
}
