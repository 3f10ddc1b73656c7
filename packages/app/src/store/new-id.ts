/** 128 random bits in hexadecimal digits; `randomUUID` is there only where the page came by https. */
export function newId(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, '0')).join('')
}
