/** Random numbers that are the same for one seed on every platform: mulberry32, common practice. */
export interface Dice {
  readonly next: () => number // from 0 up to 1, not with it
  readonly between: (low: number, high: number) => number
  /** A whole number, both ends included. */
  readonly whole: (low: number, high: number) => number
  readonly chance: (share: number) => boolean
  readonly pick: <T>(from: readonly T[]) => T
}

export function diceOf(seed: number): Dice {
  let state = seed >>> 0
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), state | 1)
    t = (t + Math.imul(t ^ (t >>> 7), t | 61)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
  const whole = (low: number, high: number) => low + Math.floor(next() * (high - low + 1))
  return {
    next,
    between: (low, high) => low + next() * (high - low),
    whole,
    chance: (share) => next() < share,
    pick: (from) => {
      if (from.length === 0) throw new Error('from must not be empty, got nothing to pick')
      return from[whole(0, from.length - 1)] as (typeof from)[number]
    },
  }
}
