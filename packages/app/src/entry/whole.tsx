import { useState } from 'react'
import { AskedFigure } from './asked-figure.tsx'
import type { Kind } from './kinds.ts'
import { Sentence } from './sentence.tsx'

export interface Lacking {
  readonly label: string
  readonly kind?: Kind
  readonly signed?: boolean
  readonly question?: (value: number) => string | undefined
}

/** A sentence whose figures are not in the door file yet: they come in together, when the last of them is entered. None is made up meanwhile. */
export function Whole(props: {
  readonly text: string
  /** The place that they come to stand in. */
  readonly at?: string
  readonly figures: Readonly<Record<string, Lacking>>
  readonly onWhole: (values: Readonly<Record<string, number>>) => void
}) {
  const { text, at, figures, onWhole } = props
  const [values, setValues] = useState<Readonly<Record<string, number>>>({})
  const enter = (name: string, value: number) => {
    const next = { ...values, [name]: value }
    if (Object.keys(figures).every((each) => next[each] !== undefined)) onWhole(next)
    else setValues(next)
  }
  return (
    <p>
      <Sentence
        text={text}
        figures={Object.fromEntries(
          Object.entries(figures).map(([name, { label, kind = 'length', signed = false, question }]) => [
            name,
            <AskedFigure
              key={name}
              at={at === undefined ? undefined : `${at}/${name}`}
              asked={{ label, kind, signed, question, value: values[name], onEnter: (value) => enter(name, value) }}
            />,
          ]),
        )}
      />
    </p>
  )
}
