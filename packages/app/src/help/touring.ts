import { useSyncExternalStore } from 'react'
import { demoDoor } from '../demo-doors.ts'
import type { DoorId } from '../store/contract.ts'
import { doors } from '../store/doors.ts'

/** The tour on this device. Kept beside the preferences, so that a page that was closed in the middle of it knows whose copy stands there. */
export interface Touring {
  /** It was offered and taken or turned down. */
  readonly known: boolean
  /** The copy that it works on, while it runs. */
  readonly door: DoorId | undefined
  /** Which stop, counted from 0. */
  readonly stop: number
}

const KEY = 'sillsight.tour'
const DOOR = 'loading-door'
const listeners = new Set<() => void>()
let current: Touring = read()

function read(): Touring {
  const fresh: Touring = { known: false, door: undefined, stop: 0 }
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Record<keyof Touring, unknown>>
    return {
      known: kept.known === true,
      door: typeof kept.door === 'string' ? (kept.door as DoorId) : undefined,
      stop: Number.isInteger(kept.stop) ? (kept.stop as number) : 0,
    }
  } catch {
    return fresh // no storage, or somebody wrote into it
  }
}

function set(change: Partial<Touring>): void {
  current = { ...current, ...change }
  try {
    localStorage.setItem(KEY, JSON.stringify(current))
  } catch {
    // known for this visit only
  }
  for (const listener of listeners) listener()
}

export function useTouring(): Touring {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    () => current,
  )
}

/**
 * Begins on a fresh copy of a demonstration door; one that was left standing goes.
 *
 * @param said how the reader's language calls the things of that door
 */
export async function startTour(said: (text: string) => string): Promise<DoorId> {
  endTour('throw-away')
  const file = await demoDoor(DOOR, said)
  const door = await doors.make(file, { deed: 'imported', name: file.name ?? DOOR })
  door.close()
  set({ known: true, door: door.id, stop: 0 })
  return door.id
}

export function toStop(stop: number): void {
  set({ stop })
}

export function turnDownTour(): void {
  set({ known: true })
}

/** @param copy what becomes of the door that it worked on */
export function endTour(copy: 'throw-away' | 'keep'): void {
  const { door } = current
  if (door === undefined) return
  set({ door: undefined, stop: 0 })
  if (copy === 'throw-away') void doors.throwAway(door)
}
