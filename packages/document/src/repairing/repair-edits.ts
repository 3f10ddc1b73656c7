import {
  type Door,
  type DrivePart,
  type FieldPart,
  type OutputPart,
  type Pose,
  type Repair,
  type RepairStep,
  repaired,
} from '@sillsight/engine'
import { resolveDoor } from '../door/resolve.ts'
import type { Catalogue } from '../libraries/catalogue.ts'
import { putPlace } from '../put-place.ts'
import { Remarks } from '../remarks.ts'
import type { DoorFile } from '../schema/door-file.ts'
import type { FileField, FileSensor } from '../schema/sensor.ts'
import { sameDoor } from './same-door.ts'

/** One change of a door file: a value at a place (none takes it away), one more entry at the end of a list, or an entry taken out of one. */
export type FileEdit =
  | { readonly kind: 'put'; readonly path: string; readonly value: unknown }
  | { readonly kind: 'append'; readonly path: string; readonly value: unknown }
  | { readonly kind: 'take'; readonly path: string; readonly index: number }

/** A repair that the door file can hold, with how it is written there. */
export interface Offer {
  readonly repair: Repair
  readonly edits: readonly FileEdit[]
}

/**
 * Of the repairs that were found for a door those that its file can hold.
 *
 * @param door as it was made from the file and the catalogue
 */
export function offers(file: DoorFile, door: Door, found: readonly Repair[], catalogue: Catalogue): readonly Offer[] {
  return found.flatMap((repair) => {
    const edits = repairEdits(file, door, repair.steps, catalogue)
    return edits === undefined ? [] : [{ repair, edits }]
  })
}

/**
 * How a repair of the door is written into its file, in the file's own units and in the form it already has.
 *
 * @param door as it was made from the file
 * @returns undefined where the file cannot hold it: the file so changed would not make the door that was judged
 */
export function repairEdits(
  file: DoorFile,
  door: Door,
  steps: readonly RepairStep[],
  catalogue: Catalogue,
): readonly FileEdit[] | undefined {
  const changed = structuredClone(file)
  const edits: FileEdit[] = []
  for (const step of steps) {
    const made = editsOf(changed, step, catalogue)
    if (made === undefined) return undefined
    applyEdits(changed, made)
    edits.push(...made)
  }
  const resolved = resolveDoor(changed, catalogue, new Remarks())
  return resolved !== undefined && sameDoor(resolved, repaired(door, steps)) ? edits : undefined
}

/** Changes the file in place: plain JSON, or a draft of it in a mergeable document. */
export function applyEdits(file: DoorFile, edits: readonly FileEdit[]): void {
  const root = file as unknown as Record<string, unknown>
  for (const edit of edits) {
    if (edit.kind === 'put') putPlace(root, edit.path, edit.value)
    else if (edit.kind === 'append') listAt(root, edit.path).push(edit.value)
    else listAt(root, edit.path).splice(edit.index, 1)
  }
}

function listAt(root: Record<string, unknown>, path: string): unknown[] {
  let here: unknown = root
  for (const step of path.split('/')) here = (here as Record<string, unknown>)[step]
  if (!Array.isArray(here)) throw new Error(`an edit must find a list at ${path}`)
  return here
}

function editsOf(file: DoorFile, step: RepairStep, catalogue: Catalogue): readonly FileEdit[] | undefined {
  switch (step.kind) {
    case 'remove-obstacle':
      return withoutObstacle(file, step.obstacle)
    case 'move-sensor': {
      const found = sensorAt(file, step.sensor)
      return found && movedSensor(found.sensor, `sensors/${found.index}`, step.part, step.to, file)
    }
    case 'set-field': {
      const found = sensorAt(file, step.sensor)
      return found && setField(found.sensor, `sensors/${found.index}`, step, catalogue)
    }
    case 'set-drive':
      return file.survey.drive && [{ kind: 'put', path: `survey/drive/${DRIVE_IN_FILE[step.part]}`, value: inFile(step.part, step.to) }]
    case 'set-outputs': {
      const changed = structuredClone(file)
      const edits = step.fields.map(({ sensor, field }) => {
        const found = sensorAt(changed, sensor)
        const made = found && setField(found.sensor, `sensors/${found.index}`, { field, part: step.part, to: step.to }, catalogue)
        if (made) applyEdits(changed, made)
        return made
      })
      return edits.includes(undefined) ? undefined : edits.flatMap((made) => made ?? [])
    }
    case 'add-sensor': {
      const found = sensorAt(file, step.like)
      if (found === undefined || found.sensor.planes?.some(({ places_mm }) => places_mm !== undefined)) return undefined
      const { side, mountingHeight_mm, offset_mm, x_mm, tilt_deg, ...rest } = structuredClone(found.sensor)
      const name = `${found.sensor.name ?? catalogue.sensors.get(found.sensor.use ?? '')?.name ?? step.like} 2`
      return [{ kind: 'append', path: 'sensors', value: { ...rest, id: step.id, name, pose: poseInFile(step.pose) } }]
    }
  }
}

const DRIVE_IN_FILE = { closeSpeed_mm_per_s: 'closeSpeed_m_per_s', stopDelay_s: 'stopDelay_s', reverseDelay_s: 'reverseDelay_s' } as const

function inFile(part: DrivePart, to: number): number {
  return rounded(part === 'closeSpeed_mm_per_s' ? to / 1000 : to)
}

function sensorAt(file: DoorFile, id: string): { readonly sensor: FileSensor; readonly index: number } | undefined {
  const index = (file.sensors ?? []).findIndex((sensor, i) => (sensor.id ?? `sensor-${i + 1}`) === id)
  const sensor = file.sensors?.[index]
  return sensor && { sensor, index }
}

/** Half a degree and 5 mm are whole in the file too: what binary left of them goes. */
function inDegrees(angle_rad: number): number {
  return rounded((angle_rad * 180) / Math.PI)
}

function rounded(value: number): number {
  return Math.round(value * 1e6) / 1e6 + 0
}

function poseInFile({ x_mm, y_mm, z_mm, yaw_rad, tilt_rad, roll_rad }: Pose): NonNullable<FileSensor['pose']> {
  return {
    x_mm: rounded(x_mm),
    y_mm: rounded(y_mm),
    z_mm: rounded(z_mm),
    yaw_deg: inDegrees(yaw_rad),
    tilt_deg: inDegrees(tilt_rad),
    roll_deg: inDegrees(roll_rad),
  }
}

const AXES = { x_mm: 0, y_mm: 1, z_mm: 2 } as const
const IN_FILE = { x_mm: 'x_mm', y_mm: 'y_mm', z_mm: 'z_mm', yaw_rad: 'yaw_deg', tilt_rad: 'tilt_deg', roll_rad: 'roll_deg' } as const

function movedSensor(sensor: FileSensor, path: string, part: keyof Pose, to: number, file: DoorFile): readonly FileEdit[] | undefined {
  if (sensor.planes?.some(({ places_mm }) => places_mm !== undefined)) return movedPlaces(sensor, path, part, to)
  const value = part.endsWith('_rad') ? inDegrees(to) : rounded(to)
  if (sensor.pose !== undefined) return [{ kind: 'put', path: `${path}/pose/${IN_FILE[part]}`, value }]
  const { side, offset_mm = 0, mountingHeight_mm = 0, x_mm, tilt_deg } = sensor
  const faces = side === 'b' ? -1 : 1
  if (part === 'x_mm' || part === 'tilt_rad') return [{ kind: 'put', path: `${path}/${IN_FILE[part]}`, value }]
  if (part === 'z_mm') return [{ kind: 'put', path: `${path}/mountingHeight_mm`, value }]
  if (part === 'y_mm' && faces * to >= 0) return [{ kind: 'put', path: `${path}/offset_mm`, value: rounded(faces * to) }]
  // the short form has no yaw and no roll: the long one takes its place
  const pose = {
    x_mm: x_mm ?? file.survey.opening.width_mm / 2,
    y_mm: faces * offset_mm + 0,
    z_mm: mountingHeight_mm,
    yaw_deg: faces === 1 ? 0 : 180,
    ...(tilt_deg === undefined ? {} : { tilt_deg }),
    [IN_FILE[part]]: value,
  }
  if (tilt_deg === undefined) return undefined // what the library calls usual would be lost
  const gone = ['side', 'mountingHeight_mm', 'offset_mm', 'x_mm', 'tilt_deg'].filter(
    (name) => sensor[name as keyof FileSensor] !== undefined,
  )
  return [
    ...gone.map((name): FileEdit => ({ kind: 'put', path: `${path}/${name}`, value: undefined })),
    { kind: 'put', path: `${path}/pose`, value: pose },
  ]
}

/** A row whose beams have places of their own goes with them: each by as much as the first. */
function movedPlaces(sensor: FileSensor, path: string, part: keyof Pose, to: number): readonly FileEdit[] | undefined {
  const axis = AXES[part as keyof typeof AXES]
  const first = sensor.planes?.[0]?.places_mm?.[0]
  if (axis === undefined || first === undefined) return undefined
  const by = to - first[axis]
  return sensor.planes?.flatMap((plane, p) =>
    (plane.places_mm ?? []).map(
      (place, i): FileEdit => ({ kind: 'put', path: `${path}/planes/${p}/places_mm/${i}/${axis}`, value: rounded(place[axis] + by) }),
    ),
  )
}

function setField(
  sensor: FileSensor,
  path: string,
  { field, part, to }: { readonly field: string; readonly part: FieldPart | OutputPart; readonly to: number },
  catalogue: Catalogue,
): readonly FileEdit[] | undefined {
  const own = sensor.fields
  const fields: readonly FileField[] | undefined = own ?? catalogue.sensors.get(sensor.use ?? '')?.fields
  const index = fields?.findIndex(({ id }) => id === field) ?? -1
  if (fields === undefined || index < 0) return undefined
  if (own !== undefined) return [{ kind: 'put', path: `${path}/fields/${index}/${part}`, value: rounded(to) }]
  const copied = fields.map((each, i) => (i === index ? { ...each, [part]: rounded(to) } : each))
  return [{ kind: 'put', path: `${path}/fields`, value: structuredClone(copied) }]
}

function withoutObstacle({ survey }: DoorFile, id: string): readonly FileEdit[] | undefined {
  const index = survey.obstacles?.findIndex((obstacle) => obstacle.id === id) ?? -1
  if (index < 0) return undefined
  const named = (survey.states ?? []).flatMap(({ removeObstacles }, s): FileEdit[] => {
    const at = removeObstacles?.indexOf(id) ?? -1
    return at < 0 ? [] : [{ kind: 'take', path: `survey/states/${s}/removeObstacles`, index: at }]
  })
  return [{ kind: 'take', path: 'survey/obstacles', index }, ...named]
}
