import type { ReactNode } from 'react'
import { Explained } from '../help/explained.tsx'

/** Sentences that belong together, under a heading; the sheet scrolls to `path` when something there is asked for. */
export function Group({ title, path, children }: { readonly title: string; readonly path: string; readonly children: ReactNode }) {
  return (
    <section className="group" id={anchorOf(path)} tabIndex={-1}>
      <h2>
        <Explained text={title} />
      </h2>
      {children}
    </section>
  )
}

export function anchorOf(path: string): string {
  return `at-${path.replaceAll('/', '-')}`
}
