import type { Door, Verdict } from '@sillsight/engine'
import { type FindingGroup, grouped, mend, sentence, sentenceOfPass, tally, verdictWords, waitingWords } from '@sillsight/report'
import type { Answers } from '../judging/judging.ts'
import { usePreferences } from '../preferences.ts'
import type { DoorSnapshot } from '../store/contract.ts'
import { useWords } from '../words/words.ts'
import { VerdictMark } from './verdict-mark.tsx'

/** The findings as sentences, worst first. */
export function Findings(props: {
  readonly snapshot: DoorSnapshot
  readonly answers: Answers
  readonly onPoint: (finding: string | undefined) => void
}) {
  const { snapshot, answers, onPoint } = props
  const words = useWords()
  const { shown, trouble } = answers
  return (
    <section className="findings" aria-label={words.findings.title} aria-busy={shown?.revision !== snapshot.revision}>
      <div className="findings-head">
        <h2>{shown ? tally(shown.judgement, { short: true }) : words.findings.judging}</h2>
        <p role="status">
          {shown && shown.revision !== snapshot.revision ? words.findings.old : shown?.depth === 'grid' ? words.findings.provisional : ''}
        </p>
      </div>
      {trouble?.kind === 'refused' && (
        <div className="trouble">
          <h3>{words.findings.refused}</h3>
          <ul>
            {trouble.issues.map((issue) => (
              <li key={issue.path + issue.code}>
                {issue.path}: {issue.expected}; {issue.got}
              </li>
            ))}
          </ul>
        </div>
      )}
      {trouble?.kind === 'crashed' && (
        <p className="trouble">
          {words.findings.crashed} {trouble.message}
        </p>
      )}
      {shown && (
        <ol className="finding-list">
          {grouped(shown.judgement.findings).map((group) => (
            <GroupItem key={group.findings[0].id} door={shown.door} group={group} onPoint={onPoint} />
          ))}
        </ol>
      )}
      <p className="caution">{words.findings.notCertified}</p>
    </section>
  )
}

function GroupItem({ door, group, onPoint }: { door: Door; group: FindingGroup; onPoint: (finding: string | undefined) => void }) {
  const words = useWords()
  const { units } = usePreferences()
  const [first] = group.findings
  const verdict: Verdict = first.verdict
  const repair = mend(door, first, { units })
  return (
    <li className="finding" data-verdict={verdict} onPointerEnter={() => onPoint(first.id)} onPointerLeave={() => onPoint(undefined)}>
      <p className="finding-verdict">
        <VerdictMark verdict={verdict} />
        {verdictWords[verdict]}
      </p>
      <div className="finding-words">
        {group.waitsFor === undefined ? (
          <p>{sentence(door, first, { units })}</p>
        ) : (
          <>
            <p>{waitingWords(door, group, { units })}</p>
            <ul className="waiting">
              {group.findings.map((finding) => (
                <li key={finding.id}>{sentenceOfPass(door, finding, { units })}</li>
              ))}
            </ul>
          </>
        )}
        {repair !== '' && (
          <p className="finding-note">
            {verdict === 'fail' ? words.findings.wouldMend : words.findings.wouldSettle}: {repair}
          </p>
        )}
      </div>
    </li>
  )
}
