/**
 * Places along a line moved apart as little as it takes: no two nearer than `apart`, all between two ends, in the order in which they come. Neighbours that
 * push each other keep to the middle of where they wanted to be.
 *
 * @param wanted rising
 */
export function spread(wanted: readonly number[], apart: number, from: number, to: number): readonly number[] {
  // a group of places that touch: its first place, and how many
  const groups: { first: number; count: number; sum: number }[] = []
  for (const place of wanted) {
    groups.push({ first: place, count: 1, sum: place })
    for (let last = groups[groups.length - 1], before = groups[groups.length - 2]; last && before; ) {
      if (before.first + before.count * apart <= last.first) break
      groups.pop()
      // each place of the later group wanted to be so much farther than the group's own order puts it
      before.sum += last.sum - last.count * before.count * apart
      before.count += last.count
      before.first = before.sum / before.count
      last = before
      before = groups[groups.length - 2]
    }
  }
  const places = groups.flatMap(({ first, count }) => Array.from({ length: count }, (_, i) => first + i * apart))
  let least = from
  const pushed = places.map((place) => {
    const pushedTo = Math.max(place, least)
    least = pushedTo + apart
    return pushedTo
  })
  for (let i = pushed.length - 1, most = to; i >= 0; i--, most -= apart) pushed[i] = Math.min(pushed[i] ?? most, most)
  return pushed
}
