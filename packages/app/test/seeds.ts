/**
 * The numbers that a long hunt goes through: all of them, or with `SEEDS=61-200` those alone, so that a hunt can be run in pieces.
 *
 * @throws if what SEEDS says is no range, or holds none of them
 */
export function seedsOf(first: number, last: number): readonly number[] {
  const asked = process.env['SEEDS']
  const range = asked === undefined ? [first, last] : (/^(\d+)-(\d+)$/.exec(asked)?.slice(1).map(Number) ?? [])
  const seeds = Array.from({ length: last - first + 1 }, (_, i) => first + i).filter(
    (seed) => seed >= (range[0] ?? last) && seed <= (range[1] ?? first),
  )
  if (seeds.length === 0) throw new Error(`SEEDS must be a range within ${first}-${last}, got ${asked}`)
  return seeds
}
