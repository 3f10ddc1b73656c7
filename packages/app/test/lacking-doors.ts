import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseDocument, toDoor } from '@sillsight/document'
import { type Finding, judge } from '@sillsight/engine'
import { valueAt } from '../src/entry/places.ts'

/** A door file while a test puts it together. */
type File = Record<string, unknown>

const DEMOS = join(import.meta.dirname, '../../cli/demo')

export function demoFiles(): readonly File[] {
  return readdirSync(DEMOS)
    .filter((name) => name.endsWith('.json'))
    .map((name) => JSON.parse(readFileSync(join(DEMOS, name), 'utf8')))
}

/** A place in a list is one place, whichever of the list: `survey/lanes/*\/slowest_m_per_s`. */
export function patternOf(need: string): string {
  return need.startsWith('confirmations/') ? 'confirmations/*' : need.replace(/\/\d+(?=\/|$)/g, '/*')
}

/** Whether a control at a place answers a need: itself, something inside, or what has to be there first, but never the list in which it stands. */
export function answers(place: string, need: string, file: object): boolean {
  if (place === need || place.startsWith(`${need}/`)) return true
  if (!need.startsWith(`${place}/`)) return false
  return !/^\d/.test(need.slice(place.length + 1)) || valueAt(file, place) === undefined
}

/** What is missing for the findings of a door, by the grid; nothing where the file cannot be judged at all. */
export function needsOf(file: File): readonly string[] {
  const parsed = parseDocument(JSON.stringify({ sillsight: 1, ...file }))
  if (!parsed.ok) return []
  const { findings } = judge(toDoor(parsed.document), { depth: 'grid' })
  return [...new Set(findings.flatMap((finding: Finding) => (finding.verdict === 'undetermined' ? finding.needs : [])))]
}

const here = { basis: 'our decision' }
const opening = { width_mm: 3000, height_mm: 3200 }
const across = { xMin_mm: 200, xMax_mm: 2800 }
const level = { profile_mm: [[0, 0]], slopeX_percent: 0, tolerance_mm: 5 }
const built = { opening, walls: 'none', floor: level, visibility_m: 'clear', leaf: { travel: 'down', thickness_mm: 40, bulge_mm: 5 } }
const shut = {
  closeSpeed_m_per_s: 0.3,
  closeAccel_m_per_s2: 1,
  stopDelay_s: 0.05,
  stopDecel_m_per_s2: 3,
  afterStop: 'reverse',
  reverseDelay_s: 0.2,
}
const open = { openSpeed_m_per_s: 0.4, openAccel_m_per_s2: 1, openDelay_s: 0.2 }
const hung = { id: 'row', use: 'demo-header-row', side: 'a', mountingHeight_mm: 3100, offset_mm: 150, x_mm: 1500, tilt_deg: 5 }
const whole = {
  id: 'near',
  output: 'OUT 1',
  function: 'presence',
  xMin_mm: 'open',
  xMax_mm: 'open',
  clearance_mm: 60,
  top_mm: 'open',
  clusterBeams: 1,
}
const timed = { ...whole, response_s: 0.1, hold_s: 1, presenceTime_s: 30 }
const zone = { id: 'leaf', purpose: 'presence-at-leaf', xMin_mm: 0, xMax_mm: 3000, yMin_mm: 0, yMax_mm: 700 }
const box = { id: 'box', reflectance: 0.1, postures: [{ shape: 'box', size_mm: [300, 300, 900] }], source: here }
const walkway = { id: 'walk', who: 'people', ...across, slowest_m_per_s: 0.5, fastest_m_per_s: 2 }
const road = { id: 'road', who: 'vehicles', ...across, slowest_m_per_s: 0.5, fastest_m_per_s: 2 }
const touching = { people: 'public', drive: 'automatic', closingEdge: 'force-limited-edge', lowEnergy: 'yes' }
const free = { people: 'public', drive: 'automatic', closingEdge: 'contact-free' }
const force = { place: 'middle', peak_N: 200, time_s: 0.2, mean_N: 60, instrument: 'gauge 1', on: '2026-10-01', by: 'A. Reader' }

const hatch = demoFiles().find(({ name }) => String(name).startsWith('Box hatch')) as File & {
  survey: File
  zones: readonly File[]
  wiring: { supply: File; sensors: readonly File[] }
}

/**
 * Doors that lack something, so that together their findings state every need that the engine can state of a door file which it judges
 * (`needs.long.ts` looks for others by taking each value away from each demonstration door).
 */
export const LACKING: readonly File[] = [
  {
    name: 'Nothing but an opening',
    survey: {
      opening,
      lanes: [{ id: 'way', who: 'both', ...across }],
      crossings: [{ id: 'past', yMin_mm: 900, yMax_mm: 1900 }],
    },
    sensors: [
      {
        id: 'row',
        use: 'demo-header-row',
        side: 'a',
        mountingHeight_mm: 3100,
        offset_mm: 150,
        fields: [{ ...timed, function: 'opening' }],
      },
    ],
  },
  {
    name: 'A leaf that turns, and nobody said how it hangs',
    survey: { opening, leaf: { travel: 'turning', thickness_mm: 60 }, drive: {}, lanes: [{ id: 'way', who: 'both', ...across }] },
  },
  {
    name: 'A drive of which nothing is known',
    survey: {
      ...built,
      floor: { profile_mm: [[0, 0]] },
      leaf: { travel: 'toward-zero', thickness_mm: 40 },
      drive: {},
      lanes: [{ ...road, falls: 'anywhere' }],
      crossings: [{ id: 'past', yMin_mm: 900, yMax_mm: 1900, slowest_m_per_s: 0.5, fastest_m_per_s: 2, perDay: 100 }],
      air: { sideA_degC: 20, sideB_degC: 2 },
      states: [{ id: 'down' }, { id: 'up', floor: { profile_mm: [[0, 50]] } }],
      dangers: {
        points: [
          { id: 'tail', kind: 'tail', obstacle: 'post' },
          { id: 'in', kind: 'draw-in' },
          { id: 'hinge', kind: 'hinge', gap_mm: 20, guards: [{ how: 'presence', zone: 'leaf' }] },
          { id: 'edge', kind: 'folding', gap_mm: 20, guards: [{ how: 'edge', sensor: 'row' }] },
        ],
      },
      obstacles: [{ id: 'post', shape: 'post', x_mm: 3400, y_mm: 200, radius_mm: 60, from_mm: 0, to_mm: 1000 }],
    },
    sensors: [
      {
        ...hung,
        fields: [
          { id: 'near', output: 'OUT 1', function: 'presence' },
          { ...whole, id: 'far', output: 'OUT 2', function: 'call' },
        ],
      },
    ],
    bodies: [{ ...box, source: undefined }],
    zones: [zone],
    concept: { ...touching },
  },
  {
    name: 'Forces, and a way past that nobody bounded',
    survey: {
      ...built,
      drive: { ...shut, ...open, holdOpen_s: 5, closeSpeed_m_per_s: undefined, reverseDelay_s: undefined },
      lanes: [road],
      crossings: [{ id: 'past', yMin_mm: 300, yMax_mm: 1900, slowest_m_per_s: 0.5, fastest_m_per_s: 2, perDay: 100 }],
      air: { sideA_degC: 20, sideB_degC: 2 },
    },
    sensors: [{ ...hung, fields: [timed, { ...timed, id: 'opens', output: 'OUT 2', function: 'opening' }] }],
    bodies: [box],
    zones: [{ ...zone, family: { proportions: [1, 1, 1], reflectance: 0.1, largest_mm: 900, step_mm: 100 } }],
    concept: touching,
    forceRecords: [
      { id: 'a', ...force, gap_mm: 10 },
      { id: 'b', ...force, gap_mm: 300 },
    ],
  },
  {
    name: 'A leaf that touches nobody',
    survey: {
      ...built,
      drive: { ...shut, ...open, holdOpen_s: 5 },
      lanes: [walkway, road],
      crossings: [{ id: 'past', yMin_mm: 300, yMax_mm: 1900, slowest_m_per_s: 0.5, fastest_m_per_s: 2, perDay: 100, mostPerDay: 9 }],
      air: { sideA_degC: 20, sideB_degC: 2 },
    },
    sensors: [
      {
        ...hung,
        declares: { device: 'electro-sensitive', performanceLevel: 'd', testedBy: 'itself', source: here },
        fields: [
          timed,
          { ...timed, id: 'lying', approach: { way: 'parallel' } },
          { ...timed, id: 'standing', approach: { way: 'perpendicular', capability_mm: 90 } },
          { ...timed, id: 'opens', output: 'OUT 2', function: 'opening' },
        ],
      },
    ],
    bodies: [box],
    zones: [{ ...zone, longestStay_s: 60 }],
    concept: free,
  },
  {
    name: 'Stops of which one was timed',
    survey: { ...built, drive: { ...shut, ...open, stopTimes: { readings_s: [0.4] } }, lanes: [walkway] },
    sensors: [{ ...hung, fields: [timed] }],
    bodies: [box],
    zones: [zone],
    concept: free,
  },
  {
    name: 'Forces that nobody measured',
    survey: { ...built, lanes: [] },
    sensors: [
      {
        id: 'own',
        outputs: [{ name: 'OUT 1', function: 'presence' }],
        device: 'downward-row',
        side: 'a',
        mountingHeight_mm: 3100,
        offset_mm: 150,
        x_mm: 1500,
        tilt_deg: 5,
        planes: [{ id: 'one', beamCount: 20, spacing_mm: 90 }],
        maxRange_mm: 4000,
        rangeRef_mm: 4000,
        reflectanceRef: 0.1,
      },
    ],
    bodies: [box],
    concept: touching,
  },
  {
    name: 'Nothing that sees anybody',
    survey: { ...built, drive: shut, lanes: [walkway] },
    bodies: [box],
    zones: [zone],
    concept: free,
  },
  { ...hatch, name: 'Hatch in unknown air', survey: { ...hatch.survey, visibility_m: undefined } },
  {
    name: 'Devices of which little is declared',
    survey: { ...built, lanes: [] },
    sensors: [undefined, {}, { device: 'electro-sensitive', testedBy: 'itself', category: '2' }, { b10d: 1000, category: '1' }].map(
      (declares, i) => ({
        ...hung,
        id: `row-${i}`,
        fields: [timed],
        declares: declares && { ...declares, source: here },
      }),
    ),
    bodies: [box],
    zones: [zone],
    concept: { ...free, listing: 'needed' },
  },
  {
    ...hatch,
    name: 'Hatch with a source and contacts of which little is known',
    wiring: {
      ...hatch.wiring,
      copper: undefined,
      supply: { ...hatch.wiring.supply, limited: undefined, largest_A: undefined },
      sensors: hatch.wiring.sensors.map((wired, i) => ({
        ...wired,
        outputs: [
          {
            kind: 'contact',
            name: 'P',
            acts: 'presence',
            from: i === 0 ? 'grid.plus' : 'grid-belt.plus',
            to: i === 0 ? 'grid.out' : 'grid-belt.out',
            closedIn: ['clear'],
            ...(i === 0 && { rating: {} }),
          },
        ],
      })),
    },
  },
  {
    ...hatch,
    name: 'Hatch with one sensor that nobody wired',
    wiring: { ...hatch.wiring, sensors: hatch.wiring.sensors.slice(0, 1), cables: [] },
  },
  { ...hatch, name: 'Hatch with its zones in the wall', zones: hatch.zones.map((each) => ({ ...each, xMin_mm: -200, xMax_mm: -100 })) },
]
