import { GUESS_ROOM, guessSights } from './sight-guesses.kernel.ts'
import type { Stretch } from './stretches.ts'
import { newTileScratch } from './tile-rule.kernel.ts'
import type { TolerantField } from './tile-scene.ts'
import { beamsSee, growTree, SPLIT, type TileProblem, type TileTree } from './tile-tree.ts'

/** A guess is drawn in by this at either end, so that its proof need not decide on the edge. */
const INSIDE_MM = 0.01

/** Along y at one x: neighbours from `first` on that ought to see the body between the two places. */
interface Guess {
  readonly from: number
  readonly to: number
  readonly first: number
}

/**
 * Where along y one field sees the body of a problem on one strip of floor, each stretch proved by the tile rule on a tile without width. The tiles
 * are guessed in closed form, so that few of them cover a stretch; what they leave is cut into ever smaller ones, with the beams that meet the body there.
 */
export function seenOnStrip(problem: TileProblem, x_mm: number, from_mm: number, to_mm: number): readonly Stretch[] {
  const field = problem.fields[0] as TolerantField
  const { meeting, guesses } = guessesOf(problem, field, x_mm, from_mm, to_mm)
  if (meeting.length === 0) return []
  const seen = proved(problem, field.nominal.clusterBeams, guesses, x_mm)
  const left = gapsBetween(seen, from_mm, to_mm)
  return [...seen, ...left.flatMap((gap) => seenInGap(problem, meeting, x_mm, gap))]
}

function guessesOf(
  problem: TileProblem,
  { nominal: { planes, clusterBeams } }: TolerantField,
  x_mm: number,
  from_mm: number,
  to_mm: number,
) {
  const [beams, body] = [problem.beams[0], problem.bodies[0]]
  if (!beams || !body) throw new Error('a strip must have one field with its beams and body')
  const out = new Float64Array(GUESS_ROOM)
  const meeting: Guess[] = []
  const guesses: Guess[] = []
  for (const { first, end } of planes) {
    let row: (readonly Stretch[])[] = []
    for (let i = first; i < end; i++) {
      const count = guessSights(out, beams, i, body, x_mm, from_mm, to_mm)
      if (count === 0) {
        row = []
        continue
      }
      meeting.push({ from: out[0] as number, to: out[1] as number, first: i })
      const own = stretchesIn(out, count)
      row = clusterBeams === 1 ? [own] : [...row, own].slice(-clusterBeams)
      if (row.length < clusterBeams) continue
      for (const { from_mm: from, to_mm: to } of row.reduce(common)) guesses.push({ from, to, first: i - clusterBeams + 1 })
    }
  }
  return { meeting, guesses }
}

/** The pairs after the first, those that touch also as one. */
function stretchesIn(out: Float64Array, count: number): readonly Stretch[] {
  const own: Stretch[] = []
  for (let n = 2; n < count; n += 2) own.push({ from_mm: (out[n] as number) + INSIDE_MM, to_mm: (out[n + 1] as number) - INSIDE_MM })
  if (own.length < 2) return own
  own.sort((a, b) => a.from_mm - b.from_mm)
  const whole: { from_mm: number; to_mm: number }[] = []
  for (const { from_mm, to_mm } of own) {
    const last = whole[whole.length - 1]
    if (last && from_mm <= last.to_mm + 3 * INSIDE_MM) last.to_mm = Math.max(last.to_mm, to_mm)
    else whole.push({ from_mm, to_mm })
  }
  return whole.length === own.length ? own : [...whole, ...own]
}

function common(some: readonly Stretch[], others: readonly Stretch[]): readonly Stretch[] {
  return some.flatMap((a) =>
    others
      .map((b) => ({ from_mm: Math.max(a.from_mm, b.from_mm), to_mm: Math.min(a.to_mm, b.to_mm) }))
      .filter(({ from_mm, to_mm }) => from_mm < to_mm),
  )
}

/** From the lowest place on, always the guess that leads farthest; what its proof does not bear is shortened or dropped. */
function proved(problem: TileProblem, cluster: number, guesses: readonly Guess[], x_mm: number): readonly Stretch[] {
  const rising = [...guesses].sort((a, b) => a.from - b.from)
  const scratch = newTileScratch()
  const sees = ({ first }: Guess, from: number, to: number) =>
    to > from && beamsSee(problem, 0, first, cluster, x_mm, (from + to) / 2, 0, (to - from) / 2, scratch)
  const seen: Stretch[] = []
  let active: Guess[] = []
  let next = 0
  let at = -Infinity
  for (;;) {
    if (active.length === 0) {
      const following = rising[next]
      if (following === undefined) return seen
      at = Math.max(at, following.from)
    }
    for (let guess = rising[next]; guess !== undefined && guess.from <= at; guess = rising[++next]) if (guess.to > at) active.push(guess)
    const best = active.reduce<Guess | undefined>((far, guess) => (far === undefined || guess.to > far.to ? guess : far), undefined)
    if (best === undefined || best.to <= at) {
      active = []
      continue
    }
    const to = reached(sees, best, at)
    if (to > at) {
      seen.push({ from_mm: at, to_mm: to })
      at = to
    }
    active = active.filter((guess) => guess !== best && guess.to > at)
  }
}

/** How far from `at` on the guess is proved; `at` itself where it is not. */
function reached(sees: (guess: Guess, from: number, to: number) => boolean, guess: Guess, at: number): number {
  if (sees(guess, at, guess.to)) return guess.to
  let near = at
  let far = guess.to
  for (let step = 1; step < far - near; step *= 2) {
    if (!sees(guess, at, at + step)) {
      far = at + step
      break
    }
    near = at + step
  }
  if (near === at) return at
  while (far - near > INSIDE_MM) {
    const middle = (near + far) / 2
    if (sees(guess, at, middle)) near = middle
    else far = middle
  }
  return near
}

function gapsBetween(seen: readonly Stretch[], from_mm: number, to_mm: number): readonly Stretch[] {
  const gaps: Stretch[] = []
  let at = from_mm
  for (const stretch of seen) {
    if (stretch.from_mm > at) gaps.push({ from_mm: at, to_mm: stretch.from_mm })
    at = stretch.to_mm
  }
  if (at < to_mm) gaps.push({ from_mm: at, to_mm })
  return gaps
}

/** Only where enough beams meet the body at all, and with those alone. */
function seenInGap(problem: TileProblem, meeting: readonly Guess[], x_mm: number, gap: Stretch): readonly Stretch[] {
  const near = meeting.filter(({ from, to }) => from < gap.to_mm + INSIDE_MM && to > gap.from_mm - INSIDE_MM)
  if (near.length === 0) return []
  const from_mm = Math.max(
    gap.from_mm,
    near.reduce((least, { from }) => Math.min(least, from), Infinity),
  )
  const to_mm = Math.min(
    gap.to_mm,
    near.reduce((most, { to }) => Math.max(most, to), -Infinity),
  )
  if (!(from_mm < to_mm)) return []
  const tile = { xMin: x_mm, xMax: x_mm, yMin: from_mm, yMax: to_mm }
  const beams = near.map(({ first }) => first)
  return seenTiles(growTree(problem, tile, [], beams), from_mm, to_mm)
}

/** The tiles of a tree without width that are seen, in rising order. */
export function seenTiles(tree: TileTree, from_mm: number, to_mm: number): readonly Stretch[] {
  const seen: Stretch[] = []
  let at = 0
  const walk = (low: number, high: number) => {
    const node = tree[at++] as number
    if (node === SPLIT) {
      const middle = (low + high) / 2
      walk(low, middle)
      walk(middle, high)
    } else if (node >= 0) seen.push({ from_mm: low, to_mm: high })
  }
  walk(from_mm, to_mm)
  return seen
}
