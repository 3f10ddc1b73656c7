import { sha256 } from '@sillsight/document'
import { type Proved, type ProvedContact, type ProvedPassage, type ProvedWiring, verifyEvidence } from '@sillsight/verify'
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
  const { proved, passages, contacts, wiring } = result
  const lines = [...proved.map(line), ...passages.map(passageLine), ...contacts.map(contactLine), ...(wiring ? wiringLines(wiring) : [])]
  print(
    safe(
      request.switches.has('json') ? `${JSON.stringify({ proved, passages, contacts, wiring }, undefined, 2)}\n` : `${lines.join('\n')}\n`,
    ),
  )
  return result.proved.every(({ allSeen }) => allSeen) ? exitCodes.pass : exitCodes.undetermined
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

function wiringLines({ faults, effects, notShown }: ProvedWiring): readonly string[] {
  const counted = Object.entries(effects).map(([effect, count]) => `${count} ${effect}`)
  const shownOf = `${faults - notShown.length} of ${faults} single faults do what is claimed`
  return [
    `wiring: ${shownOf} (of all as claimed: ${counted.join(', ')})`,
    ...notShown.map(({ fault, reason }) => `wiring: cannot show ${fault}: ${reason}`),
  ]
}
