import { sha256 } from '@sillsight/document'

const LETTERS = 'bcdfghjkmnpqrstvwxz' // no vowels: three of them are no word

/**
 * `post-1kqt`, `post-2bzd`, ...: the first number that nothing has yet, and three letters by chance. Two devices that each add a post before they
 * hear of each other would both make `post-1`, and a door file with one id twice is refused everywhere.
 *
 * @param what where two who each make such a thing mean the same one: then the letters come from it, and the two are one when they meet
 */
export function freeId(stem: string, taken: readonly (string | undefined)[], what?: unknown): string {
  return `${stem}-${freeNumber([stem], taken, what)}`
}

/** The end of such an id for things that are numbered together, such as an input and its cable: the first number that neither has yet, and letters. */
export function freeNumber(stems: readonly string[], taken: readonly (string | undefined)[], what?: unknown): string {
  const numbers = new Set(taken.flatMap((id) => stems.flatMap((stem) => (id?.startsWith(stem) ? numberIn(id.slice(stem.length)) : []))))
  let n = 1
  while (numbers.has(n)) n++
  const chances = what === undefined ? [...crypto.getRandomValues(new Uint32Array(3))] : chancesOf(JSON.stringify(what))
  return `${n}${chances.map((chance) => LETTERS[chance % LETTERS.length]).join('')}`
}

function chancesOf(text: string): readonly number[] {
  const hash = sha256(text)
  return [0, 8, 16].map((at) => Number.parseInt(hash.slice(at, at + 8), 16))
}

function numberIn(end: string): readonly number[] {
  const [, digits] = /^-?(\d+)/.exec(end) ?? []
  return digits === undefined ? [] : [Number(digits)]
}
