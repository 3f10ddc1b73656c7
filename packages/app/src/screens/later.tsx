import { Explained } from '../help/explained.tsx'
import { WordsHere } from '../help/words-here.tsx'
import type { Part } from '../parts.ts'
import { useWords } from '../words/words.ts'

/** Where a part will stand that is not built yet: it says what it is for, and that it is not there. */
export function LaterScreen({ part }: { readonly part: Part }) {
  const words = useWords()
  return (
    <main className="later">
      <h2>{words.parts[part]}</h2>
      {part in words.later && (
        <p>
          <Explained text={words.later[part as keyof typeof words.later]} />
        </p>
      )}
      <p>
        <Explained text={words.later.notYet} />
      </p>
      <WordsHere />
    </main>
  )
}

/** What of a part is not built yet, below what is. */
export function NotYet({ part }: { readonly part: 'fit' | 'test' }) {
  const { later } = useWords()
  return (
    <section className="group">
      <p>
        <Explained text={later[part]} />
      </p>
      <p className="quiet">
        <Explained text={later.notYet} />
      </p>
    </section>
  )
}
