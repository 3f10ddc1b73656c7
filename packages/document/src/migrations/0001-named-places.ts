import { isObject, own } from '../schema/shape.ts'

/**
 * From version 0, which only drafts of this program wrote, to version 1: lists of bare numbers become named fields, and what the air
 * lets one see moves to the survey.
 *
 * - `survey/opening/size_mm: [width, height]` becomes `width_mm` and `height_mm`
 * - `sensors/N/at_mm: [x, y, z]` and `turn_deg: [yaw, tilt, roll]` become `pose`
 * - `fog_m` becomes `survey/visibility_m`
 *
 * What does not look like that stays as it is: the schema then says what is wrong with it.
 */
export function namedPlaces(file: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  const { fog_m, ...rest } = file
  const survey = own(file, 'survey')
  const sensors = own(file, 'sensors')
  return {
    ...rest,
    ...(survey === undefined && fog_m === undefined ? {} : { survey: withVisibility(withSize(survey), fog_m) }),
    ...(Array.isArray(sensors) ? { sensors: sensors.map(withPose) } : {}),
    sillsight: 1,
  }
}

function withVisibility(survey: unknown, fog_m: unknown): unknown {
  if (fog_m === undefined) return survey
  return isObject(survey) ? { ...survey, visibility_m: fog_m } : { visibility_m: fog_m }
}

function withSize(survey: unknown): unknown {
  if (!isObject(survey)) return survey
  const opening = own(survey, 'opening')
  if (!isObject(opening) || !Array.isArray(own(opening, 'size_mm'))) return survey
  const { size_mm, ...rest } = opening
  const [width_mm, height_mm] = size_mm as readonly unknown[]
  return { ...survey, opening: { ...rest, ...given({ width_mm, height_mm }) } }
}

function withPose(sensor: unknown): unknown {
  if (!isObject(sensor) || !Array.isArray(own(sensor, 'at_mm'))) return sensor
  const { at_mm, turn_deg, ...rest } = sensor
  const [x_mm, y_mm, z_mm] = at_mm as readonly unknown[]
  const [yaw_deg, tilt_deg, roll_deg] = Array.isArray(turn_deg) ? turn_deg : []
  return { ...rest, pose: given({ x_mm, y_mm, z_mm, yaw_deg, tilt_deg, roll_deg }) }
}

function given(fields: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined))
}
