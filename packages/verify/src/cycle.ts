import { type Json, numberAt, own, refuse } from './json.ts'

/** What the control promises of the time before a closing begins. */
export interface Cycle {
  /** Seconds between the command and the motion. */
  readonly warning: number
  /** An output during them calls the closing off. */
  readonly cancels: boolean
  /** Seconds from the last letting go of an output to a command; undefined where a command may be given at any time. */
  readonly pause: number | undefined
}

export const CYCLE_NAMES = [
  'holdOpenFrom',
  'closesOnlyByTimer',
  'preWarning_s',
  'outputInWarning',
  'attempts',
  'attemptPause_s',
  'attemptWhileHeld',
  'afterAttempts', // how far a leaf opens is no matter of being struck
]

/** @param given `survey/drive/cycle` with nothing but the names above, or an empty object */
export function cycleOf(given: Json, drive: Json): Cycle {
  const path = 'survey/drive/cycle'
  const seconds = (name: string) => (own(given, name) === undefined ? undefined : numberAt(own(given, name), `${path}/${name}`, 0))
  const attempts = seconds('attempts') ?? 0
  if (attempts > 0 && own(given, 'attemptWhileHeld') === 'starts')
    refuse('cannot-show', `${path}/attemptWhileHeld`, 'closings that begin while no output forbids them', 'starts')
  const hold = own(given, 'holdOpenFrom') === 'clear' ? numberAt(own(drive, 'holdOpen_s') ?? 0, 'survey/drive/holdOpen_s', 0) : 0
  const pause = attempts > 0 ? Math.min(hold, seconds('attemptPause_s') ?? hold) : hold
  return {
    warning: seconds('preWarning_s') ?? 0,
    cancels: own(given, 'outputInWarning') === 'cancels',
    pause: own(given, 'closesOnlyByTimer') === 'yes' ? pause : undefined,
  }
}

/** How long after the end of a change that lasted so long no closing begins. */
export function waitAfter({ warning, cancels, pause }: Cycle, lasted: number): number {
  if (cancels) return warning + (pause ?? 0)
  return pause !== undefined && lasted >= warning ? warning + pause : 0
}

/** Whether a closing may not begin at a time, for one change from `on` to `off`; each end taken later and sooner by `slack`. */
export function forbids(
  { warning, cancels, pause }: Cycle,
  { on, off }: { readonly on: number; readonly off: number },
  time: number,
  slack: number,
): boolean {
  const within = (from: number, to: number) => from + slack < time && time < to - slack
  if (within(on, off)) return true
  if (cancels) return within(on, off + warning + (pause ?? 0))
  return pause !== undefined && within(on + warning, off + warning + pause)
}
