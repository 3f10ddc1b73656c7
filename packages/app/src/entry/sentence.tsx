import { Fragment, type ReactNode } from 'react'

/** A sentence of a catalogue with figures in it: `{width}` stands where the figure goes, in whatever order a language needs. */
export function Sentence({ text, figures }: { readonly text: string; readonly figures: Readonly<Record<string, ReactNode>> }) {
  return (
    <>
      {text.split(/(\{\w+\})/).map((piece, i) => {
        const name = /^\{(\w+)\}$/.exec(piece)?.[1]
        // biome-ignore lint/suspicious/noArrayIndexKey: the pieces of one sentence never change their order
        return <Fragment key={i}>{name === undefined ? piece : figures[name]}</Fragment>
      })}
    </>
  )
}
