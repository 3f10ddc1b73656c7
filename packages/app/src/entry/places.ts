import type { Draft } from '../store/contract.ts'

/** A place in the door file as `survey/opening/width_mm`: names and, in lists, numbers. */
type Container = Record<string, unknown> | unknown[]

/** The value at a place; undefined where the way to it does not exist. */
export function valueAt(file: unknown, path: string): unknown {
  return steps(path).reduce<unknown>((value, step) => (isContainer(value) ? value[step as keyof typeof value] : undefined), file)
}

/** Puts a value at a place and makes the objects on the way; undefined takes it away. Lists on the way must exist. */
export function putAt(draft: Draft, path: string, value: unknown): void {
  const way = steps(path)
  const last = way.pop()
  if (last === undefined) throw new Error('path must name a place, got an empty one')
  let here: Container = draft
  for (const step of way) {
    const next: unknown = here[step as keyof typeof here]
    if (isContainer(next)) here = next
    else {
      const made: Container = {}
      ;(here as Record<string, unknown>)[step] = made
      here = (here as Record<string, unknown>)[step] as Container // a mergeable document hands back its own copy
    }
  }
  if (value === undefined) delete (here as Record<string, unknown>)[last]
  else (here as Record<string, unknown>)[last] = value
}

function steps(path: string): string[] {
  return path.split('/')
}

function isContainer(value: unknown): value is Container {
  return typeof value === 'object' && value !== null
}
