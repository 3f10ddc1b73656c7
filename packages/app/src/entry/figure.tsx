import { lazy, Suspense, useState } from 'react'
import { usePreferences } from '../preferences.ts'
import { useDoor } from '../screens/at-door.ts'
import type { Draft } from '../store/contract.ts'
import { useWords } from '../words/words.ts'
import { type Kind, shownFigure } from './kinds.ts'
import { putAt, valueAt } from './places.ts'

const Pad = lazy(() => import('./pad.tsx').then(({ Pad }) => ({ default: Pad })))

interface Props {
  /** Place in the door file. */
  readonly path: string
  readonly label: string
  readonly hint?: string
  readonly kind?: Kind
  readonly signed?: boolean
  /** Place of how far it may be off. */
  readonly tolerancePath?: string
  readonly question?: (value: number) => string | undefined
  /** The verdict does not need it: it may be taken away again. */
  readonly optional?: boolean
  /** What stands there until somebody enters it. */
  readonly missing?: string
  /** Puts the value where a plain place would not do; undefined takes it away. */
  readonly put?: (draft: Draft, value: number | undefined) => void
}

/** A figure of the door set in a sentence. Touching it opens the number pad. */
export function Figure(props: Props) {
  const { path, label, hint, kind = 'length', signed, tolerancePath, question, optional = false, missing } = props
  const put = props.put ?? ((draft: Draft, entered: number | undefined) => putAt(draft, path, entered))
  const words = useWords()
  const { units } = usePreferences()
  const { door, snapshot } = useDoor()
  const [open, setOpen] = useState(false)
  const found = valueAt(snapshot.file, path)
  const value = typeof found === 'number' ? found : undefined
  const tolerance = tolerancePath === undefined ? undefined : valueAt(snapshot.file, tolerancePath)
  const within = typeof tolerance === 'number' ? ` ± ${shownFigure(tolerance, 'length', units, words.decimal)}` : ''
  const shown = value === undefined ? (missing ?? words.entry.missing) : shownFigure(value, kind, units, words.decimal)
  return (
    <>
      <button
        type="button"
        className="figure"
        data-missing={value === undefined || undefined}
        aria-label={words.entry.change(label, `${shown}${within}`)}
        disabled={snapshot.readOnly !== undefined}
        onClick={() => setOpen(true)}
      >
        {shown}
        {within !== '' && <span className="figure-tolerance">{within}</span>}
      </button>
      {open && (
        <Suspense fallback={null}>
          <Pad
            onClose={() => setOpen(false)}
            asked={{
              label,
              hint,
              kind,
              value,
              typed: snapshot.typed[path],
              ...(signed !== undefined && { signed }),
              question,
              ...(tolerancePath !== undefined && {
                tolerance_mm: typeof tolerance === 'number' ? tolerance : undefined,
                onTolerance: (tolerance_mm: number) =>
                  door.edit({ deed: 'set', path: tolerancePath }, (draft) => putAt(draft, tolerancePath, tolerance_mm)),
              }),
              onEnter: (entered, typed) =>
                door.edit({ deed: 'set', path, typed }, (draft) => put(draft, entered), {
                  [path]: kind === 'length' && !/^[-\d]+(?: ?mm)?$/.test(typed) ? typed : undefined,
                }),
              ...(optional && { onClear: () => door.edit({ deed: 'removed', path }, (draft) => put(draft, undefined)) }),
            }}
          />
        </Suspense>
      )}
    </>
  )
}
