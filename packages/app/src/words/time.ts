/** Day and time as a log has them, the same in every language: 2026-11-26 12:03. */
export function shownTime(at_ms: number): string {
  const at = new Date(at_ms)
  const two = (value: number) => String(value).padStart(2, '0')
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())} ${two(at.getHours())}:${two(at.getMinutes())}`
}
