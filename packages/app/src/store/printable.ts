/** The longest name, caption or word beside a pin, in UTF-16 units. */
export const LONGEST_TEXT = 200
/** The longest note of the door file. */
export const LONGEST_NOTE = 20_000

/** A line of text without what would steer a terminal or turn the writing direction: the door file refuses those characters. */
export function printable(text: string, longest = LONGEST_TEXT): string {
  return text
    .replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]/g, ' ')
    .trim()
    .slice(0, longest)
}

/** The same of a note, which keeps its lines. */
export function printableLines(text: string): string {
  const lines = text.split(/\r\n|[\r\n\u2028\u2029]/).map((line) => printable(line, LONGEST_NOTE))
  return lines.join('\n').trim().slice(0, LONGEST_NOTE)
}
