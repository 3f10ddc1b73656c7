import { type Body, type BodyPart, type BoxPosture, type Posture, radians } from '@sillsight/engine'
import type { Catalogue } from '../libraries/catalogue.ts'
import type { Remarks } from '../remarks.ts'
import type { FileBody, FilePart, FilePosture } from '../schema/body.ts'
import { shownText } from '../shown.ts'
import { NO_SOURCE } from './sources.ts'
import { reportTwins } from './states.ts'

const REFERENCE = 'presence-reference-body'

/** The test bodies, each with what its library says; the reference body where the file lists none. */
export function doorBodies(listed: readonly FileBody[] | undefined, catalogue: Catalogue, remarks: Remarks): readonly Body[] {
  if (listed === undefined) remarks.assume('bodies')
  const bodies = listed ?? [{ id: REFERENCE, use: REFERENCE }]
  reportTwins(
    bodies.map((body) => body.id),
    (i) => `bodies/${i}/id`,
    remarks,
  )
  return bodies.flatMap((body, i) => bodyOf(body, catalogue, `bodies/${i}`, remarks) ?? [])
}

function bodyOf(given: FileBody, catalogue: Catalogue, path: string, remarks: Remarks): Body | undefined {
  const library = given.use === undefined ? undefined : catalogue.bodies.get(given.use)
  if (given.use !== undefined && library === undefined) {
    const known = [...catalogue.bodies.keys()].map(shownText).join(', ')
    remarks.issue({ code: 'unknown-id', path: `${path}/use`, expected: `a body of a library (${known})`, got: shownText(given.use) })
    return undefined
  }
  const { name = given.id, reflectance, postures, source } = { ...library, ...given }
  if (reflectance === undefined) remarks.missing(`${path}/reflectance`, 'a number from 0.001 up to 1')
  if (postures === undefined) remarks.missing(`${path}/postures`, 'at least one posture')
  if (source === undefined) remarks.assume(`${path}/source`)
  if (reflectance === undefined || postures === undefined) return undefined
  const changed = library !== undefined && given.source === undefined && (given.reflectance !== undefined || given.postures !== undefined)
  if (changed) remarks.missing(`${path}/source`, 'the source of what differs from the library')
  return {
    id: given.id,
    name,
    reflectance,
    postures: postures.map((posture, i) => postureOf(posture, reflectance, `${path}/postures/${i}`, remarks)),
    source: source ?? NO_SOURCE,
  }
}

function postureOf(posture: FilePosture, reflectance: number, path: string, remarks: Remarks): Posture {
  const lying = posture.how === 'fallen' ? { lies: true } : {}
  if (posture.shape === 'cylinder') {
    const { radius_mm, height_mm, name = `radius ${radius_mm}, height ${height_mm}` } = posture
    return { shape: 'cylinder', name, radius_mm, height_mm, ...lying }
  }
  const yaw_deg = posture.yaw_deg ?? 0
  const [from_deg, to_deg] = typeof yaw_deg === 'number' ? [yaw_deg, yaw_deg] : yaw_deg
  if (from_deg > to_deg)
    remarks.issue({ code: 'contradiction', path: `${path}/yaw_deg`, expected: 'the smaller angle first', got: `[${from_deg}, ${to_deg}]` })
  if (to_deg - from_deg > 360)
    remarks.issue({ code: 'contradiction', path: `${path}/yaw_deg`, expected: 'at most one full turn', got: `[${from_deg}, ${to_deg}]` })
  const yaws = { yawFrom_rad: radians(from_deg), yawTo_rad: radians(to_deg) }
  if (posture.shape === 'parts') {
    const box = boxAround(posture.parts.map((part) => partOf(part, reflectance)))
    return {
      ...box,
      ...yaws,
      ...lying,
      name: posture.name ?? [box.a_mm, box.b_mm, box.c_mm].map((side) => `${Math.round(side)}`).join(' x '),
    }
  }
  const [a_mm, b_mm, c_mm] = posture.size_mm
  return { shape: 'box', name: posture.name ?? posture.size_mm.join(' x '), a_mm, b_mm, c_mm, ...yaws, ...lying }
}

function partOf(part: FilePart, ofBody: number): BodyPart {
  const { at_mm: [alongX_mm, alongY_mm] = [0, 0], from_mm = 0, reflectance = ofBody } = part
  if (part.shape === 'cylinder') {
    const { radius_mm, height_mm, name = `radius ${radius_mm}, height ${height_mm}` } = part
    return { shape: 'cylinder', name, alongX_mm, alongY_mm, from_mm, reflectance, radius_mm, height_mm }
  }
  const [a_mm, b_mm, c_mm] = part.size_mm
  return { shape: 'box', name: part.name ?? part.size_mm.join(' x '), alongX_mm, alongY_mm, from_mm, reflectance, a_mm, b_mm, c_mm }
}

/** The box around all parts, which are then placed from its middle. */
function boxAround(parts: readonly BodyPart[]): Omit<BoxPosture, 'name' | 'yawFrom_rad' | 'yawTo_rad'> {
  const sides = parts.map((part) =>
    part.shape === 'box'
      ? { a: part.a_mm / 2, b: part.b_mm / 2, top: part.from_mm + part.c_mm }
      : { a: part.radius_mm, b: part.radius_mm, top: part.from_mm + part.height_mm },
  )
  const ends = (along: 'alongX_mm' | 'alongY_mm', side: 'a' | 'b') => {
    const reach = (sign: 1 | -1) => Math.max(...parts.map((part, i) => sign * part[along] + (sides[i]?.[side] ?? 0)))
    return [-reach(-1), reach(1)] as const
  }
  const [left, right] = ends('alongX_mm', 'a')
  const [back, front] = ends('alongY_mm', 'b')
  const [x_mm, y_mm] = [(left + right) / 2, (back + front) / 2]
  return {
    shape: 'box',
    a_mm: right - left,
    b_mm: front - back,
    c_mm: Math.max(...sides.map(({ top }) => top)),
    parts: parts.map((part) => ({ ...part, alongX_mm: part.alongX_mm - x_mm, alongY_mm: part.alongY_mm - y_mm })),
  }
}
