import { judge, type Verdict } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { loadingDoor } from '../test/doors.ts'
import { expectWellFormed } from '../test/well-formed.ts'
import { junit } from './junit.ts'
import type { FileResult } from './options.ts'
import { sarif } from './sarif.ts'

const judgement = judge(loadingDoor)
const hostile = '"><x>&\u0000\u001b[2J ]]>'
const results: readonly FileResult[] = [
  { file: 'doors/north dock 4.json', door: loadingDoor, judgement },
  {
    file: 'C:\\doors\\"x" <y>.json',
    door: { ...loadingDoor, name: hostile },
    judgement: { ...judgement, crashes: [{ rule: 'dead-ground', message: hostile }] },
  },
  {
    file: 'broken.json',
    issues: [{ code: 'not-a-number-in-range', path: 'survey/opening/width_mm', expected: 'a number above 0', got: hostile }],
  },
]
const count = (verdict: Verdict): number => judgement.findings.filter((finding) => finding.verdict === verdict).length

interface Log {
  readonly version: string
  readonly runs: readonly {
    readonly tool: { readonly driver: { readonly name: string; readonly rules: readonly { readonly id: string; readonly name: string }[] } }
    readonly invocations: readonly {
      readonly executionSuccessful: boolean
      readonly toolExecutionNotifications: readonly { readonly level: string; readonly message: { readonly text: string } }[]
    }[]
    readonly artifacts: readonly { readonly location: { readonly uri: string } }[]
    readonly results: readonly {
      readonly ruleId: string
      readonly ruleIndex: number
      readonly kind: string
      readonly level: string
      readonly message: { readonly text: string }
      readonly locations: readonly {
        readonly physicalLocation: { readonly artifactLocation: { readonly uri: string; readonly index: number } }
      }[]
    }[]
  }[]
}

// Required properties, values and their couplings: OASIS, Static Analysis Results Interchange Format 2.1.0, sections 3.13, 3.14, 3.19, 3.20, 3.27.
describe('sarif', () => {
  const log = JSON.parse(sarif(results)) as Log
  const [run] = log.runs
  if (!run) throw new Error('runs must not be empty, got none')

  it('is a log of version 2.1.0 with one run of a named driver', () => {
    expect([log.version, log.runs.length, run.tool.driver.name]).toEqual(['2.1.0', 1, 'Sillsight'])
  })

  it('gives every result a message, a known kind, and a level other than none only where it fails', () => {
    for (const { kind, level, message } of run.results) {
      expect(['fail', 'open', 'pass', 'notApplicable']).toContain(kind)
      expect(level).toBe(kind === 'fail' ? 'error' : 'none')
      expect(message.text).toMatch(/\.$/)
    }
    expect(run.results.filter(({ kind }) => kind === 'fail')).toHaveLength(2 * count('fail'))
    expect(run.results.filter(({ kind }) => kind === 'open')).toHaveLength(2 * count('undetermined'))
  })

  it('refers to rules and files that it lists, by URI references', () => {
    for (const { ruleId, ruleIndex, locations } of run.results) {
      expect(run.tool.driver.rules[ruleIndex]?.id).toBe(ruleId)
      const where = locations[0]?.physicalLocation.artifactLocation
      expect(run.artifacts[where?.index ?? -1]?.location.uri).toBe(where?.uri)
    }
    for (const { location } of run.artifacts) expect(location.uri).toMatch(/^[\w\-.~%/:!*'()]+$/)
    expect(new Set(run.tool.driver.rules.map(({ id }) => id)).size).toBe(run.tool.driver.rules.length)
  })

  it('reports files that cannot be read and rules that broke down as failures of the run, not as results', () => {
    const [invocation] = run.invocations
    expect(invocation?.executionSuccessful).toBe(false)
    expect(invocation?.toolExecutionNotifications.map(({ level }) => level)).toEqual(['error', 'error'])
    expect((JSON.parse(sarif(results.slice(0, 1))) as Log).runs[0]?.invocations[0]?.executionSuccessful).toBe(true)
  })

  it('writes no control character and the same bytes every time', () => {
    expect(sarif(results)).not.toMatch(/\\u00[01]|[\u0000-\u0009\u000b-\u001f]/)
    expect(sarif(results)).toBe(sarif(structuredClone(results)))
  })
})

describe('junit', () => {
  const text = junit(results)

  it('is well-formed, whatever names and messages the files hold', () => {
    expectWellFormed(text)
    expectWellFormed(junit([]))
  })

  it('has a suite for each file and a case for each finding, and counts them right', () => {
    const all = judgement.findings.length
    expect(text.match(/<testsuite /g)).toHaveLength(3)
    expect(text.match(/<testcase /g)).toHaveLength(2 * all + 2)
    const skipped = count('undetermined') + count('not-applicable')
    expect(text).toContain(
      `<testsuites name="Sillsight" tests="${2 * all + 2}" failures="${2 * count('fail')}" errors="2" skipped="${2 * skipped}">`,
    )
    expect(text.match(/<failure /g)).toHaveLength(2 * count('fail'))
    expect(text.match(/<skipped /g)).toHaveLength(2 * skipped)
    expect(text.match(/<error /g)).toHaveLength(2)
  })

  it('passes only what is in order', () => {
    expect(text.match(/<testcase [^>]*\/>/g)).toHaveLength(2 * count('pass'))
  })
})
