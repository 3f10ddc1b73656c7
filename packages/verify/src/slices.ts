import type { Affine } from './affine.ts'
import { type Json, listAt, objectAt, own, refuse, textAt, wholeAt } from './json.ts'
import type { Standing } from './overlap.ts'
import type { Body, Door, Posture, Vector, Zone } from './plain.ts'
import type { SeenBox } from './seen-box.ts'
import type { Target } from './sights.ts'
import { cosineOf, sineOf } from './sine.ts'

/** One part of one posture of one body; for a cylinder and a single yaw there is only one. */
export interface Slice {
  readonly body: Body
  readonly posture: number
  readonly shape: Posture
  readonly from_deg: number
  readonly to_deg: number
  readonly trees: readonly unknown[]
}

const MOST_SLICES = 8192

/** Reads the slices, and refuses unless every posture of every body of the zone is there whole and once. */
export function slicesOf(listed: unknown, door: Door, zone: Zone, path: string): readonly Slice[] {
  const bodies = door.bodies.filter(({ id }) => zone.bodies.includes(id))
  const shading = bodies.find(({ ofParts }) => ofParts)
  if (shading) refuse('several-parts', path, 'a zone with bodies of one part', shading.id)
  const parts = new Map<string, { readonly of: number; readonly there: Set<number> }>()
  const slices = listAt(listed, path, { most: MOST_SLICES }).map((each, i) =>
    sliceOf(objectAt(each, `${path}/${i}`), bodies, parts, `${path}/${i}`),
  )
  for (const { id, postures } of bodies)
    for (const k of postures.keys()) {
      const found = parts.get(`${id}/${k}`)
      if (found === undefined || found.there.size !== found.of)
        refuse(
          'missing-slice',
          path,
          `all parts of posture ${k} of ${id}`,
          found === undefined ? 'none' : `${found.there.size} of ${found.of}`,
        )
    }
  return slices
}

function sliceOf(
  slice: Json,
  bodies: readonly Body[],
  parts: Map<string, { readonly of: number; readonly there: Set<number> }>,
  path: string,
): Slice {
  const id = textAt(own(slice, 'body'), `${path}/body`)
  const body = bodies.find((each) => each.id === id) ?? refuse('unknown-id', `${path}/body`, 'a body of the zone', id)
  const posture = wholeAt(own(slice, 'posture'), `${path}/posture`, 0, body.postures.length - 1)
  const shape = body.postures[posture]
  const of = wholeAt(own(slice, 'of'), `${path}/of`, 1, MOST_SLICES)
  const part = wholeAt(own(slice, 'part'), `${path}/part`, 0, of - 1)
  if (shape === undefined) return refuse('out-of-range', `${path}/posture`, 'a posture', posture)
  const [first, last] = shape.shape === 'box' ? shape.yaw_deg : [0, 0]
  if (of > 1 && first === last) refuse('out-of-range', `${path}/of`, '1, as there is no range of yaw', of)
  const known = parts.get(`${id}/${posture}`) ?? { of, there: new Set() }
  if (known.of !== of) refuse('contradiction', `${path}/of`, `${known.of}, as before`, of)
  if (known.there.has(part)) refuse('duplicate-slice', `${path}/part`, 'a part that stands once', part)
  known.there.add(part)
  parts.set(`${id}/${posture}`, known)
  const wide = last - first
  const trees = listAt(own(slice, 'trees'), `${path}/trees`, { most: 64 })
  return { body, posture, shape, from_deg: first + (wide * part) / of, to_deg: first + (wide * (part + 1)) / of, trees }
}

/** The body of a slice over one piece of the floor, as beams meet it. */
export function targetOf({ body, shape, from_deg, to_deg }: Slice, floor: Affine): Target {
  if (shape.shape === 'cylinder')
    return { reflectance: body.reflectance, shape: (spot) => ({ cylinder: { radius: shape.radius, height: shape.height, spot, floor } }) }
  const box = boxAt(shape.size, (from_deg + to_deg) / 2, floor, 2 * sineOf((to_deg - from_deg) / 4))
  return { reflectance: body.reflectance, shape: (spot) => ({ box: { ...box, spot } }) }
}

/** @param turn 2 sin(width / 4) of a range of yaws about this one */
export function boxAt(size: Vector, yaw_deg: number, floor: Affine, turn: number): Omit<SeenBox, 'spot'> {
  const [c, s] = [cosineOf(yaw_deg), sineOf(yaw_deg)]
  return {
    size,
    yaw_deg,
    axes: [
      [c, s, 0],
      [-s, c, 0],
    ],
    floor,
    turn,
  }
}

/** What every yaw of a slice fills: a box turned to the middle yaw, less what its corners move. */
export function standingOf({ shape, from_deg, to_deg }: Slice): Standing {
  if (shape.shape === 'cylinder') return { shape: 'cylinder', radius: shape.radius, height: shape.height }
  const [a, b] = [shape.size[0] / 2, shape.size[1] / 2]
  const less = 2 * sineOf((to_deg - from_deg) / 4) * Math.sqrt(a * a + b * b)
  return { shape: 'box', half: [a - less, b - less], yaw_deg: (from_deg + to_deg) / 2, height: shape.size[2] }
}
