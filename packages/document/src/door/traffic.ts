import { type Braking, closingFrom, type Drive, type Lane } from '@sillsight/engine'
import { BOUNDS } from '../bounds.ts'
import type { Remarks } from '../remarks.ts'
import type { Survey } from '../schema/survey.ts'
import { shown, shownText } from '../shown.ts'
import { turningWay_mm } from './hinged.ts'
import { NO_SOURCE } from './sources.ts'
import { reportTwins } from './states.ts'

type FileLane = NonNullable<Survey['lanes']>[number]

const MM = 1000

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
    ...(drive.stopTimes ? { stopTimes: stopTimesOf(drive.stopTimes) } : {}),
    afterStop: drive.afterStop,
    reverseDelay_s: drive.reverseDelay_s,
    openSpeed_mm_per_s: inMm(drive.openSpeed_m_per_s),
    openAccel_mm_per_s2: inMm(drive.openAccel_m_per_s2),
    openDelay_s: drive.openDelay_s,
    holdOpen_s: drive.holdOpen_s,
    partialOpenings_mm: drive.partialOpenings_mm ?? [],
    movingMass_kg: drive.movingMass_kg,
  }
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
  return { readings_s, share: share_percent / 100, confidence: confidence_percent / 100 }
}

function inMm(metres: number | undefined): number | undefined {
  return metres === undefined ? undefined : metres * MM
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

/** The lanes with the bodies that use them: all of the door where a lane names none. */
export function lanesOf({ lanes = [] }: Survey, bodies: readonly string[], remarks: Remarks): readonly Lane[] {
  reportTwins(
    lanes.map((lane) => lane.id),
    (i) => `survey/lanes/${i}/id`,
    remarks,
  )
  return lanes.map((lane, i) => {
    const path = `survey/lanes/${i}`
    checkLane(lane, path, remarks)
    for (const [n, body] of (lane.bodies ?? []).entries())
      if (!bodies.includes(body))
        remarks.issue({
          code: 'unknown-id',
          path: `${path}/bodies/${n}`,
          expected: `a body (${bodies.slice(0, 10).map(shownText).join(', ')})`,
          got: shownText(body),
        })
    return {
      id: lane.id,
      name: lane.name ?? lane.id,
      who: lane.who,
      xMin_mm: lane.xMin_mm,
      xMax_mm: lane.xMax_mm,
      from: (lane.directions ?? ['from-a', 'from-b']).map((direction) => (direction === 'from-a' ? 'a' : 'b')),
      slowest_mm_per_s: inMm(lane.slowest_m_per_s),
      fastest_mm_per_s: inMm(lane.fastest_m_per_s),
      bodies: [...new Set(lane.bodies ?? bodies)],
      longestStay_s: lane.longestStay_s,
      ...(lane.falls === 'anywhere' ? { falls: true } : {}),
      ...(lane.followGap_mm === undefined ? {} : { followGap_mm: lane.followGap_mm }),
      ...(lane.braking ? { braking: brakingOf(lane.braking, `${path}/braking`, remarks) } : {}),
    }
  })
}

/** Standard gravity, m/s2, by definition. */
const GRAVITY_M_PER_S2 = 9.80665

function brakingOf(braking: NonNullable<FileLane['braking']>, path: string, remarks: Remarks): Braking {
  const { reaction_s, decel_m_per_s2, gradient_percent, source = NO_SOURCE } = braking
  const fall = gradient_percent / 100
  if (decel_m_per_s2 <= GRAVITY_M_PER_S2 * fall)
    remarks.issue({
      code: 'contradiction',
      path: `${path}/decel_m_per_s2`,
      expected: `a number above what the fall takes (${(GRAVITY_M_PER_S2 * fall).toFixed(2)})`,
      got: shown(decel_m_per_s2),
    })
  return { reaction_s, decel_mm_per_s2: decel_m_per_s2 * MM, fall, source }
}

function checkLane(lane: FileLane, path: string, remarks: Remarks): void {
  if (lane.xMin_mm >= lane.xMax_mm)
    remarks.issue({
      code: 'contradiction',
      path: `${path}/xMax_mm`,
      expected: `a number above xMin_mm (${lane.xMin_mm})`,
      got: shown(lane.xMax_mm),
    })
  if (lane.slowest_m_per_s !== undefined && lane.fastest_m_per_s !== undefined && lane.slowest_m_per_s > lane.fastest_m_per_s)
    remarks.issue({
      code: 'contradiction',
      path: `${path}/fastest_m_per_s`,
      expected: `at least slowest_m_per_s (${lane.slowest_m_per_s})`,
      got: shown(lane.fastest_m_per_s),
    })
}

/** Refuses lanes that together would keep the judge busy for longer than anybody waits. */
export function checkPassages(
  lanes: readonly Lane[],
  around: { readonly states: number; readonly openings: number; readonly stances: (bodies: readonly string[]) => number },
  remarks: Remarks,
): void {
  const passages = lanes.reduce((sum, { bodies, from, followGap_mm }) => {
    const stances = around.stances(bodies)
    return (
      sum + 3 * from.length * (followGap_mm === undefined ? stances : stances + 2 * stances * stances) * around.states * around.openings
    )
  }, 0)
  if (passages > BOUNDS.passages)
    remarks.issue({
      code: 'too-much',
      path: 'survey/lanes',
      expected: `at most ${BOUNDS.passages} passages (lanes times 3 places across times directions times postures times states times openings)`,
      got: `${passages}`,
      repair: 'name the bodies of each lane, or judge the states in files of their own',
    })
}
