import type { Budget } from './budget.ts'
import { contactOf, type ProvedContact } from './contacts.ts'
import { coverageOf, type Proved } from './coverage.ts'
import { type Access, doorOf } from './door.ts'
import { type Issue, type Json, listAt, objectAt, own, parseBounded, Refusal, refuse } from './json.ts'
import { type ProvedPassage, passageOf } from './passages.ts'
import type { Door } from './plain.ts'
import { type Silence, silencesOf } from './silences.ts'
import { trafficOf } from './traffic.ts'
import { type ProvedWiring, wiringOf } from './wiring-claims.ts'

export type VerifyResult =
  | {
      readonly ok: true
      readonly proved: readonly Proved[]
      readonly passages: readonly ProvedPassage[]
      readonly contacts: readonly ProvedContact[]
      /** Undefined where nothing is shown of the wiring. */
      readonly wiring: ProvedWiring | undefined
      /** What the evidence claims and this program cannot show, though nothing speaks against it. */
      readonly notShown: readonly Issue[]
      readonly silent: readonly Silence[]
    }
  | { readonly ok: false; readonly issues: readonly Issue[] }

export interface VerifyInput extends Access {
  readonly doorText: string
  readonly evidenceText: string
}

/** Far above what any real door needs; below what keeps anybody waiting for long. */
const EVIDENCE_BOUNDS = { length: 32 * 1024 * 1024, depth: 14 }
const WORK = 20_000_000
/** The wiring's own, so that neither part can use up the other's. */
const WIRING_WORK = 20_000_000
const MOST_ISSUES = 20

/**
 * Re-checks the evidence of a door's coverage, lanes and wiring from the door file alone: docs/evidence.md is what it implements, and nothing of the program that
 * wrote the evidence is asked. Never throws, whatever the texts hold; takes bounded time and memory.
 *
 * @param input.sha256 SHA-256 of a text's UTF-8 bytes, as 64 hexadecimal digits in lower case
 * @returns what is shown, what cannot be and of what nothing is said; or what does not hold: nothing of the evidence counts then
 */
export function verifyEvidence({ doorText, evidenceText, ...access }: VerifyInput): VerifyResult {
  const issues: Issue[] = []
  const notShown: Issue[] = []
  const attempt = <T>(check: () => T): T | undefined => {
    try {
      return check()
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown
      const into = thrown.issue.code === 'cannot-show' ? notShown : issues
      if (into.length < MOST_ISSUES) into.push(thrown.issue)
      return undefined
    }
  }
  const claims = attempt(() => claimsOf(evidenceText, access.sha256(doorText)))
  const door = claims && attempt(() => doorOf(doorText, access))
  if (claims === undefined || door === undefined) return { ok: false, issues: [...issues, ...notShown] }
  const budget: Budget = { left: WORK }
  const proved = provedBy(claims.coverages, door, budget, attempt)
  const isAsked = claims.passages.length + claims.contacts.length > 0
  const traffic = isAsked
    ? attempt(() =>
        trafficOf(
          doorText,
          door.bodies.map(({ id }) => id),
        ),
      )
    : undefined
  const passages = traffic
    ? onceEach('passages', claims.passages, attempt, (given, path) => passageOf(given, door, traffic, budget, path))
    : []
  const contacts = traffic
    ? onceEach('contacts', claims.contacts, attempt, (given, path) => contactOf(given, door, traffic, budget, path))
    : []
  const wiring = claims.wiring === undefined ? undefined : attempt(() => wiringOf(claims.wiring, doorText, { left: WIRING_WORK }))
  const silent =
    attempt(() => silencesOf(door, doorText, { proved, lanes: [...passages, ...contacts], wiring: wiring !== undefined })) ?? []
  return issues.length > 0 ? { ok: false, issues } : { ok: true, proved, passages, contacts, wiring, notShown, silent }
}

interface Claims {
  readonly coverages: readonly unknown[]
  readonly passages: readonly unknown[]
  readonly contacts: readonly unknown[]
  readonly wiring: unknown
}

function claimsOf(text: string, doorSha256: string): Claims {
  const evidence = objectAt(parseBounded(text, 'evidence', EVIDENCE_BOUNDS), 'evidence')
  const version = own(evidence, 'sillsightEvidence')
  if (version !== 1) refuse('version', 'sillsightEvidence', 'version 1', version)
  const sha256 = own(evidence, 'doorSha256')
  if (sha256 !== doorSha256) refuse('another-door', 'doorSha256', `${doorSha256}, the hash of the door file`, sha256)
  return {
    coverages: listAt(own(evidence, 'coverages'), 'coverages', { most: 1024 }),
    passages: listAt(own(evidence, 'passages') ?? [], 'passages', { most: 1024 }),
    contacts: listAt(own(evidence, 'contacts') ?? [], 'contacts', { most: 1024 }),
    wiring: own(evidence, 'wiring'),
  }
}

type Attempt = <T>(check: () => T) => T | undefined

/** Entries about lanes and states, each of them once. */
function onceEach<T>(name: string, entries: readonly unknown[], attempt: Attempt, check: (given: Json, path: string) => T): readonly T[] {
  const there = new Set<string>()
  return entries.flatMap((each, i) => {
    const path = `${name}/${i}`
    const found = attempt(() => {
      const given = objectAt(each, path)
      const key = `${String(own(given, 'lane'))}@${String(own(given, 'state'))}`
      if (there.has(key)) refuse('duplicate', path, 'one entry for each lane and state', key)
      there.add(key)
      return check(given, path)
    })
    return found === undefined ? [] : [found]
  })
}

function provedBy(coverages: readonly unknown[], door: Door, budget: Budget, attempt: Attempt): readonly Proved[] {
  const there = new Set<string>()
  return coverages.flatMap((each, i) => {
    const path = `coverages/${i}`
    const proved = attempt(() => {
      const given = objectAt(each, path)
      const key = `${String(own(given, 'zone'))}@${String(own(given, 'state'))}${own(given, 'tolerances') === null ? '' : ' within tolerances'}`
      if (there.has(key)) refuse('duplicate', path, 'one entry for each zone, state and choice of tolerances', key)
      there.add(key)
      return coverageOf(given, door, budget, path)
    })
    return proved ?? []
  })
}
