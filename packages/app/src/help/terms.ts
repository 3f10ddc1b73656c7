import type { Term } from '../words/term.ts'

export type Terms = Readonly<Record<string, Term>>
/** A piece of a text: as it stands, or a word of the trade in it. */
export type Piece = string | { readonly term: string; readonly shown: string }

interface Finder {
  readonly pattern: RegExp
  readonly termOf: ReadonlyMap<string, string>
}

/** One finder for each catalogue: making it costs more than using it. */
const finders = new WeakMap<Terms, Finder>()

/**
 * Splits a text at the words of the trade that stand in it. Of each only the first is a piece of its own, and of two that begin at one place
 * the longer. Names in quotation marks are the site's, not ours: they are left whole.
 *
 * @param met terms that were met before in the same paragraph; those of this text are added
 */
export function pieces(text: string, terms: Terms, met: Set<string>): readonly Piece[] {
  const { pattern, termOf } = finderOf(terms)
  const found: Piece[] = []
  let from = 0
  for (const match of text.matchAll(pattern)) {
    const [shown, form] = match
    const term = form === undefined ? undefined : termOf.get(plain(form))
    if (term === undefined || met.has(term)) continue
    met.add(term)
    if (match.index > from) found.push(text.slice(from, match.index))
    found.push({ term, shown })
    from = match.index + shown.length
  }
  if (from < text.length) found.push(text.slice(from))
  return found
}

/** The terms that occur in a text. */
export function termsIn(text: string, terms: Terms): readonly string[] {
  const met = new Set<string>()
  pieces(text, terms, met)
  return [...met]
}

function finderOf(terms: Terms): Finder {
  const known = finders.get(terms)
  if (known) return known
  const termOf = new Map(Object.entries(terms).flatMap(([id, { forms }]) => forms.map((form) => [plain(form), id] as const)))
  const forms = [...termOf.keys()]
    .sort((a, b) => b.length - a.length)
    .map((form) => form.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replaceAll(' ', '\\s+'))
  const quoted = '\u201e[^\u201c]*\u201c|\u201c[^\u201d]*\u201d'
  const made = { termOf, pattern: new RegExp(`${quoted}|(?<![\\p{L}\\p{N}/-])(${forms.join('|')})(?![\\p{L}\\p{N}/-])`, 'giu') }
  finders.set(terms, made)
  return made
}

function plain(form: string): string {
  return form.toLowerCase().replace(/\s+/g, ' ')
}
