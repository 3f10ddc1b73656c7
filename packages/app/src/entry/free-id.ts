const LETTERS = 'bcdfghjkmnpqrstvwxz' // no vowels: three of them are no word

/**
 * `post-1kqt`, `post-2bzd`, ...: the first number that nothing has yet, and three letters by chance. Two devices that each add a post before they
 * hear of each other would both make `post-1`, and a door file with one id twice is refused everywhere.
 */
export function freeId(stem: string, taken: readonly (string | undefined)[]): string {
  return `${stem}-${freeNumber([stem], taken)}`
}

/** The end of such an id for things that are numbered together, such as an input and its cable: the first number that neither has yet, and letters. */
export function freeNumber(stems: readonly string[], taken: readonly (string | undefined)[]): string {
  const numbers = new Set(taken.flatMap((id) => stems.flatMap((stem) => (id?.startsWith(stem) ? numberIn(id.slice(stem.length)) : []))))
  let n = 1
  while (numbers.has(n)) n++
  const tail = Array.from(crypto.getRandomValues(new Uint32Array(3)), (chance) => LETTERS[chance % LETTERS.length])
  return `${n}${tail.join('')}`
}

function numberIn(end: string): readonly number[] {
  const [, digits] = /^-?(\d+)/.exec(end) ?? []
  return digits === undefined ? [] : [Number(digits)]
}
