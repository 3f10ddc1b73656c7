/**
 * One body and one closing over time. Seconds since the leaf began to close (before it: negative), doorway frame, mm. It carries what a drawing of it
 * needs and nothing that a verdict rests on.
 */
export interface Course {
  readonly body: string
  readonly posture: number
  readonly yaw_rad: number
  readonly x_mm: number
  /** Side from which it comes. */
  readonly from: 'a' | 'b'
  /** Way from which the leaf begins to close. */
  readonly opening_mm: number
  /** The body is met where the edge has less than this still to go. */
  readonly clear_mm: number
  /** Way of the edge still to go. Never empty; `readingAt` reads it. */
  readonly leaf: readonly Reading[]
  /** Place of the body's middle along y. Never empty. */
  readonly place: readonly Reading[]
  /** The body comes into the leaf's plane and has left it; absent where it stands there all the while, or for good. */
  readonly enters_s?: number
  readonly leaves_s?: number
  /** Fields that see it on its way, as `<sensor>/<field>`: when it is visible, and when the output forbids the closing. */
  readonly fields: readonly { readonly field: string; readonly visible: readonly TimeSpan[]; readonly output: readonly TimeSpan[] }[]
  /** The closing is commanded and the warning begins, before 0; absent where the control gives none. */
  readonly warns_s?: number
  /** Instants of the leaf; absent where it does not come to that. */
  readonly brake_s?: number
  readonly rest_s?: number
  readonly opens_s?: number
  /** Contact, or where they are nearest. */
  readonly at_s: number
  readonly isContact: boolean
}

/** Straight between two readings, at rest before the first and after the last. */
export type Reading = readonly [at_s: number, mm: number]

export interface TimeSpan {
  readonly from_s: number
  readonly to_s: number
}

/** What a list of readings says at a time. */
export function readingAt(readings: readonly Reading[], t_s: number): number {
  const after = readings.findIndex(([at_s]) => at_s >= t_s)
  const [b_s, b] = readings[after < 0 ? readings.length - 1 : after] as Reading
  const before = readings[after - 1]
  if (before === undefined || b_s <= before[0]) return b
  return before[1] + ((b - before[1]) * (t_s - before[0])) / (b_s - before[0])
}

/** From the first to the last instant that a course says anything about. */
export function courseEnds({ leaf, place }: Course): TimeSpan {
  const times = [...leaf, ...place].map(([at_s]) => at_s)
  return { from_s: Math.min(...times), to_s: Math.max(...times) }
}
