import type { Finding, Verdict } from '@sillsight/engine'
import type { FileResult, JudgedFile, RefusedFile } from './options.ts'
import { english } from './wording/english.ts'
import { plain } from './wording/plain.ts'
import { mend, ruleName, sentence } from './wording/sentence.ts'

/** Pipelines have one language, so that what they compare stays the same. */
const PIPELINE = { units: 'metric', language: english } as const

/** SARIF 2.1.0, section 3.27.9 and 3.27.10: only a result of kind "fail" may have a level other than "none". */
const KINDS: Readonly<Record<Verdict, { readonly kind: string; readonly level: string }>> = {
  fail: { kind: 'fail', level: 'error' },
  undetermined: { kind: 'open', level: 'none' },
  pass: { kind: 'pass', level: 'none' },
  'not-applicable': { kind: 'notApplicable', level: 'none' },
}

/** The findings of many files as a SARIF 2.1.0 log, ready to be written. Lengths are metric. */
export function sarif(results: readonly FileResult[]): string {
  const judged = results.filter((result): result is JudgedFile => 'judgement' in result)
  const refused = results.filter((result): result is RefusedFile => 'issues' in result)
  const rules = [...new Set(judged.flatMap(({ judgement }) => judgement.findings.map(({ rule }) => rule)))].sort()
  const log = {
    // biome-ignore lint/style/useNamingConvention: the name that JSON Schema reserves
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: {
          driver: {
            name: 'Sillsight',
            rules: rules.map((id) => ({ id, name: pascal(id), shortDescription: { text: ruleName(id, PIPELINE) } })),
          },
        },
        columnKind: 'utf16CodeUnits',
        invocations: [
          {
            executionSuccessful: refused.length === 0 && judged.every(({ judgement }) => judgement.crashes.length === 0),
            toolExecutionNotifications: notifications(judged, refused),
          },
        ],
        artifacts: results.map(({ file }) => ({ location: { uri: uriOf(file) } })),
        results: judged.flatMap((result) =>
          result.judgement.findings.map((finding) => resultOf(result, finding, rules, results.indexOf(result))),
        ),
      },
    ],
  }
  return `${JSON.stringify(log, null, 2)}\n`
}

function resultOf({ file, door }: JudgedFile, finding: Finding, rules: readonly string[], artifact: number): object {
  const said = [sentence(door, finding, PIPELINE), mend(door, finding, PIPELINE)].filter((text) => text !== '').join(' ')
  return {
    ruleId: finding.rule,
    ruleIndex: rules.indexOf(finding.rule),
    ...KINDS[finding.verdict],
    message: { text: said },
    locations: [
      {
        physicalLocation: { artifactLocation: { uri: uriOf(file), index: artifact } },
        logicalLocations: [{ name: plain(finding.subject.id), fullyQualifiedName: plain(finding.id), kind: finding.subject.kind }],
      },
    ],
    partialFingerprints: { 'findingId/v1': `${file}#${finding.id}` },
    properties: {
      edition: finding.edition,
      ...(finding.state === undefined ? {} : { state: finding.state }),
      ...(finding.provisional ? { provisional: finding.provisional } : {}),
    },
  }
}

function notifications(judged: readonly JudgedFile[], refused: readonly RefusedFile[]): readonly object[] {
  const crashes = judged.flatMap(({ file, judgement }) =>
    judgement.crashes.map(({ rule, message }) =>
      notification(file, 'rule-broke-down', `Rule ${plain(rule)} broke down: ${plain(message)}`),
    ),
  )
  const issues = refused.flatMap(({ file, issues: found }) =>
    found.map(({ code, path, expected, got }) =>
      notification(file, code, `${plain(path)}: expected ${plain(expected)}, got ${plain(got)}`),
    ),
  )
  return [...crashes, ...issues]
}

function notification(file: string, code: string, text: string): object {
  return {
    level: 'error',
    descriptor: { id: code },
    message: { text },
    locations: [{ physicalLocation: { artifactLocation: { uri: uriOf(file) } } }],
  }
}

/** A file name as a relative or absolute URI reference: no spaces, no backslashes, no drive letter taken for a scheme. */
function uriOf(file: string): string {
  const slashed = file.replaceAll('\\', '/')
  const encoded = slashed
    .split('/')
    .map((part) => encodeURIComponent(plain(part)))
    .join('/')
  return /^[A-Za-z]:/.test(slashed) ? `file:///${encoded}` : encoded
}

function pascal(id: string): string {
  return id
    .split('-')
    .map((part) => part.charAt(0).toUpperCase() + part.slice(1))
    .join('')
}
