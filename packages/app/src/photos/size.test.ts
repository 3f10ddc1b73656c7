import { describe, expect, it } from 'vitest'
import { pictureSize } from './size.ts'

const bytes = (hex: string) => Uint8Array.from(hex.replace(/\s/g, '').match(/../g) ?? [], (pair) => Number.parseInt(pair, 16))
const PNG = '89504e47 0d0a1a0a 0000000d 49484452 00000280 000001e0 08 02 00 00 00'
const JPEG = 'ffd8 ffe0 0010 4a464946 00 0101 00 0001 0001 00 00 ffdb 0004 0000 ffc0 0011 08 01e0 0280 03 012200 021101 031101'
const VP8X = '52494646 00000000 57454250 56503858 0a000000 00000000 7f0200 df0100'

describe('the size of a picture', () => {
  it.each([
    ['PNG', PNG],
    ['JPEG, past other segments', JPEG],
    ['WebP', VP8X],
  ])('is read from the first bytes of a %s', (_form, hex) => {
    expect(pictureSize(bytes(hex))).toEqual({ width_px: 640, height_px: 480 })
  })
  it('is unknown for anything else, and for bytes that end before it is said', () => {
    expect(pictureSize(bytes('25504446 2d312e37 00000000 00000000'))).toBe(undefined)
    for (const whole of [PNG, JPEG, VP8X].map(bytes)) {
      for (let length = 0; length < 12; length++) expect(pictureSize(whole.slice(0, length))).toBe(undefined)
    }
  })
})
