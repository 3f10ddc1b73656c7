import { closeSync, existsSync, fsyncSync, linkSync, openSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { Refusal } from './problem.ts'

/**
 * Writes a file whole or not at all: first beside its place, then into it by one rename.
 * @param replace whether a file that is already there may go; otherwise it stays and a Refusal is thrown
 * @param mode permissions of a new file before the umask
 */
export function writeWhole(
  file: string,
  text: string | Uint8Array,
  { replace, mode = 0o666 }: { readonly replace: boolean; readonly mode?: number },
): void {
  if (!replace) mustBeFree(file) // again when it is put into place; this spares the work
  const part = join(dirname(file), `.${basename(file).slice(0, 100)}.${process.pid}.part`)
  try {
    writeAndSync(part, text, mode)
    if (replace) renameSync(part, file)
    else putIntoFreePlace(part, file)
  } catch (problem) {
    throw refusalOf(file, problem)
  } finally {
    rmSync(part, { force: true })
  }
}

/** @throws Refusal if something is already there */
export function mustBeFree(file: string): void {
  if (existsSync(file)) throw taken(file)
}

function writeAndSync(part: string, text: string | Uint8Array, mode: number): void {
  rmSync(part, { force: true }) // left by a process of the same number that was killed
  const handle = openSync(part, 'wx', mode)
  try {
    writeFileSync(handle, text)
    fsyncSync(handle)
  } finally {
    closeSync(handle)
  }
}

/** A link fails when the name is taken, in one step; where a file system has no links, an empty file holds the place first. */
function putIntoFreePlace(part: string, file: string): void {
  try {
    linkSync(part, file)
  } catch (problem) {
    if ((problem as NodeJS.ErrnoException).code === 'EEXIST') throw problem
    closeSync(openSync(file, 'wx'))
    renameSync(part, file)
  }
}

function taken(file: string): Refusal {
  return new Refusal({
    code: 'already-there',
    place: file,
    expected: 'a name that is free',
    got: 'a file that is already there',
    repair: 'choose another name, or move the file away; where a command has --force, that replaces it',
  })
}

function refusalOf(file: string, problem: unknown): unknown {
  const { code } = problem as NodeJS.ErrnoException
  if (problem instanceof Refusal || code === undefined) return problem
  if (code === 'EEXIST') return taken(file)
  const got = systemWords.get(code) ?? `the system's answer ${code}`
  const repair = code === 'ENOENT' ? `make the folder ${dirname(file)} first` : 'choose another place'
  return new Refusal({ code: `cannot-write-${code.toLowerCase()}`, place: file, expected: 'a place to write', got, repair })
}

const systemWords: ReadonlyMap<string, string> = new Map([
  ['ENOENT', 'no such folder'],
  ['ENOTDIR', 'a file where a folder should be'],
  ['EACCES', 'no permission'],
  ['EPERM', 'no permission'],
  ['EROFS', 'a read-only disk'],
  ['ENOSPC', 'a full disk'],
  ['EISDIR', 'a folder'],
  ['ENAMETOOLONG', 'a name that is too long'],
])
