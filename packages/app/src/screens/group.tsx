import type { ReactNode } from 'react'
import { useWords } from '../words/words.ts'
import { Fold } from './fold.tsx'
import { useMissingIn } from './lacking.ts'
import { partOf } from './lead.ts'

interface Props {
  readonly title: string
  /** Places of the door file that are entered in it; the first names it. */
  readonly holds: readonly string[]
  /** What is known of it, read while it is folded. */
  readonly said: string
  readonly isFirst?: boolean
  readonly children: ReactNode
}

/** Sentences that belong together, under a heading; folded, the heading says what is known of them and how much is missing. */
export function Group({ title, holds, said, isFirst = false, children }: Props) {
  const [name = title] = holds
  return (
    <Fold
      {...{ name, holds, isFirst }}
      among={partOf(name)}
      className="group"
      isWide
      head={<FoldHead title={title} holds={holds} said={said} />}
    >
      {() => children}
    </Fold>
  )
}

export function FoldHead({ title, holds, said }: Pick<Props, 'title' | 'holds' | 'said'>) {
  const { chapters } = useWords()
  const missing = useMissingIn(holds)
  return (
    <>
      <h2>{title}</h2>
      <span className="fold-said">{said}</span>
      {missing > 0 && <strong className="fold-missing">{chapters.missing(missing)}</strong>}
    </>
  )
}
