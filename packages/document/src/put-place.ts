/** Puts a value at `a/0/b` of plain JSON and makes the objects on the way; undefined takes it away. Lists on the way must exist. */
export function putPlace(root: Record<string, unknown>, path: string, value: unknown): void {
  const way = path.split('/')
  const last = way.pop()
  if (last === undefined || last === '') throw new Error('path must name a place, got an empty one')
  let here = root
  for (const step of way) {
    if (typeof here[step] !== 'object' || here[step] === null) here[step] = {}
    here = here[step] as Record<string, unknown> // read again: a mergeable document hands back its own copy
  }
  if (value === undefined) delete here[last]
  else here[last] = value
}
