import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { sha256 } from './sha256.ts'

describe('sha256', () => {
  it('gives the digests of the examples in FIPS 180-4', () => {
    expect(sha256('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
    expect(sha256('abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq')).toBe(
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    )
  })

  it('agrees with the digest of the platform for every length around the blocks, and for long texts', () => {
    const lengths = [...Array.from({ length: 260 }, (_, i) => i), 1000, 65_535, 1_000_003]
    for (const length of lengths) {
      const text = Array.from({ length }, (_, i) => 'aé€😀z'[(i * 7) % 6] ?? 'x').join('')
      expect(sha256(text), `${length}`).toBe(createHash('sha256').update(text).digest('hex'))
    }
  })
})
