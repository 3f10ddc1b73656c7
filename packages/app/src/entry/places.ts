import { putPlace } from '@sillsight/document'
import type { Draft } from '../store/contract.ts'

/** A place in the door file as `survey/opening/width_mm`: names and, in lists, numbers. */
type Container = Record<string, unknown> | unknown[]

/** The value at a place; undefined where the way to it does not exist. */
export function valueAt(file: unknown, path: string): unknown {
  return steps(path).reduce<unknown>((value, step) => (isContainer(value) ? value[step as keyof typeof value] : undefined), file)
}

/** Puts a value at a place and makes the objects on the way; undefined takes it away. Lists on the way must exist. */
export function putAt(draft: Draft, path: string, value: unknown): void {
  putPlace(draft, path, value)
}

/** Adds to a list of the door file; one that nobody began is made with its first entry. */
export function pushAt(draft: Draft, path: string, made: unknown): void {
  const list = valueAt(draft, path)
  if (Array.isArray(list)) list.push(made)
  else putAt(draft, path, [made])
}

/** Takes an entry out of a list. One that is empty then stays, and is not handed out: what another device adds to it meanwhile is kept. */
export function takeAt(draft: Draft, path: string, index: number): void {
  const list = valueAt(draft, path)
  if (Array.isArray(list)) list.splice(index, 1)
}

function steps(path: string): string[] {
  return path.split('/')
}

function isContainer(value: unknown): value is Container {
  return typeof value === 'object' && value !== null
}
