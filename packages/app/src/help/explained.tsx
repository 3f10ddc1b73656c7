import { Fragment, type KeyboardEvent, useRef, useState } from 'react'
import { useTerms } from '../words/use-terms.ts'
import { Explanation } from './explanation.tsx'
import { type Piece, pieces, type Terms, termsIn } from './terms.ts'

/**
 * A text in which the words of the trade can be touched, the first of each.
 *
 * @param props.after texts right before this one: what can be touched there stays plain here
 */
export function Explained({ text, after = [] }: { readonly text: string; readonly after?: readonly string[] }) {
  const terms = useTerms()
  const met = new Set(after.flatMap((before) => termsIn(before, terms)))
  return <Pieces of={marked(text, terms, met)} />
}

/** The pieces of a text; what is so common that it is only listed stays plain. */
function marked(text: string, terms: Terms, met: Set<string>): readonly Piece[] {
  return pieces(text, terms, met).map((piece) => (typeof piece !== 'string' && terms[piece.term]?.listed ? piece.shown : piece))
}

/** A figure and its unit stay on one line. */
function whole(text: string): string {
  return text.replace(/(\d) (?=(?:mm|m|s|N|J|V|A|kg|ohm)\b|%)/g, '$1\u00a0')
}

/** One stop of the Tab key for a sentence: its first word; the arrow keys go on to the others. */
function Pieces({ of }: { readonly of: readonly Piece[] }) {
  const first = of.findIndex((piece) => typeof piece !== 'string')
  return of.map((piece, i) =>
    typeof piece === 'string' ? (
      // biome-ignore lint/suspicious/noArrayIndexKey: the pieces of one text never change their order
      <Fragment key={i}>{whole(piece)}</Fragment>
    ) : (
      <Word key={piece.term} term={piece.term} shown={piece.shown} isStop={i === first} />
    ),
  )
}

/** A word in a sentence that opens its explanation. No button element: that would not break at the end of a line. */
function Word({ term, shown, isStop }: { readonly term: string; readonly shown: string; readonly isStop: boolean }) {
  const terms = useTerms()
  const [open, setOpen] = useState(false)
  const at = useRef<HTMLSpanElement>(null)
  const known = terms[term]
  const onKey = (event: KeyboardEvent<HTMLElement>) => {
    if (event.target !== event.currentTarget) return
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault()
      setOpen(!open)
    }
    const step = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0
    if (step === 0) return
    event.preventDefault()
    const all = [...(event.currentTarget.parentElement?.querySelectorAll<HTMLElement>(':scope > .term') ?? [])]
    all[all.indexOf(event.currentTarget) + step]?.focus()
  }
  return (
    <>
      <span
        ref={at}
        role="button"
        tabIndex={isStop ? 0 : -1}
        className="term"
        data-term={term}
        aria-expanded={open}
        onClick={() => setOpen(!open)}
        onKeyDown={onKey}
      >
        {shown}
      </span>
      {open && known && <Explanation of={at} term={known} onClose={() => setOpen(false)} />}
    </>
  )
}
