import type { Verdict } from '@sillsight/engine'

/** The mark of a verdict, told by its shape: filled square with a cross, half circle, open circle, dash. The word stands beside it. */
export function VerdictMark({ verdict }: { readonly verdict: Verdict }) {
  return (
    <svg className="mark" viewBox="0 0 20 20" aria-hidden="true">
      {verdict === 'fail' && (
        <>
          <rect x="1" y="1" width="18" height="18" fill="currentColor" />
          <path d="M6 6l8 8M14 6l-8 8" stroke="var(--ground)" strokeWidth="2.6" />
        </>
      )}
      {verdict === 'undetermined' && (
        <>
          <circle cx="10" cy="10" r="8" fill="none" stroke="currentColor" strokeWidth="2.4" />
          <path d="M10 2a8 8 0 0 1 0 16z" fill="currentColor" />
        </>
      )}
      {verdict === 'pass' && <circle cx="10" cy="10" r="8" fill="none" stroke="currentColor" strokeWidth="2.4" />}
      {verdict === 'not-applicable' && <path d="M3 10h14" stroke="currentColor" strokeWidth="2.4" />}
    </svg>
  )
}
