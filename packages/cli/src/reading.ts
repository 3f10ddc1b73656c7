import { closeSync, fstatSync, openSync, readSync, realpathSync, type Stats, statSync } from 'node:fs'
import { dirname, isAbsolute, relative, resolve, sep } from 'node:path'
import { type Problem, Refusal, shown } from './problem.ts'

/** In bytes. Door files and libraries above this are refused before all of them is read. A door with everything in it has some 100 kB. */
export const largestFileSize = 8 * 1024 * 1024

/** How standard input is called in results and messages. */
export const standardInput = '(standard input)'

/** The text of a file, or of standard input for `-`. @throws Refusal if it is missing, no file, too large or no UTF-8 */
export function readText(file: string): string {
  return file === '-' ? decoded(standardInput, bounded(0, standardInput, largestFileSize)) : readFile(file)
}

/**
 * The text of a file that a door file refers to, as `bodies/own.json`: relative to the door file and inside its folder,
 * whatever links say, so that a door file from elsewhere cannot make the program read other files.
 * @throws Refusal if it lies outside, is missing, too large, or no UTF-8
 */
export function readBeside(doorFile: string, reference: string): string {
  const folder = realpathSync(doorFile === '-' ? '.' : dirname(resolve(doorFile)))
  const wanted = resolve(folder, reference)
  if (isAbsolute(reference) || !isInside(folder, wanted)) throw new Refusal(outside(doorFile, reference))
  const real = withProblem(wanted, () => realpathSync(wanted))
  if (!isInside(folder, real)) throw new Refusal(outside(doorFile, reference))
  return readFile(real, wanted)
}

function isInside(folder: string, file: string): boolean {
  const way = relative(folder, file)
  return way !== '' && way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way)
}

function outside(doorFile: string, reference: string): Problem {
  return {
    code: 'library-outside',
    place: doorFile === '-' ? standardInput : doorFile,
    expected: 'libraries in the folder of the door file or below it',
    got: shown(reference),
    repair: 'copy the library beside the door file and refer to it by a relative path',
  }
}

function readFile(file: string, called = file): string {
  return decoded(called, readBytes(file, largestFileSize, called))
}

/** All of a file as bytes. @throws Refusal if it is missing, no file or larger than `limit` bytes */
export function readBytes(file: string, limit: number, called = file): Buffer {
  const handle = withProblem(called, () => {
    mustBeReadable(called, statSync(file), limit) // before opening: a device may answer to being opened
    return openSync(file, 'r')
  })
  try {
    mustBeReadable(called, fstatSync(handle), limit)
    return withProblem(called, () => bounded(handle, called, limit))
  } finally {
    closeSync(handle)
  }
}

function mustBeReadable(file: string, stats: Stats, limit: number): void {
  const repair = 'name a door file, or - for standard input'
  if (stats.isDirectory()) {
    throw new Refusal({
      code: 'is-a-folder',
      place: file,
      expected: 'a door file',
      got: 'a folder',
      repair: `name the files in it, as \`${file.replace(/[/\\]$/, '')}/*.json\``,
    })
  }
  if (!stats.isFile() && !stats.isFIFO())
    throw new Refusal({ code: 'not-a-file', place: file, expected: 'a door file', got: 'a device or socket', repair })
  if (stats.size > limit) throw new Refusal(tooLarge(file, `${stats.size} bytes`, limit))
}

function tooLarge(file: string, got: string, limit: number): Problem {
  const repair = 'is this a door file? Large libraries can go into files of their own'
  return { code: 'too-large', place: file, expected: `at most ${limit} bytes`, got, repair }
}

/** Reads to the end, and one byte past the limit at most: the size that a system reports may be 0 or out of date. */
function bounded(handle: number, called: string, limit: number): Buffer {
  const chunks: Buffer[] = []
  let size = 0
  for (;;) {
    const chunk = Buffer.allocUnsafe(Math.min(64 * 1024, limit + 1 - size))
    const count = readSome(handle, chunk)
    if (count === 0) return Buffer.concat(chunks, size)
    size += count
    chunks.push(chunk.subarray(0, count))
    if (size > limit) throw new Refusal(tooLarge(called, 'more', limit))
  }
}

function readSome(handle: number, into: Buffer): number {
  for (;;) {
    try {
      return readSync(handle, into)
    } catch (problem) {
      const { code } = problem as NodeJS.ErrnoException
      if (code === 'EOF') return 0 // how the end of a pipe shows on some systems
      if (code !== 'EAGAIN') throw problem
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 5)
    }
  }
}

function decoded(file: string, bytes: Buffer): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    throw new Refusal({ code: 'not-utf-8', place: file, expected: 'text in UTF-8', got: 'other bytes', repair: 'save the file as UTF-8' })
  }
}

const systemWords: ReadonlyMap<string, readonly [got: string, repair: string]> = new Map([
  ['ENOENT', ['no such file', 'check the name; `sillsight new` makes a first door file']],
  ['EACCES', ['no permission', 'make the file readable for you']],
  ['EPERM', ['no permission', 'make the file readable for you']],
  ['ENOTDIR', ['no such folder', 'check the path']],
  ['ELOOP', ['links that lead in a circle', 'name the file itself']],
  ['ENAMETOOLONG', ['a name that is too long', 'check the name']],
  ['EMFILE', ['too many open files', 'use fewer workers']],
])

/** Does what reads, and turns what the system says into a problem with a repair. */
function withProblem<T>(file: string, read: () => T): T {
  try {
    return read()
  } catch (problem) {
    if (problem instanceof Refusal) throw problem
    const { code = 'unknown' } = problem as NodeJS.ErrnoException
    const [got, repair] = systemWords.get(code) ?? [`the system's answer ${code}`, 'check the file']
    throw new Refusal({ code: `cannot-read-${code.toLowerCase()}`, place: file, expected: 'a file that can be read', got, repair })
  }
}
