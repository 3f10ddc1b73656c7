/**
 * Takes one person's edit back without touching what others did since: every place that the edit changed gets its earlier value again,
 * unless it holds something else by now, or that as well. Plain JSON, whoever stores it.
 */

type Json = unknown
type Fields = Record<string, Json>
/** Whether a place holds another value besides the one that is shown. */
type HoldsAnother = (holder: Fields, key: string, shown: Json) => boolean

/**
 * @param now changed in place
 * @param before as it was before the edit
 * @param after as the edit left it
 */
export function takeBack(now: Fields, before: Fields, after: Fields, holdsAnother: HoldsAnother = () => false): void {
  for (const key of new Set([...Object.keys(before), ...Object.keys(after)])) {
    const [was, became] = [before[key], after[key]]
    if (same(was, became)) continue
    const current = now[key]
    if (isFields(was) && isFields(became) && isFields(current)) takeBack(current, was, became, holdsAnother)
    else if (isNamed(was) && isNamed(became) && isNamed(current)) takeBackNamed(current, was, became, holdsAnother)
    else if (same(current, became) && !holdsAnother(now, key, became)) {
      if (was === undefined) delete now[key]
      else now[key] = copied(was)
    }
  }
}

/** A list whose entries have ids: what was added goes, what was taken away comes back where it was, what was changed is taken back inside. */
function takeBackNamed(now: Named, before: Named, after: Named, holdsAnother: HoldsAnother): void {
  const taken = new Set<string>() // of twins one: the other is somebody else's
  for (let i = now.length - 1; i >= 0; i--) {
    const current = now[i]
    const id = current?.id
    const became = after.find((each) => each.id === id)
    const was = before.find((each) => each.id === id)
    if (!became || !current) continue
    if (was) takeBack(current, was, became, holdsAnother)
    else if (same(current, became) && !taken.has(current.id)) {
      taken.add(current.id)
      now.splice(i, 1)
    }
  }
  for (const [i, was] of before.entries()) {
    const gone = after.every((each) => each.id !== was.id) && now.every((each) => each.id !== was.id)
    if (gone) now.splice(Math.min(i, now.length), 0, copied(was) as Named[number])
  }
}

type Named = (Fields & { readonly id: string })[]

/** A list of entries that all have an id of their own; an empty list is one as well. */
function isNamed(value: Json): value is Named {
  return Array.isArray(value) && value.every((each) => isFields(each) && typeof each['id'] === 'string')
}

function isFields(value: Json): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

/** Whether two pieces of JSON say the same, whatever the order of their fields. */
export function same(a: Json, b: Json): boolean {
  if (Object.is(a, b)) return true
  if (Array.isArray(a)) return Array.isArray(b) && a.length === b.length && a.every((each, i) => same(each, b[i]))
  if (!isFields(a) || !isFields(b)) return false
  const keys = Object.keys(a)
  return keys.length === Object.keys(b).length && keys.every((key) => Object.hasOwn(b, key) && same(a[key], b[key]))
}

export function copied<T>(value: T): T {
  return JSON.parse(JSON.stringify(value))
}
