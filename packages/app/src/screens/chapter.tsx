import { type ReactNode, Suspense, useState } from 'react'
import { useIsBegun } from '../entry/begun.ts'
import { Explained } from '../help/explained.tsx'
import { useWords } from '../words/words.ts'
import { anchorOf } from './group.tsx'

interface Props {
  readonly title: string
  /** Places of the door file that are entered in it; the first names it. */
  readonly holds: readonly string[]
  /** How far it is known, beside its title: read without opening it. */
  readonly said: string
  /** Belongs to one thing of a group, and not to the sheet. */
  readonly isInner?: boolean
  readonly children: ReactNode
}

/** Sentences that belong together and are not needed at first: what is known of them stands beside the title, the rest comes when it is opened. */
export function Chapter({ title, holds, said, isInner = false, children }: Props) {
  const words = useWords()
  const [wasBegun] = useState(useIsBegun(holds)) // what somebody had begun in it is found again without looking for it
  const [open, setOpen] = useState(wasBegun)
  return (
    <details
      className={isInner ? 'chapter inner' : 'group chapter'}
      id={anchorOf(holds[0] ?? title)}
      data-holds={holds.join(' ')}
      open={wasBegun}
      onToggle={({ currentTarget }) => setOpen(currentTarget.open)}
    >
      <summary>
        {isInner ? <h3>{title}</h3> : <h2>{title}</h2>}
        <span>{said}</span>
      </summary>
      {open && (
        <Suspense
          fallback={
            <p className="quiet" data-coming>
              {words.loading}
            </p>
          }
        >
          {children}
        </Suspense>
      )}
    </details>
  )
}

/** What somebody should know before filling in what follows. */
export function Lead({ text }: { readonly text: string }) {
  return (
    <p className="quiet">
      <Explained text={text} />
    </p>
  )
}
