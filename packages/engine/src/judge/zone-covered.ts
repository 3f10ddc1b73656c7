import type { Body } from '../model/body.ts'
import type { Door } from '../model/door.ts'
import type { Pocket, Step } from '../model/finding.ts'
import type { InputPath } from '../model/source.ts'
import { coverageInputs, freeCells, type JudgedZone, restsOnCoverage, zoneFacts, zonesToCover } from './coverage-drafts.ts'
import { orNoSubject, quantity, step } from './drafts.ts'
import { bodyPath, OBSTACLES, zonePath } from './paths.ts'
import type { Context, Draft, Rule } from './rule.ts'

const GRID = 'coverage/grid-coverage'

/**
 * In each zone that has to be covered, no place at which a body goes unseen is larger than the zone allows. One finding for each zone and state.
 *
 * Facts besides `zoneFacts`: `share` (seen of the free placements, 0 to 1), `seen`, `blind`, `notFree` (cells), `blindArea_mm2`, `pitch_mm`,
 * `pockets` (number), `fields` (number that counted), and where there is a pocket `pocket` (letter of the one with the largest diameter).
 */
export const zoneCovered: Rule = {
  id: 'zone-covered',
  source: {
    basis: 'our decision',
    document: 'docs/method.md',
    clause: '3',
    note: 'coverage of a zone, and blind pockets by their diameter',
  },
  judge: (context) => orNoSubject(zonesToCover(context).map((judged) => draftOf(context, judged))),
}

function draftOf(context: Context, judged: JudgedZone): Draft {
  const { zone, state, coverage } = judged
  const { door } = context
  const largest = largestPocket(judged)
  const frame = {
    subject: { kind: 'zone', id: zone.id } as const,
    state: state.id,
    provisional: 'grid' as const,
    steps: stepsOf(context, judged),
    facts: factsOf(judged),
    restsOn: restsOnCoverage(context, zone),
  }
  if (freeCells(coverage) === 0)
    return { ...frame, verdict: 'undetermined', reason: 'nothing-free', needs: [zonePath(door, zone), OBSTACLES] }
  const against = { measured: quantity(largest?.diameter_mm ?? 0, 'mm'), limit: quantity(zone.allowedPocket_mm, 'mm') }
  if (largest !== undefined && largest.diameter_mm > zone.allowedPocket_mm)
    return { ...frame, ...against, verdict: 'fail', worstCase: largest.worstCase }
  if (coverage.yawSampled)
    return { ...frame, ...against, verdict: 'undetermined', reason: 'yaw-range-sampled', needs: turningBodies(door, frame.restsOn.bodies) }
  return { ...frame, ...against, verdict: 'pass' }
}

/** The pocket with the largest diameter, which need not have the most cells; the first on a tie. */
export function largestPocket({ coverage }: Pick<JudgedZone, 'coverage'>): Pocket | undefined {
  let largest = coverage.pockets[0]
  for (const pocket of coverage.pockets) if (largest === undefined || pocket.diameter_mm > largest.diameter_mm) largest = pocket
  return largest
}

/** Bodies with a posture that may have any yaw of a range. */
export function turningBodies(door: Door, bodies: readonly Body[]): readonly InputPath[] {
  const turning = bodies.filter(({ postures }) => postures.some((p) => p.shape === 'box' && p.yawFrom_rad !== p.yawTo_rad))
  return turning.map((body) => `${bodyPath(door, body)}/postures`)
}

function factsOf(judged: JudgedZone): Draft['facts'] {
  const { coverage } = judged
  const { counts, grid, pockets } = coverage
  const free = freeCells(coverage)
  const largest = largestPocket(judged)
  return {
    ...zoneFacts(judged),
    ...(free > 0 ? { share: counts.seen / free } : {}),
    seen: counts.seen,
    blind: counts.blind,
    notFree: counts.notFree,
    blindArea_mm2: counts.blind * grid.pitch_mm * grid.pitch_mm,
    pitch_mm: grid.pitch_mm,
    pockets: pockets.length,
    fields: coverage.countedFields.length,
    ...(largest ? { pocket: largest.letter } : {}),
  }
}

function stepsOf(context: Context, judged: JudgedZone): readonly Step[] {
  const { zone, coverage } = judged
  const { counts } = coverage
  const inputs = coverageInputs(context.door, zone)
  const free = freeCells(coverage)
  const diameter_mm = largestPocket(judged)?.diameter_mm ?? 0
  const share =
    free > 0
      ? [
          step(
            'coverage',
            quantity(counts.seen / free, '1'),
            GRID,
            { steps: ['free placements', 'unseen placements'] },
            '(free - unseen) / free',
          ),
        ]
      : []
  return [
    step('free placements', quantity(free, '1'), GRID, { inputs }),
    step('unseen placements', quantity(counts.blind, '1'), GRID, { inputs, steps: ['free placements'] }),
    ...share,
    step(
      'largest pocket',
      quantity(diameter_mm, 'mm'),
      GRID,
      { steps: ['unseen placements'] },
      'largest distance between two points of its cells',
    ),
    step('allowed pocket', quantity(zone.allowedPocket_mm, 'mm'), 'judge/zone-covered', {
      inputs: [`${zonePath(context.door, zone)}/allowedPocket_mm`],
    }),
  ]
}
