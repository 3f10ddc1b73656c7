import type { RangingSensor, SegmentSensor, Sensor, Source, ZoneOnlySensor } from '@sillsight/engine'
import { BOUNDS } from '../bounds.ts'
import type { Catalogue } from '../libraries/catalogue.ts'
import type { Remarks } from '../remarks.ts'
import { type FilePlane, type FileSensor, type LibrarySensor, sensorSchema } from '../schema/sensor.ts'
import { shown, shownText } from '../shown.ts'
import { declaredOf } from './declares.ts'
import { DEFAULTS } from './defaults.ts'
import { fieldsOf } from './fields.ts'
import { ofOutput, outputsOf } from './outputs.ts'
import { rangingPlanes, segmentPlanes } from './planes.ts'
import { doorwayPose, type FilePlace } from './pose.ts'
import { weakestSource } from './sources.ts'
import { reportTwins } from './states.ts'

/** What a sensor needs to know of its doorway. */
export interface Doorway {
  readonly width_mm: number
  readonly states: readonly string[] // ids, the first is where backgrounds are learned unless a sensor says otherwise
}

/** One sensor while it is put together: what the file and its library give, and where its issues belong. */
export interface Given {
  readonly values: FileSensor
  readonly id: string
  readonly name: string
  readonly source: Source
  readonly path: string
  readonly doorway: Doorway
  readonly remarks: Remarks
}

/** The sensors in the order of the file; undefined where one cannot be put together, so that the others keep their numbers. */
export function doorSensors(
  listed: readonly FileSensor[],
  catalogue: Catalogue,
  doorway: Doorway,
  remarks: Remarks,
): readonly (Sensor | undefined)[] {
  const ids = listed.map((sensor, i) => sensor.id ?? `sensor-${i + 1}`)
  reportTwins(ids, (i) => `sensors/${i}/id`, remarks)
  if (tooManyBeams(listed, catalogue, remarks)) return listed.map(() => undefined)
  return listed.map((sensor, i) => sensorOf(sensor, ids[i] ?? '', `sensors/${i}`, catalogue, doorway, remarks))
}

/** Counted before any is made: a row of beams is written as a number and takes a place for each. */
function tooManyBeams(listed: readonly FileSensor[], catalogue: Catalogue, remarks: Remarks): boolean {
  const planes = listed.flatMap(({ planes: own, use = '' }) => own ?? catalogue.sensors.get(use)?.planes ?? [])
  const beams = planes.reduce((sum, plane) => sum + beamsOf(plane), 0)
  if (beams <= BOUNDS.beams) return false
  const expected = `at most ${BOUNDS.beams} beams at one door`
  remarks.issue({ code: 'too-much', path: 'sensors', expected, got: `${beams}`, repair: 'leave out sensors or planes' })
  return true
}

function beamsOf({ beamCount, places_mm, segments_mm, heights_mm }: FilePlane): number {
  return (beamCount ?? 0) + (places_mm?.length ?? 0) + (segments_mm?.length ?? 0) + (heights_mm?.length ?? 0)
}

function sensorOf(
  sensor: FileSensor,
  id: string,
  path: string,
  catalogue: Catalogue,
  doorway: Doorway,
  remarks: Remarks,
): Sensor | undefined {
  const library = sensor.use === undefined ? undefined : catalogue.sensors.get(sensor.use)
  if (sensor.use !== undefined && library === undefined) {
    const known = [...catalogue.sensors.keys()].slice(0, 10).map(shownText).join(', ')
    remarks.issue({ code: 'unknown-id', path: `${path}/use`, expected: `a sensor of a library (${known})`, got: shownText(sensor.use) })
    return undefined
  }
  const values: FileSensor = { ...library, ...sensor }
  const source = sourceOf(sensor, library, path, remarks)
  const given: Given = { values, id, name: values.name ?? id, source, path, doorway, remarks }
  switch (values.device) {
    case 'scanner':
    case 'downward-row':
      return rangingSensor(given, values.device)
    case 'segments':
      return segmentSensor(given)
    case 'zone-only':
      return zoneOnlySensor(given)
    default:
      remarks.missing(`${path}/${sensor.use === undefined ? 'use' : 'device'}`, 'a sensor of a library ("use"), or "device" and its values')
      return undefined
  }
}

/** Values of a data sheet: whoever changes one says where the other figure comes from. */
const SOURCED = ['planes', 'maxRange_mm', 'rangeRef_mm', 'reflectanceRef', 'backgroundMargin_mm', 'spotRadius_mm'] as const

function sourceOf(sensor: FileSensor, library: LibrarySensor | undefined, path: string, remarks: Remarks): Source {
  const single = { ...library?.sources, ...sensor.sources }
  for (const name of Object.keys(sensor.sources ?? {})) {
    if (!Object.hasOwn(sensorSchema.fields, name))
      remarks.note({
        code: 'unknown-value',
        path: `${path}/sources`,
        text: `a source of ${shownText(name)}, which is no value of a sensor: it counts for the sensor as a whole`,
      })
  }
  if (sensor.source === undefined && library === undefined && sensor.sources === undefined) remarks.assume(`${path}/source`)
  for (const name of library === undefined || sensor.source !== undefined ? [] : SOURCED) {
    const placed = name === 'planes' && library?.planes === undefined
    if (sensor[name] !== undefined && !placed && sensor.sources?.[name] === undefined)
      remarks.missing(`${path}/sources/${name}`, "the source of the value that replaces the library's")
  }
  return weakestSource([library?.source, sensor.source], single)
}

function rangingSensor(given: Given, device: 'scanner' | 'downward-row'): RangingSensor | undefined {
  const { values, id, name, source, path, doorway, remarks } = given
  refuse(given, device, ['covers', 'function', 'output', 'needs'])
  const placed = device === 'downward-row' && values.planes?.every((plane) => plane.places_mm !== undefined) === true
  const place = placed ? placedRow(values) : doorwayPose(given)
  const planes = place && rangingPlanes(given, device, place)
  const { maxRange_mm, rangeRef_mm, reflectanceRef } = values
  if (maxRange_mm === undefined) remarks.missing(`${path}/maxRange_mm`, 'a number above 0')
  if (rangeRef_mm === undefined) remarks.missing(`${path}/rangeRef_mm`, 'a number above 0')
  if (reflectanceRef === undefined) remarks.missing(`${path}/reflectanceRef`, 'a number from 0.001 up to 1')
  if (values.backgroundMargin_mm === undefined) remarks.assume(`${path}/backgroundMargin_mm`)
  const fields = fieldsOf(given, device)
  if (!place || !planes || maxRange_mm === undefined || rangeRef_mm === undefined || reflectanceRef === undefined) return undefined
  return {
    kind: 'ranging',
    id,
    name,
    source,
    planes,
    pose: place.pose,
    maxRange_mm,
    rangeRef_mm,
    reflectanceRef,
    backgroundMargin_mm: values.backgroundMargin_mm ?? DEFAULTS.backgroundMargin_mm,
    spotRadius_mm: values.spotRadius_mm ?? 0,
    ...outputsOf(given),
    ...declaredOf(values.declares),
    fields,
    learnedIn: learnedIn(given, doorway),
  }
}

/** A row whose planes say where each beam starts needs no place of its own; its side still says where its beams lean. */
function placedRow({ planes, side, pose }: FileSensor): FilePlace {
  const [x_mm, y_mm, z_mm] = planes?.[0]?.places_mm?.[0] ?? [0, 0, 0]
  const faces = side === 'b' || Math.abs(pose?.yaw_deg ?? 0) === 180 ? -1 : 1
  return { pose: { x_mm, y_mm, z_mm, yaw_rad: 0, tilt_rad: 0, roll_rad: 0 }, faces, tilt_deg: 0 }
}

function learnedIn({ values, path, remarks }: Given, { states }: Doorway): string {
  const [first = ''] = states
  if (values.learnedIn === undefined) {
    if (states.length > 1) remarks.assume(`${path}/learnedIn`)
    return first
  }
  if (!states.includes(values.learnedIn))
    remarks.issue({
      code: 'unknown-id',
      path: `${path}/learnedIn`,
      expected: `a state (${states.map(shownText).join(', ')})`,
      got: shownText(values.learnedIn),
    })
  return values.learnedIn
}

function segmentSensor(given: Given): SegmentSensor | undefined {
  const { values, id, name, source } = given
  refuse(given, 'segments', [
    'covers',
    'function',
    'output',
    'needs',
    'pose',
    'mountingHeight_mm',
    'offset_mm',
    'x_mm',
    'tilt_deg',
    'maxRange_mm',
    'rangeRef_mm',
    'reflectanceRef',
    'backgroundMargin_mm',
    'learnedIn',
  ])
  const planes = segmentPlanes(given)
  const fields = fieldsOf(given, 'segments')
  return (
    planes && {
      kind: 'segment',
      id,
      name,
      source,
      planes,
      spotRadius_mm: values.spotRadius_mm ?? 0,
      ...outputsOf(given),
      ...declaredOf(values.declares),
      fields,
    }
  )
}

function zoneOnlySensor(given: Given): ZoneOnlySensor | undefined {
  const { values, id, name, source, path, remarks } = given
  refuse(given, 'zone-only', [
    'planes',
    'fields',
    'maxRange_mm',
    'rangeRef_mm',
    'reflectanceRef',
    'backgroundMargin_mm',
    'spotRadius_mm',
    'learnedIn',
  ])
  const { covers, output, needs = '' } = values
  if (covers === undefined) remarks.missing(`${path}/covers`, 'the drawn rectangle')
  if (values.function === undefined) remarks.missing(`${path}/function`, 'what its output does at the door')
  if (output === undefined) remarks.missing(`${path}/output`, 'the output that it switches')
  if (covers === undefined || values.function === undefined || output === undefined) return undefined
  mustRise(covers.xMin_mm, covers.xMax_mm, `${path}/covers/xMax_mm`, 'xMin_mm', remarks)
  mustRise(covers.yMin_mm, covers.yMax_mm, `${path}/covers/yMax_mm`, 'yMin_mm', remarks)
  const { function: acts } = ofOutput({ id, output, function: values.function }, path, given)
  return {
    kind: 'zone-only',
    id,
    name,
    source,
    function: acts,
    output,
    needs,
    ...covers,
    ...outputsOf(given),
    ...declaredOf(values.declares),
  }
}

/** A value that this kind of device does not have would be believed to act: it is refused instead of ignored. */
function refuse({ values, path, remarks }: Given, device: string, names: readonly (keyof FileSensor)[]): void {
  for (const name of names) {
    if (values[name] !== undefined)
      remarks.issue({
        code: 'does-not-fit',
        path: `${path}/${name}`,
        expected: `nothing here for device "${device}"`,
        got: shown(values[name]),
      })
  }
}

/** A range whose ends are equal or turned round holds nothing. */
export function mustRise(least: number, largest: number, path: string, leastName: string, remarks: Remarks): void {
  if (least >= largest)
    remarks.issue({ code: 'contradiction', path, expected: `a number above ${leastName} (${least})`, got: shown(largest) })
}
