import type { InputPath } from '../model/source.ts'
import type { Drive } from '../model/traffic.ts'
import { DRIVE } from './paths.ts'

/** How fast a leaf slows down after a stop command, and the entry that says so: braking, or the friction of a drive without a brake. */
export interface Slowing {
  readonly decel_mm_per_s2: number | undefined
  readonly path: InputPath
}

/** A drive that says that it has no brake is never judged by a figure of braking. */
export function slowingOf({ brake, stopDecel_mm_per_s2, coastDecel_mm_per_s2 }: Drive): Slowing {
  return brake === 'none'
    ? { decel_mm_per_s2: coastDecel_mm_per_s2, path: `${DRIVE}/coastDecel_m_per_s2` }
    : { decel_mm_per_s2: stopDecel_mm_per_s2, path: `${DRIVE}/stopDecel_m_per_s2` }
}
