import type { Finding } from '@sillsight/engine'
import type { FileResult, JudgedFile, RefusedFile } from './options.ts'
import { english } from './wording/english.ts'
import { mend, sentence } from './wording/sentence.ts'
import { asXmlText } from './xml.ts'

interface Suite {
  readonly name: string
  readonly cases: readonly Case[]
}
interface Case {
  readonly name: string
  readonly group: string
  readonly outcome: 'passed' | 'failure' | 'error' | 'skipped'
  readonly kind: string
  readonly text: string
}

/** Pipelines have one language, so that what they compare stays the same. */
const PIPELINE = { units: 'metric', language: english } as const

/**
 * The findings of many files as JUnit XML, ready to be written: one suite for each file, one case for each finding. A fail is a failure;
 * what is not settled or does not apply is skipped, with the reason; a file that cannot be read and a rule that broke down are errors.
 */
export function junit(results: readonly FileResult[]): string {
  const suites = results.map((result) => ('judgement' in result ? judgedSuite(result) : refusedSuite(result)))
  const cases = suites.flatMap((suite) => suite.cases)
  return `${['<?xml version="1.0" encoding="UTF-8"?>', `<testsuites name="Sillsight" ${counts(cases)}>`, ...suites.flatMap(suiteLines), '</testsuites>'].join('\n')}\n`
}

function judgedSuite({ file, door, judgement }: JudgedFile): Suite {
  const findings = judgement.findings.map((finding): Case => {
    const text = [sentence(door, finding, PIPELINE), mend(door, finding, PIPELINE)].filter((part) => part !== '').join(' ')
    return { name: finding.id, group: finding.rule, outcome: OUTCOMES[finding.verdict], kind: english.verdicts[finding.verdict], text }
  })
  const crashes = judgement.crashes.map(
    ({ rule, message }): Case => ({ name: rule, group: rule, outcome: 'error', kind: 'rule-broke-down', text: message }),
  )
  return { name: file, cases: [...findings, ...crashes] }
}

const OUTCOMES: Readonly<Record<Finding['verdict'], Case['outcome']>> = {
  pass: 'passed',
  fail: 'failure',
  undetermined: 'skipped',
  'not-applicable': 'skipped',
}

function refusedSuite({ file, issues }: RefusedFile): Suite {
  return {
    name: file,
    cases: issues.map(({ code, path, expected, got }) => ({
      name: path,
      group: 'door-file',
      outcome: 'error',
      kind: code,
      text: `expected ${expected}, got ${got}`,
    })),
  }
}

function suiteLines({ name, cases }: Suite): readonly string[] {
  return [`  <testsuite name="${asXmlText(name)}" ${counts(cases)}>`, ...cases.map((each) => caseLine(each, name)), '  </testsuite>']
}

function caseLine({ name, group, outcome, kind, text }: Case, file: string): string {
  const start = `    <testcase name="${asXmlText(name)}" classname="${asXmlText(group)}" file="${asXmlText(file)}"`
  if (outcome === 'passed') return `${start}/>`
  const inner =
    outcome === 'skipped'
      ? `<skipped message="${asXmlText(`${kind}: ${text}`)}"/>`
      : `<${outcome} type="${asXmlText(kind)}" message="${asXmlText(text)}"/>`
  return `${start}>${inner}</testcase>`
}

function counts(cases: readonly Case[]): string {
  const of = (outcome: Case['outcome']): number => cases.filter((each) => each.outcome === outcome).length
  return `tests="${cases.length}" failures="${of('failure')}" errors="${of('error')}" skipped="${of('skipped')}"`
}
