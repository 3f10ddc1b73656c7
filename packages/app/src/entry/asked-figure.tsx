import { lazy, Suspense, useState } from 'react'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { type Kind, shownFigure } from './kinds.ts'
import type { Asked } from './pad.tsx'

const Pad = lazy(() => import('./pad.tsx').then(({ Pad }) => ({ default: Pad })))

/** Nobody goes and measures these: somebody sets, counts or reads them up. */
const TOLD: readonly (Kind | undefined)[] = ['count', 'percent', 'share', 'seconds']

interface Props {
  /** Its place in the door file, by which whoever misses it is led here. */
  readonly at?: string | undefined
  /** A second place that is entered with it, as its tolerance. */
  readonly enters?: string | undefined
  readonly asked: Asked
  /** What stands there until somebody enters it. */
  readonly missing?: string | undefined
  readonly readOnly?: boolean
}

/** A figure in a sentence. Touching it opens the number pad. */
export function AskedFigure({ at, enters, asked, missing, readOnly = false }: Props) {
  const words = useWords()
  const reader = useReader()
  const [open, setOpen] = useState(false)
  const { label, kind, value, tolerance_mm } = asked
  const within = tolerance_mm === undefined ? '' : ` ± ${shownFigure(tolerance_mm, 'length', reader)}`
  const shown =
    value === undefined ? (missing ?? (TOLD.includes(kind) ? words.entry.untold : words.entry.missing)) : shownFigure(value, kind, reader)
  return (
    <>
      <button
        type="button"
        className="figure"
        data-at={at}
        data-enters={enters}
        data-missing={value === undefined || undefined}
        aria-label={words.entry.change(label, `${shown}${within}`)}
        disabled={readOnly}
        onClick={() => setOpen(true)}
      >
        {shown}
        {within !== '' && <span className="figure-tolerance">{within}</span>}
      </button>
      {open && (
        <Suspense fallback={null}>
          <Pad onClose={() => setOpen(false)} asked={asked} />
        </Suspense>
      )}
    </>
  )
}
