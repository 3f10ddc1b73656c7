import { describe, expect, it } from 'vitest'
import { exifBlock, withExif } from '../../test/with-exif.ts'
import { whereTaken } from './where-taken.ts'

const dms = (sign: string, ...parts: (readonly [number, number])[]) => ({ sign, parts })
// 48 + 8/60 + 13.56/3600 = 48.137100; 11 + 34/60 + 31.44/3600 = 11.575400
const NORTH = dms('N', [48, 1], [8, 1], [1356, 100])
const EAST = dms('E', [11, 1], [34, 1], [3144, 100])
// 33.8568 and 151.2153, with the minutes as a fraction and no seconds: 51.408, 12.918
const SOUTH = dms('S', [33, 1], [51408, 1000], [0, 1])
const WEST = dms('W', [151, 1], [12918, 1000], [0, 1])
const JPEG = Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 0, 4, 0, 0, 0xff, 0xda, 0, 2])

const block = exifBlock('little', NORTH, EAST)
const chunk = (name: string, body: Uint8Array, little: boolean) => {
  const head = new Uint8Array(8)
  new DataView(head.buffer).setUint32(little ? 4 : 0, body.length, little)
  head.set(new TextEncoder().encode(name), little ? 0 : 4)
  return [...head, ...body, ...(little ? Array(body.length % 2).fill(0) : [0, 0, 0, 0])]
}
const PNG = Uint8Array.from([
  0x89,
  0x50,
  0x4e,
  0x47,
  13,
  10,
  26,
  10,
  ...chunk('IHDR', new Uint8Array(13), false),
  ...chunk('eXIf', block, false),
])
const RIFF = [...new TextEncoder().encode('RIFF\0\0\0\0WEBP')]
const WEBP = Uint8Array.from([...RIFF, ...chunk('VP8X', new Uint8Array(11), true), ...chunk('EXIF', block, true)])
const NAMED = Uint8Array.from([...RIFF, ...chunk('EXIF', Uint8Array.from([...new TextEncoder().encode('Exif\0\0'), ...block]), true)])

describe('where a picture was taken', () => {
  it('is read in both byte orders and on all four sides of the globe', () => {
    expect(whereTaken(withExif(JPEG, block))).toBe('48.13710° N, 11.57540° E')
    expect(whereTaken(withExif(JPEG, exifBlock('big', SOUTH, WEST)))).toBe('33.85680° S, 151.21530° W')
  })
  it.each([
    ['PNG', PNG],
    ['WebP', WEBP],
    ['WebP that names the block once more', NAMED],
  ])('is read from a %s', (_form, bytes) => {
    expect(whereTaken(bytes)).toBe('48.13710° N, 11.57540° E')
  })
  it('is unknown where the picture does not say it: no block, no fix, off the globe, a side that there is none of', () => {
    expect(whereTaken(JPEG)).toBe(undefined)
    for (const [latitude, longitude] of [
      [dms('N', [0, 0], [0, 0], [0, 0]), EAST],
      [dms('N', [91, 1], [0, 1], [0, 1]), EAST],
      [NORTH, dms('E', [180, 1], [1, 1], [0, 1])],
      [NORTH, dms('\0', [11, 1], [0, 1], [0, 1])],
    ] as const)
      expect(whereTaken(withExif(JPEG, exifBlock('little', latitude, longitude)))).toBe(undefined)
  })
  it('is unknown and nothing breaks where bytes end early or were changed: every length, every byte flipped', () => {
    for (const whole of [withExif(JPEG, block), PNG, WEBP]) {
      for (let length = 0; length < whole.length; length++) {
        const found = whereTaken(whole.slice(0, length))
        expect(found === undefined || found === '48.13710° N, 11.57540° E').toBe(true)
      }
      for (let i = 0; i < whole.length; i++) {
        const spoiled = whole.slice()
        spoiled[i] = 255 - (spoiled[i] ?? 0)
        expect(whereTaken(spoiled) ?? '0.00000° N, 0.00000° E').toMatch(/^\d{1,2}\.\d{5}° [NS], \d{1,3}\.\d{5}° [EW]$/)
      }
    }
  })
})
