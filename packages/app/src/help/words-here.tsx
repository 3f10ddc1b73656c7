import { lazy, Suspense, useState } from 'react'
import { useWords } from '../words/words.ts'

const WordList = lazy(() => import('./word-list.tsx').then(({ WordList }) => ({ default: WordList })))

/** Opens all words of the trade that stand on this sheet, explained at once: the target for gloves. */
export function WordsHere() {
  const words = useWords().help.words
  const [sheet, setSheet] = useState<Element>()
  return (
    <>
      <button
        type="button"
        className="link words-here"
        aria-label={words.label}
        onClick={({ currentTarget }) => setSheet(currentTarget.closest('[role=dialog], .sheet, main') ?? document.body)}
      >
        {words.open}
      </button>
      {sheet && (
        <Suspense fallback={null}>
          <WordList sheet={sheet} onClose={() => setSheet(undefined)} />
        </Suspense>
      )}
    </>
  )
}
