import type { Step } from '../model/finding.ts'
import type { InputPath } from '../model/source.ts'
import type { Drive } from '../model/traffic.ts'
import { restToRest } from '../motion/profile.ts'
import { toleranceBound } from '../motion/tolerance-bound.ts'
import { quantity, step } from './drafts.ts'
import { DRIVE } from './paths.ts'
import { slowingOf } from './slowing.ts'

/** How long a closing leaf goes on after the stop command, at most; what it was made from, worst first known: readings, a curve, delay and braking. */
export type StopTime =
  | { readonly kind: 'missing'; readonly needs: readonly InputPath[] }
  | {
      readonly kind: 'known'
      readonly stop_s: number
      readonly steps: readonly Step[]
      readonly inputs: readonly InputPath[]
      /** Where it follows from the speed: what a slower leaf would save. */
      readonly model?: { readonly delay_s: number; readonly decel_mm_per_s2: number; readonly peak_mm_per_s: number }
    }

/** Fewer say nothing about their spread. */
export const LEAST_STOPS = 3

const STOP_TIMES = `${DRIVE}/stopTimes`
const CURVE = `${DRIVE}/stoppingCurve`
const LAST = 'time from the stop command to rest'

/** @param way_mm of the whole closing: a short one never reaches the full speed */
export function stopTime(drive: Drive | undefined, way_mm: number): StopTime {
  if (drive === undefined) return { kind: 'missing', needs: [DRIVE] }
  const { stopTimes, stoppingCurve } = drive
  if (stopTimes) return fromReadings(stopTimes)
  const last = stoppingCurve[stoppingCurve.length - 1]
  if (last) {
    const stop = step(LAST, quantity(last.at_s, 's'), 'judge/stop-time', { inputs: [CURVE] }, 'last reading of the stopping curve')
    return { kind: 'known', stop_s: last.at_s, steps: [stop], inputs: [CURVE] }
  }
  return fromModel(drive, way_mm)
}

/** Readings that were begun count instead of everything else: what they lack is asked for, and no figure beside them takes their place. */
function fromReadings({ readings_s, share, confidence }: NonNullable<Drive['stopTimes']>): StopTime {
  const needs: InputPath[] = readings_s.length < LEAST_STOPS ? [`${STOP_TIMES}/readings_s`] : []
  if (share === undefined) needs.push(`${STOP_TIMES}/share_percent`)
  if (confidence === undefined) needs.push(`${STOP_TIMES}/confidence_percent`)
  if (share === undefined || confidence === undefined || needs.length > 0) return { kind: 'missing', needs }
  const { mean, deviation, factor, bound } = toleranceBound(readings_s, share, confidence)
  const by = 'motion/tolerance-bound'
  const inputs = [STOP_TIMES]
  const steps = [
    step('stopping times read', quantity(readings_s.length, '1'), by, { inputs }),
    step('mean of the readings', quantity(mean, 's'), by, { inputs }),
    step('standard deviation of the readings', quantity(deviation, 's'), by, { inputs }, 'sqrt(sum (reading - mean)^2 / (n - 1))'),
    step('share of all stops, in percent', quantity(share * 100, 'percent'), by, { inputs: [`${STOP_TIMES}/share_percent`] }),
    step('confidence, in percent', quantity(confidence * 100, 'percent'), by, { inputs: [`${STOP_TIMES}/confidence_percent`] }),
    step(
      'tolerance factor',
      quantity(factor, '1'),
      by,
      { steps: ['stopping times read'] },
      'quantile of the noncentral t distribution / sqrt(n)',
    ),
    step(
      LAST,
      quantity(bound, 's'),
      by,
      { steps: ['mean of the readings', 'standard deviation of the readings', 'tolerance factor'] },
      'mean + factor * deviation, at least the largest reading',
    ),
  ]
  return { kind: 'known', stop_s: bound, steps, inputs }
}

function fromModel(drive: Drive, way_mm: number): StopTime {
  const { closeSpeed_mm_per_s: speed, closeAccel_mm_per_s2: accel, closeJerk_mm_per_s3: jerk, stopDelay_s } = drive
  const { decel_mm_per_s2: decel, path } = slowingOf(drive)
  const needs: InputPath[] = []
  if (speed === undefined) needs.push(`${DRIVE}/closeSpeed_m_per_s`)
  if (stopDelay_s === undefined) needs.push(`${DRIVE}/stopDelay_s`)
  if (decel === undefined) needs.push(path)
  if (speed === undefined || stopDelay_s === undefined || decel === undefined) return { kind: 'missing', needs }
  // without an acceleration the full speed is taken to be reached, which errs toward a longer stop
  const peak_mm_per_s = accel === undefined ? speed : restToRest(way_mm, { speed, accel, jerk }).peak
  const stop_s = stopDelay_s + peak_mm_per_s / decel
  const inputs = [...['closeSpeed_m_per_s', 'closeAccel_m_per_s2', 'stopDelay_s'].map((name) => `${DRIVE}/${name}`), path]
  const steps = [
    step('fastest closing', quantity(peak_mm_per_s, 'mm_per_s'), 'motion/profile', { inputs: inputs.slice(0, 2) }),
    step(
      LAST,
      quantity(stop_s, 's'),
      'judge/stop-time',
      { inputs: inputs.slice(2), steps: ['fastest closing'] },
      drive.brake === 'none' ? 'delay of the control + fastest closing / coasting' : 'delay of the control + fastest closing / braking',
    ),
  ]
  return { kind: 'known', stop_s, steps, inputs: [DRIVE], model: { delay_s: stopDelay_s, decel_mm_per_s2: decel, peak_mm_per_s } }
}
