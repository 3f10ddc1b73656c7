import { applyEdits, type Offer } from '@sillsight/document'
import type { Finding } from '@sillsight/engine'
import { repairOutcome, repairWords, ruleName } from '@sillsight/report'
import { useEffect, useState } from 'react'
import { Explained } from '../help/explained.tsx'
import type { ToSearching } from '../judging/messages.ts'
import { useSearch } from '../judging/use-search.ts'
import { useDoor } from '../screens/at-door.ts'
import { asHandedOut } from '../store/twins.ts'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { withOwnIds } from './own-ids.ts'

/**
 * Searches for what puts a finding in order, in a worker of its own, and offers each repair as a button. What was found belongs to the door as it
 * was when the search began: it goes when the door changes.
 */
export function Repairs({ finding, onClose }: { readonly finding: Finding; readonly onClose: () => void }) {
  const words = useWords()
  const reader = useReader()
  const { door, snapshot, answers } = useDoor()
  const { conflicts, readOnly } = snapshot
  const file = asHandedOut(snapshot.file)
  const [question] = useState<ToSearching>(() => ({
    kind: 'mend',
    file,
    disputed: conflicts.map(({ path }) => path),
    finding: finding.id,
  }))
  const search = useSearch(question)
  useEffect(() => {
    if (file !== question.file) onClose()
  }, [file, question, onClose])
  if (search?.kind === 'crashed')
    return (
      <p className="trouble" role="alert">
        {words.findings.crashed} {search.message}
      </p>
    )
  if (search?.kind !== 'mended')
    return (
      <p className="repairs-trying" role="status">
        <span>{words.repairs.trying(search?.kind === 'trying' ? search.doors : 0)}</span>
        <button type="button" className="link" onClick={onClose}>
          {words.repairs.stop}
        </button>
      </p>
    )
  const { offers, repairs } = search
  const before = answers.shown?.judgement.findings ?? []
  const apply = ({ repair, edits }: Offer) => {
    const said = repairWords(search.door, repair.steps, reader)
    door.edit({ deed: 'mended', name: ruleName(finding.rule, reader), typed: said }, (draft) => applyEdits(draft, withOwnIds(edits, file)))
  }
  return (
    <section className="repairs" aria-label={words.repairs.title}>
      {offers.length === 0 && <p>{words.repairs.none(repairs.tried.grid + repairs.tried.exact)}</p>}
      {offers.map((offer) => {
        const said = repairWords(search.door, offer.repair.steps, reader)
        return (
          <div key={said} className="repair">
            <p>
              <Explained text={said} />
            </p>
            <p className="finding-note">
              <Explained text={repairOutcome(before, offer.repair, reader)} />
            </p>
            <button
              type="button"
              className="second"
              disabled={readOnly !== undefined}
              aria-label={`${words.repairs.apply}: ${said}`}
              onClick={() => apply(offer)}
            >
              {words.repairs.apply}
            </button>
          </div>
        )
      })}
      {repairs.nearest && (
        <p className="finding-note">
          {repairWords(search.door, repairs.nearest.steps, reader)} {words.repairs.nearest(Math.ceil(repairs.nearest.left * 100))}
        </p>
      )}
      {repairs.rejected.length > 0 && (
        <details className="apart">
          <summary>{words.repairs.rejected(repairs.rejected.length)}</summary>
          <ul>
            {repairs.rejected.map(({ steps, worsens }) => {
              const said = repairWords(search.door, steps, reader)
              return (
                <li key={said}>
                  {said}{' '}
                  {worsens.length > 0
                    ? words.repairs.worsens(worsens.map((id) => ruleName(id.split(':')[0] ?? id, reader)).join(', '))
                    : words.repairs.denied}
                </li>
              )
            })}
          </ul>
        </details>
      )}
      <p className="finding-note">
        {words.repairs.judged(repairs.tried.grid, repairs.tried.exact)}{' '}
        <button type="button" className="link" onClick={onClose}>
          {words.pad.close}
        </button>
      </p>
    </section>
  )
}
