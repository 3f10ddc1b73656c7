import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** The same numbers from 0 to 1 for the same seed (mulberry32, in the public domain). */
export function numbersFrom(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

const values = [
  '0',
  '-1',
  '1e9',
  '1e308',
  '-0.0001',
  '1e999',
  'null',
  'true',
  '""',
  '"open"',
  '[]',
  '{}',
  '"x"',
  '999999999999',
  '0.5',
  '360',
]
const bytes = ['{', '}', '[', ']', '"', ',', ':', '\\', '\u0000', '\n', '9', '-', 'e', 'é', '\ud800']

/** A door with fewer beams and placements, judged in a moment, so that what takes long is the mutation's doing. */
function coarse(text: string): string {
  const door: { zones?: { pitch_mm?: number }[]; sensors?: { planes?: { beamCount?: number }[] }[] } = JSON.parse(text)
  for (const zone of door.zones ?? []) zone.pitch_mm = 120
  for (const plane of (door.sensors ?? []).flatMap(({ planes = [] }) => planes)) {
    if (plane.beamCount !== undefined) plane.beamCount = Math.ceil(plane.beamCount / 10)
  }
  return JSON.stringify(door, undefined, 2)
}

/** Demonstration doors with one to four changes each: in a byte, in a value, with a piece left out, repeated, or from another door. */
export function mutatedDoors(count: number, seed: number): readonly string[] {
  const folder = join(import.meta.dirname, '..', 'demo')
  const doors = readdirSync(folder).map((name) => coarse(readFileSync(join(folder, name), 'utf8')))
  const next = numbersFrom(seed)
  const below = (n: number): number => Math.floor(next() * n)
  const oneOf = <T>(list: readonly T[], otherwise: T): T => list[below(list.length)] ?? otherwise

  const inBytes: readonly ((door: string) => string)[] = [
    (door) => put(door, below(door.length), 1, oneOf(bytes, '')),
    (door) => put(door, below(door.length), below(40), ''),
    (door) => put(door, below(door.length), 0, door.slice(below(door.length)).slice(0, below(200))),
    (door) => put(door, below(door.length), 0, oneOf(doors, '').slice(below(2000)).slice(0, below(100))),
  ]
  const inValues: readonly ((door: string) => string)[] = [
    (door) => withOneValue(door, () => oneOf(values, '0'), below),
    (door) => withOneValue(door, (old) => String(Number(old) * oneOf([-1, 0, 0.1, 0.5, 0.9, 1.01, 1.5, 10, 1e6], 1)), below),
    (door) => withOneValue(door, (old) => String(Number(old) * (0.8 + 0.4 * next())), below),
  ]
  return Array.from({ length: count }, () => {
    const changes = next() < 0.3 ? inBytes : inValues
    let door = oneOf(doors, '')
    for (let i = below(4); i >= 0; i--) door = oneOf(changes, String)(door)
    return door
  })
}

function put(text: string, at: number, without: number, inserted: string): string {
  return text.slice(0, at) + inserted + text.slice(at + without)
}

/** Changes one number, wherever it stands: most of these files are still JSON. */
function withOneValue(door: string, changed: (old: string) => string, below: (n: number) => number): string {
  const numbers = [...door.matchAll(/(?<=[\s:[,])-?\d+(?:\.\d+)?(?=[\s,\]}])/g)]
  const chosen = numbers[below(numbers.length)]
  return chosen ? put(door, chosen.index, chosen[0].length, changed(chosen[0])) : door
}
