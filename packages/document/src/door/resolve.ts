import type { Door, Tolerances } from '@sillsight/engine'
import { EDITIONS, radians } from '@sillsight/engine'
import { issueLine } from '../issue.ts'
import { BUILTIN_CATALOGUE, type Catalogue } from '../libraries/catalogue.ts'
import { Remarks } from '../remarks.ts'
import type { DoorFile } from '../schema/door-file.ts'
import type { Survey } from '../schema/survey.ts'
import { doorBodies } from './bodies.ts'
import { controlOf } from './control.ts'
import { airOf, crossingsOf } from './crossings.ts'
import { dangersOf } from './dangers.ts'
import { UNNAMED_DOOR } from './defaults.ts'
import { checkHoldOpen, driveOf } from './drive.ts'
import { leafOf } from './hinged.ts'
import { checkPlaces } from './places.ts'
import { noteReadings } from './readings.ts'
import { forceRecordsOf } from './records.ts'
import { doorSensors } from './sensors.ts'
import { doorStates } from './states.ts'
import { namesToldApart } from './told-apart.ts'
import { checkPassages, lanesOf } from './traffic.ts'
import { wiringOf } from './wiring.ts'
import { checkWork, stancesOf as countStances } from './work.ts'
import { doorZones } from './zones.ts'

/**
 * What the engine judges: units turned, implied obstacles made, states and libraries resolved, defaults listed in `assumed`.
 *
 * @param document as `parseDocument` returned it; throws on one that it would not have let through
 * @param catalogue as `parseDocument` returned it; what ships with the program if absent
 */
export function toDoor(document: DoorFile, catalogue: Catalogue = BUILTIN_CATALOGUE): Door {
  const remarks = new Remarks()
  const door = resolveDoor(document, catalogue, remarks)
  if (door === undefined) throw new Error(`document must have passed parseDocument, got ${remarks.issues.map(issueLine).join('; ')}`)
  return door
}

/** The door, or undefined with every contradiction and every missing piece among the remarks. */
export function resolveDoor(file: DoorFile, catalogue: Catalogue, remarks: Remarks): Door | undefined {
  const { survey } = file
  const sides = file.sides ?? { a: 'side A', b: 'side B' }
  const states = doorStates(survey, sides, remarks)
  const { width_mm, height_mm } = survey.opening
  const sensors = doorSensors(file.sensors ?? [], catalogue, { width_mm, states: states.map((state) => state.id) }, remarks)
  const bodies = doorBodies(file.bodies, catalogue, remarks)
  const zones = doorZones(file.zones, { width_mm, sides, bodies, sensors }, remarks)
  const lanes = lanesOf(
    survey,
    bodies.map((body) => body.id),
    remarks,
  )
  const dangers = dangersOf(
    survey.dangers,
    {
      obstacles: states.flatMap(({ obstacles }) => obstacles.map(({ id }) => id)),
      zones: zones.flatMap((zone) => zone?.id ?? []),
      sensors: sensors.flatMap((sensor) => sensor?.id ?? []),
    },
    remarks,
  )
  noteReadings(survey.opening, remarks)
  const door: Door = {
    name: file.name ?? UNNAMED_DOOR,
    sides,
    opening: { width_mm, height_mm },
    leaf: leafOf(survey, remarks),
    drive: driveOf(survey, remarks),
    lanes,
    crossings: crossingsOf(
      survey,
      bodies.map((body) => body.id),
      remarks,
    ),
    air: airOf(survey),
    dangers,
    forceRecords: forceRecordsOf(file.forceRecords, remarks),
    control: survey.control && controlOf(survey.control),
    wiring: wiringOf(
      file.wiring,
      sensors.flatMap((sensor) => sensor?.id ?? []),
      remarks,
    ),
    states,
    sensors: sensors.filter((sensor) => sensor !== undefined),
    bodies,
    zones: zones.filter((zone) => zone !== undefined),
    ...conceptOf(file.concept),
    extinction_per_mm: extinction(survey, remarks),
    ...(file.tolerances ? { tolerances: tolerancesOf(file, file.tolerances) } : {}),
    edition: file.edition ?? EDITIONS[0].id,
    confirmations: file.confirmations ?? [],
    assumed: remarks.assumed,
  }
  checkHoldOpen(door.drive, door.sensors, remarks)
  checkPlaces({ states, sensors, bodies, zones: file.zones === undefined ? [] : zones }, remarks)
  checkPassages(
    lanes,
    {
      states: states.length,
      openings: (1 + (survey.drive?.partialOpenings_mm?.length ?? 0)) * (survey.drive?.cycle?.afterAttempts === 'partial' ? 2 : 1),
      stances: (ids) => bodies.filter(({ id }) => ids.includes(id)).reduce((sum, body) => sum + countStances(body, false), 0),
    },
    remarks,
  )
  if (!remarks.failed) checkWork(door, remarks) // a zone with a slip in its coordinates is not told that it is too much work
  return remarks.failed ? undefined : namesToldApart(door)
}

/** What was measured less exactly than the rest makes all of its kind as inexact: that errs toward blind. */
function tolerancesOf(
  { survey, sensors = [] }: DoorFile,
  { length_mm, position_mm, floor_mm, tilt_deg, roll_deg, yaw_deg, range_percent }: NonNullable<DoorFile['tolerances']>,
): Tolerances {
  const widest = (least_mm: number, measured: readonly { readonly tolerance_mm?: number | undefined }[]) =>
    Math.max(least_mm, ...measured.map(({ tolerance_mm = 0 }) => tolerance_mm))
  const obstacles = [...(survey.obstacles ?? []), ...(survey.states ?? []).flatMap(({ addObstacles = [] }) => addObstacles)]
  return {
    length_mm: widest(length_mm, [survey.opening, ...obstacles]),
    position_mm: widest(position_mm, sensors),
    floor_mm,
    tilt_rad: radians(tilt_deg),
    roll_rad: radians(roll_deg),
    yaw_rad: radians(yaw_deg),
    range: range_percent / 100,
  }
}

function conceptOf(concept: DoorFile['concept']): Pick<Door, 'concept' | 'separation'> {
  if (concept === undefined) return { concept }
  const { separation, ...stated } = concept
  return separation === undefined ? { concept: stated } : { concept: stated, separation }
}

/** Koschmieder at 2 % contrast: sigma = 3.912 / visibility (docs/method.md, section 2). */
function extinction({ visibility_m }: Survey, remarks: Remarks): number {
  if (visibility_m === undefined) remarks.assume('survey/visibility_m')
  return visibility_m === undefined || visibility_m === 'clear' ? 0 : 3.912 / (visibility_m * 1000)
}
