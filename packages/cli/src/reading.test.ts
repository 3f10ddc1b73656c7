import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { Refusal } from './problem.ts'
import { largestFileSize, readBeside, readText } from './reading.ts'

const folder = mkdtempSync(join(tmpdir(), 'sillsight-reading-'))
afterAll(() => rmSync(folder, { recursive: true }))

const place = (name: string, text: string | Buffer = ''): string => {
  const file = join(folder, name)
  writeFileSync(file, text)
  return file
}

const codeOf = (read: () => unknown): string => {
  try {
    read()
  } catch (problem) {
    if (problem instanceof Refusal) return problem.problems.map(({ code }) => code).join()
    throw problem
  }
  return 'read'
}

describe('reading files', () => {
  it('reads text, with or without a byte order mark', () => {
    expect(readText(place('plain.json', '{"ä": 1}'))).toBe('{"ä": 1}')
    expect(readText(place('marked.json', '\ufeff{}'))).toBe('{}')
  })

  it('refuses what is missing, a folder, a device, and other encodings, each with a code of its own', () => {
    expect(codeOf(() => readText(join(folder, 'none.json')))).toBe('cannot-read-enoent')
    expect(codeOf(() => readText(folder))).toBe('is-a-folder')
    expect(codeOf(() => readText('/dev/zero'))).toBe('not-a-file')
    expect(codeOf(() => readText(place('wide.json', Buffer.from('{}', 'utf16le'))))).toBe('read') // NUL is UTF-8; the parser refuses it
    expect(codeOf(() => readText(place('latin.json', Buffer.from([0x7b, 0xe4, 0x7d]))))).toBe('not-utf-8')
  })

  it('refuses a file above 8 MB without reading it', () => {
    const file = place('huge.json')
    truncateSync(file, 1024 ** 4) // a terabyte of holes: reading it would not end
    expect(codeOf(() => readText(file))).toBe('too-large')
    truncateSync(file, largestFileSize + 1)
    expect(codeOf(() => readText(file))).toBe('too-large')
    truncateSync(file, largestFileSize)
    expect(readText(file)).toHaveLength(largestFileSize)
  })

  it('stops reading at the bound where the system knows no size', () => {
    const pipe = join(folder, 'pipe')
    execFileSync('mkfifo', [pipe])
    execFileSync('sh', ['-c', 'head -c 9000000 /dev/zero > "$1" 2>/dev/null &', 'sh', pipe], { stdio: 'ignore' })
    expect(codeOf(() => readText(pipe))).toBe('too-large')
  })
})

describe('libraries of a door file', () => {
  mkdirSync(join(folder, 'doors', 'own'), { recursive: true })
  const door = place('doors/door.json')
  place('doors/own/bodies.json', 'bodies')
  place('secret.json', 'secret')
  symlinkSync('../secret.json', join(folder, 'doors', 'link.json'))

  it('are read from the folder of the door file and below', () => {
    expect(readBeside(door, 'own/bodies.json')).toBe('bodies')
    expect(readBeside(door, './own/../own/bodies.json')).toBe('bodies')
  })

  it('are never read from elsewhere: not by dots, not by an absolute name, not by a link', () => {
    for (const reference of ['../secret.json', 'own/../../secret.json', join(folder, 'secret.json'), 'link.json', '.', '/dev/zero']) {
      expect(
        codeOf(() => readBeside(door, reference)),
        reference,
      ).toBe('library-outside')
    }
  })

  it('are refused when missing', () => {
    expect(codeOf(() => readBeside(door, 'own/none.json'))).toBe('cannot-read-enoent')
  })
})
