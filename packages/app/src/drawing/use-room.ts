import { useEffect, useRef, useState } from 'react'

/** One mm of paper on a screen, in CSS px. */
export const PX_PER_MM = 96 / 25.4

/** The size of an element in CSS px, followed as it changes. */
export function useRoom<T extends HTMLElement>(): readonly [
  React.RefObject<T | null>,
  { readonly width: number; readonly height: number },
] {
  const ref = useRef<T>(null)
  const [size, setSize] = useState({ width: 0, height: 0 })
  useEffect(() => {
    const element = ref.current
    if (!element) return
    const watch = new ResizeObserver(([entry]) => {
      if (entry) setSize({ width: Math.floor(entry.contentRect.width), height: Math.floor(entry.contentRect.height) })
    })
    watch.observe(element)
    return () => watch.disconnect()
  }, [])
  return [ref, size]
}
