import { sha256 } from '@sillsight/document'
import { pictureSize } from './size.ts'

/** Longer sides are brought down to this: enough to read a type plate, small enough to keep hundreds. */
const LONGEST_PX = 1600
/** A picture of 64 million pixels takes 256 MB when it is decoded; phones stop there. */
const MOST_PX = 64_000_000
const MOST_BYTES = 60_000_000
const QUALITY = 0.82

export type ReEncoded =
  | { readonly ok: true; readonly id: string; readonly bytes: Uint8Array; readonly width_px: number; readonly height_px: number }
  | { readonly ok: false; readonly why: 'no-picture' | 'too-large' | 'not-decoded' }

/**
 * Draws a picture anew as a JPEG. Only what can be seen comes through: where and with what it was taken is not in it any more.
 */
export async function reEncoded(file: Blob): Promise<ReEncoded> {
  if (file.size > MOST_BYTES) return { ok: false, why: 'too-large' }
  const size = pictureSize(new Uint8Array(await file.slice(0, 1_000_000).arrayBuffer()))
  if (!size) return { ok: false, why: 'no-picture' }
  if (size.width_px * size.height_px > MOST_PX) return { ok: false, why: 'too-large' }
  const picture = await createImageBitmap(file).catch(() => undefined)
  if (!picture) return { ok: false, why: 'not-decoded' }
  const scale = Math.min(1, LONGEST_PX / Math.max(picture.width, picture.height))
  const [width_px, height_px] = [Math.max(1, Math.round(picture.width * scale)), Math.max(1, Math.round(picture.height * scale))]
  const canvas = new OffscreenCanvas(width_px, height_px)
  canvas.getContext('2d')?.drawImage(picture, 0, 0, width_px, height_px)
  picture.close()
  const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY })
  const bytes = new Uint8Array(await blob.arrayBuffer())
  return { ok: true, id: sha256(bytes), bytes, width_px, height_px }
}
