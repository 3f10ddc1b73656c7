import type { Door } from '@sillsight/engine'
import { called, needWords, type Reader } from '@sillsight/report'
import { type Kind, shownFigure } from '../entry/kinds.ts'
import { same } from '../store/take-back.ts'
import { isNamed, nameIn } from '../store/twins.ts'
import type { Facts } from '../words/en-facts.ts'

/** One of several things that people wrote apart, in words. */
export interface Told {
  /** Enough to know it from all others. */
  readonly short: string
  /** Everything in which it differs from any other. */
  readonly all: readonly string[]
}

/** Who is spoken to. */
export interface Speech {
  readonly words: Facts['differing']
  readonly reader: Reader
  /** What the site calls a thing of the door that others name by its id; undefined where it is none. */
  readonly nameOf: (id: string) => string | undefined
}

type Json = unknown
/** One figure or word within a thing: by which way one gets there, and in which thing of a list it stands. */
interface Leaf {
  readonly value: Json
  readonly field: string
  readonly way: readonly string[]
  /** The things of lists that it is part of, the outermost first. */
  readonly within: readonly Thing[]
}
interface Thing {
  readonly key: string
  readonly label: string
  /** How long the way to it is. */
  readonly depth: number
}
type Leaves = ReadonlyMap<string, Leaf>

/** So many differences are said at once. */
const FEW = 4
const LONGEST_LIST = 12

/**
 * Says of each value in what it differs from the others. No two that differ are said alike, neither short nor whole.
 *
 * @param field the last step of the place where they stand, which says what a bare figure counts
 */
export function toldApart(values: readonly Json[], field: string, speech: Speech): readonly Told[] {
  const sides = values.map((value) => leavesOf(value, field, namesIn(values), speech))
  const keys = [...new Set(sides.flatMap((side) => [...side.keys()]))]
  const kinds = (key: string) =>
    sides.filter((side, i) => sides.findIndex((each) => same(each.get(key)?.value, side.get(key)?.value)) === i)
  const differing = keys.filter((key) => kinds(key).length > 1).sort((a, b) => kinds(b).length - kinds(a).length)
  // what stands in another order alone is counted
  const told = sides.map((side) => phrases(side, sides, differing, speech))
  const short = [FEW, Number.POSITIVE_INFINITY]
    .flatMap((most) => (['brief', 'whole'] as const).map((how) => told.map((each) => brought(each, how, most, speech))))
    .find((texts) => values.every((value, i) => values.every((each, j) => same(each, value) || texts[i] !== texts[j])))
  return told.map((each, i) => ({
    short: short?.[i] ?? `${brought(each, 'whole', Number.POSITIVE_INFINITY, speech)} (${i + 1})`,
    all: each.map(({ whole }) => whole),
  }))
}

/** What people call a place that they wrote apart. */
export function placeSaid(door: Door | undefined, place: string, { words, reader }: Pick<Speech, 'words' | 'reader'>): string {
  const isOfFile = /^confirmations\/\d/.test(place) // a need names there what is confirmed, not its number in a list
  const said = isOfFile || !door ? undefined : needWords(door, place, reader)
  if (said !== undefined && said !== place) return said
  return words.fields[place.split('/').findLast((step) => !/^\d+$/.test(step)) ?? ''] ?? place
}

interface Phrase {
  readonly brief: string
  readonly whole: string
}

function brought(all: readonly Phrase[], how: keyof Phrase, most: number, { words }: Speech): string {
  const said = all.slice(0, most).map((phrase) => phrase[how])
  return [...said, ...(all.length > most ? [words.more(all.length - most)] : [])].join('; ') || words.nothing
}

/** What one side says where it differs: first what it has, then what others have and it has not. */
function phrases(side: Leaves, sides: readonly Leaves[], differing: readonly string[], speech: Speech): readonly Phrase[] {
  const { words } = speech
  const [own, lacking, absent]: [Phrase[], Phrase[], Phrase[]] = [[], [], []]
  const told = new Set<string>()
  const rivalsAt = (key: string) => sides.map((each) => each.get(key)?.value).filter((value) => value !== undefined)
  for (const key of differing) {
    const here = side.get(key)
    const leaf = here ?? sides.map((each) => each.get(key)).find((each) => each !== undefined)
    if (!leaf) continue
    const added = leaf.within.find((thing) => sides.some((each) => !has(each, thing)))
    if (added) {
      if (told.has(added.key)) continue
      told.add(added.key)
      const inside = partsOf(side, added).map(([part, each]) => sayLeaf(each, each.way.slice(added.depth), rivalsAt(part), speech))
      if (!has(side, added)) absent.push(once(words.without(added.label)))
      else own.push({ brief: added.label, whole: inside.length === 0 ? added.label : `${added.label} (${inside.join(', ')})` })
    } else if (here) {
      own.push(once(sayLeaf(here, here.way, rivalsAt(key), speech)))
    } else lacking.push(once(words.unsaid(leaf.way.join(', '))))
  }
  const found = [...own, ...lacking]
  return found.length > 0 ? found : absent
}

function has(side: Leaves, { key }: Thing): boolean {
  return [...side.values()].some(({ within }) => within.some((each) => each.key === key))
}

/** What is said of a thing beside what it is called. */
function partsOf(side: Leaves, { key, depth }: Thing): readonly (readonly [string, Leaf])[] {
  const isCall = ({ field, way }: Leaf) => way.length === depth + 1 && (field === 'id' || field === 'name')
  return [...side].filter(([, leaf]) => leaf.within.some((each) => each.key === key) && leaf.way.length > depth && !isCall(leaf))
}

function once(text: string): Phrase {
  return { brief: text, whole: text }
}

function sayLeaf({ value, field }: Leaf, way: readonly string[], rivals: readonly Json[], speech: Speech): string {
  const shown = showApart(value, field, rivals, speech)
  return way.length === 0 ? shown : `${way.join(', ')}: ${shown}`
}

/** As screens show it; where that is the same for another value, to the last digit and letter. */
function showApart(value: Json, field: string, rivals: readonly Json[], speech: Speech): string {
  const shown = show(value, field, speech)
  const hidden = rivals.some((rival) => !same(rival, value) && show(rival, field, speech) === shown)
  return hidden ? `${shown} (${exactly(value, speech)})` : shown
}

function exactly(value: Json, { reader }: Speech): string {
  if (typeof value === 'number') return String(value).replace('.', reader.language.decimal)
  return JSON.stringify(value).replace(/[^ -~]/g, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`)
}

const KINDS: readonly (readonly [ending: string, kind: Kind])[] = [
  ['_m_per_s3', 'jerk'],
  ['_m_per_s2', 'acceleration'],
  ['_m_per_s', 'speed'],
  ['_mm2', 'area'],
  ['_mm', 'length'],
  ['_m3', 'volume'],
  ['_m', 'metres'],
  ['_s', 'seconds'],
  ['_deg', 'angle'],
  ['_percent', 'percent'],
  ['_kg', 'mass'],
  ['_degC', 'temperature'],
  ['_N', 'force'],
  ['_V', 'volt'],
  ['_A', 'ampere'],
  ['_ohm', 'ohm'],
]
/** Lengths in spite of their names: readings, which may also be texts as they were read off. */
const LENGTHS = /^(reading|diagonals|widths|heights)$/

/** Fields in which people write, or name things, freely: no word of theirs is one of the file's own. */
const FREE =
  /^(name|note|at|by|calibratedUntil|clause|colour|common|document|edition|energised|expects|file|from|id|instrument|joints|learnedIn|minus|needs|obstacle|on|output|place|planes|plus|released|removeObstacles|sensor|sha256|terminal|to|use|value|zone|bodies|reading|diagonals|a|b)$/

function show(value: Json, field: string, speech: Speech): string {
  const { words, reader, nameOf } = speech
  if (Array.isArray(value)) return value.length === 0 ? words.nothing : value.map((each) => showInner(each, field, speech)).join(', ')
  if (typeof value === 'number') {
    const kind = LENGTHS.test(field) ? 'length' : KINDS.find(([ending]) => field.endsWith(ending))?.[1]
    const unit = field.endsWith('_y') ? ` ${reader.language.units.years}` : ''
    return shownFigure(value, kind ?? 'share', reader) + unit
  }
  if (typeof value === 'string') {
    const fixed = FREE.test(field) ? undefined : (words.said[`${field} ${value}`] ?? words.said[value])
    return fixed ?? nameOf(value) ?? called(value, reader)
  }
  return words.nothing
}

function showInner(value: Json, field: string, speech: Speech): string {
  return Array.isArray(value) ? `(${show(value, field, speech)})` : show(value, field, speech)
}

/** Everything within a value, by where it stands; a thing with a name stands at its name, wherever in the list that is. */
function leavesOf(whole: Json, rootField: string, alike: ReadonlySet<string>, speech: Speech): Leaves {
  const found = new Map<string, Leaf>()
  const walk = (value: Json, { field, key, way, within }: Omit<Leaf, 'value'> & { readonly key: string }): void => {
    if (Array.isArray(value) && value.some(isThing)) {
      const named = isNamed(value)
      const met = new Map<string, number>()
      for (const [i, each] of value.entries()) {
        const name = named ? (nameIn(each) ?? '') : String(i)
        const again = (met.get(name) ?? 0) + 1
        met.set(name, again)
        const at = `${key}/${named ? '=' : ''}${name}${again > 1 ? `/${again}` : ''}`
        const label = named ? calledIn(each, alike, speech) : String(i + 1)
        const onWay = way.length === 0 ? [label] : [...way.slice(0, -1), `${speech.words.one[field] ?? way.at(-1)} ${label}`]
        walk(each, { field, key: at, way: onWay, within: [...within, { key: at, label: onWay.join(', '), depth: onWay.length }] })
      }
      return
    }
    if (Array.isArray(value) && value.length > LONGEST_LIST && typeof value[0] === 'number') {
      for (const [i, each] of value.entries())
        found.set(`${key}/${i}`, { value: each, field, within, way: [...way.slice(0, -1), `${way.at(-1) ?? ''} ${i + 1}`.trim()] })
      return
    }
    if (isThing(value) && Object.keys(value).length > 0) {
      for (const [name, each] of Object.entries(value))
        walk(each, { field: name, key: `${key}/${name}`, way: [...way, labelOf(name, speech)], within })
      return
    }
    found.set(key, { value, field, way, within })
  }
  walk(whole, { field: rootField, key: '', way: [], within: [] })
  return found
}

function labelOf(field: string, { words }: Speech): string {
  return words.fields[field] ?? field
}

/** Names that several different things have. */
function namesIn(values: readonly Json[]): ReadonlySet<string> {
  const byName = new Map<string, Set<string>>()
  const walk = (value: Json): void => {
    if (typeof value !== 'object' || value === null) return
    const { name } = value as { readonly name?: unknown }
    const id = nameIn(value)
    if (typeof name === 'string' && id !== undefined) byName.set(name, (byName.get(name) ?? new Set()).add(id))
    for (const each of Object.values(value)) walk(each)
  }
  walk(values)
  return new Set([...byName].filter(([, ids]) => ids.size > 1).map(([name]) => name))
}

/** A thing by the name that the site gave it, or by its id; by both where others have that name. */
function calledIn(thing: Json, alike: ReadonlySet<string>, { nameOf, reader }: Speech): string {
  const { name } = thing as { readonly name?: unknown }
  const id = nameIn(thing) ?? ''
  if (typeof name !== 'string') return nameOf(id) ?? called(id, reader)
  return alike.has(name) ? `${called(name, reader)} (${id})` : called(name, reader)
}

function isThing(value: Json): value is Readonly<Record<string, Json>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
