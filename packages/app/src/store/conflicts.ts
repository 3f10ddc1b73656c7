import type { DoorFile } from '@sillsight/document'
import type { Automerge } from './automerge.ts'
import { isBegunPlace } from './begun.ts'
import type { Conflict } from './contract.ts'
import type { Change, DoorDoc } from './door-document.ts'
import { same } from './take-back.ts'
import { isNamed, type Named, nameIn, twinsIn } from './twins.ts'

type Json = unknown
type Fields = Record<string, Json>
type Written = Conflict['values'][number]

/**
 * Places in the door file that hold values of people who did not see each other's; the one the file shows comes first. Whoever takes a
 * choice back is asked again.
 */
export function conflictsOf(A: Automerge, doc: DoorDoc, changes: readonly Change[]): readonly Conflict[] {
  const found = standing(A, doc, changes)
  return [...found, ...askedAgain(A, doc, changes).filter(({ path }) => found.every((each) => each.path !== path && !isPart(path, each)))]
}

function standing(A: Automerge, doc: DoorDoc, changes: readonly Change[]): readonly Conflict[] {
  const found: Conflict[] = []
  const look = (holder: object, key: string | number, place: string): void => {
    const shown = (holder as Record<string | number, Json>)[key]
    const rivals = A.getConflicts(holder as DoorDoc, key as never)
    if (rivals) {
      const all = Object.entries(rivals).map(([operation, value]) => ({ value: plain(value), ...writerOf(operation, changes) }))
      const values = [...all.filter(({ value }) => same(value, plain(shown))), ...all.filter(({ value }) => !same(value, plain(shown)))]
      if (differ(values))
        found.push({
          path: place,
          values,
          together: together(
            values.map(({ value }) => value),
            place,
          ),
        })
    }
  }
  const lookAtTwins = (list: readonly Json[], path: string): void => {
    for (const indices of twinsIn(list)) {
      const values = indices.map((i) => ({
        value: plain(list[i]),
        ...writerOf(A.getObjectId(list[i] as DoorDoc) ?? '', changes),
      }))
      if (differ(values)) found.push({ path: `${path}/${indices[0]}`, values, together: undefined })
    }
  }
  const walk = (holder: Json, path: string): void => {
    if (typeof holder !== 'object' || holder === null) return
    if (Array.isArray(holder)) lookAtTwins(holder, path)
    for (const key of Array.isArray(holder) ? holder.keys() : Object.keys(holder)) {
      const place = path === '' ? String(key) : `${path}/${key}`
      look(holder, key, place)
      walk((holder as Record<string | number, Json>)[key], place)
    }
  }
  walk(doc.file, '')
  for (const key of Object.keys(doc)) if (isBegunPlace(key)) look(doc, key, key)
  const over = writtenOver(A, doc, changes)
  if (!over) return found
  const whole = found.filter(({ path }) => path === WIRING) // where two chose one apart, for example
  const values = unlike([...whole, over].flatMap((each) => each.values))
  return [...found.filter((each) => !whole.includes(each) && !isPart(each.path, over)), { ...over, values }]
}

function unlike(values: readonly Written[]): readonly Written[] {
  return values.filter(({ value }, i) => values.findIndex((each) => same(each.value, value)) === i)
}

/** Whoever chooses a whole wiring has chosen all of it: parts of two do not make a third. */
function isPart(path: string, { path: whole }: Conflict): boolean {
  return whole === WIRING && path.startsWith(`${WIRING}/`)
}

/** What a choice was between; a change is made once, so this is read once. */
const before = new WeakMap<Change, readonly Conflict[]>()

/** Choices that were taken back where nobody has chosen or written since, and the place still holds what it held before them. */
function askedAgain(A: Automerge, doc: DoorDoc, changes: readonly Change[]): readonly Conflict[] {
  const back = changes.filter((each) => isChoice(each) && isTakenBack(each, changes))
  if (back.length === 0) return []
  const seenBy = ancestry(changes)
  const again: Conflict[] = []
  // by time and not as they lie in the document, which differs between devices
  for (const choice of back.sort((a, b) => b.at_ms - a.at_ms || (a.hash < b.hash ? -1 : 1))) {
    const [seen, later] = [seenBy(choice), descendants(changes, choice)]
    const way = wayOf(A, doc, choice)
    const settles = (each: Change) =>
      (later.has(each.hash) || (isChoice(each) && !seen.has(each.hash))) &&
      !isStep(each) &&
      ((isAlike(each, choice) && same(wayOf(A, doc, each), way)) || (isWhole(each) && way[0] === WIRING)) &&
      !isTakenBack(each, changes)
    const path = placeNow(doc, way)
    if (again.some((each) => each.path === path) || changes.some(settles)) continue
    const made = changes.filter(({ hash }) => seen.has(hash)) // of what came later the document as it was knows nothing
    const then = before.get(choice) ?? standing(A, asItWas(A, doc, choice.deps), made)
    before.set(choice, then)
    const conflict = then.find((each) => each.path === choice.deed.path)
    if (conflict && same(plain(valueAt(doc, path)), conflict.values[0]?.value)) again.push({ ...conflict, path })
  }
  return again
}

/** The place that a change names, with names in place of numbers: what stands before it in a list may go. */
function wayOf(A: Automerge, doc: DoorDoc, change: Change): readonly string[] {
  const path = change.deed.path ?? ''
  if (isBegunPlace(path)) return [path]
  if (!/\/\d/.test(path)) return path.split('/')
  const known = ways.get(change)
  if (known) return known
  let here: Json = A.view(doc, [...change.deps]).file
  const way = path.split('/').map((step) => {
    const entry = (here as Fields | undefined)?.[step]
    const called = Array.isArray(here) ? nameIn(entry) : undefined
    here = entry
    return called ?? step
  })
  ways.set(change, way)
  return way
}
const ways = new WeakMap<Change, readonly string[]>()

/** Whether two changes may name one place: that of a list says its number, which may differ. */
function isAlike({ deed: a }: Change, { deed: b }: Change): boolean {
  return a.path === b.path || a.path?.replace(/\/\d+/g, '/') === b.path?.replace(/\/\d+/g, '/')
}

function placeNow(doc: DoorDoc, way: readonly string[]): string {
  let here: Json = doc.file
  const steps = way.map((step) => {
    const at = Array.isArray(here) ? here.findIndex((each) => nameIn(each) === step) : -1
    const now = at < 0 ? step : String(at)
    here = (here as Fields | undefined)?.[now]
    return now
  })
  return steps.join('/')
}

/** A document of its own: what lies in a view, and in a clone of one, answers `getConflicts` as of now. */
function asItWas(A: Automerge, doc: DoorDoc, heads: Change['deps']): DoorDoc {
  return A.load(A.save(A.clone(A.view(doc, [...heads]))))
}

function valueAt(doc: DoorDoc, path: string): Json {
  if (isBegunPlace(path)) return doc[path]
  return path.split('/').reduce<Json>((here, step) => (here as Fields | undefined)?.[step], doc.file)
}

const isStep = ({ undoes, redoes }: Change) => undoes !== undefined || redoes !== undefined
const isWhole = ({ deed }: Change) => deed.path === WIRING && (deed.deed === 'mended' || deed.deed === 'chosen')
const isChoice = (change: Change) => change.deed.deed === 'chosen' && !isStep(change)

/** Whether a change was taken back and not brought back since: an undo takes an edit back, a redo an undo, the next undo that redo. */
function isTakenBack({ hash }: Change, changes: readonly Change[]): boolean {
  const next = changes.filter(({ undoes, redoes }) => undoes === hash || redoes === hash) // several where two tabs did so at a time
  return next.length > 0 && next.every((each) => !isTakenBack(each, changes))
}

/**
 * The file with lists that people began apart in one, each where somebody will choose: what one of them calls by its name is there until then. What stands
 * in the file keeps its number. Itself where there are none.
 */
export function withBoth(file: DoorFile, conflicts: readonly Pick<Conflict, 'path' | 'together'>[]): DoorFile {
  const both = conflicts.filter(({ path, together }) => together !== undefined && !isBegunPlace(path))
  if (both.length === 0) return file
  const made = plain(file) as Fields
  for (const { path, together } of both) {
    const way = path.split('/')
    const last = way.pop() ?? ''
    const holder = way.reduce<Json>((here, step) => (here as Fields | undefined)?.[step], made)
    if (typeof holder === 'object' && holder !== null) (holder as Fields)[last] = together
  }
  return made as unknown as DoorFile
}

const WIRING = 'wiring'

/**
 * A connection that was found is written over all cables at once. What somebody did to the wiring meanwhile, who had not seen that, would stand in lists
 * that are not shown any more, or be half there: both wirings are kept, and somebody chooses.
 */
function writtenOver(A: Automerge, doc: DoorDoc, changes: readonly Change[]): Conflict | undefined {
  const whole = changes.filter((each) => isWhole(each) && each.deed.deed === 'mended').sort(byTime)
  if (whole.length === 0) return undefined
  const seenBy = ancestry(changes)
  const choices = changes.filter((each) => isChoice(each) && each.deed.path === WIRING && !isTakenBack(each, changes))
  for (const over of whole.reverse()) {
    const [seen, later] = [seenBy(over), descendants(changes, over)]
    const settled = choices.filter(({ hash }) => later.has(hash)).map(seenBy)
    const rivals = changes.filter(
      ({ hash, deed: { path } }) =>
        (path === WIRING || path?.startsWith(`${WIRING}/`)) &&
        !(seen.has(hash) || hash === over.hash || later.has(hash)) &&
        !settled.some((known) => known.has(hash)),
    )
    const last = rivals.sort(byTime).at(-1)
    if (!last) continue
    const left = ({ hash, name, at_ms }: Change) => ({ value: plain(A.view(doc, [hash]).file.wiring), author: name, at_ms })
    const apart = [left(over), left(last)]
    const value = plain(doc.file.wiring)
    const shown = apart.find((each) => same(each.value, value)) ?? { ...left(over), value }
    const values = unlike([shown, left(last), left(over)])
    if (differ(values)) return { path: WIRING, values, together: undefined }
  }
  return undefined
}

/** Each after what it had seen, in one order on all devices: as they lie in the document differs. */
const byTime = (a: Change, b: Change) => a.startOp - b.startOp || (a.hash < b.hash ? -1 : 1)

/** All that was done by whoever had seen a change; each change stands after those that it rests on. */
function descendants(changes: readonly Change[], { hash: of }: Change): ReadonlySet<string> {
  const found = new Set<string>()
  for (const { hash, deps } of changes) if (deps.some((each) => each === of || found.has(each))) found.add(hash)
  return found
}

/** Everything that a change had seen. */
function ancestry(changes: readonly Change[]): (change: Change) => ReadonlySet<string> {
  const byHash = new Map(changes.map((change) => [change.hash, change]))
  const known = new Map<string, ReadonlySet<string>>()
  return ({ hash, deps }) => {
    const found = known.get(hash)
    if (found) return found
    const seen = new Set<string>()
    const open = [...deps]
    for (let next = open.pop(); next !== undefined; next = open.pop()) {
      if (seen.has(next)) continue
      seen.add(next)
      open.push(...(byHash.get(next)?.deps ?? []))
    }
    known.set(hash, seen)
    return seen
  }
}

/** Lists of mere names, of which one does not contradict another. */
const NAMES = /(^|\/)(joints|bodies|removeObstacles|none)$/

/** What holds several lists, each with a sense of its own: begun apart, its lists go together one by one. */
const LISTS = /^survey\/dangers$/

/** Lists of things of their own that were begun apart go into one list; undefined where they are not that. */
function together(values: readonly Json[], path: string): Json {
  if (LISTS.test(path)) return listsTogether(values as readonly Readonly<Record<string, Json>>[], path)
  if (NAMES.test(path) && values.every(isText)) return [...new Set(values.flat())]
  if (!values.every((value): value is Named => isNamed(value))) return undefined
  const all: Named[number][] = []
  for (const entry of values.flat()) {
    const twin = all.find((each) => nameIn(each) === nameIn(entry))
    if (twin === undefined) all.push(entry)
    else if (!same(twin, entry)) return undefined // one of the two things under one name would go
  }
  return all
}

function listsTogether(values: readonly Readonly<Record<string, Json>>[], path: string): Json {
  const made: Record<string, Json> = {}
  for (const key of new Set(values.flatMap((value) => Object.keys(value)))) {
    const there = values.map((value) => value[key]).filter((value) => value !== undefined)
    made[key] = there.every((value) => same(value, there[0])) ? there[0] : together(there, `${path}/${key}`)
    if (made[key] === undefined) return undefined
  }
  return made
}

function isText(value: Json): value is readonly string[] {
  return Array.isArray(value) && value.every((each) => typeof each === 'string')
}

function differ(values: readonly Written[]): boolean {
  return values.some(({ value }) => !same(value, values[0]?.value))
}

/** `17@actor`: the change of that actor that holds its 17th operation. */
function writerOf(operation: string, changes: readonly Change[]): { author: string; at_ms: number } {
  const [counter, actor] = operation.split('@')
  const change = changes.find((each) => each.actor === actor && each.startOp <= Number(counter) && Number(counter) <= each.maxOp)
  return { author: change?.name ?? '', at_ms: change?.at_ms ?? 0 }
}

function plain(value: Json): Json {
  return value === undefined ? undefined : JSON.parse(JSON.stringify(value))
}
