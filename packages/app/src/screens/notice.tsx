import type { ReactNode } from 'react'

interface NoticeProps {
  readonly said: string
  /** One of several on a small screen: a line that opens, or few words of the work would be left. */
  readonly isFolded: boolean
  readonly isAlert?: boolean
  readonly isGroup?: boolean
  /** What can be done about it. */
  readonly children: ReactNode
}

/** What must be known before going on, and what can be done about it. */
export function Notice({ said, isFolded, isAlert = false, isGroup = false, children }: NoticeProps) {
  const content = isFolded ? (
    <details className="notice-line">
      <summary>{said}</summary>
      {children}
    </details>
  ) : (
    <>
      <p>{said}</p>
      {children}
    </>
  )
  if (isGroup)
    return (
      <div className="notice" role="group" aria-label={said}>
        {content}
      </div>
    )
  return (
    <div className="notice" role={isAlert ? 'alert' : undefined}>
      {content}
    </div>
  )
}
