import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { Refusal } from './problem.ts'
import { writeWhole } from './writing.ts'

const folder = mkdtempSync(join(tmpdir(), 'sillsight-writing-'))
afterAll(() => rmSync(folder, { recursive: true }))

describe('writing files', () => {
  it('writes a new file whole and leaves nothing else behind', () => {
    const file = join(folder, 'new.svg')
    writeWhole(file, 'text', { replace: false })
    expect(readFileSync(file, 'utf8')).toBe('text')
    expect(readdirSync(folder)).toEqual(['new.svg'])
  })

  it('never replaces a file unless told to', () => {
    const file = join(folder, 'kept.svg')
    writeFileSync(file, 'mine')
    expect(() => writeWhole(file, 'other', { replace: false })).toThrow(Refusal)
    expect(readFileSync(file, 'utf8')).toBe('mine')
    writeWhole(file, 'other', { replace: true })
    expect(readFileSync(file, 'utf8')).toBe('other')
  })

  it('keeps the permissions that it is given', () => {
    const file = join(folder, 'private.json')
    writeWhole(file, 'text', { replace: false, mode: 0o600 })
    expect(statSync(file).mode & 0o777).toBe(0o600)
  })

  it('says what hinders it, and leaves no part of a file', () => {
    const inside = join(folder, 'sub')
    mkdirSync(inside)
    expect(() => writeWhole(join(folder, 'none', 'a.svg'), 'text', { replace: false })).toThrow(/none.*no such folder/s)
    expect(() => writeWhole(inside, 'text', { replace: true })).toThrow(/a folder/)
    expect(readdirSync(inside)).toEqual([])
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([])
  })
})
