import type { Pocket } from '../model/finding.ts'
import { coverageInputs, type JudgedZone, restsOnCoverage, zoneFacts, zonesToCover } from './coverage-drafts.ts'
import { type Facts, orNoSubject, quantity, step } from './drafts.ts'
import { zonePath } from './paths.ts'
import type { Context, Draft, Rule } from './rule.ts'

/**
 * Each place at which a body goes unseen is no larger than its zone allows. One finding for each pocket, so that each can be talked about.
 *
 * Facts besides `zoneFacts`: `letter`, `cells`, `area_mm2`, `diameter_mm`, `xMin_mm`, `xMax_mm`, `yMin_mm`, `yMax_mm` (extent of the centres'
 * cells), `body`, `bodyName`, `posture` (index) and `postureName` of the worst posture; and of the first cause `cause` (kind), `causeCells` and, for
 * `hidden-behind`, `obstacle` and `obstacleName`.
 */
export const blindPocket: Rule = {
  id: 'blind-pocket',
  source: { basis: 'our decision', document: 'docs/method.md', clause: '3', note: 'blind pockets' },
  judge: (context) =>
    orNoSubject(zonesToCover(context).flatMap((judged) => judged.coverage.pockets.map((pocket) => draftOf(context, judged, pocket)))),
}

function draftOf(context: Context, judged: JudgedZone, pocket: Pocket): Draft {
  const { zone, state } = judged
  const restsOn = restsOnCoverage(context, zone)
  const allowed = [`${zonePath(context.door, zone)}/allowedPocket_mm`]
  return {
    verdict: pocket.diameter_mm > zone.allowedPocket_mm ? 'fail' : 'pass',
    subject: { kind: 'pocket', id: `${zone.id}/${pocket.letter}` },
    state: state.id,
    provisional: 'grid',
    measured: quantity(pocket.diameter_mm, 'mm'),
    limit: quantity(zone.allowedPocket_mm, 'mm'),
    worstCase: pocket.worstCase,
    steps: [
      step(
        'cells',
        quantity(pocket.cells, '1'),
        'coverage/grid-coverage',
        { inputs: coverageInputs(context.door, zone) },
        'unseen placements that touch along an edge or at a corner',
      ),
      step('area', quantity(pocket.area_mm2, 'mm2'), 'coverage/grid-coverage', { steps: ['cells'] }, 'cells * pitch * pitch'),
      step(
        'diameter',
        quantity(pocket.diameter_mm, 'mm'),
        'coverage/grid-coverage',
        { steps: ['cells'] },
        'largest distance between two points of its cells',
      ),
      step('allowed pocket', quantity(zone.allowedPocket_mm, 'mm'), 'judge/blind-pocket', { inputs: allowed }),
    ],
    facts: { ...zoneFacts(judged), ...pocketFacts(context, judged, pocket) },
    restsOn,
  }
}

function pocketFacts({ door }: Context, { state }: JudgedZone, pocket: Pocket): Facts {
  const { letter, cells, area_mm2, diameter_mm, extent, worstCase, causes } = pocket
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
    body: worstCase.body,
    bodyName: body?.name ?? worstCase.body,
    posture: worstCase.posture,
    postureName: body?.postures[worstCase.posture]?.name ?? '',
    ...(cause ? { cause: cause.kind, causeCells: cause.cells } : {}),
    ...(obstacle ? { obstacle: obstacle.id, obstacleName: obstacle.name } : {}),
  }
}
