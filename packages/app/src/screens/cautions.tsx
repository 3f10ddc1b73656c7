import { Explained } from '../help/explained.tsx'
import { useWords } from '../words/words.ts'

/** The usual cautions, where the work is, and what they rest on. */
export function Cautions({ lines }: { readonly lines: readonly string[] }) {
  const words = useWords().help.cautions
  return (
    <section className="cautions">
      <h2>{words.title}</h2>
      <ul>
        {lines.map((line) => (
          <li key={line}>
            <Explained text={line} />
          </li>
        ))}
      </ul>
      <p className="quiet">{words.practice}</p>
    </section>
  )
}
