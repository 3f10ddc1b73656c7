import { CYCLE_NAMES, type Cycle, cycleOf } from './cycle.ts'
import { DOOR_BOUNDS } from './door.ts'
import { idAt, type Json, listAt, numberAt, numbersAt, objectAt, oneOf, own, parseBounded, refuse } from './json.ts'
import type { Drive } from './leaf-motion.ts'
import type { Hung } from './turning-leaf.ts'

export interface Leaf {
  readonly travel: 'down' | 'toward-zero' | 'toward-width' | 'both-inward' | 'turning'
  /** To either side of y = 0, with what it may bulge. */
  readonly half: number
  /** Of a leaf that turns, and only of such. */
  readonly hung?: Hung
}

export type Side = 'a' | 'b'

export interface Lane {
  readonly id: string
  readonly xMin: number
  readonly xMax: number
  readonly from: readonly Side[]
  readonly slowest: number // mm per s
  readonly fastest: number
  readonly bodies: readonly string[]
  readonly longestStay_s: number | undefined
  readonly falls: boolean
  /** From the back of one body to the front of the next, at the least; undefined where none follows. */
  readonly followGap: number | undefined
}

/** What the door file says about leaf, drive and lanes; read only where the evidence has passages. */
export interface Traffic {
  readonly leaf: Leaf
  readonly drive: Drive
  readonly cycle: Cycle
  /** Ways from which a closing may begin, beside the whole one. */
  readonly partial: readonly number[]
  readonly width: number
  readonly height: number
  readonly lanes: readonly Lane[]
}

/** Slower is standing. */
const SLOWEST = 1

/**
 * Anything that stands in the door file beside the names known here could change what the leaf does: then nothing is claimed.
 */
const KNOWN = {
  leaf: ['travel', 'thickness_mm', 'bulge_mm', 'parked', 'hinged'],
  hinged: ['hinge', 'opensTo', 'length_mm', 'secondPanel_mm', 'openAngle_deg'],
  drive: [
    'closeSpeed_m_per_s',
    'closeAccel_m_per_s2',
    'closeJerk_m_per_s3',
    'stopDelay_s',
    'stopDecel_m_per_s2',
    'stoppingCurve',
    'stopTimes', // their statistics serve the approach distance
    'afterStop',
    'reverseDelay_s',
    'openSpeed_m_per_s',
    'openAccel_m_per_s2',
    'openDelay_s', // of a shut leaf
    'partialOpenings_mm',
    'holdOpen_s',
    'cycle',
    'brake',
    'coastDecel_m_per_s2',
    'coastWay_mm',
    'movingMass_kg',
    'source',
  ],
  lane: [
    'id',
    'name',
    'who',
    'xMin_mm',
    'xMax_mm',
    'directions',
    'slowest_m_per_s',
    'fastest_m_per_s',
    'bodies',
    'longestStay_s',
    'falls',
    'followGap_mm',
    'braking',
  ],
}

export function trafficOf(text: string, bodies: readonly string[]): Traffic {
  const survey = objectAt(own(objectAt(parseBounded(text, 'door', DOOR_BOUNDS), 'door'), 'survey'), 'survey')
  const leaf = knownAt(own(survey, 'leaf'), 'survey/leaf', KNOWN.leaf)
  const given = knownAt(own(survey, 'drive'), 'survey/drive', KNOWN.drive)
  const opening = objectAt(own(survey, 'opening'), 'survey/opening')
  const at = (name: string) => numberAt(own(given, name), `survey/drive/${name}`, 0)
  const jerk = own(given, 'closeJerk_m_per_s3')
  const curve = curveOf(own(given, 'stoppingCurve'))
  const drive: Drive = {
    speed: 1000 * at('closeSpeed_m_per_s'),
    accel: 1000 * at('closeAccel_m_per_s2'),
    jerk: jerk === undefined ? undefined : 1000 * at('closeJerk_m_per_s3'),
    delay: curve ? 0 : at('stopDelay_s'),
    decel: curve ? Infinity : decelOf(given),
    curve,
  }
  if (!(drive.speed > 0 && drive.accel > 0 && (drive.jerk === undefined || drive.jerk > 0)))
    refuse('out-of-range', 'survey/drive', 'a drive that moves the leaf', 'none')
  if (!(drive.decel > 0)) refuse('out-of-range', 'survey/drive', 'a leaf that slows after a stop', drive.decel)
  const partial = listAt(own(given, 'partialOpenings_mm') ?? [], 'survey/drive/partialOpenings_mm', { most: 100 })
  const width = numberAt(own(opening, 'width_mm'), 'survey/opening/width_mm', 0)
  return {
    leaf: leafOf(leaf, width),
    drive,
    cycle: cycleOf(own(given, 'cycle') === undefined ? {} : knownAt(own(given, 'cycle'), 'survey/drive/cycle', CYCLE_NAMES), given),
    partial: partial.map((each, i) => numberAt(each, `survey/drive/partialOpenings_mm/${i}`, 0)),
    width,
    height: numberAt(own(opening, 'height_mm'), 'survey/opening/height_mm', 0),
    lanes: lanesOf(own(survey, 'lanes'), bodies),
  }
}

function leafOf(leaf: Json, width: number): Leaf {
  const travel = oneOf(own(leaf, 'travel'), 'survey/leaf/travel', ['down', 'toward-zero', 'toward-width', 'both-inward', 'turning'])
  const at = (name: string) => numberAt(own(leaf, name) ?? (name === 'bulge_mm' ? 0 : undefined), `survey/leaf/${name}`, 0)
  const half = at('thickness_mm') / 2 + at('bulge_mm')
  const path = 'survey/leaf/hinged'
  const given = own(leaf, 'hinged')
  if ((given !== undefined) !== (travel === 'turning')) refuse('cannot-show', path, 'a leaf that turns, and how it is hung', travel)
  return given === undefined ? { travel, half } : { travel, half, hung: hungOf(knownAt(given, path, KNOWN.hinged), width, half, path) }
}

function hungOf(given: Json, width: number, half: number, path: string): Hung {
  const at = (name: string, most?: number) => numberAt(own(given, name), `${path}/${name}`, Number.MIN_VALUE, most)
  const hinge = oneOf(own(given, 'hinge'), `${path}/hinge`, ['at-zero', 'at-width', 'both'])
  const arm = at('length_mm')
  const second = own(given, 'secondPanel_mm') === undefined ? undefined : at('secondPanel_mm')
  if (second !== undefined && second < arm) refuse('out-of-range', `${path}/secondPanel_mm`, `at least ${arm}`, second)
  return {
    leaves: [
      ...(hinge === 'at-width' ? [] : [{ hingeX: 0, toward: 1 } as const]),
      ...(hinge === 'at-zero' ? [] : [{ hingeX: width, toward: -1 } as const]),
    ],
    opensTo: oneOf(own(given, 'opensTo'), `${path}/opensTo`, ['a', 'b']),
    arm,
    second,
    openAngle_deg: at('openAngle_deg', second === undefined ? 180 : 90),
    half,
  }
}

/** A list without readings is none. */
function curveOf(given: unknown): Drive['curve'] {
  const path = 'survey/drive/stoppingCurve'
  let [at, gone] = [0, 0]
  const curve = listAt(given ?? [], path, { most: 10_000 }).map((each, i) => {
    const [time = 0, way = 0] = numbersAt(each, `${path}/${i}`, 2)
    if (!(time > at && way >= gone)) refuse('contradiction', `${path}/${i}`, 'times and ways that rise', `[${time}, ${way}]`)
    ;[at, gone] = [time, way]
    return [time, way] as const
  })
  return curve.length > 0 ? curve : undefined
}

/** After the delay: of the brake, or of friction where there is none; a measured way at full speed is v^2 / (2 a). */
function decelOf(given: Json): number {
  const at = (name: string) => numberAt(own(given, name), `survey/drive/${name}`, 0)
  if (own(given, 'brake') !== 'none') return 1000 * at('stopDecel_m_per_s2')
  if (own(given, 'coastDecel_m_per_s2') !== undefined) return 1000 * at('coastDecel_m_per_s2')
  return (1000 * at('closeSpeed_m_per_s')) ** 2 / (2 * at('coastWay_mm'))
}

function lanesOf(listed: unknown, bodies: readonly string[]): readonly Lane[] {
  const ids = new Set<string>()
  return listAt(listed ?? [], 'survey/lanes', { most: 100 }).map((each, i) => {
    const path = `survey/lanes/${i}`
    const lane = knownAt(each, path, KNOWN.lane)
    const at = (name: string) => numberAt(own(lane, name), `${path}/${name}`)
    const directions = listAt(own(lane, 'directions') ?? ['from-a', 'from-b'], `${path}/directions`, { least: 1, most: 2 })
    const among = listAt(own(lane, 'bodies') ?? bodies, `${path}/bodies`, { least: 1, most: 32 })
    const stay = own(lane, 'longestStay_s')
    const [slowest, fastest] = [1000 * at('slowest_m_per_s'), 1000 * at('fastest_m_per_s')].map((speed) => Math.max(SLOWEST, speed))
    if (slowest === undefined || fastest === undefined || slowest > fastest || at('xMin_mm') >= at('xMax_mm'))
      return refuse('contradiction', path, 'a lane with a width and a range of paces', 'none')
    return {
      id: idAt(own(lane, 'id'), `${path}/id`, ids),
      xMin: at('xMin_mm'),
      xMax: at('xMax_mm'),
      from: directions.map((side, k) => (oneOf(side, `${path}/directions/${k}`, ['from-a', 'from-b']) === 'from-a' ? 'a' : 'b')),
      slowest,
      fastest,
      bodies: [...new Set(among.map((body, k) => oneOf(body, `${path}/bodies/${k}`, bodies)))],
      longestStay_s: stay === undefined ? undefined : numberAt(stay, `${path}/longestStay_s`, 0),
      falls: oneOf(own(lane, 'falls') ?? 'never', `${path}/falls`, ['never', 'anywhere']) === 'anywhere',
      followGap: own(lane, 'followGap_mm') === undefined ? undefined : numberAt(own(lane, 'followGap_mm'), `${path}/followGap_mm`, 0),
    }
  })
}

function knownAt(value: unknown, path: string, known: readonly string[]): Json {
  const object = objectAt(value, path)
  for (const name of Object.keys(object))
    if (!known.includes(name))
      refuse('cannot-show', `${path}/${name}`, `nothing but ${known.join(', ')}`, 'something that may change what the leaf does')
  return object
}
