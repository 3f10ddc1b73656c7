import type { Door, Finding, Verdict } from '@sillsight/engine'
import { type FindingGroup, grouped, mend, needWords, ruleName, sentence, sentenceOfPass, tally, waitingWords } from '@sillsight/report'
import { lazy, memo, Suspense, useCallback, useMemo, useState } from 'react'
import { Explained } from '../help/explained.tsx'
import { WordsHere } from '../help/words-here.tsx'
import { useDoor, useUpToDate } from '../screens/at-door.ts'
import { Cautions } from '../screens/cautions.tsx'
import { Fold } from '../screens/fold.tsx'
import { useLead } from '../screens/lead.ts'
import { useReader } from '../words/reader.ts'
import { useIssueWords, useWords } from '../words/words.ts'
import { Concept } from './concept.tsx'
import { VerdictMark } from './verdict-mark.tsx'

const Why = lazy(() => import('./why.tsx').then(({ Why }) => ({ default: Why })))
const Repairs = lazy(() => import('./repairs.tsx').then(({ Repairs }) => ({ default: Repairs })))
const InTime = lazy(() => import('./in-time.tsx').then(({ InTime }) => ({ default: InTime })))
const Confirm = lazy(() => import('./confirm.tsx').then(({ Confirm }) => ({ default: Confirm })))

/** Verdicts of which every finding is said, worst first. */
const SAID = ['fail', 'undetermined', 'pass'] as const
const NOTHING: readonly string[] = []

interface Props {
  /** Id of the finding whose place the drawing shows. */
  readonly pointed: string | undefined
  readonly onPoint: (finding: string | undefined) => void
  /** The finding that is shown over time, and the instant at which leaf and body are drawn. */
  readonly time: { readonly finding: string; readonly at_s: number } | undefined
  readonly onTime: (time: Props['time']) => void
}

/** The findings as sentences, worst first. */
export function Findings({ pointed, onPoint, time, onTime }: Props) {
  const words = useWords()
  const reader = useReader()
  const { answers } = useDoor()
  const upToDate = useUpToDate()
  const { shown, progress } = answers
  const { concept } = useDoor().snapshot.file
  const [isAsked] = useState(concept === undefined) // it stays where it stood, or what was touched would leave the hand
  const groups = useMemo(() => (shown ? grouped(shown.judgement.findings) : []), [shown])
  const of = (verdict: Verdict) => groups.filter(({ findings }) => findings[0].verdict === verdict)
  const apart = of('not-applicable')
  const said = SAID.map((verdict) => [verdict, of(verdict)] as const).filter(([, those]) => those.length > 0)
  return (
    <section className="findings" aria-label={words.findings.title} aria-busy={!upToDate}>
      <div className="findings-head">
        <div className="titled">
          <h2 aria-live="polite">
            <Explained text={shown ? tally(shown.judgement, reader, { short: true }) : words.findings.judging} />
          </h2>
          <WordsHere />
        </div>
        <p role="status">
          {!shown ? '' : !upToDate ? words.findings.old : shown.depth === 'grid' ? words.findings.provisional : ''}
          {progress && ` · ${Math.floor((100 * progress.done) / progress.of)} %`}
        </p>
      </div>
      <Trouble />
      {isAsked && <Concept />}
      {shown &&
        said.map(([verdict, those], i) => (
          <Fold
            key={verdict}
            name={verdict}
            among="judge"
            className="verdict-fold"
            holds={NOTHING}
            isWide
            isFirst={i === 0}
            head={
              <>
                <h2>{reader.language.verdicts[verdict]}</h2>
                <span className="verdict-count">
                  {those.reduce((sum, { findings }) => sum + findings.length, 0)}
                  <VerdictMark verdict={verdict} />
                </span>
              </>
            }
          >
            {() => (
              <ol className="finding-list">
                {those.map((group) => (
                  <GroupItem
                    key={group.findings[0].id}
                    group={group}
                    door={shown.door}
                    pointed={pointed}
                    onPoint={onPoint}
                    time={time?.finding === group.findings[0].id ? time : undefined}
                    onTime={onTime}
                  />
                ))}
              </ol>
            )}
          </Fold>
        ))}
      {shown && shown.judgement.crashes.length > 0 && (
        <ol>
          {shown.judgement.crashes.map(({ rule, message }) => (
            <li key={rule} className="trouble">
              {words.findings.crashed} {rule}: {message}
            </li>
          ))}
        </ol>
      )}
      {!isAsked && <Concept />}
      {apart.length > 0 && (
        <details className="apart">
          <summary>{words.findings.otherVerdicts(apart.length)}</summary>
          <ul>
            {shown &&
              apart.map(({ findings: [first] }) => (
                <li key={first.id}>
                  <Explained text={ruleName(first.rule, reader)} />
                </li>
              ))}
          </ul>
        </details>
      )}
      <Cautions lines={words.help.cautions.judge} />
      <p className="caution">
        <Explained text={words.findings.notCertified} />
      </p>
    </section>
  )
}

function Trouble() {
  const say = useIssueWords()
  const words = useWords()
  const { trouble } = useDoor().answers
  if (trouble?.kind === 'crashed')
    return (
      <p className="trouble" role="alert">
        {words.findings.crashed} {trouble.message}
      </p>
    )
  if (trouble?.kind !== 'refused') return null
  return (
    <div className="trouble" role="alert">
      <h3>{words.findings.refused}</h3>
      <p>{words.findings.refusedNote}</p>
      <ul>
        {trouble.issues.map((issue) => (
          <li key={issue.path + issue.code}>{say(issue)}</li>
        ))}
      </ul>
    </div>
  )
}

interface ItemProps extends Props {
  readonly group: FindingGroup
  readonly door: Door
}

/** While something is played only the finding that it is about is drawn anew. */
const GroupItem = memo(function GroupItem({ door, group, pointed, onPoint, time, onTime }: ItemProps) {
  const words = useWords()
  const reader = useReader()
  const { answers } = useDoor()
  const upToDate = useUpToDate()
  const [first] = group.findings
  const verdict: Verdict = first.verdict
  const said = group.waitsFor === undefined ? sentence(door, first, reader) : waitingWords(door, group, reader)
  // what would settle it stands in the sentence and on the button: the same is not said a second time
  const isSaid =
    first.verdict === 'undetermined' &&
    (first.reason === 'limit-from-memory' ||
      (first.reason === 'missing-input' && first.needs.every((need) => said.includes(needWords(door, need, reader)))))
  const repair = isSaid ? '' : mend(door, first, reader)
  const lead = useLead()
  // what somebody holds against its page is confirmed here and entered nowhere
  const enterable = first.verdict === 'undetermined' ? first.needs.find((need) => !need.startsWith('confirmations/')) : undefined
  const [searching, setSearching] = useState(false)
  const close = useCallback(() => setSearching(false), [])
  const mendable = verdict === 'fail' && first.rule !== 'blind-pocket' && upToDate && answers.shown?.depth === 'exact'
  return (
    <li className="finding" data-verdict={verdict} data-pointed={pointed === first.id || undefined}>
      <p className="finding-verdict">
        <VerdictMark verdict={verdict} />
        {reader.language.verdicts[verdict]}
      </p>
      <div className="finding-words">
        {group.waitsFor === undefined ? (
          <p>
            <Explained text={said} />
          </p>
        ) : (
          <>
            <p>
              <Explained text={said} />
            </p>
            <ul className="waiting">
              {group.findings.map((finding) => (
                <li key={finding.id}>
                  <span>
                    <Explained text={sentenceOfPass(door, finding, reader)} after={[said]} />
                  </span>
                  <WhyButton finding={finding} />
                </li>
              ))}
            </ul>
          </>
        )}
        {repair !== '' && (
          <p className="finding-note">
            <Explained text={`${verdict === 'fail' ? words.findings.wouldMend : words.findings.wouldSettle}: ${repair}`} after={[said]} />
          </p>
        )}
        <div className="finding-tools">
          {group.waitsFor === undefined && <WhyButton finding={first} />}
          {first.verdict !== 'not-applicable' && (first.worstCase !== undefined || first.subject.kind === 'pocket') && (
            <button
              type="button"
              className="link"
              aria-pressed={pointed === first.id}
              onClick={() => onPoint(pointed === first.id ? undefined : first.id)}
            >
              {words.findings.show}
            </button>
          )}
          {first.course && (
            <button
              type="button"
              className="link"
              aria-expanded={time?.finding === first.id}
              aria-label={words.inTime.showFor(ruleName(first.rule, reader))}
              onClick={() =>
                onTime(time?.finding === first.id || !first.course ? undefined : { finding: first.id, at_s: first.course.at_s })
              }
            >
              {words.inTime.show}
            </button>
          )}
          {first.verdict === 'undetermined' && first.reason === 'limit-from-memory' && <ConfirmButton finding={first} />}
          {enterable !== undefined && (
            <button
              type="button"
              className="link"
              data-need={enterable}
              aria-label={words.findings.enterFor(needWords(door, enterable, reader))}
              onClick={() => lead(enterable)}
            >
              {words.findings.enter}
            </button>
          )}
          {mendable && !searching && (
            <button
              type="button"
              className="link"
              data-stop="repairs"
              aria-label={words.repairs.searchFor(ruleName(first.rule, reader))}
              onClick={() => setSearching(true)}
            >
              {words.repairs.search}
            </button>
          )}
        </div>
        {searching && (
          <Suspense fallback={null}>
            <Repairs finding={first} onClose={close} />
          </Suspense>
        )}
      </div>
      {time?.finding === first.id && first.course && (
        <Suspense fallback={null}>
          <InTime
            door={door}
            finding={{ ...first, course: first.course }}
            at_s={time.at_s}
            onAt={(at_s) => onTime({ finding: first.id, at_s })}
          />
        </Suspense>
      )}
    </li>
  )
})

function WhyButton({ finding }: { readonly finding: Finding }) {
  const words = useWords()
  const reader = useReader()
  const [open, setOpen] = useState(false)
  return (
    <>
      <button
        type="button"
        className="link"
        data-stop="why"
        aria-label={words.findings.whyFor(ruleName(finding.rule, reader))}
        onClick={() => setOpen(true)}
      >
        {words.findings.why}
      </button>
      {open && (
        <Suspense fallback={null}>
          <Why finding={finding.id} onClose={() => setOpen(false)} />
        </Suspense>
      )}
    </>
  )
}

function ConfirmButton({ finding }: { readonly finding: Finding }) {
  const words = useWords()
  const [open, setOpen] = useState(false)
  return (
    <>
      <button type="button" className="link" onClick={() => setOpen(true)}>
        {words.findings.confirm}
      </button>
      {open && (
        <Suspense fallback={null}>
          <Confirm finding={finding} onClose={() => setOpen(false)} />
        </Suspense>
      )}
    </>
  )
}
