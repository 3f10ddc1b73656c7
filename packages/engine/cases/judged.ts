import { judge } from '../src/judge/judge.ts'
import type { Door } from '../src/model/door.ts'
import type { Finding } from '../src/model/finding.ts'

/** The findings of one rule on a door, in the order in which a person sees them. A crash of any rule is an error. */
export function findingsOf(rule: string, door: Door): readonly Finding[] {
  const { findings, crashes } = judge(door)
  if (crashes.length > 0) throw new Error(crashes.map((crash) => `${crash.rule}: ${crash.message}`).join('; '))
  return findings.filter((finding) => finding.rule === rule)
}

/** The only finding of one rule. */
export function findingOf(rule: string, door: Door): Finding {
  const [finding, ...more] = findingsOf(rule, door)
  if (finding === undefined || more.length > 0) throw new Error(`${rule} must give one finding, got ${more.length + (finding ? 1 : 0)}`)
  return finding
}
