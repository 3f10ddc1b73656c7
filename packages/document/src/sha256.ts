/**
 * SHA-256 of bytes, or of a text's UTF-8 bytes, as 64 hexadecimal digits in lower case (FIPS 180-4, sections 5 and 6.2; K, H, a to h are its symbols).
 *
 * Our own, because loading the platform's takes 6 ms, and hashing one judgement with it would take longer than judging a small door. It
 * is a fingerprint that anybody can recompute, no secret depends on it.
 */
export function sha256(content: string | Uint8Array): string {
  const blocks = padded(typeof content === 'string' ? new TextEncoder().encode(content) : content)
  const state = Int32Array.from(H)
  const schedule = new Int32Array(64)
  for (let at = 0; at < blocks.byteLength; at += 64) {
    fillSchedule(schedule, blocks, at)
    mixBlock(state, schedule)
  }
  return Array.from(state, (word) => (word >>> 0).toString(16).padStart(8, '0')).join('')
}

/** The bytes, a one bit, zeros, and the length in bits: whole blocks of 64 bytes. */
function padded(bytes: Uint8Array): DataView {
  const whole = new Uint8Array(Math.ceil((bytes.length + 9) / 64) * 64)
  whole.set(bytes)
  whole[bytes.length] = 0x80
  const view = new DataView(whole.buffer)
  view.setBigUint64(whole.length - 8, BigInt(bytes.length) * 8n)
  return view
}

function fillSchedule(w: Int32Array, blocks: DataView, at: number): void {
  for (let t = 0; t < 16; t++) w[t] = blocks.getInt32(at + 4 * t)
  for (let t = 16; t < 64; t++) {
    const early = w[t - 15] ?? 0
    const late = w[t - 2] ?? 0
    const small0 = ((early >>> 7) | (early << 25)) ^ ((early >>> 18) | (early << 14)) ^ (early >>> 3)
    const small1 = ((late >>> 17) | (late << 15)) ^ ((late >>> 19) | (late << 13)) ^ (late >>> 10)
    w[t] = (w[t - 16] ?? 0) + small0 + (w[t - 7] ?? 0) + small1
  }
}

function mixBlock(state: Int32Array, w: Int32Array): void {
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = state
  for (let t = 0; t < 64; t++) {
    const big1 = ((e >>> 6) | (e << 26)) ^ ((e >>> 11) | (e << 21)) ^ ((e >>> 25) | (e << 7))
    const big0 = ((a >>> 2) | (a << 30)) ^ ((a >>> 13) | (a << 19)) ^ ((a >>> 22) | (a << 10))
    const first = (h + big1 + ((e & f) ^ (~e & g)) + (K[t] ?? 0) + (w[t] ?? 0)) | 0
    const second = (big0 + ((a & b) ^ (a & c) ^ (b & c))) | 0
    h = g
    g = f
    f = e
    e = (d + first) | 0
    d = c
    c = b
    b = a
    a = (first + second) | 0
  }
  const mixed = [a, b, c, d, e, f, g, h]
  for (let i = 0; i < 8; i++) state[i] = (state[i] ?? 0) + (mixed[i] ?? 0)
}

/** FIPS 180-4, 5.3.3. */
const H = [0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19]

/** FIPS 180-4, 4.2.2. */
const K = Int32Array.from([
  0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5, 0xd807aa98, 0x12835b01, 0x243185be,
  0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174, 0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa,
  0x5cb0a9dc, 0x76f988da, 0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967, 0x27b70a85,
  0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85, 0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3,
  0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070, 0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f,
  0x682e6ff3, 0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2,
])
