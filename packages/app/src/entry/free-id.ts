const LETTERS = 'bcdfghjkmnpqrstvwxz' // no vowels: three of them are no word

/**
 * `post-1kqt`, `post-2bzd`, ...: the first number that nothing has yet, and three letters by chance. Two devices that each add a post before they
 * hear of each other would both make `post-1`, and a door file with one id twice is refused everywhere.
 */
export function freeId(stem: string, taken: readonly (string | undefined)[]): string {
  const numbers = new Set(taken.map((id) => Number(id?.startsWith(`${stem}-`) ? /^\d+/.exec(id.slice(stem.length + 1))?.[0] : Number.NaN)))
  let n = 1
  while (numbers.has(n)) n++
  const tail = Array.from(crypto.getRandomValues(new Uint32Array(3)), (chance) => LETTERS[chance % LETTERS.length])
  return `${stem}-${n}${tail.join('')}`
}
