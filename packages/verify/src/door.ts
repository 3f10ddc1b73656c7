import { idAt, type Json, listAt, numberAt, numbersAt, objectAt, oneOf, own, parseBounded, refuse, textAt } from './json.ts'
import { passerOf, yawAt } from './passers.ts'
import type { Body, Door, Posture, SensingFunction, Tolerances, Zone } from './plain.ts'
import { type Entries, FUNCTIONS, fieldsOf, libraryEntry } from './sensors.ts'
import { SHIPPED_BODIES, SHIPPED_SENSORS } from './shipped.ts'
import { statesOf, widthOf } from './surroundings.ts'

/** How the text of a library is reached by its path beside the door file; undefined if there is none. */
export interface Access {
  readonly sha256: (text: string) => string
  readonly readLibrary?: ((file: string) => string | undefined) | undefined
}

export const DOOR_BOUNDS = { length: 8 * 1024 * 1024, depth: 32 }
const LIBRARY_BOUNDS = { length: 2 * 1024 * 1024, depth: 32 }

/** The door of a door file, version 1 (docs/door-file.md), as plain numbers, with everything that the file implies and every default. */
export function doorOf(text: string, access: Access): Door {
  const file = objectAt(parseBounded(text, 'door', DOOR_BOUNDS), 'door')
  if (own(file, 'sillsight') !== 1) refuse('version', 'door/sillsight', 'version 1 of the door file', own(file, 'sillsight'))
  const survey = objectAt(own(file, 'survey'), 'survey')
  const { sensors, bodies: bodyEntries } = entriesOf(file, access)
  const states = statesOf(survey)
  const width = widthOf(survey)
  const { fields, ys } = fieldsOf(own(file, 'sensors'), sensors, { width, states: states.map((state) => state.id) })
  const bodies = bodiesOf(own(file, 'bodies'), bodyEntries)
  const ids = bodies.map((body) => body.id)
  const whole = bodies.filter(({ ofParts }) => !ofParts)
  const usual = whole.length > 0 ? whole.map((body) => body.id) : ids
  const zones = own(file, 'zones') === undefined ? zonesAtLeaf(ys, width, usual) : zonesOf(own(file, 'zones'), ids, usual)
  return {
    states,
    fields,
    bodies,
    zones,
    extinction: extinctionOf(own(survey, 'visibility_m')),
    tolerances: tolerancesOf(own(file, 'tolerances')),
  }
}

/** What ships with the program, and the libraries that the door file names, each pinned by its content. */
function entriesOf(file: Json, { sha256, readLibrary }: Access): { readonly sensors: Entries; readonly bodies: Entries } {
  const [sensors, bodies] = [new Map(Object.entries(SHIPPED_SENSORS)), new Map(Object.entries(SHIPPED_BODIES))]
  for (const [i, each] of listAt(own(file, 'libraries') ?? [], 'libraries', { most: 16 }).entries()) {
    const path = `libraries/${i}`
    const named = objectAt(each, path)
    const text =
      readLibrary?.(textAt(own(named, 'file'), `${path}/file`)) ?? refuse('no-library', path, 'a library that can be read', 'none')
    const found = sha256(text)
    if (found !== own(named, 'sha256')) refuse('changed-library', `${path}/sha256`, `${own(named, 'sha256')}`, found)
    const library = objectAt(parseBounded(text, path, LIBRARY_BOUNDS), path)
    if (own(library, 'sillsightLibrary') !== 1) refuse('version', path, 'version 1 of the library', own(library, 'sillsightLibrary'))
    for (const [into, name] of [
      [sensors, 'sensors'],
      [bodies, 'bodies'],
    ] as const)
      for (const [id, entry] of Object.entries(objectAt(own(library, name) ?? {}, `${path}/${name}`))) {
        if (into.has(id)) refuse('duplicate-id', `${path}/${name}`, 'ids that no other library has', id)
        into.set(id, objectAt(entry, `${path}/${name}/${id}`))
      }
  }
  return { sensors, bodies }
}

function bodiesOf(listed: unknown, entries: Entries): readonly Body[] {
  const reference = 'presence-reference-body'
  const ids = new Set<string>()
  return listAt(listed ?? [{ id: reference, use: reference }], 'bodies', { least: 1, most: 32 }).map((each, i) => {
    const path = `bodies/${i}`
    const given = objectAt(each, path)
    const values = { ...libraryEntry(given, entries, path), ...given }
    const id = idAt(own(given, 'id'), `${path}/id`, ids)
    const postures = listAt(own(values, 'postures'), `${path}/postures`, { least: 1, most: 32 })
    const ofParts = postures.some((posture, k) => own(objectAt(posture, `${path}/postures/${k}`), 'shape') === 'parts')
    const reflectance = numberAt(own(values, 'reflectance'), `${path}/reflectance`, 0, 1)
    return {
      id,
      reflectance,
      ofParts,
      passers: postures.map((posture, k) => passerOf(objectAt(posture, `${path}/postures/${k}`), reflectance, `${path}/postures/${k}`)),
      postures: (ofParts ? [] : postures).map((posture, k) =>
        postureOf(objectAt(posture, `${path}/postures/${k}`), `${path}/postures/${k}`),
      ),
    }
  })
}

function postureOf(posture: Json, path: string): Posture {
  const shape = oneOf(own(posture, 'shape'), `${path}/shape`, ['box', 'cylinder'])
  if (shape === 'cylinder')
    return {
      shape,
      radius: numberAt(own(posture, 'radius_mm'), `${path}/radius_mm`, 0),
      height: numberAt(own(posture, 'height_mm'), `${path}/height_mm`, 0),
    }
  const [a = 0, b = 0, c = 0] = numbersAt(own(posture, 'size_mm'), `${path}/size_mm`, 3)
  return { shape, size: [a, b, c], yaw_deg: yawAt(posture, path) }
}

const FUNCTION_OF = { 'presence-at-leaf': 'presence', opening: 'opening', call: 'call', 'must-not-see': undefined } as const
const PURPOSES = ['presence-at-leaf', 'opening', 'call', 'must-not-see'] as const

function zonesOf(listed: unknown, bodies: readonly string[], usual: readonly string[]): readonly Zone[] {
  const ids = new Set<string>()
  return listAt(listed, 'zones', { least: 1, most: 32 }).map((each, i) => {
    const path = `zones/${i}`
    const zone = objectAt(each, path)
    const at = (name: string) => numberAt(own(zone, name), `${path}/${name}`)
    const purpose = oneOf(own(zone, 'purpose'), `${path}/purpose`, PURPOSES)
    const acts: SensingFunction = FUNCTION_OF[purpose] ?? oneOf(own(zone, 'function'), `${path}/function`, FUNCTIONS)
    const stay = own(zone, 'longestStay_s')
    const among = listAt(own(zone, 'bodies') ?? usual, `${path}/bodies`, { least: 1, most: 32 })
    const tile = { xMin: at('xMin_mm'), xMax: at('xMax_mm'), yMin: at('yMin_mm'), yMax: at('yMax_mm') }
    if (tile.xMin >= tile.xMax || tile.yMin >= tile.yMax) refuse('contradiction', path, 'a rectangle with an area', 'none')
    return {
      ...tile,
      id: idAt(own(zone, 'id'), `${path}/id`, ids),
      acts,
      mustNotSee: purpose === 'must-not-see',
      bodies: [...new Set(among.map((body, k) => oneOf(body, `${path}/bodies/${k}`, bodies)))],
      longestStay_s: stay === undefined ? undefined : numberAt(stay, `${path}/longestStay_s`, 0),
    }
  })
}

/** Presence at the leaf, 1000 mm deep, on each side that has a sensor; on both if none has. */
function zonesAtLeaf(ys: readonly number[], width: number, bodies: readonly string[]): readonly Zone[] {
  const sides = (['a', 'b'] as const).filter((side) => ys.length === 0 || ys.some((y) => y < 0 === (side === 'b')))
  const common = { xMin: 0, xMax: width, acts: 'presence', mustNotSee: false, bodies, longestStay_s: undefined } as const
  return sides.map((side) => ({ ...common, id: `leaf-${side}`, yMin: side === 'a' ? 0 : -1000, yMax: side === 'a' ? 1000 : 0 }))
}

function extinctionOf(visibility: unknown): number {
  return visibility === undefined || visibility === 'clear' ? 0 : 3.912 / (numberAt(visibility, 'survey/visibility_m', 1e-9) * 1000)
}

/** The names and the largest value of each tolerance. */
export const TOLERANCES = {
  length_mm: 200,
  position_mm: 200,
  tilt_deg: 5,
  roll_deg: 5,
  yaw_deg: 5,
  floor_mm: 200,
  range_percent: 90,
} as const

function tolerancesOf(given: unknown): Tolerances | undefined {
  if (given === undefined) return undefined
  const object = objectAt(given, 'tolerances')
  const at = (name: keyof typeof TOLERANCES) => numberAt(own(object, name), `tolerances/${name}`, 0, TOLERANCES[name])
  return {
    length: at('length_mm'),
    position: at('position_mm'),
    tilt: at('tilt_deg'),
    roll: at('roll_deg'),
    yaw: at('yaw_deg'),
    floor: at('floor_mm'),
    range: at('range_percent'),
  }
}
