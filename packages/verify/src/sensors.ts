import { type Pose, planesOf } from './beams.ts'
import { idAt, type Json, listAt, numberAt, objectAt, oneOf, own, refuse, textAt } from './json.ts'
import type { Field, Sensor, Vector, Zone } from './plain.ts'

export const FUNCTIONS = ['presence', 'opening', 'call'] as const

/** What `use` may name, by id. */
export type Entries = ReadonlyMap<string, Json>

export interface Doorway {
  readonly width: number
  readonly states: readonly string[]
}

/** The fields of every sensor that sees with beams, and the y of everything that a sensor has, by which the door's default zones are found. */
export function fieldsOf(
  listed: unknown,
  entries: Entries,
  doorway: Doorway,
): { readonly fields: readonly Field[]; readonly ys: readonly number[] } {
  const fields: Field[] = []
  const ys: number[] = []
  const ids = new Set<string>()
  for (const [i, each] of listAt(listed ?? [], 'sensors', { most: 32 }).entries()) {
    const path = `sensors/${i}`
    const given = objectAt(each, path)
    const values = { ...libraryEntry(given, entries, path), ...given }
    const id = idAt(own(given, 'id') ?? `sensor-${i + 1}`, `${path}/id`, ids)
    const device = oneOf(own(values, 'device'), `${path}/device`, ['scanner', 'downward-row', 'segments', 'zone-only'])
    if (device === 'zone-only') {
      const covers = objectAt(own(values, 'covers'), `${path}/covers`)
      ys.push(numberAt(own(covers, 'yMin_mm'), `${path}/covers/yMin_mm`), numberAt(own(covers, 'yMax_mm'), `${path}/covers/yMax_mm`))
      continue
    }
    const sensor = sensorOf(values, id, device, doorway, path)
    fields.push(...fieldsOfSensor(values, sensor, path))
    for (const { beams } of sensor.planes)
      for (const { from, along, length } of beams) ys.push(from[1], sensor.segments ? from[1] + along[1] * length : from[1])
  }
  return { fields, ys }
}

/** What the library says; whatever the entry itself says stands before it. */
export function libraryEntry(entry: Json, entries: Entries, path: string): Json {
  const use = own(entry, 'use')
  if (use === undefined) return {}
  return entries.get(textAt(use, `${path}/use`)) ?? refuse('unknown-id', `${path}/use`, 'an entry of a library', use)
}

function sensorOf(values: Json, id: string, device: 'scanner' | 'downward-row' | 'segments', doorway: Doorway, path: string): Sensor {
  const segments = device === 'segments'
  const value = (name: string, otherwise?: number) => numberAt(own(values, name) ?? otherwise, `${path}/${name}`, 0)
  const needed = (name: string) => (segments ? 0 : numberAt(own(values, name), `${path}/${name}`, Number.MIN_VALUE))
  const learnedIn = own(values, 'learnedIn') ?? doorway.states[0]
  return {
    id,
    segments,
    planes: planesOf(own(values, 'planes'), device, segments ? NOWHERE : poseOf(values, device, doorway, path), `${path}/planes`),
    maxRange: needed('maxRange_mm'),
    rangeRef: needed('rangeRef_mm'),
    reflectanceRef: needed('reflectanceRef'),
    margin: segments ? 0 : value('backgroundMargin_mm', 0),
    spot: value('spotRadius_mm', 0),
    learnedIn: oneOf(learnedIn, `${path}/learnedIn`, doorway.states),
  }
}

const NOWHERE: Pose = { origin: [0, 0, 0], yaw: 0, tilt: 0, roll: 0, faces: 1, leans: 0 }

/** From its long form, or from side, mounting height and offset. */
function poseOf(values: Json, device: string, { width }: Doorway, path: string): Pose {
  const at = (of: Json, name: string, otherwise?: number) => numberAt(own(of, name) ?? otherwise, `${path}/${name}`)
  const side = own(values, 'side')
  const pose = own(values, 'pose') === undefined ? undefined : objectAt(own(values, 'pose'), `${path}/pose`)
  if (device === 'downward-row' && everyPlaneIsPlaced(values)) {
    const turned = side === 'b' || (pose !== undefined && Math.abs(at(pose, 'yaw_deg', 0)) === 180)
    return { ...NOWHERE, faces: turned ? -1 : 1 }
  }
  if (pose !== undefined) {
    const [yaw, tilt, roll] = [at(pose, 'yaw_deg', 0), at(pose, 'tilt_deg', 0), at(pose, 'roll_deg', 0)]
    const origin: Vector = [at(pose, 'x_mm'), at(pose, 'y_mm'), at(pose, 'z_mm')]
    return { origin, yaw, tilt, roll, faces: Math.abs(yaw) === 180 ? -1 : 1, leans: tilt }
  }
  const faces = oneOf(side, `${path}/side`, ['a', 'b']) === 'b' ? -1 : 1
  const origin: Vector = [at(values, 'x_mm', width / 2), faces * at(values, 'offset_mm'), at(values, 'mountingHeight_mm')]
  const tilt = own(values, 'tilt_deg') === undefined ? at(values, 'usualTilt_deg', 0) : at(values, 'tilt_deg')
  return { origin, yaw: faces === 1 ? 0 : 180, tilt, roll: 0, faces, leans: tilt }
}

function everyPlaneIsPlaced(values: Json): boolean {
  const planes = own(values, 'planes')
  return Array.isArray(planes) && planes.every((plane: unknown) => own(objectAt(plane, 'planes'), 'places_mm') !== undefined)
}

function fieldsOfSensor(values: Json, sensor: Sensor, path: string): readonly Field[] {
  const all = sensor.planes.map((plane) => plane.id)
  const open = { sensor, planes: all, x: [-Infinity, Infinity], y: [-Infinity, Infinity], clearance: 0, top: Infinity, cluster: 1 } as const
  if (own(values, 'fields') === undefined)
    return [
      { ...open, name: `${sensor.id}/all`, acts: 'presence', presence_s: undefined, times: undefined, blanks: false, byLeaf: undefined },
    ]
  const ids = new Set<string>()
  const outputs = outputsAt(own(values, 'outputs'), `${path}/outputs`)
  return listAt(own(values, 'fields'), `${path}/fields`, { least: 1, most: 32 }).map((each, i) => {
    const at = `${path}/fields/${i}`
    const field = withOutput(objectAt(each, at), outputs, at)
    const id = idAt(own(field, 'id'), `${at}/id`, ids)
    const limit = (name: string, otherwise: number) => {
      const given = sensor.segments ? undefined : own(field, name)
      return given === undefined || given === 'open' ? otherwise : numberAt(given, `${at}/${name}`)
    }
    const presence = own(field, 'presenceTime_s')
    return {
      name: `${sensor.id}/${id}`,
      sensor,
      planes: listAt(own(field, 'planes') ?? all, `${at}/planes`, { least: 1, most: 64 }).map((plane, k) =>
        oneOf(plane, `${at}/planes/${k}`, all),
      ),
      x: [limit('xMin_mm', -Infinity), limit('xMax_mm', Infinity)],
      y: [limit('yMin_mm', -Infinity), limit('yMax_mm', Infinity)],
      clearance: limit('clearance_mm', 0),
      top: limit('top_mm', Infinity),
      cluster: numberAt(own(field, 'clusterBeams') ?? 1, `${at}/clusterBeams`, 1, 4096),
      acts: oneOf(own(field, 'function'), `${at}/function`, FUNCTIONS),
      presence_s: presence === undefined ? undefined : presence === 'for-ever' ? Infinity : numberAt(presence, `${at}/presenceTime_s`, 0),
      times: timesOf(field, at),
      ...leafOf(field, at),
    }
  })
}

function outputsAt(listed: unknown, path: string): ReadonlyMap<string, Json> | undefined {
  if (listed === undefined) return undefined
  const outputs = new Map<string, Json>()
  for (const [k, each] of listAt(listed, path, { least: 1, most: 32 }).entries()) {
    const output = objectAt(each, `${path}/${k}`)
    const name = textAt(own(output, 'name'), `${path}/${k}/name`)
    if (outputs.has(name)) refuse('duplicate-id', `${path}/${k}/name`, 'a name that stands once', name)
    outputs.set(name, output)
  }
  return outputs
}

/** What a field says for itself stands before what its output says; the function is one and the same. */
function withOutput(field: Json, outputs: ReadonlyMap<string, Json> | undefined, path: string): Json {
  if (outputs === undefined) return field
  const name = textAt(own(field, 'output'), `${path}/output`)
  const output = outputs.get(name) ?? refuse('unknown-id', `${path}/output`, 'an output of this sensor', name)
  const [acts, stated] = [own(output, 'function'), own(field, 'function')]
  if (stated !== undefined && stated !== acts) refuse('unknown', `${path}/function`, 'the function of its output', stated)
  return { ...output, ...field, function: acts }
}

function timesOf(field: Json, path: string): Field['times'] {
  const [response, hold] = [own(field, 'response_s'), own(field, 'hold_s')]
  if (response === undefined || hold === undefined) return undefined
  return { response: numberAt(response, `${path}/response_s`, 0), hold: numberAt(hold, `${path}/hold_s`, 0) }
}

/** Where there is any blanking, the leaf hides as well. */
function leafOf(field: Json, path: string): Pick<Field, 'blanks' | 'byLeaf'> {
  const blanks = listAt(own(field, 'blanking') ?? [], `${path}/blanking`, { most: 1000 }).length > 0
  const hides = oneOf(own(field, 'leafHides') ?? 'nothing', `${path}/leafHides`, ['nothing', 'bodies']) === 'bodies'
  const follows = own(field, 'leafBlanking')
  if (!blanks && !hides && follows === undefined) return { blanks, byLeaf: undefined }
  if (follows === undefined) return { blanks, byLeaf: { ignores: undefined } }
  const window = objectAt(follows, `${path}/leafBlanking`)
  const at = (name: string) => numberAt(own(window, name), `${path}/leafBlanking/${name}`, 0)
  return { blanks, byLeaf: { ignores: { beside: at('beside_mm'), before: at('before_mm') } } }
}

/** Right function, and not known to let a body go that may be known to stay longer (docs/method.md, section 2, "Presence time"). */
export function countsFor({ acts, presence_s }: Field, { acts: wanted, longestStay_s }: Pick<Zone, 'acts' | 'longestStay_s'>): boolean {
  return acts === wanted && !(presence_s !== undefined && longestStay_s !== undefined && presence_s < longestStay_s)
}
