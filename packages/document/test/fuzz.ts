import { judge } from '@sillsight/engine'
import { parseDocument, serialise, toDoor } from '../src/index.ts'
import { mutatedFile } from './mutations.ts'

export interface FuzzResult {
  readonly read: number
  readonly refused: number
  /** Slowest file, in seconds of processor time, so that a busy machine does not count. */
  readonly slowest_s: number
  readonly slowestSeed: number
  readonly problems: readonly string[]
}

/** A file that takes longer is tried again and counts with its fastest run: what else the machine does is not the file's. */
const SLOW_S = 1.5

/** Runs mutated files through parser, door, judge and writer; a problem is whatever throws, crashes a rule or does not come back the same. */
export function fuzz(firstSeed: number, count: number): FuzzResult {
  let read = 0
  let slowest_s = 0
  let slowestSeed = firstSeed
  const problems: string[] = []
  for (let seed = firstSeed; seed < firstSeed + count; seed++) {
    const text = mutatedFile(seed)
    const before = process.cpuUsage()
    try {
      const found = tried(text)
      if (found !== undefined) read++
      problems.push(...(found ?? []).map((problem) => `seed ${seed}: ${problem}`))
    } catch (problem) {
      problems.push(`seed ${seed}: ${problem instanceof Error ? problem.stack : String(problem)}`)
    }
    let took_s = secondsSince(before)
    for (let again = 0; again < 3 && took_s > SLOW_S; again++) took_s = Math.min(took_s, timed(text))
    if (took_s > slowest_s) {
      slowest_s = took_s
      slowestSeed = seed
    }
  }
  return { read, refused: count - read, slowest_s, slowestSeed, problems }
}

/** Undefined for a refused file; else what went wrong with a read one. */
function tried(text: string): readonly string[] | undefined {
  const result = parseDocument(text)
  if (!result.ok) {
    if (result.issues.length === 0) throw new Error('refused without an issue')
    return undefined
  }
  const door = toDoor(result.document, result.catalogue)
  const { crashes } = judge(door)
  const again = parseDocument(serialise(result.document))
  const same = again.ok && serialise(again.document) === serialise(result.document)
  return [...crashes.map(({ rule, message }) => `rule ${rule} crashes: ${message}`), ...(same ? [] : ['does not come back the same'])]
}

function timed(text: string): number {
  const before = process.cpuUsage()
  tried(text)
  return secondsSince(before)
}

function secondsSince(before: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(before)
  return (user + system) / 1e6
}
