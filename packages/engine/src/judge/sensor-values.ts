import { nearestThings } from '../coverage/nearest-things.ts'
import type { Door, DoorState, Obstacle } from '../model/door.ts'
import type { RangingSensor } from '../model/sensor.ts'
import type { InputPath } from '../model/source.ts'
import { type Beams, beamsOf } from '../seeing/beams.ts'
import { stateFacts } from './coverage-drafts.ts'
import { type Facts, orNoSubject, quantity, step } from './drafts.ts'
import { overlaps, SURROUNDINGS, SURVEY, sensorPath } from './paths.ts'
import type { Draft, Rule } from './rule.ts'

/**
 * A ranging sensor has all the figures that its sight is computed from, and no beam starts inside an obstacle or under the floor in any state:
 * such a beam sees nothing. One finding for each ranging sensor.
 *
 * Facts: `sensor`, `sensorName`, `beams` (number), `missing` (number of figures), `enclosed` (number of beams that start inside something, in the worst
 * state), and where there are any `stateFacts` of that state and `obstacle`, `obstacleName` (absent for the floor).
 */
export const sensorValues: Rule = {
  id: 'sensor-values',
  source: { basis: 'our decision', document: 'docs/method.md', clause: '2', note: 'what a beam sees' },
  judge: ({ door }) => orNoSubject(door.sensors.filter((sensor) => sensor.kind === 'ranging').map((sensor) => draftOf(door, sensor))),
}

function draftOf(door: Door, sensor: RangingSensor): Draft {
  const beams = beamsOf(sensor)
  const missing = missingFigures(door, sensor)
  const worst = door.states.map((state) => enclosedIn(beams, state)).reduce((a, b) => (b.enclosed > a.enclosed ? b : a))
  const measured = quantity(worst.enclosed, '1')
  const inputs = [SURVEY, `${sensorPath(door, sensor)}/pose`]
  const frame = {
    subject: { kind: 'sensor', id: sensor.id } as const,
    measured,
    limit: quantity(0, '1'),
    steps: [
      step('enclosed beams', measured, 'coverage/nearest-things', { inputs }, 'beams that start inside an obstacle or under the floor'),
    ],
    facts: { sensor: sensor.id, sensorName: sensor.name, beams: beams.count, missing: missing.length, ...enclosedFacts(worst) },
    restsOn: { inputs: [...SURROUNDINGS, sensorPath(door, sensor)], values: [], bodies: [], sensors: [sensor] },
  }
  if (worst.enclosed > 0) return { ...frame, verdict: 'fail' }
  if (missing.length > 0) return { ...frame, verdict: 'undetermined', reason: 'missing-input', needs: missing }
  return { ...frame, verdict: 'pass' }
}

/** What a data sheet and the settings say. The pose is the survey's business: a pass that rests on an assumed one is taken back like any other. */
const FIGURES = [
  'maxRange_mm',
  'rangeRef_mm',
  'reflectanceRef',
  'backgroundMargin_mm',
  'spotRadius_mm',
  'planes',
  'fields',
  'source',
] as const

/** Figures that nobody entered, or that are none: no number above 0, or a margin below 0. */
function missingFigures(door: Door, sensor: RangingSensor): readonly InputPath[] {
  const path = sensorPath(door, sensor)
  const { maxRange_mm, rangeRef_mm, reflectanceRef, backgroundMargin_mm } = sensor
  const needed = Object.entries({ maxRange_mm, rangeRef_mm, reflectanceRef }).filter(([, figure]) => !(figure > 0 && figure < Infinity))
  const lacking = needed.map(([name]) => `${path}/${name}`)
  if (!(backgroundMargin_mm >= 0)) lacking.push(`${path}/backgroundMargin_mm`)
  if (sensor.planes.length === 0) lacking.push(`${path}/planes`)
  if (sensor.fields.length === 0) lacking.push(`${path}/fields`)
  const assumed = door.assumed.filter((entry) => FIGURES.some((figure) => overlaps(entry, `${path}/${figure}`)))
  return [...new Set([...lacking, ...assumed])]
}

interface Enclosed {
  readonly state: DoorState
  readonly enclosed: number
  readonly thing: Obstacle | 'floor' | undefined
}

function enclosedIn(beams: Beams, state: DoorState): Enclosed {
  const { distances_mm, things } = nearestThings(beams, state)
  const inside = [...distances_mm.keys()].filter((i) => distances_mm[i] === 0)
  return { state, enclosed: inside.length, thing: things[inside[0] ?? -1] }
}

function enclosedFacts({ state, enclosed, thing }: Enclosed): Facts {
  if (enclosed === 0) return { enclosed }
  return { enclosed, ...stateFacts(state), ...(thing && thing !== 'floor' ? { obstacle: thing.id, obstacleName: thing.name } : {}) }
}
