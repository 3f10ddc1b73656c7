const LONGEST = 60

/** What an issue got, in few words and without anything that could steer a terminal. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing'
  if (value === Infinity || value === -Infinity) return 'a number too large to hold'
  if (typeof value === 'string') return shownText(value)
  if (Array.isArray(value))
    return value.length <= 3 && value.every((v) => typeof v === 'number') ? `[${value.join(', ')}]` : `a list of ${value.length}`
  if (typeof value === 'object' && value !== null) return 'an object'
  return String(value)
}

/** A text in quotes, cut to a line, with control and direction characters spelled out. */
export function shownText(text: string): string {
  const cut = text.length > LONGEST ? `${text.slice(0, LONGEST)}...` : text
  return `"${plain(cut)}"`
}

/** The text with every character spelled out that a terminal or an editor could obey instead of showing. */
export function plain(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}\p{Bidi_C}]/gu, (c) => `\\u${(c.codePointAt(0) ?? 0).toString(16).padStart(4, '0')}`)
}

/** A place in the door file as people write it: `survey/opening/width_mm`. */
export function pathOf(keys: readonly PropertyKey[]): string {
  return keys.length === 0 ? 'file' : keys.map((key) => plain(String(key))).join('/')
}
