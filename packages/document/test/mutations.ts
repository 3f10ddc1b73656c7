import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { exampleFile, SIX_VALUES } from './example-files.ts'

type Json = unknown
type Holder = Record<string, Json>

const demoFolder = join(import.meta.dirname, '../../cli/demo')

/** Door files that are in order. */
const GOOD_FILES: readonly string[] = [
  JSON.stringify(exampleFile()),
  JSON.stringify(SIX_VALUES),
  ...readdirSync(demoFolder)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .map((name) => readFileSync(join(demoFolder, name), 'utf8')),
]

/** What mutations begin with: one in sixteen as it is. */
const SEEDS: readonly string[] = [...Array.from({ length: 15 }, () => GOOD_FILES.map(coarse)).flat(), ...GOOD_FILES]

/** The same door with a coarse grid, few beams, and of each zone a piece: the exact answer of a whole one takes its time. */
function coarse(text: string): string {
  const file = JSON.parse(text) as CoarseDoor
  if (file.zones === undefined) file.survey.opening.width_mm = 700 // its zone is made to fit
  for (const zone of file.zones ?? []) {
    zone.pitch_mm = 170
    zone.xMax_mm = Math.min(zone.xMax_mm, zone.xMin_mm + 300)
    zone.yMax_mm = Math.min(zone.yMax_mm, zone.yMin_mm + 150)
  }
  for (const { planes = [] } of file.sensors ?? [])
    for (const plane of planes) if (plane.beamCount !== undefined) plane.beamCount = Math.ceil(plane.beamCount / 9)
  return JSON.stringify(file)
}

interface CoarseDoor {
  readonly survey: { readonly opening: { width_mm: number } }
  readonly zones?: readonly { pitch_mm?: number; readonly xMin_mm: number; xMax_mm: number; readonly yMin_mm: number; yMax_mm: number }[]
  readonly sensors?: readonly { readonly planes?: readonly { beamCount?: number }[] }[]
}

/** Values that programs trip over. */
const NASTY: readonly Json[] = [
  null,
  true,
  false,
  0,
  -0,
  1,
  -1,
  0.1,
  1e-300,
  5e-324,
  -1e-9,
  1e9,
  1e308,
  -1e308,
  2 ** 53,
  359.999999,
  360,
  89.9999,
  4096,
  500_000,
  -500_000,
  '',
  'none',
  'open',
  'clear',
  'for-ever',
  'box',
  'post',
  'scanner',
  'segments',
  'downward-row',
  'a',
  '__proto__',
  'constructor',
  '\u0000',
  '\ud800',
  '94 1/2 in',
  [],
  {},
  [[]],
  [0],
  [0, 0],
  [0, 0, 0],
  [[0, 0]],
  [1, 1, 1e5],
  { id: 'x' },
  { length: 1e9 },
]

/** A good file after one to four random changes to its content or its text; always the same for one seed. */
export function mutatedFile(seed: number): string {
  const dice = diceOf(seed)
  const good = dice.pick(SEEDS)
  const other = dice.pick(GOOD_FILES)
  let text = good
  if (dice.below(4) > 0) {
    const file = JSON.parse(good) as Json
    const times = 1 + dice.below(4)
    for (let i = 0; i < times; i++) changeContent(file, JSON.parse(other) as Json, dice)
    text = JSON.stringify(file)
  }
  return dice.below(4) === 0 ? changedText(text, dice) : text
}

function changeContent(file: Json, other: Json, dice: Dice): void {
  const places = placesOf(file)
  const { holder, key } = dice.pick(places)
  const from = dice.pick(placesOf(other))
  switch (dice.below(9)) {
    case 0:
      delete holder[key]
      return
    case 1:
      holder[key] = from.holder[from.key]
      return
    case 2:
      return changeNumber(dice.pick(places.filter((place) => typeof place.holder[place.key] === 'number')), dice)
    case 3:
      return repeat(dice.pick(places.filter((place) => Array.isArray(place.holder[place.key]))), dice)
    case 4:
      holder[`${key}${dice.pick(['x', '_mm', '__proto__', 'constructor'])}`] = holder[key]
      return
    case 5: {
      const second = dice.pick(places)
      const [held, heldThere] = [holder[key], second.holder[second.key]]
      if (holds(held, second.holder) || holds(heldThere, holder)) return
      holder[key] = heldThere
      second.holder[second.key] = held
      return
    }
    case 6:
      return changeNumber(dice.pick(places.filter((place) => typeof place.holder[place.key] === 'number')), dice)
    default:
      holder[key] = structuredClone(dice.pick(NASTY)) // a later change must not change what the next seed gets
  }
}

function changeNumber(place: Place | undefined, dice: Dice): void {
  if (place === undefined) return
  const value = place.holder[place.key] as number
  place.holder[place.key] = dice.pick([
    -value,
    value * 10,
    value * 1000,
    value / 10,
    value / 1000,
    value + 1,
    value - 1,
    0,
    value * 1e-9,
    Math.round(value),
    value + 1e-9,
  ])
}

/** A list many times as long; where its items have ids, each with one of its own, so that more than the first check sees it. */
function repeat(place: Place | undefined, dice: Dice): void {
  const list = place?.holder[place.key]
  if (place === undefined || !Array.isArray(list) || list.length === 0) return
  const times = dice.pick([2, 10, 40, 300])
  place.holder[place.key] = Array.from({ length: times }, (_, i) => {
    const item = structuredClone(list[i % list.length]) as Json
    if (typeof item === 'object' && item !== null && 'id' in item && i >= list.length) (item as Holder)['id'] = `copy-${i}`
    return item
  })
}

function changedText(text: string, dice: Dice): string {
  const at = dice.below(text.length + 1)
  const to = at + dice.below(Math.min(40, text.length - at + 1))
  switch (dice.below(6)) {
    case 0:
      return text.slice(0, at)
    case 1:
      return text.slice(0, at) + text.slice(to)
    case 2:
      return (
        text.slice(0, at) +
        dice.pick(['{', '}', '[', ']', ',', ':', '"', '\\', '-', '1e999', 'NaN', '//', '\u0000', '\ud800', '\uFEFF']) +
        text.slice(at)
      )
    case 3:
      return text.slice(0, to) + text.slice(at)
    case 4:
      return text.replace(/"([a-zA-Z_]+)"/, (whole) => `${whole}:1,${whole}`)
    default:
      return text.slice(0, at) + dice.pick(['[', '{"a":']).repeat(5000) + text.slice(at)
  }
}

interface Place {
  readonly holder: Holder
  readonly key: string
}

function placesOf(value: Json, found: Place[] = []): readonly Place[] {
  if (typeof value !== 'object' || value === null) return found
  for (const key of Object.keys(value)) {
    found.push({ holder: value as Holder, key })
    placesOf((value as Holder)[key], found)
  }
  return found
}

/** The value is the other one or has it somewhere inside: to put it in there would close a ring. */
function holds(value: Json, other: Json): boolean {
  return value === other || placesOf(value).some(({ holder, key }) => holder[key] === other)
}

interface Dice {
  readonly below: (end: number) => number
  readonly pick: <T>(choices: readonly T[]) => T
}

/** Random whole numbers by a linear congruence (Numerical Recipes): good enough to wander, and the same everywhere. */
function diceOf(seed: number): Dice {
  let state = (seed * 2654435761) >>> 0
  const below = (end: number) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return Math.floor((state / 4294967296) * end)
  }
  return { below, pick: (choices) => choices[below(choices.length)] as (typeof choices)[number] }
}
