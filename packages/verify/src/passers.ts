import { type Json, listAt, numberAt, numbersAt, objectAt, oneOf, own, refuse } from './json.ts'
import type { Passer, Solid } from './plain.ts'

/** One yaw, or every yaw between two. */
export function yawAt(posture: Json, path: string): readonly [from: number, to: number] {
  const yaw = own(posture, 'yaw_deg') ?? 0
  const [from = 0, to = 0] = typeof yaw === 'number' ? [yaw, yaw] : numbersAt(yaw, `${path}/yaw_deg`, 2)
  if (!(from <= to && to - from <= 360))
    refuse('contradiction', `${path}/yaw_deg`, 'the smaller angle first, at most a full turn', `[${from}, ${to}]`)
  return [from, to]
}

/** A posture of the door file as lanes ask for it (docs/door-file.md, bodies). */
export function passerOf(posture: Json, reflectance: number, path: string): Passer {
  const shape = oneOf(own(posture, 'shape'), `${path}/shape`, ['box', 'cylinder', 'parts'])
  const lies = oneOf(own(posture, 'how') ?? 'passes', `${path}/how`, ['passes', 'fallen']) === 'fallen'
  const yaw_deg = shape === 'cylinder' ? ([0, 0] as const) : yawAt(posture, path)
  if (shape !== 'parts') {
    const solid = solidOf(posture, reflectance, path)
    return { solids: [solid], ofParts: false, half: halfOf(solid), round: shape === 'cylinder', yaw_deg, lies }
  }
  const parts = listAt(own(posture, 'parts'), `${path}/parts`, { least: 1, most: 64 }).map((each, i) => {
    const at = `${path}/parts/${i}`
    const part = objectAt(each, at)
    const [x = 0, y = 0] = own(part, 'at_mm') === undefined ? [] : numbersAt(own(part, 'at_mm'), `${at}/at_mm`, 2)
    const from = numberAt(own(part, 'from_mm') ?? 0, `${at}/from_mm`, 0)
    const shade = numberAt(own(part, 'reflectance') ?? reflectance, `${at}/reflectance`, 0, 1)
    return { ...solidOf(part, shade, at), x, y, from }
  })
  const ends = (of: 'x' | 'y', k: 0 | 1) =>
    [Math.min(...parts.map((each) => each[of] - halfOf(each)[k])), Math.max(...parts.map((each) => each[of] + halfOf(each)[k]))] as const
  const [[x0, x1], [y0, y1]] = [ends('x', 0), ends('y', 1)]
  const solids = parts.map((each) => ({ ...each, x: each.x - (x0 + x1) / 2, y: each.y - (y0 + y1) / 2 }))
  return { solids, ofParts: true, half: [(x1 - x0) / 2, (y1 - y0) / 2], round: false, yaw_deg, lies }
}

function solidOf(given: Json, reflectance: number, path: string): Solid {
  const place = { x: 0, y: 0, from: 0, reflectance }
  if (oneOf(own(given, 'shape'), `${path}/shape`, ['box', 'cylinder']) === 'cylinder') {
    const radius = numberAt(own(given, 'radius_mm'), `${path}/radius_mm`, 0)
    return { ...place, shape: 'cylinder', radius, height: numberAt(own(given, 'height_mm'), `${path}/height_mm`, 0) }
  }
  const [a = 0, b = 0, c = 0] = numbersAt(own(given, 'size_mm'), `${path}/size_mm`, 3)
  return { ...place, shape: 'box', size: [a, b, c], turn_deg: 0 }
}

function halfOf(solid: Solid): readonly [number, number] {
  return solid.shape === 'cylinder' ? [solid.radius, solid.radius] : [solid.size[0] / 2, solid.size[1] / 2]
}
