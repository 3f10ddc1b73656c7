import { isBlindForAll } from '../coverage/blind-for-all.ts'
import { gridOf } from '../coverage/grid.ts'
import { openArea } from '../coverage/open-region.ts'
import { surelyAcross } from '../coverage/pockets.ts'
import { countedFields } from '../coverage/scene.ts'
import { bindingTolerance, type ToleranceName, toleranceCosts } from '../coverage/tolerance-verdict.ts'
import { type Body, isOfParts } from '../model/body.ts'
import type { Door, Tolerances } from '../model/door.ts'
import type { Pocket, Step } from '../model/finding.ts'
import type { InputPath, Quantity } from '../model/source.ts'
import { PI } from '../space/trigonometry.ts'
import { coverageInputs, freeCells, type JudgedZone, restsOnCoverage, zoneFacts, zonesToCover } from './coverage-drafts.ts'
import { orNoSubject, quantity, step } from './drafts.ts'
import { bodyPath, OBSTACLES, zonePath } from './paths.ts'
import type { Context, Draft, Rule } from './rule.ts'

const GRID = 'coverage/grid-coverage'
const TREES = 'coverage/exact-trees'

/**
 * In each zone that has to be covered, no place at which a body goes unseen is larger than the zone allows. One finding for each zone and state.
 *
 * Facts besides `zoneFacts`: `share` (seen of the free placements, 0 to 1), `seen`, `blind`, `notFree` (cells), `blindArea_mm2`, `pitch_mm`,
 * `pockets` (number), `fields` (number that counted), of the exact answer `openArea_mm2`, `openDiameter_mm`, and over tolerances `tolerantArea_mm2`,
 * `tolerantDiameter_mm`, `binding` (the tolerance in the way, or `all`), `tightTo` with `tightUnit`, and where there is a pocket `pocket` (letter of the one with the largest diameter).
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
  const frame = {
    subject: { kind: 'zone', id: zone.id } as const,
    state: state.id,
    steps: stepsOf(context, judged),
    facts: factsOf(judged),
    restsOn: restsOnCoverage(context, zone),
  }
  const shading = door.bodies.filter((body) => zone.bodies.includes(body.id) && isOfParts(body))
  if (coverage.postures.length === 0)
    return { ...frame, verdict: 'undetermined', reason: 'several-parts', needs: shading.map((body) => bodyPath(door, body)) }
  if (freeCells(coverage) === 0)
    return { ...frame, verdict: 'undetermined', reason: 'nothing-free', needs: [zonePath(door, zone), OBSTACLES] }
  const { exact } = coverage
  if (exact === undefined) return { ...frame, ...byGrid(judged, zonePath(door, zone)) }
  const { asWritten, overTolerances } = exact
  const against = { measured: quantity((overTolerances ?? asWritten).diameter_mm, 'mm'), limit: quantity(zone.allowedPocket_mm, 'mm') }
  const blind = provedBlind(judged)
  if (blind !== undefined) {
    if (door.tolerances === undefined || failsForAll(door, judged, blind, door.tolerances))
      return { ...frame, ...against, measured: quantity(blind.diameter_mm, 'mm'), verdict: 'fail', worstCase: blind.worstCase }
    return { ...frame, ...against, verdict: 'undetermined', reason: 'within-tolerance', needs: [TOLERANCES], worstCase: blind.worstCase }
  }
  if (asWritten.diameter_mm > zone.allowedPocket_mm)
    return { ...frame, ...against, verdict: 'undetermined', reason: 'not-proved', needs: [`${zonePath(door, zone)}/allowedPocket_mm`] }
  if (overTolerances === undefined || overTolerances.diameter_mm <= zone.allowedPocket_mm) return { ...frame, ...against, verdict: 'pass' }
  return { ...frame, ...against, verdict: 'undetermined', reason: 'within-tolerance', ...binding(door, judged, frame) }
}

/** What the grid alone allows to be said: a pocket that is large enough fails, and no pocket proves nothing about the placements between. */
function byGrid(judged: JudgedZone, path: InputPath) {
  const { zone } = judged
  const limit = quantity(zone.allowedPocket_mm, 'mm')
  const measured = quantity(largestPocket(judged)?.diameter_mm ?? 0, 'mm')
  const provisional = 'grid' as const
  const blind = provedBlind(judged)
  return blind
    ? ({ verdict: 'fail', provisional, measured, limit, worstCase: blind.worstCase } as const)
    : ({ verdict: 'undetermined', reason: 'not-proved', provisional, measured, limit, needs: [`${path}/allowedPocket_mm`] } as const)
}

/** A pocket that is larger than the zone allows for sure; the one with the largest diameter. */
function provedBlind({ zone, coverage }: JudgedZone): Pocket | undefined {
  if (zone.allowedPocket_mm === 0) return largestPocket({ coverage })
  const grid = gridOf(zone)
  return largestPocket({ coverage: { pockets: coverage.pockets.filter(({ runs }) => surelyAcross(runs, grid) > zone.allowedPocket_mm) } })
}

/** Shown where no pocket is allowed at all: then one placement that is blind for all tolerances is enough. */
function failsForAll(door: Door, { zone, state, coverage }: JudgedZone, largest: Pocket, tolerances: Tolerances): boolean {
  if (zone.allowedPocket_mm > 0) return false
  const counted = countedFields(door, zone)
  return [largest, ...coverage.pockets].some(({ worstCase }) => isBlindForAll(door, state, counted, worstCase, tolerances))
}

/** Names the tolerance that stands in the way of a pass, and what each costs. */
function binding(door: Door, { zone, state }: JudgedZone, { steps: before, facts }: Pick<Draft, 'steps' | 'facts'>): BindingPart {
  const stated = door.tolerances
  if (stated === undefined || zone.allowedPocket_mm > 0) return { needs: [TOLERANCES], steps: before, facts }
  const costs = toleranceCosts(door, zone, state, stated)
  const { name, tightTo } = bindingTolerance(door, zone, state, stated, costs)
  const steps = costs.map((cost) =>
    step(`open for lack of ${NAMES[cost.name]}`, quantity(cost.area_mm2, 'mm2'), 'coverage/tolerance-verdict', {
      inputs: [`${TOLERANCES}/${IN_FILE[cost.name]}`],
    }),
  )
  const tight = asInFile(name, tightTo)
  return {
    needs: [name === 'all' ? TOLERANCES : `${TOLERANCES}/${IN_FILE[name]}`],
    steps: [...before, ...steps, step('tight enough', tight, 'coverage/tolerance-verdict', { inputs: [TOLERANCES] })],
    facts: { ...facts, binding: name === 'all' ? 'all' : NAMES[name], tightTo: tight.value, tightUnit: tight.unit },
  }
}

interface BindingPart {
  readonly needs: readonly InputPath[]
  readonly steps: readonly Step[]
  readonly facts: Draft['facts']
}

/** In the unit that the door file has for it; a share as percent. */
function asInFile(name: ToleranceName | 'all', value: number): Quantity {
  if (name === 'all' || name === 'range') return quantity(value * 100, 'percent')
  return name.endsWith('_rad') ? quantity((value * 180) / PI, 'deg') : quantity(value, 'mm')
}

const TOLERANCES = 'tolerances'
const NAMES: Readonly<Record<ToleranceName, string>> = {
  length_mm: 'length',
  position_mm: 'position',
  tilt_rad: 'tilt',
  roll_rad: 'roll',
  yaw_rad: 'yaw',
  floor_mm: 'floor',
  range: 'range',
}
const IN_FILE: Readonly<Record<ToleranceName, string>> = {
  length_mm: 'length_mm',
  position_mm: 'position_mm',
  tilt_rad: 'tilt_deg',
  roll_rad: 'roll_deg',
  yaw_rad: 'yaw_deg',
  floor_mm: 'floor_mm',
  range: 'range_percent',
}

/** The pocket with the largest diameter, which need not have the most cells; the first on a tie. */
function largestPocket({ coverage }: { readonly coverage: Pick<JudgedZone['coverage'], 'pockets'> }): Pocket | undefined {
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
  const { counts, grid, pockets, exact } = coverage
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
    ...(exact ? { openArea_mm2: exact.asWritten.area_mm2, openDiameter_mm: exact.asWritten.diameter_mm } : {}),
    ...(exact?.overTolerances
      ? { tolerantArea_mm2: exact.overTolerances.area_mm2, tolerantDiameter_mm: exact.overTolerances.diameter_mm }
      : {}),
    fields: coverage.countedFields.length,
    ...(largest ? { pocket: largest.letter } : {}),
  }
}

function exactSteps({ door }: Context, { coverage: { exact, pockets } }: JudgedZone, inputs: readonly InputPath[]): readonly Step[] {
  if (exact === undefined) return []
  const { asWritten, overTolerances, isComplete, postures } = exact
  const steps = ['open area, exact']
  const lettered_mm2 = pockets.reduce((sum, { exact: own, area_mm2 }) => sum + (own ? area_mm2 : 0), 0)
  return [
    step('open area, exact', quantity(asWritten.area_mm2, 'mm2'), TREES, { inputs }, 'tiles neither proved seen nor not free'),
    ...(postures.length > 1
      ? postures.map(({ body, posture, regions }) =>
          step(`open area of ${postureName(door, body, posture)}`, quantity(openArea(regions), 'mm2'), 'coverage/blind-outline', {
            inputs,
          }),
        )
      : []),
    ...(isComplete && pockets.length > 0
      ? [
          step(
            'open area outside of pockets',
            quantity(Math.max(0, asWritten.area_mm2 - lettered_mm2), 'mm2'),
            'coverage/pocket-grounds',
            { steps },
            'open tiles that no unseen placement of the grid hangs together with',
          ),
        ]
      : []),
    step(
      'open diameter, exact',
      quantity(asWritten.diameter_mm, 'mm'),
      'coverage/blind-parts',
      { steps },
      'largest distance between two points of one connected part',
    ),
    ...(overTolerances
      ? [
          step('open area over tolerances', quantity(overTolerances.area_mm2, 'mm2'), TREES, { inputs: [...inputs, TOLERANCES] }),
          step('open diameter over tolerances', quantity(overTolerances.diameter_mm, 'mm'), 'coverage/blind-parts', {
            steps: ['open area over tolerances'],
          }),
        ]
      : []),
  ]
}

/** The body's name and, where it has several postures, which one. */
function postureName(door: Door, id: string, index: number): string {
  const body = door.bodies.find((each) => each.id === id)
  const name = body?.postures[index]?.name
  return body === undefined || body.postures.length < 2 ? (body?.name ?? id) : `${body.name}, ${name ?? index}`
}

function stepsOf(context: Context, judged: JudgedZone): readonly Step[] {
  const { zone, coverage } = judged
  const { counts } = coverage
  const inputs = coverageInputs(context.door, zone)
  const free = freeCells(coverage)
  const largest = largestPocket(judged)
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
    ...exactSteps(context, judged, inputs),
    step(
      'largest pocket',
      quantity(largest?.diameter_mm ?? 0, 'mm'),
      largest?.exact ? 'coverage/blind-parts' : GRID,
      { steps: ['unseen placements', ...(largest?.exact ? ['open area, exact'] : [])] },
      `largest distance between two points of its ${largest?.exact ? 'tiles' : 'cells'}`,
    ),
    step('allowed pocket', quantity(zone.allowedPocket_mm, 'mm'), 'judge/zone-covered', {
      inputs: [`${zonePath(context.door, zone)}/allowedPocket_mm`],
    }),
  ]
}
