import { CIRCLE_WITHIN_MM } from '../coverage/blind-outline.ts'
import { gridOf } from '../coverage/grid.ts'
import { surelyAcross } from '../coverage/pockets.ts'
import type { Pocket, Step } from '../model/finding.ts'
import { coverageInputs, type JudgedZone, restsOnCoverage, zoneFacts, zonesToCover } from './coverage-drafts.ts'
import { type Facts, orNoSubject, quantity, step } from './drafts.ts'
import { zonePath } from './paths.ts'
import type { Context, Draft, Rule } from './rule.ts'

/**
 * Each place at which a body goes unseen is no larger than its zone allows. One finding for each pocket, so that each can be talked about.
 * Of the door as written; over tolerances none passes where the zone's open region does not. Provisional without a complete exact answer.
 *
 * Facts besides `zoneFacts`: `letter`, `cells`, `area_mm2`, `diameter_mm`, `xMin_mm`, `xMax_mm`, `yMin_mm`, `yMax_mm` (extent), where it is exact
 * `sure_mm` (two unseen placements in it lie so far apart, where a pocket is allowed), `circleX_mm`, `circleY_mm`, `circleRadius_mm` (found) and `circleAtMost_mm` (no larger radius fits), `body`, `bodyName`, `posture` (index) and
 * `postureName` of the worst posture; and of the first cause `cause` (kind), `causeCells` and, for `hidden-behind`, `obstacle` and `obstacleName`.
 */
export const blindPocket: Rule = {
  id: 'blind-pocket',
  source: { basis: 'our decision', document: 'docs/method.md', clause: '3', note: 'blind pockets' },
  judge: (context) =>
    orNoSubject(zonesToCover(context).flatMap((judged) => judged.coverage.pockets.map((pocket) => draftOf(context, judged, pocket)))),
}

function draftOf(context: Context, judged: JudgedZone, pocket: Pocket): Draft {
  const { zone, state } = judged
  return {
    ...verdictOf(context, judged, pocket),
    subject: { kind: 'pocket', id: `${zone.id}/${pocket.letter}` },
    state: state.id,
    ...(pocket.exact ? {} : { provisional: 'grid' as const }),
    measured: quantity(pocket.diameter_mm, 'mm'),
    limit: quantity(zone.allowedPocket_mm, 'mm'),
    worstCase: pocket.worstCase,
    steps: stepsOf(context, judged, pocket),
    facts: { ...zoneFacts(judged), ...pocketFacts(context, judged, pocket) },
    restsOn: restsOnCoverage(context, zone),
  }
}

type PocketVerdict =
  | { readonly verdict: 'pass' | 'fail' }
  | { readonly verdict: 'undetermined'; readonly reason: 'not-proved' | 'within-tolerance'; readonly needs: readonly string[] }

/**
 * The exact diameter has a rim of unproved tiles in it: it is enough to pass. To fail a pocket has to be too large for sure; by the grid alone,
 * which is provisional anyway, the outer edges of its cells decide.
 */
function verdictOf({ door }: Context, { zone, coverage }: JudgedZone, pocket: Pocket): PocketVerdict {
  const allowed_mm = zone.allowedPocket_mm
  if (!pocket.exact) return { verdict: pocket.diameter_mm > allowed_mm ? 'fail' : 'pass' }
  if (allowed_mm === 0 || surelyAcross(pocket.runs, gridOf(zone)) > allowed_mm) return { verdict: 'fail' }
  if (pocket.diameter_mm > allowed_mm) return { verdict: 'undetermined', reason: 'not-proved', needs: [allowedPath(door, zone)] }
  const tolerant_mm = coverage.exact?.overTolerances?.diameter_mm ?? 0
  return tolerant_mm > allowed_mm ? { verdict: 'undetermined', reason: 'within-tolerance', needs: ['tolerances'] } : { verdict: 'pass' }
}

function allowedPath(door: Context['door'], zone: JudgedZone['zone']): string {
  return `${zonePath(door, zone)}/allowedPocket_mm`
}

function stepsOf({ door }: Context, { zone }: JudgedZone, pocket: Pocket): readonly Step[] {
  const inputs = coverageInputs(door, zone)
  const allowed = step('allowed pocket', quantity(zone.allowedPocket_mm, 'mm'), 'judge/blind-pocket', { inputs: [allowedPath(door, zone)] })
  return pocket.exact ? [...exactSteps(zone, pocket, pocket.exact, inputs), allowed] : [...gridSteps(pocket, inputs), allowed]
}

function exactSteps(
  zone: JudgedZone['zone'],
  { runs, cells, area_mm2, diameter_mm }: Pocket,
  { circle }: NonNullable<Pocket['exact']>,
  inputs: readonly string[],
): readonly Step[] {
  const steps = ['area']
  return [
    step(
      'area',
      quantity(area_mm2, 'mm2'),
      'coverage/blind-outline',
      { inputs },
      'tiles that touch and are neither proved seen nor not free',
    ),
    step('diameter', quantity(diameter_mm, 'mm'), 'coverage/blind-parts', { steps }, 'largest distance between two points of these tiles'),
    step(
      'largest circle',
      quantity(circle.radius_mm, 'mm'),
      'coverage/blind-outline',
      { steps },
      `radius of a circle in these tiles; none is larger by more than ${CIRCLE_WITHIN_MM} mm`,
    ),
    step('cells', quantity(cells, '1'), 'coverage/pocket-grounds', { inputs, steps }, 'unseen placements of the grid among these tiles'),
    ...(zone.allowedPocket_mm > 0
      ? [
          step(
            'across for sure',
            quantity(surelyAcross(runs, gridOf(zone)), 'mm'),
            'coverage/pockets',
            { steps: ['cells'] },
            'largest diameter of its groups of cells, less the diagonal of a cell',
          ),
        ]
      : []),
  ]
}

function gridSteps({ cells, area_mm2, diameter_mm }: Pocket, inputs: readonly string[]): readonly Step[] {
  const by = 'coverage/grid-coverage'
  return [
    step('cells', quantity(cells, '1'), by, { inputs }, 'unseen placements that touch along an edge or at a corner'),
    step('area', quantity(area_mm2, 'mm2'), by, { steps: ['cells'] }, 'cells * pitch * pitch'),
    step('diameter', quantity(diameter_mm, 'mm'), by, { steps: ['cells'] }, 'largest distance between two points of its cells'),
  ]
}

function pocketFacts({ door }: Context, { zone, state }: JudgedZone, pocket: Pocket): Facts {
  const { letter, cells, area_mm2, diameter_mm, extent, exact, worstCase, causes } = pocket
  const body = door.bodies.find(({ id }) => id === worstCase.body)
  const [cause] = causes
  const isCause = ({ id }: { readonly id: string }) => id === cause?.obstacle
  const obstacle = state.obstacles.find(isCause) ?? door.states.flatMap(({ obstacles }) => obstacles).find(isCause)
  return {
    letter,
    cells,
    area_mm2,
    diameter_mm,
    ...extent,
    ...(exact && zone.allowedPocket_mm > 0 ? { sure_mm: surelyAcross(pocket.runs, gridOf(zone)) } : {}),
    ...(exact ? circleFacts(exact.circle) : {}),
    body: worstCase.body,
    bodyName: body?.name ?? worstCase.body,
    posture: worstCase.posture,
    postureName: body?.postures[worstCase.posture]?.name ?? '',
    ...(cause ? { cause: cause.kind, causeCells: cause.cells } : {}),
    ...(obstacle ? { obstacle: obstacle.id, obstacleName: obstacle.name } : {}),
  }
}

function circleFacts({ x_mm, y_mm, radius_mm }: NonNullable<Pocket['exact']>['circle']): Facts {
  return { circleX_mm: x_mm, circleY_mm: y_mm, circleRadius_mm: radius_mm, circleAtMost_mm: radius_mm + CIRCLE_WITHIN_MM }
}
