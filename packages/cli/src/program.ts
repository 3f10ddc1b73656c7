/** How this program is started, for hints that can be copied: by its name, or from a checkout through npm. */
export function program(): string {
  return process.argv[1]?.endsWith('.ts') ? 'npm run -s sillsight --' : 'sillsight'
}

/** A file name as a shell takes it. */
export function shellWord(name: string): string {
  return /^[\w./\\:@%+-]+$/.test(name) ? name : `'${name.replaceAll("'", `'\\''`)}'`
}
