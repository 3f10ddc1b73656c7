import { idAt, type Json, listAt, numberAt, numbersAt, objectAt, own, refuse } from './json.ts'
import type { Floor, Obstacle, State } from './plain.ts'

/** The states of the doorway, never none: floor and obstacles of each, those that the survey implies among them (docs/method.md, section 1). */
export function statesOf(survey: Json): readonly State[] {
  const usual =
    own(survey, 'floor') === undefined ? { profile: [[0, 0]] as const, slope: 0 } : floorAt(own(survey, 'floor'), 'survey/floor')
  const listed = own(survey, 'states') === undefined ? undefined : listAt(own(survey, 'states'), 'survey/states', { least: 1, most: 16 })
  const states = (listed ?? []).map((each, i) => objectAt(each, `survey/states/${i}`))
  const floors = states.map((state, i) =>
    own(state, 'floor') === undefined ? usual : floorAt(own(state, 'floor'), `survey/states/${i}/floor`),
  )
  const everywhere = [
    ...impliedObstacles(survey, lowest([usual, ...floors], widthOf(survey))),
    ...obstaclesAt(survey, 'obstacles', 'survey'),
  ]
  if (listed === undefined) return [{ id: 'as-surveyed', floor: usual, obstacles: once(everywhere, 'survey/obstacles') }]
  const ids = new Set<string>()
  return states.map((state, i) => {
    const path = `survey/states/${i}`
    const id = idAt(own(state, 'id'), `${path}/id`, ids)
    const gone = listAt(own(state, 'removeObstacles') ?? [], `${path}/removeObstacles`, { most: 200 })
    const obstacles = [...everywhere.filter((each) => !gone.includes(each.id)), ...obstaclesAt(state, 'addObstacles', path)]
    return { id, floor: floors[i] ?? usual, obstacles: once(obstacles, path) }
  })
}

export function widthOf(survey: Json): number {
  return numberAt(own(objectAt(own(survey, 'opening'), 'survey/opening'), 'width_mm'), 'survey/opening/width_mm')
}

function floorAt(value: unknown, path: string): Floor {
  const floor = objectAt(value, path)
  const points = listAt(own(floor, 'profile_mm'), `${path}/profile_mm`, { least: 1, most: 50 })
  const profile = points.map((point, i) => {
    const [y = 0, z = 0] = numbersAt(point, `${path}/profile_mm/${i}`, 2)
    return [y, z] as const
  })
  for (const [i, [y]] of profile.entries()) {
    const before = profile[i - 1]
    if (before !== undefined && before[0] >= y) refuse('contradiction', `${path}/profile_mm/${i}`, `a y above ${before[0]}`, y)
  }
  return { profile, slope: numberAt(own(floor, 'slopeX_percent') ?? 0, `${path}/slopeX_percent`, -50, 50) / 100 }
}

/** Where everything that stands on the floor begins. */
function lowest(floors: readonly Floor[], width: number): number {
  return Math.min(0, ...floors.flatMap(({ profile, slope }) => profile.map(([, z]) => z - Math.abs(slope) * 2 * width)))
}

function obstaclesAt(of: Json, name: string, path: string): readonly Obstacle[] {
  return listAt(own(of, name) ?? [], `${path}/${name}`, { most: 200 }).map((each, i) => {
    const at = `${path}/${name}/${i}`
    const obstacle = objectAt(each, at)
    return obstacleOf(obstacle, idAt(own(obstacle, 'id'), `${at}/id`, new Set()), own(obstacle, 'shape'), at)
  })
}

function obstacleOf(obstacle: Json, id: string, shape: unknown, path: string): Obstacle {
  const at = (name: string, otherwise?: number) => numberAt(own(obstacle, name) ?? otherwise, `${path}/${name}`)
  const place = { id, x: at('x_mm'), y: at('y_mm'), from: at('from_mm'), to: at('to_mm') }
  if (shape === 'post') return { shape, ...place, radius: at('radius_mm') }
  if (shape !== 'box') return refuse('unknown', `${path}/shape`, '"box" or "post"', shape)
  const [along = 0, across = 0] = numbersAt(own(obstacle, 'size_mm'), `${path}/size_mm`, 2)
  return { shape, ...place, half: [along / 2, across / 2], yaw_deg: at('yaw_deg', 0) }
}

function impliedObstacles(survey: Json, ground: number): readonly Obstacle[] {
  const width = widthOf(survey)
  const height = numberAt(own(objectAt(own(survey, 'opening'), 'survey/opening'), 'height_mm'), 'survey/opening/height_mm')
  const blocks: (Obstacle | undefined)[] = []
  const walls = partOf(survey, 'walls')
  if (walls !== undefined) {
    const [faces, top] = [facesOf(walls), walls.at('top_mm')]
    blocks.push(block('wall-at-zero', [-walls.at('beyondZero_mm'), 0], faces, [ground, top]))
    blocks.push(block('wall-at-width', [width, width + walls.at('beyondWidth_mm')], faces, [ground, top]))
  }
  const spanning = own(survey, 'lintel') === undefined ? walls : partOf(survey, 'lintel')
  if (spanning !== undefined) {
    const underside = spanning === walls ? height : spanning.at('underside_mm', height)
    blocks.push(block('lintel', [0, width], facesOf(spanning), [underside, spanning.at('top_mm')]))
  }
  for (const what of ['jamb', 'guide'] as const) {
    const pair = partOf(survey, `${what}s`)
    if (pair === undefined) continue
    const z = [ground, pair.at('top_mm', height)] as const
    blocks.push(block(`${what}-at-zero`, [-pair.at('width_mm'), 0], facesOf(pair), z))
    blocks.push(block(`${what}-at-width`, [width, width + pair.at('width_mm')], facesOf(pair), z))
  }
  const hood = partOf(survey, 'hood')
  if (hood !== undefined) {
    const beyond = hood.at('beyond_mm', 0)
    blocks.push(block('hood', [-beyond, width + beyond], facesOf(hood), [hood.at('from_mm'), hood.at('to_mm')]))
  }
  const leaf = own(survey, 'leaf') === undefined ? undefined : objectAt(own(survey, 'leaf'), 'survey/leaf')
  const parked = leaf && own(leaf, 'parked')
  if (parked !== undefined && parked !== 'none') {
    const path = 'survey/leaf/parked'
    blocks.push(obstacleOf(objectAt(parked, path), 'parked-leaf', 'box', path))
  }
  return blocks.filter((each) => each !== undefined)
}

interface Part {
  readonly at: (name: string, otherwise?: number) => number
}

/** The measures of a part of the survey; undefined where there is none. */
function partOf(survey: Json, name: string): Part | undefined {
  const given = own(survey, name)
  if (given === undefined || given === 'none') return undefined
  const part = objectAt(given, `survey/${name}`)
  return { at: (value, otherwise) => numberAt(own(part, value) ?? otherwise, `survey/${name}/${value}`) }
}

function facesOf(part: Part): readonly [number, number] {
  return [part.at('yMin_mm'), part.at('yMax_mm')]
}

type Span = readonly [from: number, to: number]

/** Undefined where nothing is left: a wall that does not run on, a lintel whose top lies below its underside. */
function block(id: string, x: Span, y: Span, z: Span): Obstacle | undefined {
  if (x[0] >= x[1] || z[0] >= z[1]) return undefined
  const half = [(x[1] - x[0]) / 2, (y[1] - y[0]) / 2] as const
  return { shape: 'box', id, x: (x[0] + x[1]) / 2, y: (y[0] + y[1]) / 2, half, yaw_deg: 0, from: z[0], to: z[1] }
}

function once(obstacles: readonly Obstacle[], path: string): readonly Obstacle[] {
  if (obstacles.length > 500) refuse('too-much', path, 'at most 500 obstacles', obstacles.length)
  const ids = new Set(obstacles.map((each) => each.id))
  return ids.size === obstacles.length ? obstacles : refuse('duplicate-id', path, 'ids of obstacles that stand once', 'one twice')
}
