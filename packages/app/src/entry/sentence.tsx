import { Fragment, type ReactNode } from 'react'
import { Explained } from '../help/explained.tsx'

/** What ends a clause right behind a figure. */
const CLOSING = /^[.,:;)]+/

/**
 * A sentence of a catalogue with figures in it: `{width}` stands where the figure goes, in whatever order a language needs. Words of the
 * trade in it are explained where they stand. A full stop or comma stays on the line of the figure before it.
 */
export function Sentence({ text, figures }: { readonly text: string; readonly figures: Readonly<Record<string, ReactNode>> }) {
  const pieces = text.split(/(\{\w+\})/)
  const nameOf = (piece: string | undefined) => /^\{(\w+)\}$/.exec(piece ?? '')?.[1]
  return (
    <>
      {pieces.map((piece, i) => {
        const name = nameOf(piece)
        const closing = CLOSING.exec(pieces[i + 1] ?? '')?.[0]
        const rest = nameOf(pieces[i - 1]) === undefined ? piece : piece.replace(CLOSING, '')
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: the pieces of one sentence never change their order
          <Fragment key={i}>
            {name === undefined ? (
              <Explained text={rest} after={pieces.slice(0, i)} />
            ) : closing === undefined ? (
              figures[name]
            ) : (
              <span className="closed">
                {figures[name]}
                {closing}
              </span>
            )}
          </Fragment>
        )
      })}
    </>
  )
}
