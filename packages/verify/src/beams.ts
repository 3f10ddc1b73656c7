import { idAt, type Json, listAt, numberAt, numbersAt, objectAt, own, refuse, wholeAt } from './json.ts'
import type { Beam, Plane, Vector } from './plain.ts'
import { cosineOf, sineOf } from './sine.ts'

/** Where a ranging sensor is and how it is turned, in degrees; `faces` is 1 toward side A, -1 toward side B, and `leans` what rows take of it. */
export interface Pose {
  readonly origin: Vector
  readonly yaw: number
  readonly tilt: number
  readonly roll: number
  readonly faces: 1 | -1
  readonly leans: number
}

type Turning = Omit<Plane, 'id'>
type Device = 'scanner' | 'downward-row' | 'segments'
export const MOST_BEAMS = 16_384

/** The beams of each plane in the order of their indices (docs/method.md, section 1). */
export function planesOf(listed: unknown, device: Device, pose: Pose, path: string): readonly Plane[] {
  let beams = 0
  const ids = new Set<string>()
  return listAt(listed, path, { least: 1, most: 64 }).map((each, i) => {
    const at = `${path}/${i}`
    const given = objectAt(each, at)
    const plane = device === 'scanner' ? fan(given, pose, at) : device === 'downward-row' ? row(given, pose, at) : segments(given, at)
    beams += plane.beams.length
    if (beams > MOST_BEAMS) refuse('too-much', path, `at most ${MOST_BEAMS} beams`, beams)
    return { ...plane, id: idAt(own(given, 'id'), `${at}/id`, ids) }
  })
}

function fan(plane: Json, { origin, yaw, tilt, roll }: Pose, path: string): Turning {
  const at = (name: string, otherwise?: number) => numberAt(own(plane, name) ?? otherwise, `${path}/${name}`, -360, 360)
  const [from, to, lean] = [at('fovMin_deg'), at('fovMax_deg'), tilt + at('offset_deg', 0)]
  const count = wholeAt(own(plane, 'beamCount'), `${path}/beamCount`, 1, 4096)
  const beams = Array.from({ length: count }, (_, j) => {
    const theta = count === 1 ? from : from + (j * (to - from)) / (count - 1)
    return { from: origin, along: direction(theta + roll, lean, yaw), length: Infinity }
  })
  return { beams, middle: origin, yaw_deg: yaw, lean_deg: lean }
}

/** Rz(yaw) * Rx(lean) * (sin turn, 0, -cos turn). */
function direction(turn: number, lean: number, yaw: number): Vector {
  const [x, down] = [sineOf(turn), cosineOf(turn)]
  const [y, z] = [down * sineOf(lean), -down * cosineOf(lean)]
  return [x * cosineOf(yaw) - y * sineOf(yaw), x * sineOf(yaw) + y * cosineOf(yaw), z]
}

function row(plane: Json, { origin, faces, leans }: Pose, path: string): Turning {
  const lean = faces * (leans + numberAt(own(plane, 'tilt_deg') ?? 0, `${path}/tilt_deg`, -89, 89))
  const along = direction(0, lean, 0)
  const places = placesOf(plane, origin, faces, path)
  const middle = [0, 1, 2].map((axis) => places.reduce((sum, place) => sum + (place[axis] ?? 0), 0) / places.length)
  const beams = places.map((from) => ({ from, along, length: Infinity }))
  return { beams, middle: vector(middle), yaw_deg: 0, lean_deg: lean }
}

/** Each at a place of its own, or in a row along x that is numbered as the sensor turns with its side. */
function placesOf(plane: Json, [x, y, z]: Vector, faces: 1 | -1, path: string): readonly Vector[] {
  const places = own(plane, 'places_mm')
  if (places !== undefined)
    return listAt(places, `${path}/places_mm`, { least: 1, most: 4096 }).map((each, i) => vectorAt(each, `${path}/places_mm/${i}`))
  const count = wholeAt(own(plane, 'beamCount'), `${path}/beamCount`, 1, 4096)
  const spacing = count === 1 ? 0 : numberAt(own(plane, 'spacing_mm'), `${path}/spacing_mm`)
  return Array.from({ length: count }, (_, j) => [x + faces * (j - (count - 1) / 2) * spacing, y, z])
}

function segments(plane: Json, path: string): Turning {
  const beams = endsOf(plane, path).map(([from, to], i) => segment(from, to, `${path}/${i}`))
  return { beams, middle: [0, 0, 0], yaw_deg: 0, lean_deg: 0 }
}

function endsOf(plane: Json, path: string): readonly (readonly [Vector, Vector])[] {
  const listed = own(plane, 'segments_mm')
  if (listed !== undefined)
    return listAt(listed, `${path}/segments_mm`, { least: 1, most: 4096 }).map((each, i) => {
      const [from, to] = listAt(each, `${path}/segments_mm/${i}`, { least: 2, most: 2 })
      return [vectorAt(from, `${path}/segments_mm/${i}/0`), vectorAt(to, `${path}/segments_mm/${i}/1`)]
    })
  const between = listAt(own(plane, 'between_mm'), `${path}/between_mm`, { least: 2, most: 2 })
  const [[x1 = 0, y1 = 0] = [], [x2 = 0, y2 = 0] = []] = between.map((each, i) => numbersAt(each, `${path}/between_mm/${i}`, 2))
  const heights = listAt(own(plane, 'heights_mm'), `${path}/heights_mm`, { least: 1, most: 4096 })
  return heights.map((height, i) => {
    const z = numberAt(height, `${path}/heights_mm/${i}`)
    return [vector([x1, y1, z]), vector([x2, y2, z])]
  })
}

function segment(from: Vector, to: Vector, path: string): Beam {
  const [x, y, z] = [to[0] - from[0], to[1] - from[1], to[2] - from[2]]
  const length = Math.sqrt(x * x + y * y + z * z)
  return length > 0 ? { from, along: [x / length, y / length, z / length], length } : refuse('contradiction', path, 'two places', 'one')
}

function vectorAt(value: unknown, path: string): Vector {
  return vector(numbersAt(value, path, 3))
}

function vector([x = 0, y = 0, z = 0]: readonly number[]): Vector {
  return [x, y, z]
}
