import { Link } from 'wouter'
import type { Answers } from '../judging/judging.ts'
import { PARTS, type Part } from '../parts.ts'
import type { DoorSnapshot, Saving } from '../store/contract.ts'
import { useWords } from '../words/words.ts'

/** The head of every sheet: which door, the seven parts along one blade, whether it is saved. */
export function Tape({ id, part, snapshot }: { id: string; part: Part; snapshot: DoorSnapshot; answers: Answers }) {
  const words = useWords()
  return (
    <header className="head">
      <div className="head-name">
        <Link href="/" className="head-back" aria-label={words.backToDoors}>
          ‹
        </Link>
        <h1>{snapshot.file.name ?? id}</h1>
      </div>
      <nav className="tape" aria-label={words.partsNav}>
        <ol>
          {PARTS.map((name) => (
            <li key={name} data-here={name === part || undefined}>
              <Link href={`/door/${id}/${name}`} aria-current={name === part ? 'page' : undefined}>
                {words.parts[name]}
              </Link>
            </li>
          ))}
        </ol>
      </nav>
      <p className="head-saved" role="status">
        {savingWords(snapshot.saving, words)}
        {snapshot.onlyHere && ` · ${words.onlyHere}`}
      </p>
    </header>
  )
}

function savingWords(saving: Saving, words: ReturnType<typeof useWords>): string {
  if (saving.kind === 'saving') return words.saving
  if (saving.kind === 'not-saved') return words.notSaved[saving.reason]
  const time = new Date(saving.at_ms)
  return words.saved(`${String(time.getHours()).padStart(2, '0')}:${String(time.getMinutes()).padStart(2, '0')}`)
}
