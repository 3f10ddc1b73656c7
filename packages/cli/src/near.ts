/** How many single-character edits or swaps of neighbours turn one word into the other. */
export function editDistance(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)]
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++) row.push(cheapest(rows, row, a, b, i, j))
    rows.push(row)
  }
  return rows[a.length]?.[b.length] ?? 0
}

function cheapest(rows: readonly (readonly number[])[], row: readonly number[], a: string, b: string, i: number, j: number): number {
  const above = rows[i - 1] ?? []
  const same = a[i - 1] === b[j - 1] ? 0 : 1
  const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]
  const edits = Math.min((above[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (above[j - 1] ?? 0) + same)
  return swapped ? Math.min(edits, (rows[i - 2]?.[j - 2] ?? 0) + 1) : edits
}

/**
 * The words of a list that somebody may have meant, nearest first, at most `most` of them. A word counts as near when a third of it
 * or less is wrong, or when one starts or contains the other. Only the first 80 characters are compared.
 */
export function nearWords(typed: string, words: readonly string[], most = 3): readonly string[] {
  const wanted = typed.slice(0, 80).toLowerCase()
  return words
    .map((word) => ({ word, far: farness(wanted, word.slice(0, 80).toLowerCase()) }))
    .filter(({ far }) => far < 1)
    .sort((a, b) => a.far - b.far || (a.word < b.word ? -1 : 1))
    .slice(0, most)
    .map(({ word }) => word)
}

/** Below 1 for a near word. */
function farness(typed: string, word: string): number {
  if (typed === '') return 1
  const part = typed.length > 1 && (word.startsWith(typed) || (typed.length > 3 && word.includes(typed)))
  const wrong = Math.max(1, Math.floor(Math.max(typed.length, word.length) / 3)) // as much may be wrong
  const edits = editDistance(typed, word) / (wrong + 1)
  return part ? Math.min(edits, 0.5) : edits
}

/** "Did you mean `judge`?" or nothing. */
export function didYouMean(typed: string, words: readonly string[]): string | undefined {
  const near = nearWords(typed, words)
  return near.length === 0 ? undefined : `Did you mean ${near.map((word) => `\`${word}\``).join(' or ')}?`
}
