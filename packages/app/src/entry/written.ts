import { type ChangeEvent, useEffect, useRef, useState } from 'react'

/**
 * Text that is being written. It is given when its field is left, and when the page goes out of sight: a phone may close it there.
 *
 * @param onKeep is given what was written, where that is something else
 */
export function useWritten(kept: string, onKeep: (text: string) => void) {
  const [text, setText] = useState<string>()
  const keep = () => {
    if (text !== undefined && text !== kept) onKeep(text)
    setText(undefined)
  }
  useWhenHidden(keep)
  return {
    value: text ?? kept,
    onChange: (event: ChangeEvent<HTMLInputElement | HTMLTextAreaElement>) => setText(event.target.value),
    onBlur: keep,
    /** As it was before. */
    leave: () => setText(undefined),
  }
}

/** Keeps what is being written when the page goes out of sight. */
export function useWhenHidden(keep: () => void): void {
  const latest = useRef(keep)
  useEffect(() => {
    latest.current = keep
  })
  useEffect(() => {
    const look = () => document.visibilityState === 'hidden' && latest.current()
    document.addEventListener('visibilitychange', look)
    return () => document.removeEventListener('visibilitychange', look)
  }, [])
}
