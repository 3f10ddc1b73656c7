/** Width and height as a picture's first bytes state them, before anything is decoded: a picture can be small as a file and huge in memory. */
export interface PictureSize {
  readonly width_px: number
  readonly height_px: number
}

/** @returns undefined where the bytes are not the beginning of a JPEG, PNG or WebP */
export function pictureSize(bytes: Uint8Array): PictureSize | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  try {
    return png(view) ?? webp(view) ?? jpeg(view)
  } catch (problem) {
    if (problem instanceof RangeError) return undefined // ends before it has said its size
    throw problem
  }
}

/** PNG (ISO/IEC 15948), 11.2.2: IHDR comes first. */
function png(view: DataView): PictureSize | undefined {
  if (view.getUint32(0) !== 0x89504e47 || view.getUint32(12) !== 0x49484452) return undefined
  return { width_px: view.getUint32(16), height_px: view.getUint32(20) }
}

/** WebP (RFC 9649): the extended, the lossless and the lossy form state their sizes in different places. */
function webp(view: DataView): PictureSize | undefined {
  if (view.getUint32(0) !== 0x52494646 || view.getUint32(8) !== 0x57454250) return undefined
  const form = view.getUint32(12)
  if (form === 0x56503858) return { width_px: 1 + uint24(view, 24), height_px: 1 + uint24(view, 27) }
  if (form === 0x5650384c) {
    const bits = view.getUint32(21, true)
    return { width_px: 1 + (bits & 0x3fff), height_px: 1 + ((bits >>> 14) & 0x3fff) }
  }
  return form === 0x56503820 ? { width_px: view.getUint16(26, true) & 0x3fff, height_px: view.getUint16(28, true) & 0x3fff } : undefined
}

function uint24(view: DataView, at: number): number {
  return view.getUint16(at, true) + view.getUint8(at + 2) * 65_536
}

/** JPEG (ITU-T T.81), B.2.2: the frame header's marker, past all segments before it. */
function jpeg(view: DataView): PictureSize | undefined {
  if (view.getUint16(0) !== 0xffd8) return undefined
  for (let at = 2; ; at += 2 + view.getUint16(at + 2)) {
    const marker = view.getUint16(at)
    if (marker >>> 8 !== 0xff) return undefined
    const isFrame = marker >= 0xffc0 && marker <= 0xffcf && marker !== 0xffc4 && marker !== 0xffc8 && marker !== 0xffcc
    if (isFrame) return { width_px: view.getUint16(at + 7), height_px: view.getUint16(at + 5) }
  }
}
