import { capital, needWords } from '@sillsight/report'
import { Explained } from '../help/explained.tsx'
import { WordsHere } from '../help/words-here.tsx'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { lackingIn } from './lacking.ts'
import { useLead } from './lead.ts'
import { useIsSmall } from './unfolded.ts'

/** So many are listed on a small screen, or what follows would be pushed out of sight; a fold for one more would save nothing. */
const FEW = 3

/** What a part of the job still lacks, and how many findings it would settle. Touching one leads there. */
export function Missing({ of }: { readonly of: (need: string) => boolean }) {
  const words = useWords()
  const reader = useReader()
  const { answers } = useDoor()
  const lead = useLead()
  const isSmall = useIsSmall()
  const { shown } = answers
  if (!shown) return null
  const needs = lackingIn(shown.judgement).filter(({ need }) => of(need))
  const [first, others] = isSmall && needs.length > FEW + 1 ? [needs.slice(0, FEW), needs.slice(FEW)] : [needs, []]
  const list = (those: typeof needs) => (
    <ul>
      {those.map(({ need, count }) => (
        <li key={need}>
          <button type="button" className="link" data-need={need} onClick={() => lead(need)}>
            {capital(needWords(shown.door, need, reader))}
          </button>{' '}
          <span>
            <Explained text={words.measure.missingNote(count)} />
          </span>
        </li>
      ))}
    </ul>
  )
  return (
    <section className="missing">
      <div className="titled">
        <h2>{words.measure.missing}</h2>
        <WordsHere />
      </div>
      {needs.length === 0 ? (
        <p>
          <Explained text={words.measure.nothingMissing} />
        </p>
      ) : (
        <>
          {list(first)}
          {others.length > 0 && (
            <details className="missing-more">
              <summary>{words.chapters.missingMore(others.length)}</summary>
              {list(others)}
            </details>
          )}
        </>
      )}
    </section>
  )
}
