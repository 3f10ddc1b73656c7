/** An EXIF block with latitude and longitude, as a camera writes it (Exif 2.3): a directory that points to another with four entries. */
export function exifBlock(order: 'little' | 'big', latitude: Angle, longitude: Angle): Uint8Array {
  const little = order === 'little'
  const bytes = new Uint8Array(128)
  const view = new DataView(bytes.buffer)
  const entry = (at: number, tag: number, type: number, count: number) => {
    view.setUint16(at, tag, little)
    view.setUint16(at + 2, type, little)
    view.setUint32(at + 4, count, little)
  }
  view.setUint16(0, little ? 0x4949 : 0x4d4d)
  view.setUint16(2, 42, little)
  view.setUint32(4, 8, little)
  view.setUint16(8, 1, little)
  entry(10, 0x8825, 4, 1)
  view.setUint32(18, 26, little)
  view.setUint16(26, 4, little)
  for (const [i, { sign, parts }] of [latitude, longitude].entries()) {
    const at = 28 + 24 * i
    entry(at, 1 + 2 * i, 2, 2)
    bytes[at + 8] = sign.charCodeAt(0)
    entry(at + 12, 2 + 2 * i, 5, 3)
    const values = 80 + 24 * i
    view.setUint32(at + 20, values, little)
    for (const [j, [over, under]] of parts.entries()) {
      view.setUint32(values + 8 * j, over, little)
      view.setUint32(values + 8 * j + 4, under, little)
    }
  }
  return bytes
}

/** Degrees, minutes and seconds as fractions. */
interface Angle {
  readonly sign: string
  readonly parts: readonly (readonly [number, number])[]
}

/** A JPEG with an EXIF block put in before its first segment. */
export function withExif(jpeg: Uint8Array, block: Uint8Array): Uint8Array {
  const told = [...new TextEncoder().encode('Exif\0\0'), ...block]
  const length = told.length + 2
  return Uint8Array.from([...jpeg.subarray(0, 2), 0xff, 0xe1, length >>> 8, length & 255, ...told, ...jpeg.subarray(2)])
}
