import type { Door, Sensor } from '@sillsight/engine'
import type { RandomNumbers } from '../packages/engine/cases/random-numbers.ts'
import {
  byId,
  type DraftCoverage,
  entry,
  lineOf,
  type Node,
  nodesOf,
  placesIn,
  type Standing,
  type Subject,
  standing,
  subjectOf,
  surelyApart,
} from './verify-py.draft.ts'

/** Changes one coverage so that something that it claims is surely false, or its form broken; false where that cannot be shown here. */
type Corruption = (subject: Subject, random: RandomNumbers) => boolean

const isSeen = ({ token }: Node) => token >= 0
const isOpen = ({ token }: Node) => token === -2
const isNotFree = ({ token }: Node) => token <= -3

export const CORRUPTIONS: Readonly<Record<string, Corruption>> = {
  'a seen leaf with beams that miss the body': (subject, random) => leafSeenByStrangers(isSeen, subject, random),
  'an open leaf with beams that miss the body': (subject, random) => leafSeenByStrangers(isOpen, subject, random),
  'a not-free leaf with beams that miss the body': (subject, random) => leafSeenByStrangers(isNotFree, subject, random),
  'a not-free leaf with an obstacle elsewhere': (subject, random) => leafBlockedFromAfar(isNotFree, subject, random),
  'a seen leaf with an obstacle elsewhere': (subject, random) => leafBlockedFromAfar(isSeen, subject, random),
  'an open leaf with an obstacle elsewhere': (subject, random) => leafBlockedFromAfar(isOpen, subject, random),
  'a split replaced by a seen leaf of it': (subject, random) =>
    aNode(
      subject,
      random,
      ({ token }) => token === -1,
      (split, nodes) => {
        const inside = nodes.filter((node) => within(node, split) && isSeen(node))
        const token = inside.length === 0 ? undefined : random.pick(inside as [Node, ...Node[]]).token
        return token !== undefined && missedSomewhere(subject, split, token) && replaced(subject, split, token)
      },
    ),
  'a split replaced by a not-free leaf of it': (subject, random) =>
    aNode(
      subject,
      random,
      ({ token }) => token === -1,
      (split, nodes) => {
        const inside = nodes.filter((node) => within(node, split) && isNotFree(node))
        const token = inside.length === 0 ? undefined : random.pick(inside as [Node, ...Node[]]).token
        return token !== undefined && apartSomewhere(subject, split, token) && replaced(subject, split, token)
      },
    ),
  'a face left out by which a beam enters': (subject, random) =>
    aNode(subject, random, isSeen, (node) => {
      const sight = subject.coverage.sights[node.token]
      const k = random.whole(0, (sight?.[3].length ?? 1) - 1)
      const met = sight && truth(subject, node, sight, k)
      const kept = met && (sight[3][k] ?? 0) & ~met.face
      if (!kept || met.clear_mm < 0.01 || met.sensor.kind === 'segment') return false
      sight[3][k] = kept
      return true
    }),
  'another first beam of a sight': (subject, random) =>
    changedSight(subject, random, (sight) => {
      sight[2] = Math.max(0, sight[2] + random.pick([-1, 1]) * random.whole(1, 40))
    }),
  'another plane of a sight': (subject, random) =>
    changedSight(subject, random, (sight) => {
      sight[1] = random.whole(0, planesOf(subject, sight[0]) - 1)
    }),
  'a beam that is not there': ({ coverage }, random) =>
    aSight(coverage, random, (sight) => {
      sight[2] += 5000
    }),
  'a plane that is not there': ({ coverage }, random) =>
    aSight(coverage, random, (sight) => {
      sight[1] = 64
    }),
  'a field that is not there': ({ coverage }, random) =>
    aSight(coverage, random, (sight) => {
      sight[0] = coverage.fields.length
    }),
  'a beam too few for the cluster': ({ coverage }, random) =>
    aSight(coverage, random, (sight) => {
      sight[3].pop()
    }),
  'a beam too many for the cluster': ({ coverage }, random) =>
    aSight(coverage, random, (sight) => {
      sight[3].push(7)
    }),
  'no face at all': ({ coverage }, random) =>
    aSight(coverage, random, (sight) => {
      sight[3][0] = 0
    }),
  'a face of no body': ({ coverage }, random) =>
    aSight(coverage, random, (sight) => {
      sight[3][0] = 8
    }),
  'a tree cut short': ({ coverage }, random) =>
    aTree(coverage, random, (tree) => {
      tree.splice(random.whole(0, tree.length - 1))
    }),
  'a tree that goes on': ({ coverage }, random) =>
    aTree(coverage, random, (tree) => {
      tree.push(random.pick([-2, -1, 0]))
    }),
  'a leaf lost': ({ coverage }, random) =>
    aTree(coverage, random, (tree) => {
      tree.splice(random.whole(0, tree.length - 1), 1)
    }),
  'a split lost with no leaf': ({ coverage }, random) =>
    aTree(
      coverage,
      random,
      (tree) => {
        tree.splice(tree.lastIndexOf(-1), 1)
      },
      2,
    ),
  'half a leaf': ({ coverage }, random) =>
    aTree(coverage, random, (tree) => {
      tree[random.whole(0, tree.length - 1)] = 0.5
    }),
  'a sight beyond the list': ({ coverage }, random) => aLeaf(coverage, random, coverage.sights.length),
  'an obstacle beyond the list': ({ coverage }, random) => aLeaf(coverage, random, -3 - coverage.obstacles.length),
  'a tree too few': ({ coverage }, random) =>
    aSlice(coverage, random, ({ trees }) => {
      trees.pop()
    }),
  'a tree too many': ({ coverage }, random) =>
    aSlice(coverage, random, ({ trees }) => {
      trees.push([-2])
    }),
  'a slice left out': ({ coverage }, random) => coverage.slices.splice(random.whole(0, coverage.slices.length - 1), 1).length > 0,
  'a slice twice': ({ coverage }, random) =>
    aSlice(coverage, random, (slice) => {
      coverage.slices.push(slice)
    }),
  'a part of more parts': ({ coverage }, random) =>
    aSlice(coverage, random, (slice) => {
      slice.of++
    }),
  'a part behind the last': ({ coverage }, random) =>
    aSlice(coverage, random, (slice) => {
      slice.part = slice.of
    }),
  'a posture that is not there': ({ coverage }, random) =>
    aSlice(coverage, random, (slice) => {
      slice.posture += 32
    }),
  'a body that is not there': ({ coverage }, random) =>
    aSlice(coverage, random, (slice) => {
      slice.body += '-2'
    }),
  'a zone that is not there': ({ coverage }) =>
    changed(coverage, (each) => {
      each.zone += '-2'
    }),
  'a state that is not there': ({ coverage }) =>
    changed(coverage, (each) => {
      each.state += '-2'
    }),
  'tolerances that the door does not have': ({ coverage }) =>
    changed(coverage, (each) => {
      each.tolerances = otherTolerances(each)
    }),
  'tiles that never stay open': ({ coverage }) =>
    changed(coverage, (each) => {
      each.smallest_mm = 0
    }),
  'an obstacle left out': ({ coverage }) => coverage.obstacles.pop() !== undefined,
  'an obstacle that is not there': ({ coverage }) => coverage.obstacles.push('nothing') > 0,
  'a field left out': ({ coverage }) => coverage.fields.pop() !== undefined,
  'a field of no sensor': ({ coverage }) => coverage.fields.push('nothing/field') > 0,
  'a worst case that is seen': (subject, random) =>
    aNode(subject, random, isSeen, (node) => {
      const { tile } = node
      const at = standing(subject, node.slice, [(tile.x0 + tile.x1) / 2, (tile.y0 + tile.y1) / 2])
      return subject.coverage.worstCases.push({ ...placed(at, node.slice), fails: allMiss(subject) }) > 0
    }),
  'a worst case inside of an obstacle': (subject, random) =>
    aNode(subject, random, isNotFree, (node) => {
      const { tile } = node
      const at = standing(subject, node.slice, [(tile.x0 + tile.x1) / 2, (tile.y0 + tile.y1) / 2])
      return subject.coverage.worstCases.push({ ...placed(at, node.slice), fails: allMiss(subject) }) > 0
    }),
  'a worst case beside the zone': ({ coverage, zone }, random) =>
    aCase(coverage, random, (each) => {
      each.x_mm = random.chance(0.5) ? zone.xMin_mm - 0.01 : zone.xMax_mm + 0.01
    }),
  'a worst case at another yaw': (subject, random) =>
    aCase(subject.coverage, random, (each) => {
      if (standing(subject, each.slice, [0, 0]).posture.shape === 'cylinder') each.slice = 9999
      else each.yaw_deg += 37
    }),
  'a worst case with a plane left out': ({ coverage }, random) =>
    aCase(coverage, random, ({ fails }) => {
      fails.pop()
    }),
  'a worst case with a plane twice': ({ coverage }, random) =>
    aCase(coverage, random, ({ fails }) => {
      fails.push(...fails.slice(0, 1))
    }),
  'a worst case with a beam too many': ({ coverage }, random) => aRun(coverage, random, (runs) => `${runs}m1`),
  'a worst case with runs of no rule': ({ coverage }, random) => aRun(coverage, random, (runs) => runs.replace(/[a-z]/, 'x')),
  'a worst case whose misses are called seen': (subject, random) => anotherRule('n', subject, random),
  'a worst case whose misses are called too far': (subject, random) => anotherRule('r', subject, random),
  'a worst case whose misses are called hidden': (subject, random) => anotherRule('b', subject, random),
}

/** Changes the coverage in the named way, with seeded choices; false where nothing false can be shown. */
export function corrupt(name: string, coverage: DraftCoverage, door: Door, random: RandomNumbers): boolean {
  const corruption = CORRUPTIONS[name]
  if (corruption === undefined) throw new Error(`name must be a corruption, got ${name}`)
  return corruption(subjectOf(coverage, door), random)
}

function aNode(
  subject: Subject,
  random: RandomNumbers,
  wanted: (node: Node) => boolean,
  change: (node: Node, all: readonly Node[]) => boolean,
): boolean {
  const all = nodesOf(subject)
  const [first, ...others] = all.filter(wanted)
  return first !== undefined && Array.from({ length: 12 }).some(() => change(random.pick([first, ...others]), all))
}

function leafSeenByStrangers(wanted: (node: Node) => boolean, subject: Subject, random: RandomNumbers): boolean {
  const sights = subject.coverage.sights.length
  return aNode(subject, random, wanted, (node) => {
    const token = random.whole(0, sights - 1)
    return sights > 0 && missedSomewhere(subject, node, token) && replaced(subject, node, token)
  })
}

function leafBlockedFromAfar(wanted: (node: Node) => boolean, subject: Subject, random: RandomNumbers): boolean {
  const obstacles = subject.coverage.obstacles.length
  return aNode(subject, random, wanted, (node) => {
    const token = -3 - random.whole(0, obstacles - 1)
    return obstacles > 0 && apartSomewhere(subject, node, token) && replaced(subject, node, token)
  })
}

function within(node: Node, split: Node): boolean {
  return node.slice === split.slice && node.tree === split.tree && node.at > split.at && node.at < split.end
}

/** A beam of the sight passes the body by more than 1 mm somewhere in the tile: a plain line against a plain body. */
function missedSomewhere(subject: Subject, { slice, tile }: Pick<Node, 'slice' | 'tile'>, token: number): boolean {
  const sight = subject.coverage.sights[token]
  if (sight === undefined) return true
  const { sensor, beams } = beamsOf(subject, sight)
  if (beams === 0) return true
  return placesIn(tile).some((place) => {
    const body = standing(subject, slice, place)
    return sight[3].some((_, k) => entry(lineOf(sensor, sight[1], sight[2] + k), body, 1) === undefined)
  })
}

function apartSomewhere(subject: Subject, { slice, tile }: Node, token: number): boolean {
  const obstacle = byId(subject.state.obstacles, subject.coverage.obstacles[-3 - token] ?? '')
  return placesIn(tile).some((place) => surelyApart(standing(subject, slice, place), obstacle))
}

function replaced({ coverage }: Subject, { slice, tree, at, end }: Node, token: number): boolean {
  coverage.slices[slice]?.trees[tree]?.splice(at, end - at, token)
  return true
}

function sensorOf({ coverage, door }: Subject, field: number): Sensor {
  return byId(door.sensors, coverage.fields[field]?.split('/')[0] ?? '')
}

function planesOf(subject: Subject, field: number): number {
  const sensor = sensorOf(subject, field)
  return sensor.kind === 'zone-only' ? 0 : sensor.planes.length
}

/** The sensor of a sight and how many beams its plane has; 0 where the sight reaches past them. */
function beamsOf(subject: Subject, [field, plane, first, faces]: DraftCoverage['sights'][number]): { sensor: Sensor; beams: number } {
  const sensor = sensorOf(subject, field)
  const beams = countOf(sensor, plane)
  return { sensor, beams: first + faces.length > beams ? 0 : beams }
}

function countOf(sensor: Sensor, plane: number): number {
  if (sensor.kind === 'segment') return sensor.planes[plane]?.segments.length ?? 0
  const beams = sensor.kind === 'ranging' ? sensor.planes[plane] : undefined
  return beams === undefined ? 0 : beams.kind === 'row' ? beams.places.length : beams.beamCount
}

function truth(subject: Subject, { slice, tile }: Node, [field, plane, first]: DraftCoverage['sights'][number], k: number) {
  const sensor = sensorOf(subject, field)
  const body = standing(subject, slice, [(tile.x0 + tile.x1) / 2, (tile.y0 + tile.y1) / 2])
  const met = entry(lineOf(sensor, plane, first + k), body, sensor.kind === 'zone-only' ? 0 : -sensor.spotRadius_mm)
  return met && { ...met, sensor }
}

/** A sight that some leaf counts on, changed so that one of its beams misses a body there. */
function changedSight(subject: Subject, random: RandomNumbers, change: (sight: DraftCoverage['sights'][number]) => void): boolean {
  return aNode(subject, random, isSeen, (node) => {
    const sight = subject.coverage.sights[node.token]
    const [before, faces] = sight === undefined ? [undefined, []] : [[...sight] as typeof sight, [...sight[3]]]
    if (sight === undefined || before === undefined) return false
    change(sight)
    if (missedSomewhere(subject, node, node.token)) return true
    subject.coverage.sights[node.token] = [before[0], before[1], before[2], faces]
    return false
  })
}

function changed(coverage: DraftCoverage, change: (coverage: DraftCoverage) => void): boolean {
  change(coverage)
  return true
}

function otherTolerances({ tolerances }: DraftCoverage): Record<string, number> {
  return { ...tolerances, length_mm: (tolerances?.['length_mm'] ?? 0) / 2 + 0.125 }
}

function aSight(coverage: DraftCoverage, random: RandomNumbers, change: (sight: DraftCoverage['sights'][number]) => void): boolean {
  return one(coverage.sights, random, change)
}

function aSlice(coverage: DraftCoverage, random: RandomNumbers, change: (slice: DraftCoverage['slices'][number]) => void): boolean {
  return one(coverage.slices, random, change)
}

function aTree(coverage: DraftCoverage, random: RandomNumbers, change: (tree: number[]) => void, atLeast = 1): boolean {
  const trees = coverage.slices.flatMap((slice) => slice.trees).filter((tree) => tree.length >= atLeast)
  return one(trees, random, change)
}

function aLeaf(coverage: DraftCoverage, random: RandomNumbers, token: number): boolean {
  return aTree(coverage, random, (tree) => {
    const leaves = tree.flatMap((each, at) => (each === -1 ? [] : [at]))
    tree[leaves[random.whole(0, leaves.length - 1)] ?? 0] = token
  })
}

type Case = DraftCoverage['worstCases'][number]

function aCase(coverage: DraftCoverage, random: RandomNumbers, change: (each: Case) => void): boolean {
  return one(coverage.worstCases, random, change)
}

function aRun(coverage: DraftCoverage, random: RandomNumbers, change: (runs: string) => string): boolean {
  return one(coverage.worstCases, random, ({ fails }) =>
    one(fails, random, (each) => {
      each[2] = change(each[2])
    }),
  )
}

/** A run of misses that pass the body by more than 1 mm, called something else. */
function anotherRule(letter: string, subject: Subject, random: RandomNumbers): boolean {
  const [first, ...others] = subject.coverage.worstCases
  if (first === undefined) return false
  const found = random.pick([first, ...others])
  const body = { ...standing(subject, found.slice, [found.x_mm, found.y_mm]), yaw_rad: (found.yaw_deg * Math.PI) / 180 }
  for (const entryOfPlane of found.fails) {
    const [field, plane, runs] = entryOfPlane
    const sensor = sensorOf(subject, field)
    const missed = Array.from({ length: countOf(sensor, plane) }, (_, j) => entry(lineOf(sensor, plane, j), body, 1) === undefined)
    if (!/^m\d+$/.test(runs) || missed.includes(false) || sensor.kind === 'segment') continue
    entryOfPlane[2] = runs.length > 1 ? `${letter}1${missed.length > 1 ? `m${missed.length - 1}` : ''}` : runs
    return true
  }
  return false
}

function placed({ x, y, yaw_rad }: Standing, slice: number): Omit<Case, 'fails'> {
  return { pocket: 'A', slice, x_mm: x, y_mm: y, yaw_deg: (yaw_rad * 180) / Math.PI }
}

/** For every plane of every field: each beam misses the body. */
function allMiss(subject: Subject): Case['fails'] {
  return subject.coverage.fields.flatMap((name, f) => {
    const sensor = sensorOf(subject, f)
    const field = sensor.kind === 'zone-only' ? undefined : byId(sensor.fields, name.split('/')[1] ?? '')
    if (sensor.kind === 'zone-only' || field === undefined) return []
    return sensor.planes.flatMap((plane, p) =>
      field.planes.includes(plane.id) ? [[f, p, `m${countOf(sensor, p)}`] as [number, number, string]] : [],
    )
  })
}

function one<T>(list: readonly T[], random: RandomNumbers, change: (item: T) => void): boolean {
  const [first, ...others] = list
  if (first === undefined) return false
  change(random.pick([first, ...others]))
  return true
}
