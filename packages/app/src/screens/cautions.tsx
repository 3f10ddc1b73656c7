import { useWords } from '../words/words.ts'

/** The usual cautions, where the work is. */
export function Cautions({ lines }: { readonly lines: readonly string[] }) {
  const words = useWords()
  return (
    <section className="cautions">
      <h2>{words.cautions.title}</h2>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  )
}
