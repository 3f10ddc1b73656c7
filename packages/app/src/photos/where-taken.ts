/**
 * Where a picture says that it was taken: latitude and longitude of its EXIF block (Exif 2.3, CIPA DC-008, "GPS attribute information"),
 * from a JPEG, PNG or WebP.
 *
 * @returns as one reads it, to about a metre: `48.13710° N, 11.57540° E`; undefined where the picture does not say, or not soundly
 */
export function whereTaken(bytes: Uint8Array): string | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  try {
    const block = inJpeg(view) ?? inPng(view) ?? inWebp(view)
    return block && position(block)
  } catch (problem) {
    if (problem instanceof RangeError) return undefined // ends before it has said it, or points outside of itself
    throw problem
  }
}

const GPS_BLOCK = 0x8825
const LATITUDE = { reference: 1, value: 2, most_deg: 90, signs: 'NS' } as const
const LONGITUDE = { reference: 3, value: 4, most_deg: 180, signs: 'EW' } as const
const TEXT = 2
const RATIONAL = 5
/** "Exif" and two zeros, before the block of a JPEG and of some WebP. */
const NAME_BYTES = 6

interface Entry {
  readonly type: number
  readonly count: number
  /** Where its value stands, or the offset of it. */
  readonly at: number
}

function position(block: DataView): string | undefined {
  const order = block.getUint16(0)
  if (order !== 0x4949 && order !== 0x4d4d) return undefined
  const little = order === 0x4949
  const gps = entriesAt(block, block.getUint32(4, little), little).get(GPS_BLOCK)
  if (!gps) return undefined
  const found = entriesAt(block, block.getUint32(gps.at, little), little)
  const parts = [LATITUDE, LONGITUDE].map(({ reference, value, most_deg, signs }) => {
    const [side, angle] = [found.get(reference), found.get(value)]
    if (side?.type !== TEXT || angle?.type !== RATIONAL || angle.count !== 3) return undefined
    const sign = String.fromCharCode(block.getUint8(side.at))
    const from = block.getUint32(angle.at, little)
    const [degrees = 0, minutes = 0, seconds = 0] = [0, 8, 16].map(
      (step) => block.getUint32(from + step, little) / block.getUint32(from + step + 4, little),
    )
    const all_deg = degrees + minutes / 60 + seconds / 3600 // 0/0, as some write without a fix, makes it not a number
    return signs.includes(sign) && all_deg <= most_deg ? `${all_deg.toFixed(5)}\u00b0 ${sign}` : undefined
  })
  return parts.includes(undefined) ? undefined : parts.join(', ')
}

/** The twelve-byte entries of one directory, by tag. */
function entriesAt(block: DataView, offset: number, little: boolean): ReadonlyMap<number, Entry> {
  const entries = new Map<number, Entry>()
  const count = block.getUint16(offset, little)
  for (let i = 0; i < count; i++) {
    const at = offset + 2 + 12 * i
    const type = block.getUint16(at + 2, little)
    entries.set(block.getUint16(at, little), { type, count: block.getUint32(at + 4, little), at: at + 8 })
  }
  return entries
}

function part(view: DataView, from: number, length: number): DataView {
  return new DataView(view.buffer, view.byteOffset + from, Math.min(length, view.byteLength - from))
}

function isNamed(view: DataView, at: number): boolean {
  return view.getUint32(at) === 0x45786966 && view.getUint16(at + 4) === 0
}

/** JPEG: an APP1 segment before the picture's data. */
function inJpeg(view: DataView): DataView | undefined {
  if (view.getUint16(0) !== 0xffd8) return undefined
  for (let at = 2; ; ) {
    const marker = view.getUint16(at)
    if (marker >>> 8 !== 0xff || marker === 0xffda) return undefined
    const length = view.getUint16(at + 2)
    if (marker === 0xffe1 && isNamed(view, at + 4)) return part(view, at + 4 + NAME_BYTES, length - 2 - NAME_BYTES)
    at += 2 + length
  }
}

/** PNG: the chunk eXIf. */
function inPng(view: DataView): DataView | undefined {
  if (view.getUint32(0) !== 0x89504e47) return undefined
  for (let at = 8; ; at += 12 + view.getUint32(at)) {
    if (view.getUint32(at + 4) === 0x65584966) return part(view, at + 8, view.getUint32(at))
  }
}

/** WebP: the chunk EXIF; chunks have even lengths. */
function inWebp(view: DataView): DataView | undefined {
  if (view.getUint32(0) !== 0x52494646 || view.getUint32(8) !== 0x57454250) return undefined
  for (let at = 12; ; ) {
    const length = view.getUint32(at + 4, true)
    if (view.getUint32(at) === 0x45584946) {
      const named = isNamed(view, at + 8) ? NAME_BYTES : 0
      return part(view, at + 8 + named, length - named)
    }
    at += 8 + length + (length % 2)
  }
}
