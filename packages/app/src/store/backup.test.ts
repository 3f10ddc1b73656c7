import { sha256 } from '@sillsight/document'
import { describe, expect, it } from 'vitest'
import { type Backup, looksLikeBackup, readBackup, writeBackup } from './backup.ts'
import type { DoorId } from './contract.ts'

const photo = new Uint8Array([255, 0, 1, 2, 200])
const backup: Backup = {
  doors: [{ id: '0123456789abcdef' as DoorId, away: true, changes: [new Uint8Array([1, 2, 3]), new Uint8Array(70_000).fill(7)] }],
  photos: [{ id: sha256(photo), bytes: photo }],
}

describe('a backup', () => {
  it('comes back as it was', () => {
    const bytes = writeBackup(backup)
    expect(looksLikeBackup(bytes)).toBe(true)
    expect(readBackup(bytes)).toEqual({ ok: true, backup })
  })
  it('is refused with its place wherever one character of it was changed, lost or added', () => {
    const text = new TextDecoder().decode(
      writeBackup({ ...backup, doors: [{ ...(backup.doors[0] as Backup['doors'][0]), changes: [new Uint8Array([1, 2])] }] }),
    )
    for (let at = 0; at < text.length; at++) {
      for (const changed of [
        text.slice(0, at) + text.slice(at + 1),
        `${text.slice(0, at)}x${text.slice(at)}`,
        `${text.slice(0, at)}${text[at] === 'A' ? 'B' : 'A'}${text.slice(at + 1)}`,
      ]) {
        const read = readBackup(new TextEncoder().encode(changed))
        expect({ at, ok: read.ok }).toEqual({ at, ok: false })
        if (!read.ok) expect(read.issues[0]?.path).not.toBe('')
      }
    }
  })
  it.each([
    ['another version', '{"sillsightBackup":2}', 'unknown-version'],
    ['no backup at all', '[]', 'not-json'],
    ['half a file', new TextDecoder().decode(writeBackup(backup)).slice(0, 2000), 'not-json'],
    ['a checksum of something else', `{"sillsightBackup":1,"sha256":"0","content":"{}"}`, 'checksum'],
    ['an id that is a path', forged('{"doors":[{"id":"../../x","changes":[]}],"photos":[]}'), 'malformed'],
    ['a photo under a name that is not its own', forged('{"doors":[],"photos":[{"id":"00","bytes":"AAAA"}]}'), 'malformed'],
  ])('is refused when it is %s', (_what, text, code) => {
    expect(readBackup(new TextEncoder().encode(text))).toMatchObject({ ok: false, issues: [{ code }] })
  })
})

function forged(content: string): string {
  return JSON.stringify({ sillsightBackup: 1, sha256: sha256(content), content })
}
