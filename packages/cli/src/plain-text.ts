const boldOn = '\u001b[1m'
const dimOn = '\u001b[2m'
const weightOff = '\u001b[22m'

export function bold(text: string): string {
  return boldOn + text + weightOff
}

export function dim(text: string): string {
  return dimOn + text + weightOff
}

const allowed = new Set(['\n', boldOn, dimOn, weightOff])

/** Names in a door file, and of files, may hold anything. What could move the cursor, turn the line round or hide text becomes a question mark. */
export function safe(text: string): string {
  return text.replaceAll(/\p{Cc}\[(?:1|2|22)m|[\p{Cc}\p{Bidi_C}]/gu, (found) => (allowed.has(found) ? found : '?'))
}
