import { Fragment, type ReactNode } from 'react'
import { Explained } from '../help/explained.tsx'

/**
 * A sentence of a catalogue with figures in it: `{width}` stands where the figure goes, in whatever order a language needs. Words of the
 * trade in it are explained where they stand.
 */
export function Sentence({ text, figures }: { readonly text: string; readonly figures: Readonly<Record<string, ReactNode>> }) {
  const pieces = text.split(/(\{\w+\})/)
  return (
    <>
      {pieces.map((piece, i) => {
        const name = /^\{(\w+)\}$/.exec(piece)?.[1]
        // biome-ignore lint/suspicious/noArrayIndexKey: the pieces of one sentence never change their order
        return <Fragment key={i}>{name === undefined ? <Explained text={piece} after={pieces.slice(0, i)} /> : figures[name]}</Fragment>
      })}
    </>
  )
}
