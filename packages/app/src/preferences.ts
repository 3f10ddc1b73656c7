import type { Units } from '@sillsight/report'
import { useSyncExternalStore } from 'react'

/** What this device shows things like. Not part of any door. */
export interface Preferences {
  readonly theme: 'paper' | 'sun' | 'dark'
  readonly units: Units
  readonly language: 'en' | 'de'
}

const KEY = 'sillsight.preferences'
const listeners = new Set<() => void>()
let current: Preferences = read()

function read(): Preferences {
  const standard: Preferences = { theme: 'paper', units: 'metric', language: /^de\b/.test(navigator.language) ? 'de' : 'en' }
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Record<keyof Preferences, unknown>>
    return {
      theme: kept.theme === 'sun' || kept.theme === 'dark' ? kept.theme : 'paper',
      units: kept.units === 'feet-inches' ? 'feet-inches' : 'metric',
      language: kept.language === 'de' || kept.language === 'en' ? kept.language : standard.language,
    }
  } catch {
    return standard // no storage, or somebody wrote into it: preferences are not worth a message
  }
}

export function setPreferences(change: Partial<Preferences>): void {
  current = { ...current, ...change }
  try {
    localStorage.setItem(KEY, JSON.stringify(current))
  } catch {
    // kept for this visit only
  }
  for (const listener of listeners) listener()
}

export function preferences(): Preferences {
  return current
}

export function usePreferences(): Preferences {
  return useSyncExternalStore((listener) => {
    listeners.add(listener)
    return () => listeners.delete(listener)
  }, preferences)
}
