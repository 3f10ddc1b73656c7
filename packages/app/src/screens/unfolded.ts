import { useSyncExternalStore } from 'react'

/** Which fold of a sheet was opened last on a small screen, by sheet; empty where it was closed again. Kept as long as the tab, over reloads. */
type Unfolded = Readonly<Record<string, string>>

const KEY = 'sillsight.unfolded'
const SMALL = '(max-width: 699px)' // as in look.css
const listeners = new Set<() => void>()
let unfolded: Unfolded | undefined

function current(): Unfolded {
  if (unfolded) return unfolded
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(KEY) ?? '{}')
    unfolded = typeof kept === 'object' && kept !== null ? (kept as Unfolded) : {}
  } catch {
    unfolded = {} // no storage, or somebody wrote into it: a fold is not worth a message
  }
  return unfolded
}

function listen(listener: () => void): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

/** The fold of a sheet that is open on a small screen; undefined until one was touched. */
export function useUnfolded(sheet: string): string | undefined {
  return useSyncExternalStore(
    listen,
    () => current()[sheet],
    () => undefined,
  )
}

export function unfold(sheet: string, fold: string): void {
  unfolded = { ...current(), [sheet]: fold }
  try {
    sessionStorage.setItem(KEY, JSON.stringify(unfolded))
  } catch {
    // kept until the next reload only
  }
  for (const listener of listeners) listener()
}

/** Whether so little fits on the screen that a sheet shows one thing at a time. */
export function useIsSmall(): boolean {
  return useSyncExternalStore(
    (listener) => {
      const small = matchMedia(SMALL)
      small.addEventListener('change', listener)
      return () => small.removeEventListener('change', listener)
    },
    () => matchMedia(SMALL).matches,
    () => false,
  )
}
