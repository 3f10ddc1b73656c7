import type { ControlCycle, Drive } from '../model/traffic.ts'
import { type Instant, type Span, timeAt } from './output.ts'

/**
 * How long before a closing no output has forbidden it, as far as the control's cycle says so. Nothing is concluded from what nobody said: then a
 * closing may begin in every instant in which no output forbids it.
 */
export interface Quiet {
  /** From the command until the leaf moves. */
  readonly warning_s: number
  /** An output during the warning calls the closing off. */
  readonly cancels: boolean
  /** From the last time that an output let go to a command; undefined where a command may be given in any instant. */
  readonly beforeCommand_s: number | undefined
}

export const NO_QUIET: Quiet = { warning_s: 0, cancels: false, beforeCommand_s: undefined }

/** What a cycle promises of every closing, attempts after a reversal included. */
export function quietOf({ cycle, holdOpen_s }: Pick<Drive, 'cycle' | 'holdOpen_s'>): Quiet {
  if (cycle === undefined || startsWhileHeld(cycle)) return NO_QUIET
  const { closesOnlyByTimer, holdOpenFrom, preWarning_s = 0, outputInWarning } = cycle
  const beforeCommand_s = closesOnlyByTimer !== true ? undefined : holdOpenFrom === 'clear' ? shortestPause_s(cycle, holdOpen_s) : 0
  return { warning_s: preWarning_s, cancels: outputInWarning === 'cancels', beforeCommand_s }
}

/** An attempt after a reversal begins though an output forbids closing, and is stopped at once. */
export function startsWhileHeld({ attempts = 0, attemptWhileHeld }: ControlCycle): boolean {
  return attempts > 0 && attemptWhileHeld === 'starts'
}

function shortestPause_s({ attempts = 0, attemptPause_s }: ControlCycle, holdOpen_s = 0): number {
  return attempts > 0 && attemptPause_s !== undefined ? Math.min(holdOpen_s, attemptPause_s) : holdOpen_s
}

/** The same after a span that lasts for so long: through one that is shorter than the warning a command can be on its way that was given before it. */
export function quietAfter_s(quiet: Quiet, spanLasts_s: number): number {
  return isOutlasted(quiet, spanLasts_s) ? 0 : fullQuiet_s(quiet)
}

function isOutlasted({ warning_s, cancels }: Quiet, spanLasts_s: number): boolean {
  return !cancels && spanLasts_s < warning_s
}

/** From the end of a span to the earliest closing that is commanded after it. */
function fullQuiet_s({ warning_s, cancels, beforeCommand_s }: Quiet): number {
  if (beforeCommand_s === undefined) return cancels ? warning_s : 0
  return warning_s + beforeCommand_s
}

/** Closings begin after each of some instants and what is to pass after it, and up to another instant. */
export interface Start {
  readonly notBefore: readonly { readonly at: Instant; readonly quiet_s: number }[]
  readonly until?: Instant | undefined
}

/**
 * When closings may begin after all of some spans and before the next one, at any slowness of a range in which the spans are the same: commanded after the
 * last of them, or before so many of the last ones as the warning outlasts together.
 */
export function startsAfter(spans: readonly Span[], quiet: Quiet, from: number, to: number): readonly Start[] {
  const quiet_s = fullQuiet_s(quiet)
  const last = spans[spans.length - 1]
  if (last === undefined) return [{ notBefore: [] }]
  const starts: Start[] = [{ notBefore: [{ at: last.off, quiet_s }] }]
  if (quiet_s === 0) return starts
  for (let m = spans.length - 1; m >= 0; m--) {
    const { on } = spans[m] as Span
    if (!isOutlasted(quiet, leastLength_s({ on, off: last.off }, from, to))) break
    const before = spans[m - 1]
    const notBefore = [{ at: last.off, quiet_s: 0 }, ...(before ? [{ at: before.off, quiet_s }] : [])]
    starts.push({ notBefore, until: { ...on, after_s: on.after_s + quiet.warning_s } })
  }
  return starts
}

/** How long a span lasts at the least, over a range of slownesses in which it stays the same one: it is straight in the slowness. */
function leastLength_s({ on, off }: Pick<Span, 'on' | 'off'>, from: number, to: number): number {
  return Math.min(timeAt(off, from) - timeAt(on, from), timeAt(off, to) - timeAt(on, to))
}
