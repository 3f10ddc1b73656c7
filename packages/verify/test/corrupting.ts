import { parseDocument, toDoor } from '@sillsight/document'
import type { Door } from '@sillsight/engine'
import { claimedOf, counterexample, type Leaf, leavesOf, wrongCase } from './claims.ts'
import { CORRUPTIONS, SHARP, some } from './corruptions.ts'
import { type RandomDoorFile, randomDoorFile, sha256 } from './random-door-files.ts'
import { type Dice, diceOf } from './random-numbers.ts'
import { type Coverage, evidenceOfFile, verified } from './true-evidence.ts'

/** One coverage of a door file, small enough to be checked often, and the others of the same door. */
interface Piece {
  readonly file: RandomDoorFile
  readonly coverage: Coverage
  readonly others: readonly Coverage[]
}

export interface Tally {
  readonly refused: number
  readonly stillTrue: number
  readonly acceptedThoughFalse: readonly string[]
  readonly kinds: ReadonlyMap<string, number>
}

const MOST_ENTRIES = 2500
const entriesOf = ({ slices }: Coverage) => slices.reduce((sum, { trees }) => sum + trees.reduce((all, tree) => all + tree.length, 0), 0)

/** Pieces of true evidence in which something is seen, of the doors with these seeds. */
export function piecesOf(seeds: readonly number[]): readonly Piece[] {
  return seeds.flatMap((seed) => {
    const file = randomDoorFile(seed)
    const { coverages } = evidenceOfFile(file)
    const claims = (each: Coverage) =>
      each.slices.some(({ trees }) => trees.some((tree) => tree.some((code) => code !== -1 && code !== -2)))
    const fits = (each: Coverage) => entriesOf(each) <= MOST_ENTRIES && claims(each) && stands(file, each)
    return coverages
      .filter(fits)
      .map((coverage) => ({ file, coverage, others: coverages.filter((each) => each !== coverage && entriesOf(each) <= MOST_ENTRIES) }))
  })
}

function stands(file: RandomDoorFile, coverage: Coverage): boolean {
  return verified(file, textOf(file.text, [coverage])).ok
}

function textOf(doorText: string, coverages: readonly Coverage[]): string {
  return JSON.stringify({ sillsightEvidence: 1, doorSha256: sha256(doorText), coverages })
}

/** Corrupts pieces of evidence, doors under their evidence, and texts, and holds what is accepted all the same against single placements. */
export function corruptMany(pieces: readonly Piece[], count: number, seed: number): Tally {
  const dice = diceOf(seed)
  const kinds = new Map<string, number>()
  const acceptedThoughFalse: string[] = []
  let [refused, stillTrue] = [0, 0]
  for (let done = 0; done < count; ) {
    const piece = dice.pick(pieces)
    const way = dice.next()
    const outcome = way < 0.7 ? corruptCoverage(piece, dice) : way < 0.9 ? corruptDoor(piece, dice) : corruptText(piece, dice)
    if (outcome === undefined) continue
    done++
    const told = outcome.result === 'refused' ? 'refused' : outcome.result === undefined ? 'still true' : 'false'
    kinds.set(`${outcome.kind}: ${told}`, (kinds.get(`${outcome.kind}: ${told}`) ?? 0) + 1)
    if (told === 'refused') refused++
    else if (told === 'still true') stillTrue++
    else acceptedThoughFalse.push(`${outcome.kind}: ${outcome.result}`)
  }
  return { refused, stillTrue, acceptedThoughFalse, kinds }
}

/** What became of one corruption: refused, or accepted and wrong as told, or accepted and nothing wrong found. */
interface Outcome {
  readonly kind: string
  readonly result: string | undefined
}

function corruptCoverage({ file, coverage, others }: Piece, dice: Dice): Outcome | undefined {
  const kind = dice.pick(dice.chance(0.5) ? SHARP : Object.keys(CORRUPTIONS))
  const changed = structuredClone(coverage)
  const suspects = CORRUPTIONS[kind]?.(changed, dice, others)
  if (suspects === undefined) return undefined
  if (!verified(file, textOf(file.text, [changed])).ok) return { kind, result: 'refused' }
  return { kind, result: wrongIn(file.door, changed, dice, suspects) }
}

/** What decides where a beam still sees, rather than which one: most doors are changed there. */
const DECIDING = new Set(
  ['rangeRef', 'maxRange', 'backgroundMargin', 'spotRadius', 'clearance', 'top', 'xMin', 'xMax', 'yMin', 'yMax']
    .map((name) => `${name}_mm`)
    .concat('reflectance', 'reflectanceRef', 'visibility_m', 'clusterBeams', 'longestStay_s')
    .concat('length_mm', 'position_mm', 'tilt_deg', 'roll_deg', 'yaw_deg', 'floor_mm', 'range_percent'),
)

/** The same evidence under a door in which one number is another one; a tolerance is another one in both. */
function corruptDoor({ file, coverage }: Piece, dice: Dice): Outcome | undefined {
  const kind = 'a number of the door'
  const door = JSON.parse(file.text)
  const numbers: { readonly of: Record<string, unknown>; readonly name: string; readonly value: number }[] = []
  const waiting = [door]
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop())
    for (const [name, value] of Object.entries(next))
      if (typeof value === 'number' && name !== 'sillsight') numbers.push({ of: next, name, value })
      else if (typeof value === 'object' && value !== null) waiting.push(value)
  const deciding = numbers.filter(({ name }) => DECIDING.has(name))
  const { of, name, value } = dice.pick(deciding.length > 0 && dice.chance(0.6) ? deciding : numbers)
  const share = dice.pick([0.3, 0.7, 0.9, 0.98, 0.999, 1.001, 1.02, 1.1, 1.5, 3])
  of[name] =
    Number.isInteger(value) && value > 0 && value < 60
      ? value + dice.pick([-2, -1, 1, 2])
      : dice.chance(0.5)
        ? value * share
        : value + some(dice)
  const text = JSON.stringify(door)
  const parsed = parseDocument(text, { readLibrary: file.readLibrary, sha256 })
  if (!parsed.ok) return undefined
  const carried = { ...coverage, tolerances: coverage.tolerances === null ? null : door.tolerances }
  if (!verified({ text, readLibrary: file.readLibrary }, textOf(text, [carried])).ok) return { kind, result: 'refused' }
  const wrong = wrongIn(toDoor(parsed.document, parsed.catalogue), carried, dice, () => true, 15)
  return { kind, result: wrong && `${name} ${value} as ${of[name]}, ${wrong}` }
}

function corruptText({ file, coverage }: Piece, dice: Dice): Outcome | undefined {
  const text = textOf(file.text, [coverage])
  const at = dice.whole(0, text.length - 1)
  const kinds = {
    'a text cut off': () => text.slice(0, at),
    'a character less': () => text.slice(0, at) + text.slice(at + 1),
    'a character more': () => text.slice(0, at) + dice.pick([...'0123456789,-.[]{}"e ']) + text.slice(at),
    'another character': () => text.slice(0, at) + dice.pick([...'0123456789,-.[]{}"eatsf']) + text.slice(at + 1),
  }
  const kind = dice.pick(Object.keys(kinds) as (keyof typeof kinds)[])
  const changed = kinds[kind]()
  if (changed === text) return undefined
  if (!verified(file, changed).ok) return { kind, result: 'refused' }
  const { sillsightEvidence, doorSha256, coverages } = JSON.parse(changed)
  if (sillsightEvidence !== 1 || doorSha256 !== sha256(file.text)) return { kind, result: 'another version or door' }
  const wrong = coverages.map((each: Coverage) => wrongIn(file.door, each, dice, () => true)).find((each: unknown) => each !== undefined)
  return { kind, result: wrong }
}

/** What is clearly wrong in an accepted coverage; undefined if nothing was found in its suspects, in some other leaves and in its worst cases. */
function wrongIn(door: Door, coverage: Coverage, dice: Dice, suspects: (leaf: Leaf) => boolean, most = 6): string | undefined {
  const claimed = claimedOf(door, coverage)
  const leaves = claimed && leavesOf(claimed)
  if (claimed === undefined || leaves === undefined) return 'nothing of this door'
  if (typeof leaves === 'string') return leaves
  const claims = leaves.filter(({ code }) => code !== -2)
  const first = claims.filter(suspects)
  const tried = [
    ...Array.from({ length: Math.min(first.length, most) }, () => dice.pick(first)),
    ...Array.from({ length: Math.min(claims.length, 1) }, () => dice.pick(claims)),
  ]
  for (const leaf of tried) {
    const wrong = counterexample(claimed, leaf, dice)
    if (wrong !== undefined) return wrong
  }
  for (const i of coverage.worstCases.keys()) {
    const wrong = wrongCase(claimed, i)
    if (wrong !== undefined) return `worst case ${i}: ${wrong}`
  }
  return undefined
}
