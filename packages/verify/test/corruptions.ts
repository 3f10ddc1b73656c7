import type { Leaf } from './claims.ts'
import type { Dice } from './random-numbers.ts'
import type { Coverage } from './true-evidence.ts'

/** A change to a coverage, done in place. Says which leaves it may have made false; undefined where there was nothing to change. */
type Corruption = (coverage: Coverage, dice: Dice, others: readonly Coverage[]) => ((leaf: Leaf) => boolean) | undefined

const EVERY = () => true
const NONE = () => false
const FACES = [1, 2, 3, 4, 5, 6, 7]

interface Place {
  readonly slice: number
  readonly tree: number[]
  readonly at: number
}

/** An entry of a tree that is as asked. */
function placeOf({ slices }: Coverage, dice: Dice, wanted: (code: number) => boolean): Place | undefined {
  const places = slices.flatMap(({ trees }, slice) =>
    trees.flatMap((tree) => tree.flatMap((code, at) => (wanted(code) ? [{ slice, tree, at }] : []))),
  )
  return places.length === 0 ? undefined : dice.pick(places)
}

function atAndAfter({ slice, at }: Place, length = 1): (leaf: Leaf) => boolean {
  return (leaf) => leaf.slice === slice && leaf.at >= at && leaf.at < at + length
}

/** Where a subtree ends. */
function endOf(tree: readonly number[], start: number): number {
  let wanting = 1
  let at = start
  while (wanting > 0 && at < tree.length) wanting += tree[at++] === -1 ? 1 : -1
  return at
}

/** Changes one entry. */
function leaf(wanted: (code: number) => boolean, to: (dice: Dice, coverage: Coverage) => number | undefined): Corruption {
  return (coverage, dice) => {
    const place = placeOf(coverage, dice, wanted)
    const code = place && to(dice, coverage)
    if (place === undefined || code === undefined || place.tree[place.at] === code) return undefined
    place.tree[place.at] = code
    return atAndAfter(place)
  }
}

/** Changes one sight, rather one that is used. */
function sight(change: (sight: Coverage['sights'][number], dice: Dice) => void): Corruption {
  return (coverage, dice) => {
    const place = placeOf(coverage, dice, (code) => code >= 0)
    const n = place?.tree[place.at]
    const found = coverage.sights[n ?? -1]
    if (found === undefined) return undefined
    const before = JSON.stringify(found)
    change(found, dice)
    return JSON.stringify(found) === before ? undefined : ({ code }) => code === n
  }
}

const anySight = (dice: Dice, { sights }: Coverage) => (sights.length === 0 ? undefined : dice.whole(0, sights.length - 1))
const anyObstacle = (dice: Dice, { obstacles }: Coverage) => (obstacles.length === 0 ? undefined : -3 - dice.whole(0, obstacles.length - 1))
const isSeen = (code: number) => code >= 0
const isNotFree = (code: number) => code <= -3
const isOpen = (code: number) => code === -2
const isLeaf = (code: number) => code !== -1

/** A worst case with one thing changed. */
function worst(change: (given: Coverage['worstCases'][number], dice: Dice, coverage: Coverage) => void): Corruption {
  return (coverage, dice) => {
    const cases = coverage.worstCases.filter(({ fails }) => fails.length > 0)
    if (cases.length === 0) return undefined
    change(dice.pick(cases), dice, coverage)
    return NONE
  }
}

function slice(change: (given: Coverage['slices'][number], dice: Dice, coverage: Coverage) => void): Corruption {
  return (coverage, dice) => {
    const before = JSON.stringify(coverage.slices)
    change(dice.pick(coverage.slices), dice, coverage)
    return JSON.stringify(coverage.slices) === before ? undefined : EVERY
  }
}

/** An amount from far below what anybody measures up to 200 mm, either way. */
export const some = (dice: Dice) => dice.pick([1e-9, 1e-4, 0.01, 0.3, 1, 5, 30, 200]) * dice.pick([-1, 1])

export const CORRUPTIONS: Readonly<Record<string, Corruption>> = {
  'another beam': sight((given, dice) => {
    given[2] += dice.pick([-3, -2, -1, 1, 2, 3])
  }),
  'a beam far off': sight((given, dice) => {
    given[2] = dice.whole(0, 60)
  }),
  'other faces': sight((given, dice) => {
    given[3] = given[3].map((faces) => (dice.chance(0.7) ? dice.pick(FACES) : faces))
  }),
  'a face less': sight((given, dice) => {
    const k = dice.whole(0, given[3].length - 1)
    given[3][k] = (given[3][k] ?? 7) & ~dice.pick([1, 2, 4])
  }),
  'a longer or shorter cluster': sight((given, dice) => {
    if (dice.chance(0.5)) given[3].push(7)
    else given[3].pop()
  }),
  'another field': sight((given, dice) => {
    given[0] += dice.pick([-1, 1, 2])
  }),
  'another plane': sight((given, dice) => {
    given[1] += dice.pick([-1, 1, 2])
  }),
  'sights in another order': (coverage, dice) => {
    if (coverage.sights.length < 2) return undefined
    const [a, b] = [dice.whole(0, coverage.sights.length - 1), dice.whole(0, coverage.sights.length - 1)]
    const [one, two] = [coverage.sights[a], coverage.sights[b]]
    if (one === undefined || two === undefined || a === b) return undefined
    coverage.sights[a] = two
    coverage.sights[b] = one
    return ({ code }) => code === a || code === b
  },
  'another sight': leaf(isSeen, anySight),
  'a sight that is not there': leaf(isSeen, (_, { sights }) => sights.length),
  'seen where it is open': leaf(isOpen, anySight),
  'seen where it is not free': leaf(isNotFree, anySight),
  'not free where it is seen': leaf(isSeen, anyObstacle),
  'not free where it is open': leaf(isOpen, anyObstacle),
  'another obstacle': leaf(isNotFree, anyObstacle),
  'an obstacle that is not there': leaf(isLeaf, (_, { obstacles }) => -3 - obstacles.length),
  'no whole number': leaf(EVERY, (dice) => dice.between(-5, 5)),
  'a huge number': leaf(EVERY, (dice) => dice.pick([1e9, -1e9, 2 ** 53, 1e300])),
  'a leaf for a whole branch': (coverage, dice) => {
    const place = placeOf(coverage, dice, (code) => code === -1)
    if (place === undefined) return undefined
    const end = endOf(place.tree, place.at)
    const below = place.tree.slice(place.at, end).filter(isLeaf)
    const claims = below.filter((code) => !isOpen(code))
    place.tree.splice(place.at, end - place.at, dice.pick(claims.length > 0 ? claims : below))
    return atAndAfter(place)
  },
  'a hole filled by its neighbour': (coverage, dice) => {
    const place = placeOf(coverage, dice, isLeaf)
    const next = place?.tree[place.at + 1]
    if (place === undefined || next === undefined || next === -1 || next === place.tree[place.at]) return undefined
    place.tree[place.at] = next
    return atAndAfter(place)
  },
  'halves that change places': (coverage, dice) => {
    const place = placeOf(coverage, dice, (code) => code === -1)
    if (place === undefined) return undefined
    const { tree, at } = place
    const [middle, end] = [endOf(tree, at + 1), endOf(tree, at)]
    const turned = [...tree.slice(middle, end), ...tree.slice(at + 1, middle)]
    if (turned.every((code, i) => code === tree[at + 1 + i])) return undefined
    tree.splice(at + 1, end - at - 1, ...turned)
    return atAndAfter(place, end - at)
  },
  'a split more': (coverage, dice) => {
    const place = placeOf(coverage, dice, isLeaf)
    if (place === undefined) return undefined
    place.tree[place.at] = -1
    return EVERY
  },
  'a leaf split in two': (coverage, dice) => {
    const place = placeOf(coverage, dice, isLeaf)
    const code = place?.tree[place.at]
    if (place === undefined || code === undefined) return undefined
    place.tree.splice(place.at, 1, -1, code, code)
    return atAndAfter(place, 3)
  },
  'an entry less': (coverage, dice) => {
    const place = placeOf(coverage, dice, EVERY)
    place?.tree.splice(place.at, 1)
    return place && EVERY
  },
  'an entry more': (coverage, dice) => {
    const place = placeOf(coverage, dice, EVERY)
    place?.tree.splice(place.at, 0, dice.pick([-1, -2, 0, -3]))
    return place && EVERY
  },
  'trees of two slices changed': slice((given, dice, { slices }) => {
    const other = dice.pick(slices)
    const trees = given.trees
    given.trees = other.trees
    other.trees = trees
  }),
  'roots turned round': slice((given) => {
    given.trees.reverse()
  }),
  'a root less': slice((given) => {
    given.trees.pop()
  }),
  'a root more': slice((given) => {
    given.trees.push([-2])
  }),
  'a slice less': (coverage, dice) => {
    coverage.slices.splice(dice.whole(0, coverage.slices.length - 1), 1)
    return EVERY
  },
  'a slice twice': (coverage, dice) => {
    coverage.slices.push(dice.pick(coverage.slices))
    return EVERY
  },
  'another part': slice((given, dice) => {
    given.part += dice.pick([-1, 1])
  }),
  'other parts': slice((given, dice, { slices }) => {
    const of = given.of + dice.pick([-1, 1])
    if (dice.chance(0.5)) given.of = of
    else for (const each of slices) if (each.body === given.body && each.posture === given.posture) each.of = of
  }),
  'another posture': slice((given, dice) => {
    given.posture += dice.pick([-1, 1])
  }),
  'another body': slice((given) => {
    given.body = 'body-1'
  }),
  'evidence of another coverage': (coverage, dice, others) => {
    const other = others.length === 0 ? undefined : dice.pick(others)
    if (other === undefined) return undefined
    const { zone, state, tolerances } = dice.pick([
      other,
      { ...other, zone: coverage.zone },
      { ...other, state: coverage.state },
      { ...other, tolerances: coverage.tolerances },
    ])
    Object.assign(coverage, { zone, state, tolerances })
    return EVERY
  },
  "another coverage's slices": (coverage, dice, others) => {
    if (others.length === 0) return undefined
    coverage.slices = structuredClone(dice.pick(others).slices)
    return EVERY
  },
  "another coverage's sights": (coverage, dice, others) => {
    if (others.length === 0) return undefined
    coverage.sights = structuredClone(dice.pick(others).sights)
    return EVERY
  },
  'other tolerances': (coverage, dice) => {
    if (coverage.tolerances === null) return undefined
    const name = dice.pick(Object.keys(coverage.tolerances) as (keyof NonNullable<Coverage['tolerances']>)[])
    coverage.tolerances[name] += dice.pick([1e-6, 0.01, 1, -0.1])
    return EVERY
  },
  'a tolerance less': (coverage, dice) => {
    if (coverage.tolerances === null) return undefined
    delete (coverage.tolerances as Partial<typeof coverage.tolerances>)[dice.pick(['length_mm', 'tilt_deg', 'floor_mm'] as const)]
    return EVERY
  },
  'no tolerances': (coverage) => {
    if (coverage.tolerances === null) return undefined
    coverage.tolerances = null
    return EVERY
  },
  'fields in another order': (coverage) => {
    if (coverage.fields.length < 2) return undefined
    coverage.fields.reverse()
    return EVERY
  },
  'a field less': (coverage, dice) => {
    coverage.fields.splice(dice.whole(0, coverage.fields.length), 1)
    return EVERY
  },
  'a field that does not count': (coverage, dice) => {
    coverage.fields[dice.whole(0, coverage.fields.length)] = dice.pick([
      'sensor-1/f0',
      'sensor-a/f1',
      'sensor-b/f0',
      'nobody/all',
      'sensor-2/f0',
    ])
    return EVERY
  },
  'obstacles in another order': (coverage) => {
    if (coverage.obstacles.length < 2) return undefined
    coverage.obstacles.reverse()
    return EVERY
  },
  'an obstacle less': (coverage, dice) => {
    if (coverage.obstacles.length === 0) return undefined
    coverage.obstacles.splice(dice.whole(0, coverage.obstacles.length - 1), 1)
    return EVERY
  },
  'another smallest tile': (coverage, dice) => {
    coverage.smallest_mm *= dice.pick([0.5, 2, 100])
    return NONE
  },
  'a worst case elsewhere': worst((given, dice) => {
    if (dice.chance(0.5)) given.x_mm += some(dice)
    else given.y_mm += some(dice)
  }),
  'a worst case turned': worst((given, dice) => {
    given.yaw_deg += dice.pick([1e-12, 0.01, 1, 45, 90, 180, 360])
  }),
  'a worst case of another slice': worst((given, dice, { slices }) => {
    given.slice = dice.whole(0, slices.length)
  }),
  'another rule': worst((given, dice) => {
    const line = dice.pick(given.fails)
    line[2] = line[2].replace(/[a-z]/g, (rule) => (dice.chance(0.3) ? dice.pick(['m', 'b', 'r', 's', 'c', 't', 'n']) : rule))
  }),
  'runs of other lengths': worst((given, dice) => {
    const line = dice.pick(given.fails)
    line[2] = line[2].replace(/\d+/g, (count) => (dice.chance(0.4) ? String(Number(count) + dice.pick([-1, 1])) : count))
  }),
  'runs that are shifted by a beam': worst((given, dice) => {
    const line = dice.pick(given.fails)
    const counts = [...line[2].matchAll(/([a-z])(\d+)/g)].map(([, rule = '', count]) => ({ rule, count: Number(count) }))
    const k = dice.whole(0, Math.max(0, counts.length - 2))
    const [one, two] = [counts[k], counts[k + 1]]
    if (one === undefined || two === undefined) return
    one.count++
    two.count--
    line[2] = counts.map(({ rule, count }) => (count > 0 ? `${rule}${count}` : '')).join('')
  }),
  'a plane less in a worst case': worst((given, dice) => {
    given.fails.splice(dice.whole(0, given.fails.length - 1), 1)
  }),
  'a plane twice in a worst case': worst((given, dice) => {
    given.fails.push(dice.pick(given.fails))
  }),
}

/** Those that a careless check would let through: half of all corruptions are of these kinds. */
export const SHARP: readonly string[] = [
  'another beam',
  'other faces',
  'a face less',
  'another sight',
  'seen where it is open',
  'seen where it is not free',
  'not free where it is seen',
  'not free where it is open',
  'another obstacle',
  'a leaf for a whole branch',
  'a hole filled by its neighbour',
  'halves that change places',
  'a worst case elsewhere',
  'another rule',
  'runs that are shifted by a beam',
]
