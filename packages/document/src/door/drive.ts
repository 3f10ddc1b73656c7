import { type ControlCycle, closingFrom, type Drive, type Sensor } from '@sillsight/engine'
import type { Remarks } from '../remarks.ts'
import type { Survey } from '../schema/survey.ts'
import { shown } from '../shown.ts'
import { turningWay_mm } from './hinged.ts'

type FileDrive = NonNullable<Survey['drive']>

/** The drive in mm, as far as somebody said; undefined where the file says nothing. */
export function driveOf(survey: Survey, remarks: Remarks): Drive | undefined {
  const { drive, opening, leaf } = survey
  if (drive === undefined) return undefined
  const way_mm = turningWay_mm(survey) ?? (leaf === undefined || leaf.travel === 'down' ? opening.height_mm : opening.width_mm)
  const read: Drive = {
    closeSpeed_mm_per_s: inMm(drive.closeSpeed_m_per_s),
    closeAccel_mm_per_s2: inMm(drive.closeAccel_m_per_s2),
    closeJerk_mm_per_s3: inMm(drive.closeJerk_m_per_s3),
    stopDelay_s: drive.stopDelay_s,
    stopDecel_mm_per_s2: inMm(drive.stopDecel_m_per_s2),
    stoppingCurve: (drive.stoppingCurve ?? []).map(([at_s, reading_mm]) => ({ at_s, way_mm: reading_mm })),
    ...(drive.stopTimes && drive.stopTimes.readings_s.length > 0 ? { stopTimes: stopTimesOf(drive.stopTimes) } : {}),
    afterStop: drive.afterStop,
    reverseDelay_s: drive.reverseDelay_s,
    openSpeed_mm_per_s: inMm(drive.openSpeed_m_per_s),
    openAccel_mm_per_s2: inMm(drive.openAccel_m_per_s2),
    openDelay_s: drive.openDelay_s,
    holdOpen_s: drive.holdOpen_s,
    partialOpenings_mm: drive.partialOpenings_mm ?? [],
    movingMass_kg: drive.movingMass_kg,
    ...(drive.brake ? { brake: drive.brake, coastDecel_mm_per_s2: coastDecel(drive) } : {}),
    ...(drive.cycle ? { cycle: cycleOf(drive.cycle) } : {}),
  }
  checkSlowing(drive, remarks)
  checkCycle(drive, remarks)
  checkCurve(read.stoppingCurve, remarks)
  for (const [i, partial_mm] of read.partialOpenings_mm.entries())
    if (partial_mm > way_mm)
      remarks.issue({
        code: 'contradiction',
        path: `survey/drive/partialOpenings_mm/${i}`,
        expected: `at most the way of the leaf (${way_mm})`,
        got: shown(partial_mm),
      })
  checkDelay(read, way_mm, remarks)
  return read
}

function stopTimesOf({ readings_s, share_percent, confidence_percent }: NonNullable<NonNullable<Survey['drive']>['stopTimes']>) {
  const shareOf = (percent: number | undefined) => (percent === undefined ? undefined : percent / 100)
  return { readings_s, share: shareOf(share_percent), confidence: shareOf(confidence_percent) }
}

/** Longer between two readings nobody knows what the leaf did. */
const LONGEST_GAP_S = 0.25

function checkCurve(curve: Drive['stoppingCurve'], remarks: Remarks): void {
  let before = { at_s: 0, way_mm: 0 }
  for (const [i, { at_s, way_mm }] of curve.entries()) {
    const path = `survey/drive/stoppingCurve/${i}`
    const wrong = (expected: string, got: number) => remarks.issue({ code: 'contradiction', path, expected, got: shown(got) })
    if (at_s <= before.at_s) wrong(`a time after the reading before (${before.at_s} s)`, at_s)
    else if (at_s - before.at_s > LONGEST_GAP_S)
      wrong(`a time at most ${LONGEST_GAP_S} s after the reading before (${before.at_s} s)`, at_s)
    if (way_mm < before.way_mm) wrong(`a way of at least that of the reading before (${before.way_mm} mm)`, way_mm)
    before = { at_s, way_mm }
  }
}

/** A leaf that is shut before its control answers cannot be stopped at all: that is a slip of units, or not a door. */
function checkDelay({ closeSpeed_mm_per_s: speed, closeAccel_mm_per_s2: accel, stopDelay_s }: Drive, way: number, remarks: Remarks): void {
  if (speed === undefined || accel === undefined || stopDelay_s === undefined) return
  const close = { speed, accel }
  const closing = closingFrom({ way, close, open: close, stopDelay_s, stopDecel: accel, reverseDelay_s: undefined }, way)
  if (stopDelay_s >= closing.profile.end_s)
    remarks.issue({
      code: 'contradiction',
      path: 'survey/drive/stopDelay_s',
      expected: `less than the whole closing takes (${closing.profile.end_s.toFixed(2)} s)`,
      got: shown(stopDelay_s),
    })
}

/** From a measured way at full speed: v^2 / (2 s), as if friction were the same all along. */
function coastDecel({ coastDecel_m_per_s2, coastWay_mm, closeSpeed_m_per_s }: FileDrive): number | undefined {
  if (coastDecel_m_per_s2 !== undefined || coastWay_mm === undefined || closeSpeed_m_per_s === undefined) return inMm(coastDecel_m_per_s2)
  const speed = closeSpeed_m_per_s * 1000
  return (speed * speed) / (2 * coastWay_mm)
}

function cycleOf({ closesOnlyByTimer, ...cycle }: NonNullable<FileDrive['cycle']>): ControlCycle {
  return {
    holdOpenFrom: cycle.holdOpenFrom,
    closesOnlyByTimer: closesOnlyByTimer === undefined ? undefined : closesOnlyByTimer === 'yes',
    preWarning_s: cycle.preWarning_s,
    outputInWarning: cycle.outputInWarning,
    attempts: cycle.attempts,
    attemptPause_s: cycle.attemptPause_s,
    attemptWhileHeld: cycle.attemptWhileHeld,
    afterAttempts: cycle.afterAttempts,
  }
}

/** A leaf without a brake is slowed by friction alone, one with a brake by that: a figure of the other kind is a slip. */
function checkSlowing({ brake, stopDecel_m_per_s2, coastDecel_m_per_s2, coastWay_mm }: FileDrive, remarks: Remarks): void {
  const wrong = (name: string, expected: string, got: number | undefined) => {
    if (got !== undefined) remarks.issue({ code: 'contradiction', path: `survey/drive/${name}`, expected, got: shown(got) })
  }
  if (brake === 'none')
    wrong('stopDecel_m_per_s2', 'nothing, as brake is "none" (coastDecel_m_per_s2 or coastWay_mm instead)', stopDecel_m_per_s2)
  else {
    wrong('coastDecel_m_per_s2', 'nothing, unless brake is "none"', coastDecel_m_per_s2)
    wrong('coastWay_mm', 'nothing, unless brake is "none"', coastWay_mm)
  }
  if (coastDecel_m_per_s2 !== undefined) wrong('coastWay_mm', 'nothing beside coastDecel_m_per_s2, which says the same', coastWay_mm)
}

function checkCycle({ cycle, holdOpen_s, afterStop, partialOpenings_mm = [] }: FileDrive, remarks: Remarks): void {
  if (cycle === undefined) return
  const { attempts = 0, attemptPause_s, attemptWhileHeld, afterAttempts, outputInWarning, preWarning_s = 0, closesOnlyByTimer } = cycle
  const wrong = (name: string, expected: string, got: number | string) =>
    remarks.issue({ code: 'contradiction', path: `survey/drive/cycle/${name}`, expected, got: shown(got) })
  if (attempts > 0 && afterStop === 'stay') wrong('attempts', '0, as the leaf stays after a stop', attempts)
  if (attempts === 0 && attemptPause_s !== undefined) wrong('attemptPause_s', 'nothing without attempts', attemptPause_s)
  if (attempts === 0 && attemptWhileHeld !== undefined) wrong('attemptWhileHeld', 'nothing without attempts', attemptWhileHeld)
  if (attemptWhileHeld === 'starts' && outputInWarning === 'cancels' && preWarning_s > 0)
    wrong('attemptWhileHeld', '"waits", as an output in the warning calls the closing off', attemptWhileHeld)
  if (afterAttempts === 'partial' && partialOpenings_mm.length === 0)
    wrong('afterAttempts', '"stays-open", as there is no partial opening', afterAttempts)
  if (closesOnlyByTimer === 'yes' && holdOpen_s === undefined)
    wrong('closesOnlyByTimer', '"no", or the hold-open time (survey/drive/holdOpen_s)', closesOnlyByTimer)
}

/** A hold-open time that starts anew with each output is over before the output has answered, if it is the shorter: a slip of units, or no door. */
export function checkHoldOpen(drive: Drive | undefined, sensors: readonly Sensor[], remarks: Remarks): void {
  const { holdOpen_s, cycle } = drive ?? {}
  if (cycle?.holdOpenFrom !== 'clear') return
  const fields = sensors.flatMap((sensor) => (sensor.kind === 'zone-only' ? [] : sensor.fields))
  const slowest_s = Math.max(0, ...fields.map((field) => (field.function === 'presence' ? (field.response_s ?? 0) : 0)))
  const check = (path: string, got_s: number | undefined) => {
    if (got_s !== undefined && got_s < slowest_s)
      remarks.issue({
        code: 'contradiction',
        path,
        expected: `at least the response of the slowest presence output (${slowest_s} s)`,
        got: shown(got_s),
      })
  }
  check('survey/drive/holdOpen_s', holdOpen_s)
  check('survey/drive/cycle/attemptPause_s', cycle.attemptPause_s)
}

export function inMm(metres: number | undefined): number | undefined {
  return metres === undefined ? undefined : metres * 1000
}
