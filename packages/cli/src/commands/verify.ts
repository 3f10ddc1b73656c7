import { sha256 } from '@sillsight/document'
import {
  type Proved,
  type ProvedContact,
  type ProvedPassage,
  type ProvedWiring,
  type Silence,
  type VerifyResult,
  verifyEvidence,
} from '@sillsight/verify'
import type { Request } from '../arguments.ts'
import { type ExitCode, exitCodes } from '../exit-codes.ts'
import { print } from '../output.ts'
import { safe } from '../plain-text.ts'
import { Refusal, shown } from '../problem.ts'
import { readBeside, readBytes, readText } from '../reading.ts'

const largestEvidence = 32 * 1024 * 1024

/** Re-checks evidence against its door file with the verifier, which shares no code with what wrote it. */
export function verifyCommand(request: Request): ExitCode {
  const [doorFile = '', evidenceFile = ''] = request.words
  const doorText = readText(doorFile)
  const evidenceText = evidenceOf(evidenceFile)
  const result = verifyEvidence({ doorText, evidenceText, sha256, readLibrary: (reference) => readBeside(doorFile, reference) })
  if (!result.ok)
    throw new Refusal(
      ...result.issues.map(({ code, path, expected, got }) => ({
        code,
        place: `${evidenceFile}: ${path}`,
        expected,
        got,
        repair: 'the evidence does not hold; write it anew from this door file with `sillsight evidence`',
      })),
    )
  const { ok: _, ...shownHere } = result
  const text = request.switches.has('json') ? JSON.stringify(shownHere, undefined, 2) : linesOf(result).join('\n')
  print(safe(`${text}\n`))
  return codeOf(result)
}

type Held = Extract<VerifyResult, { ok: true }>

/** Every part counts: what speaks against the door before what is not shown. */
function codeOf({ proved, contacts, wiring, notShown, silent }: Held): ExitCode {
  if (contacts.length > 0 || (wiring && wiring.effects['hidden-and-dangerous'] > 0)) return exitCodes.fail
  return proved.every(({ allSeen }) => allSeen) && notShown.length === 0 && silent.length === 0 ? exitCodes.pass : exitCodes.undetermined
}

function linesOf({ proved, passages, contacts, wiring, notShown, silent }: Held): readonly string[] {
  return [
    ...proved.map(line),
    ...passages.map(passageLine),
    ...contacts.map(contactLine),
    ...(wiring ? [wiringLine(wiring)] : []),
    ...notShown.map(({ path, expected, got }) => `cannot show ${path}: expected ${expected}, got ${got}`),
    ...silent.map(silentLine),
  ]
}

function evidenceOf(file: string): string {
  const bytes = readBytes(file, largestEvidence)
  if (bytes[0] !== 0x1f || bytes[1] !== 0x8b) return bytes.toString('utf8')
  try {
    return process.getBuiltinModule('node:zlib').gunzipSync(bytes, { maxOutputLength: largestEvidence }).toString('utf8')
  } catch (problem) {
    const got = problem instanceof Error ? shown(problem.message) : 'something else'
    throw new Refusal({
      code: 'not-gzip',
      place: file,
      expected: `compressed evidence of at most ${largestEvidence} bytes`,
      got,
      repair: 'write it anew',
    })
  }
}

function line({ zone, state, tolerances, allSeen, open_mm2, largestOpen_mm, leaves, worstCases }: Proved): string {
  const when = tolerances ? 'over all tolerances' : 'as written'
  const shownHere = allSeen
    ? 'every body is seen wherever it has room'
    : `open ${(open_mm2 / 1e6).toFixed(4)} m2, at most ${Math.ceil(largestOpen_mm)} mm across`
  const blind = worstCases.length > 0 ? `; ${worstCases.length} placements shown to be blind` : ''
  return `${zone}, ${state}, ${when}: ${shownHere}${blind} (${leaves.seen} tiles seen, ${leaves.notFree} not free, ${leaves.open} open)`
}

function passageLine({ lane, state, ways }: ProvedPassage): string {
  return `lane ${lane}, ${state}: the closing leaf strikes nobody (${ways} ways past it)`
}

function contactLine({ lane, state, body, relative_mm_per_s }: ProvedContact): string {
  return `lane ${lane}, ${state}: ${body} is struck, in one case at ${(relative_mm_per_s / 1000).toFixed(2)} m/s`
}

function wiringLine({ faults, effects }: ProvedWiring): string {
  const counted = Object.entries(effects).map(([effect, count]) => `${count} ${effect}`)
  return `wiring: all ${faults} single faults do what is claimed (${counted.join(', ')})`
}

function silentLine(silence: Silence): string {
  if (silence.kind === 'wiring') return 'wiring: nothing is claimed'
  if (silence.kind === 'lane') return `lane ${silence.lane}, ${silence.state}: nothing is claimed`
  return `${silence.zone}, ${silence.state}, ${silence.tolerances ? 'over all tolerances' : 'as written'}: nothing is claimed`
}
