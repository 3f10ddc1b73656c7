import {
  type Door,
  type Fault,
  handTestOf,
  partsFrom,
  type SecondFaults,
  type Synthesis,
  scoreOf,
  secondFaults,
  synthesis,
  type Wiring,
} from '@sillsight/engine'
import { connectionsText, secondFaultsText, wrapped } from '@sillsight/report'
import { type Request, wholeNumber } from '../arguments.ts'
import { type ExitCode, exitCodes } from '../exit-codes.ts'
import { judgedOrRefusal } from '../judging.ts'
import { print, tell } from '../output.ts'
import { safe } from '../plain-text.ts'
import { Refusal } from '../problem.ts'
import { isTerminal, lookOf, readerOf } from '../terminal.ts'

/** Bounds of the search; where they bite, the answer says so. */
const MOST_TRIED = 200_000
const MOST_JUDGED = 2000
const MOST_PAIRS = 500_000

export function connectCommand(request: Request): ExitCode {
  const [file = ''] = request.words
  const most = wholeNumber(request, 'most', 1, 20) ?? 3
  const { door, wiring } = wiredDoorOf('connect', file)
  const found = search(wiring, most)
  const given = scoreOf(wiring)
  const second = request.switches.has('second') ? pairs(wiring) : undefined
  if (request.switches.has('json'))
    print(
      safe(
        `${JSON.stringify({ ...withTests(door, found), given: given ? { ...given, byHand: handTestOf(door, wiring, given.hidden) } : null, ...(second && { second }) }, undefined, 2)}\n`,
      ),
    )
  else {
    const look = lookOf(request)
    const reader = readerOf(look)
    const { language } = reader
    const byHand = (each: Wiring, hidden: readonly Fault[]) => handTestOf(door, each, hidden)
    const said = [
      ...connectionsText(found, given && { ...given, wiring }, byHand, reader),
      ...(second ? ['', ...secondFaultsText(second, language)] : []),
    ]
    print(safe(`${said.flatMap((line) => wrapped(line, look.width)).join('\n')}\n`))
  }
  return found.proposals[0]?.score.hiddenAndDangerous === 0 ? exitCodes.pass : exitCodes.undetermined
}

function withTests(door: Door, found: Synthesis) {
  return { ...found, proposals: found.proposals.map((each) => ({ ...each, byHand: handTestOf(door, each.wiring, each.hidden) })) }
}

/** @throws Refusal where the door file does not say how the door is wired */
export function wiringOf(command: string, file: string): Wiring {
  return wiredDoorOf(command, file).wiring
}

function wiredDoorOf(command: string, file: string): { readonly door: Door; readonly wiring: Wiring } {
  const { door } = judgedOrRefusal(file)
  if (door.wiring) return { door, wiring: door.wiring }
  throw new Refusal({
    code: 'no-wiring',
    place: `${command} ${file}`,
    expected: 'a door file with `wiring`',
    got: 'none',
    repair: 'describe sensors, control, supply and cables under `wiring` (docs/door-file.md)',
  })
}

function search(wiring: Wiring, most: number): Synthesis {
  const work = synthesis(partsFrom(wiring), { mostTried: MOST_TRIED, mostJudged: MOST_JUDGED, most })
  return worked(work, ({ tried, judged }) => `${tried} ways tried, ${judged} judged`)
}

/** Second faults on top of those of the wiring as it is that nobody notices. */
function pairs(wiring: Wiring): SecondFaults {
  return worked(secondFaults(wiring, MOST_PAIRS), ({ judged, left }) => `${judged} pairs of faults judged, ${left} to go`)
}

/** Runs to the end; on a terminal it says how far it is. */
function worked<Far, Result>(work: Generator<Far, Result>, far: (far: Far) => string): Result {
  const onTerminal = isTerminal(2)
  let told_ms = performance.now()
  let step = work.next()
  while (!step.done) {
    if (onTerminal && performance.now() - told_ms > 150) {
      told_ms = performance.now()
      tell(`\r${far(step.value)}\u001b[K`)
    }
    step = work.next()
  }
  if (onTerminal) tell('\r\u001b[K')
  return step.value
}
