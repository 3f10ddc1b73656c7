/** Seeded numbers for random cases: the same seed gives the same case on every engine. */
export interface RandomNumbers {
  /** From low (included) to high. */
  readonly between: (low: number, high: number) => number
  /** A whole number from low to high, both included. */
  readonly whole: (low: number, high: number) => number
  readonly chance: (probability: number) => boolean
  readonly pick: <T>(choices: readonly [T, ...T[]]) => T
}

/** The generator xoshiro128** of Blackman and Vigna (2018) in 32-bit integers, its state filled by splitmix32. */
export function randomNumbers(seed: number): RandomNumbers {
  const state = seededState(seed)
  const next = () => nextWord(state) / 4294967296
  const whole = (low: number, high: number) => low + Math.floor(next() * (high - low + 1))
  return {
    between: (low, high) => low + next() * (high - low),
    whole,
    chance: (probability) => next() < probability,
    pick: (choices) => choices[whole(0, choices.length - 1)] ?? choices[0],
  }
}

function seededState(seed: number): Uint32Array {
  let word = seed >>> 0
  return Uint32Array.from({ length: 4 }, () => {
    word = (word + 0x9e3779b9) >>> 0
    let mixed = Math.imul(word ^ (word >>> 16), 0x21f0aaad)
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97)
    return mixed ^ (mixed >>> 15)
  })
}

function nextWord(state: Uint32Array): number {
  const [a = 0, b = 0, c = 0, d = 0] = state
  const scrambled = Math.imul(turned(Math.imul(b, 5), 7), 9) >>> 0
  const mixedC = c ^ a
  const mixedD = d ^ b
  state.set([a ^ mixedD, b ^ mixedC, mixedC ^ (b << 9), turned(mixedD, 11)])
  return scrambled
}

function turned(word: number, by: number): number {
  return (word << by) | (word >>> (32 - by))
}
