import { useDoor } from '../screens/at-door.ts'
import { useWords } from '../words/words.ts'
import { putAt, valueAt } from './places.ts'

/** A word of the door set in a sentence, out of a few. The platform's own list: it works with gloves, keyboard and screen reader. */
export function Choose<T extends string>(props: {
  readonly path: string
  readonly label: string
  readonly options: Readonly<Record<T, string>>
  /** What a choice brings with it, as the other fields of a new object. */
  readonly onChoose?: (chosen: T) => void
  /** Chosen, but not in the door file yet. */
  readonly waiting?: string | undefined
  /** What is said while nobody knows: it can be chosen again, and takes away what stands there. */
  readonly unknown?: string
  /** Takes away what a plain place would not. */
  readonly onUnknown?: () => void
  /** The place by which whoever misses it is led here, where that is not the path. */
  readonly at?: string
}) {
  const { path, label, options, onChoose, waiting, unknown, onUnknown, at = path } = props
  const words = useWords()
  const { door, snapshot } = useDoor()
  const value = valueAt(snapshot.file, path) ?? waiting
  return (
    <select
      className="choose"
      data-at={at}
      data-enters={at === path ? undefined : path}
      aria-label={label}
      disabled={snapshot.readOnly !== undefined}
      data-missing={value === undefined || undefined}
      value={typeof value === 'string' ? value : ''}
      onChange={(event) => {
        const chosen = event.target.value as T
        if (event.target.value === '' && onUnknown) onUnknown()
        else if (event.target.value === '') door.edit({ deed: 'removed', path }, (draft) => putAt(draft, path, undefined))
        else if (onChoose) onChoose(chosen)
        else door.edit({ deed: 'set', path, typed: options[chosen] }, (draft) => putAt(draft, path, chosen))
      }}
    >
      {(value === undefined || unknown !== undefined) && (
        <option value="" disabled={unknown === undefined}>
          {unknown ?? words.entry.choose}
        </option>
      )}
      {(Object.entries(options) as [T, string][]).map(([key, word]) => (
        <option key={key} value={key}>
          {word}
        </option>
      ))}
    </select>
  )
}
