import type { Door, Leaf } from '../model/door.ts'
import type { InputPath } from '../model/source.ts'
import { type AirExchange, exchangeOfOpening_m3, exchangePerSecond_m3, type OpeningCycle } from '../motion/air-exchange.ts'
import { openArea } from '../motion/open-area.ts'
import { isUnhung, leafApproach } from '../passing/leaf-approach.ts'
import { orNoSubject, quantity, step, THE_DOOR } from './drafts.ts'
import { needlessDrafts } from './needless-openings.ts'
import { AIR, DRIVE, HINGED, LEAF, OPENING_HEIGHT, OPENING_WIDTH } from './paths.ts'
import type { Context, Draft, Rule } from './rule.ts'

/**
 * The air that needless openings let through is bearable. For one opening (up, open, shut) by the exchange through a doorway between two temperatures,
 * times the needless openings of all crossings in a day, in the state in which they are most. Measured in m3 a day, each way. A door with a crossing.
 *
 * Facts: where computed `opening_m3`, `flowPerSecond_m3`, `openings` (in a day), `lost_m3` (in a day), `difference` (of temperatures, in K).
 */
export const airLost: Rule = {
  id: 'air-lost',
  source: {
    basis: 'our decision',
    document: 'docs/method.md',
    clause: 'Needless openings',
    note: 'no wind; air alike on each side from floor to lintel',
  },
  judge: (context) => {
    const found = needlessDrafts(context)
    return orNoSubject(found.length === 0 ? [] : [draftOf(context, found)])
  },
}

function draftOf({ door, values }: Context, found: readonly Draft[]): Draft {
  const { air, drive, leaf } = door
  const frame = {
    subject: THE_DOOR,
    facts: {},
    steps: [],
    restsOn: {
      inputs: [AIR, DRIVE, LEAF, OPENING_WIDTH, OPENING_HEIGHT, ...found.flatMap(({ restsOn }) => restsOn.inputs)],
      values: [values.doorwayDischarge, values.doorwayMeanHeight],
      bodies: found.flatMap(({ restsOn }) => restsOn.bodies),
      sensors: found.flatMap(({ restsOn }) => restsOn.sensors),
    },
  }
  const state = door.states[0]
  const approach = state && leafApproach(door, state)
  const needs = [
    ...missing(door),
    ...found.flatMap((each) => (typeof each.facts['openings'] === 'number' || each.verdict !== 'undetermined' ? [] : each.needs)),
  ]
  const cycle = leaf && approach && cycleOf(door, leaf, approach.way_mm)
  if (needs.length > 0 || !air || !cycle || !drive) return { ...frame, verdict: 'undetermined', reason: 'missing-input', needs }
  const { sideA_degC: a, sideB_degC: b, mostPerDay_m3 } = air
  const [first = 0, second = 0] = values.doorwayDischarge.value
  const [part = 0, whole = 1] = values.doorwayMeanHeight.value
  const exchange: AirExchange = {
    warmer_degC: Math.max(a, b),
    colder_degC: Math.min(a, b),
    discharge: [first, second],
    meanAt: [part, whole],
  }
  const flow = exchangePerSecond_m3(door.opening.width_mm, door.opening.height_mm, exchange)
  const once = exchangeOfOpening_m3(cycle, exchange)
  const openings = Math.max(
    ...door.states.map(({ id }) => sum(found.filter((each) => each.state === id).map(({ facts }) => Number(facts['openings'] ?? 0)))),
  )
  const lost = once * openings
  const measured = quantity(lost, 'm3')
  const computed = {
    ...frame,
    measured,
    facts: { opening_m3: once, flowPerSecond_m3: flow, openings, lost_m3: lost, difference: Math.abs(a - b) },
    steps: [
      step('difference of both temperatures, in K', quantity(Math.abs(a - b), '1'), 'judge/air-lost', { inputs: [AIR] }),
      step(
        'exchange each way when open, in m3/s',
        quantity(flow, '1'),
        'motion/air-exchange',
        {
          inputs: [OPENING_WIDTH, OPENING_HEIGHT],
          values: [values.doorwayDischarge, values.doorwayMeanHeight],
          steps: ['difference of both temperatures, in K'],
        },
        'coefficient * area / 2 * sqrt(2 g (2 h / 9) difference / T)',
      ),
      step(
        'air lost in one opening',
        quantity(once, 'm3'),
        'motion/air-exchange',
        { inputs: [DRIVE], steps: ['exchange each way when open, in m3/s'] },
        'exchange summed up over opening, open and closing',
      ),
      step('needless openings in a day', quantity(openings, '1'), 'judge/needless-openings', {}),
      step(
        'air lost in a day',
        measured,
        'judge/air-lost',
        { steps: ['air lost in one opening', 'needless openings in a day'] },
        'one opening * openings',
      ),
    ],
  }
  if (mostPerDay_m3 === undefined) return { ...computed, verdict: 'undetermined', reason: 'missing-input', needs: [`${AIR}/mostPerDay_m3`] }
  return { ...computed, limit: quantity(mostPerDay_m3, 'm3'), verdict: lost <= mostPerDay_m3 ? 'pass' : 'fail' }
}

function sum(values: readonly number[]): number {
  return values.reduce((all, value) => all + value, 0)
}

function missing({ air, drive, leaf }: Door): readonly InputPath[] {
  const needs: InputPath[] = []
  if (air === undefined) needs.push(AIR)
  if (leaf === undefined) needs.push(LEAF)
  else if (isUnhung(leaf)) needs.push(HINGED)
  if (drive === undefined) return [...needs, DRIVE]
  if (drive.openSpeed_mm_per_s === undefined) needs.push(`${DRIVE}/openSpeed_m_per_s`)
  if (drive.openAccel_mm_per_s2 === undefined) needs.push(`${DRIVE}/openAccel_m_per_s2`)
  if (drive.closeSpeed_mm_per_s === undefined) needs.push(`${DRIVE}/closeSpeed_m_per_s`)
  if (drive.closeAccel_mm_per_s2 === undefined) needs.push(`${DRIVE}/closeAccel_m_per_s2`)
  if (drive.holdOpen_s === undefined) needs.push(`${DRIVE}/holdOpen_s`)
  return needs
}

function cycleOf({ drive, opening }: Door, leaf: Leaf, way_mm: number): OpeningCycle | undefined {
  const { openSpeed_mm_per_s, openAccel_mm_per_s2, closeSpeed_mm_per_s, closeAccel_mm_per_s2, closeJerk_mm_per_s3, holdOpen_s } =
    drive ?? {}
  if (openSpeed_mm_per_s === undefined || openAccel_mm_per_s2 === undefined || holdOpen_s === undefined) return undefined
  if (closeSpeed_mm_per_s === undefined || closeAccel_mm_per_s2 === undefined) return undefined
  return {
    way_mm,
    open: { speed: openSpeed_mm_per_s, accel: openAccel_mm_per_s2 },
    close: { speed: closeSpeed_mm_per_s, accel: closeAccel_mm_per_s2, jerk: closeJerk_mm_per_s3 },
    holdOpen_s: holdOpen_s + (drive?.cycle?.preWarning_s ?? 0), // it stands open while it warns
    openAt: openArea({ leaf, opening }, way_mm),
  }
}
