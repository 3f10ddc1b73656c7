import { type ReactNode, type RefObject, useEffect, useState } from 'react'

interface Props {
  readonly label: string
  /** What is said where the drawing goes on. */
  readonly more: string
  readonly room: RefObject<HTMLDivElement | null>
  readonly children: ReactNode
}

/** A drawing that may be wider than its room: it is pushed sideways there, and each edge beyond which it goes on is torn off, so that this is seen. */
export function Wide({ label, more, room, children }: Props) {
  const [goesOn, setGoesOn] = useState({ before: false, after: false })
  useEffect(() => {
    const box = room.current
    if (!box) return
    const look = () => {
      const [at, left] = [Math.abs(box.scrollLeft), box.scrollWidth - box.clientWidth]
      setGoesOn({ before: at > 1, after: at < left - 1 })
    }
    look()
    box.addEventListener('scroll', look, { passive: true })
    const watch = new ResizeObserver(look)
    for (const each of [box, ...box.children]) watch.observe(each)
    return () => {
      box.removeEventListener('scroll', look)
      watch.disconnect()
    }
  }, [room])
  return (
    <>
      <div className="wide" data-before={goesOn.before || undefined} data-after={goesOn.after || undefined}>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by the keyboard */}
        <div className="wiring-drawing" ref={room} tabIndex={0} role="group" aria-label={label}>
          {children}
        </div>
      </div>
      {(goesOn.before || goesOn.after) && <p className="wide-more">{more}</p>}
    </>
  )
}
