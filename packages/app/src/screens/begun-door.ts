/** The first values of a door that is not made yet. Kept on this device, for a phone may close a page that somebody has turned away from. */
export interface BegunDoor {
  readonly lengths: Partial<Record<LengthName, EnteredLength>>
  readonly name: string
  readonly side: string
  /** Id of a sensor of the program; empty where none was chosen. */
  readonly sensor: string
}

export const LENGTHS = ['width', 'height', 'mounting', 'offset'] as const
export type LengthName = (typeof LENGTHS)[number]
export interface EnteredLength {
  readonly mm: number
  readonly typed: string
}

const KEY = 'sillsight.begun'
const NOTHING: BegunDoor = { lengths: {}, name: '', side: '', sensor: '' }

/** What was begun, or nothing: what stands there may have been written by anybody, so each value is looked at. */
export function begunDoor(): BegunDoor {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Record<keyof BegunDoor, unknown>>
    const lengths = Object.entries(typeof kept.lengths === 'object' && kept.lengths !== null ? kept.lengths : {})
    return {
      lengths: Object.fromEntries(lengths.filter(([key, value]) => LENGTHS.some((each) => each === key) && isLength(value))),
      name: line(kept.name, 200),
      side: line(kept.side, 40),
      sensor: line(kept.sensor, 100),
    }
  } catch {
    return NOTHING // no storage
  }
}

export function keepBegun(begun: BegunDoor): void {
  try {
    if (JSON.stringify(begun) === JSON.stringify(NOTHING)) localStorage.removeItem(KEY)
    else localStorage.setItem(KEY, JSON.stringify(begun))
  } catch {
    // kept for this visit only
  }
}

export function forgetBegun(): void {
  keepBegun(NOTHING)
}

function isLength(value: unknown): value is EnteredLength {
  if (typeof value !== 'object' || value === null) return false
  const { mm, typed } = value as Partial<Record<keyof EnteredLength, unknown>>
  return typeof mm === 'number' && Number.isFinite(mm) && typeof typed === 'string' && typed.length <= 60
}

function line(value: unknown, most: number): string {
  return typeof value === 'string' ? value.slice(0, most) : ''
}
