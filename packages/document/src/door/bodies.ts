import { type Body, type Posture, radians } from '@sillsight/engine'
import type { Catalogue } from '../libraries/catalogue.ts'
import type { Remarks } from '../remarks.ts'
import type { FileBody, FilePosture } from '../schema/body.ts'
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
    postures: postures.map((posture, i) => postureOf(posture, `${path}/postures/${i}`, remarks)),
    source: source ?? NO_SOURCE,
  }
}

function postureOf(posture: FilePosture, path: string, remarks: Remarks): Posture {
  if (posture.shape === 'cylinder') {
    const { radius_mm, height_mm, name = `radius ${radius_mm}, height ${height_mm}` } = posture
    return { shape: 'cylinder', name, radius_mm, height_mm }
  }
  const [a_mm, b_mm, c_mm] = posture.size_mm
  const yaw_deg = posture.yaw_deg ?? 0
  const [from_deg, to_deg] = typeof yaw_deg === 'number' ? [yaw_deg, yaw_deg] : yaw_deg
  if (from_deg > to_deg)
    remarks.issue({ code: 'contradiction', path: `${path}/yaw_deg`, expected: 'the smaller angle first', got: `[${from_deg}, ${to_deg}]` })
  if (to_deg - from_deg > 360)
    remarks.issue({ code: 'contradiction', path: `${path}/yaw_deg`, expected: 'at most one full turn', got: `[${from_deg}, ${to_deg}]` })
  const name = posture.name ?? posture.size_mm.join(' x ')
  return { shape: 'box', name, a_mm, b_mm, c_mm, yawFrom_rad: radians(from_deg), yawTo_rad: radians(to_deg) }
}
