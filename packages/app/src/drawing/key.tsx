import type { ScreenDrawing } from '@sillsight/report'
import type { ReactNode } from 'react'
import { Explained } from '../help/explained.tsx'
import { useWords } from '../words/words.ts'

interface Props {
  readonly named: string | undefined
  readonly drawing: ScreenDrawing | undefined
  readonly note?: ReactNode
}

/** Below the drawing: what is under the finger, or what there is to say, or else what hatching and lines mean. */
export function Key({ named, drawing, note }: Props) {
  const words = useWords()
  return (
    <div className="key">
      {named !== undefined ? (
        <p className="key-named">{named}</p>
      ) : note ? (
        <div className="key-note" role="status">
          {note}
        </div>
      ) : (
        <>
          <p>
            <svg viewBox="0 0 34 14" aria-hidden="true" className="key-hatch">
              <rect x="0.5" y="0.5" width="33" height="13" />
              <path d="M4 13L14 1M10 13L20 1M16 13L26 1M22 13L32 1" />
            </svg>
            <span>
              <Explained text={words.key.unseen} />
            </span>
          </p>
          <p>
            <svg viewBox="0 0 34 14" aria-hidden="true" className="key-trace">
              <path d="M0 7h34" />
            </svg>
            <span>
              <Explained text={words.key.trace} />
            </span>
          </p>
          {drawing && drawing.unplaced.length > 0 && <p>{words.key.unplaced(drawing.unplaced.join(', '))}</p>}
        </>
      )}
    </div>
  )
}
