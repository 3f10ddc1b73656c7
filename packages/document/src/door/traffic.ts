import type { Braking, Lane } from '@sillsight/engine'
import { BOUNDS } from '../bounds.ts'
import type { Remarks } from '../remarks.ts'
import type { Survey } from '../schema/survey.ts'
import { shown, shownText } from '../shown.ts'
import { inMm } from './drive.ts'
import { NO_SOURCE } from './sources.ts'
import { reportTwins } from './states.ts'

type FileLane = NonNullable<Survey['lanes']>[number]

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
  return { reaction_s, decel_mm_per_s2: decel_m_per_s2 * 1000, fall, source }
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
