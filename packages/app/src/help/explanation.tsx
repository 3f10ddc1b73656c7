import { type FocusEvent, type RefObject, useEffect, useLayoutEffect, useRef } from 'react'
import type { Term } from '../words/term.ts'

/** Room between the word and its explanation, and between that and the edge of the screen. */
const APART_PX = 6

/**
 * What a word means, right below it, over everything else. It takes the focus, so that it is read aloud; Escape gives the focus back,
 * touching elsewhere or going on with Tab closes it.
 */
export function Explanation({
  of,
  term,
  onClose,
}: {
  readonly of: RefObject<HTMLElement | null>
  readonly term: Term
  readonly onClose: () => void
}) {
  const box = useRef<HTMLSpanElement>(null)
  const close = useRef(onClose)
  close.current = onClose
  useLayoutEffect(() => {
    const [element, word] = [box.current, of.current]
    if (!element || !word) return
    element.showPopover?.() // where a browser has none it lies fixed over the sheet all the same
    const place = () => put(element, word)
    place()
    element.focus({ preventScroll: true })
    window.addEventListener('scroll', place, { capture: true, passive: true })
    window.addEventListener('resize', place)
    return () => {
      window.removeEventListener('scroll', place, { capture: true })
      window.removeEventListener('resize', place)
    }
  }, [of])
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return
      event.stopPropagation() // a sheet below it stays
      event.preventDefault()
      of.current?.focus({ preventScroll: true })
      close.current()
    }
    const onTouch = ({ target }: PointerEvent) => {
      if (target instanceof Node && !box.current?.contains(target) && !of.current?.contains(target)) close.current()
    }
    document.addEventListener('keydown', onKey, true)
    document.addEventListener('pointerdown', onTouch, true)
    return () => {
      document.removeEventListener('keydown', onKey, true)
      document.removeEventListener('pointerdown', onTouch, true)
    }
  }, [of])
  const onBlur = ({ relatedTarget }: FocusEvent) => {
    if (relatedTarget instanceof Node && !of.current?.contains(relatedTarget)) onClose()
  }
  return (
    <span ref={box} popover="manual" role="note" aria-label={term.word} tabIndex={-1} className="explanation" onBlur={onBlur}>
      <strong>{term.word}</strong> {term.says}
    </span>
  )
}

/** Below the word, or above it where there is no room below; never over the edge. */
function put(box: HTMLElement, word: HTMLElement): void {
  const at = word.getClientRects()[0] ?? word.getBoundingClientRect()
  const { width, height } = box.getBoundingClientRect()
  const fitsBelow = at.bottom + APART_PX + height <= innerHeight
  const left = Math.max(APART_PX, Math.min(at.left, document.documentElement.clientWidth - width - APART_PX))
  const top = fitsBelow ? at.bottom + APART_PX : Math.max(APART_PX, at.top - APART_PX - height)
  box.style.left = `${left}px`
  box.style.top = `${top}px`
}
