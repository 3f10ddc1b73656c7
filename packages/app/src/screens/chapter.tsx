import { type ReactNode, Suspense } from 'react'
import { Explained } from '../help/explained.tsx'
import type { Part } from '../parts.ts'
import { useWords } from '../words/words.ts'
import { Fold } from './fold.tsx'
import { FoldHead } from './group.tsx'
import { partOf } from './lead.ts'

interface Props {
  readonly title: string
  /** Places of the door file that are entered in it; the first names it. */
  readonly holds: readonly string[]
  /** How far it is known, beside its title: read without opening it. */
  readonly said: string
  /** Belongs to one thing of a group, and not to the sheet. */
  readonly isInner?: boolean
  /** The part of the job whose sheet it stands on, where that does not follow from what is entered in it. */
  readonly part?: Part
  readonly children: ReactNode
}

/** Sentences that belong together and are not needed at first: what is known of them stands beside the title, the rest comes when it is opened. */
export function Chapter({ title, holds, said, isInner = false, part, children }: Props) {
  const words = useWords()
  const [name = title] = holds
  return (
    <Fold
      {...{ name, holds }}
      among={`${part ?? partOf(name)}${isInner ? ' inner' : ''}`}
      className={isInner ? 'chapter inner' : 'group chapter'}
      head={
        isInner ? (
          <>
            <h3>{title}</h3>
            <span>{said}</span>
          </>
        ) : (
          <FoldHead title={title} holds={holds} said={said} />
        )
      }
      isWide={false}
      isFirst={false}
    >
      {(open) =>
        open && (
          <Suspense
            fallback={
              <p className="quiet" data-coming>
                {words.loading}
              </p>
            }
          >
            {children}
          </Suspense>
        )
      }
    </Fold>
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
