import { type ReactNode, useRef, useState } from 'react'
import { flushSync } from 'react-dom'
import { useIsBegun } from '../entry/begun.ts'
import { useDoor } from './at-door.ts'
import { unfold, useIsSmall, useUnfolded } from './unfolded.ts'

interface Props {
  /** Names it among the folds of its sheet. */
  readonly name: string
  /** Folds of which a small screen shows one at a time. */
  readonly among: string
  readonly className: string
  /** Places of the door file that are entered in it. */
  readonly holds: readonly string[]
  readonly head: ReactNode
  /** How it stands where there is room for all. */
  readonly isWide: boolean
  /** On a small screen the one that is open until another is touched. */
  readonly isFirst: boolean
  readonly children: (open: boolean) => ReactNode
}

/** Folds to one line. A small screen has one open at a time, or one would scroll for ever; which one is kept for the sheet. */
export function Fold({ name, among, className, holds, head, isWide, isFirst, children }: Props) {
  const { door } = useDoor()
  const isSmall = useIsSmall()
  const sheet = `${door.id} ${among}`
  const only = useUnfolded(sheet)
  const [wasBegun] = useState(useIsBegun(holds)) // what somebody had begun in it is found again without looking for it
  const [wide, setWide] = useState(isWide || wasBegun)
  const touched = useRef(false)
  const open = !isSmall ? wide : only === undefined ? isFirst || wasBegun : only === name
  const follow = (fold: HTMLDetailsElement) => {
    if (fold.open === open) return // the screen became another, and nobody touched it
    flushSync(() => {
      if (!isSmall) setWide(fold.open)
      else if (fold.open) unfold(sheet, name)
      else if (only === undefined || only === name) unfold(sheet, '')
    })
    if (touched.current) fold.scrollIntoView({ block: isSmall && fold.open ? 'start' : 'nearest' })
    touched.current = false
  }
  return (
    <details
      className={className}
      data-holds={holds.join(' ')}
      name={isSmall ? sheet : undefined}
      open={open}
      onToggle={({ currentTarget }) => follow(currentTarget)}
    >
      {/* biome-ignore lint/a11y/noStaticElementInteractions: a summary is a button, by keyboard too */}
      <summary
        onClick={() => {
          touched.current = true
        }}
      >
        {head}
      </summary>
      {children(open)}
    </details>
  )
}
