/** `post-1`, `post-2`, ...: the first that nothing has yet. */
export function freeId(stem: string, taken: readonly (string | undefined)[]): string {
  for (let n = 1; ; n++) if (!taken.includes(`${stem}-${n}`)) return `${stem}-${n}`
}
