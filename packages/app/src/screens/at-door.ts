import { createContext, useContext } from 'react'
import type { Answers } from '../judging/judging.ts'
import type { DoorSnapshot, Draft, OpenDoor } from '../store/contract.ts'

/** What every part of the job is given: the open door, how it stands now, and what is known of its findings. */
export interface AtDoor {
  readonly door: OpenDoor
  readonly snapshot: DoorSnapshot
  readonly answers: Answers
  /** Judges and draws a change that is not kept, as while something is dragged; undefined ends it. */
  readonly preview: (change: ((draft: Draft) => void) | undefined) => void
}

export const AtDoorContext = createContext<AtDoor | undefined>(undefined)

/** Apart from the rest, for it changes twice with every step of a drag. */
export const UpToDateContext = createContext(false)

/** Whether `answers.shown` is an answer about the door as it stands now. */
export function useUpToDate(): boolean {
  return useContext(UpToDateContext)
}

/** @throws outside of a door's screen */
export function useDoor(): AtDoor {
  const found = useContext(AtDoorContext)
  if (!found) throw new Error('useDoor must be called below a door screen')
  return found
}
