import { Explained } from '../help/explained.tsx'
import { useWords } from '../words/words.ts'

/** The usual cautions, where the work is, and what they rest on: said once a sheet. */
export function Cautions({ lines, isMore = false }: { readonly lines: readonly string[]; readonly isMore?: boolean }) {
  const words = useWords().help.cautions
  return (
    <section className="cautions">
      <h3>{words.title}</h3>
      <ul>
        {lines.map((line, i) => (
          <li key={line}>
            <Explained text={line} after={lines.slice(0, i)} />
          </li>
        ))}
      </ul>
      {!isMore && <p className="quiet">{words.practice}</p>}
    </section>
  )
}
