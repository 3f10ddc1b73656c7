import { useDoor } from '../screens/at-door.ts'
import { putAt, valueAt } from './places.ts'

interface Props {
  readonly label: string
  readonly value: string
  readonly at?: string | undefined
  readonly readOnly?: boolean
  /** A whole day, or undefined where it was taken away. */
  readonly onDay: (day: string | undefined) => void
}

/** A day in a sentence, by the platform's own calendar. */
export function AskedDay({ label, value, at, readOnly = false, onDay }: Props) {
  return (
    <input
      type="date"
      className="name day"
      data-at={at}
      data-missing={value === '' || undefined}
      aria-label={label}
      min="2000-01-01"
      max="2100-12-31"
      disabled={readOnly}
      value={value}
      onChange={({ currentTarget }) => onDay(/^\d{4}-\d{2}-\d{2}$/.test(currentTarget.value) ? currentTarget.value : undefined)}
    />
  )
}

/** A day of the door. */
export function Day({ path, label, optional = false }: { readonly path: string; readonly label: string; readonly optional?: boolean }) {
  const { door, snapshot } = useDoor()
  const found = valueAt(snapshot.file, path)
  return (
    <AskedDay
      at={path}
      label={label}
      readOnly={snapshot.readOnly !== undefined}
      value={typeof found === 'string' ? found : ''}
      onDay={(day) => {
        if (day !== undefined) door.edit({ deed: 'set', path, typed: day }, (draft) => putAt(draft, path, day))
        else if (optional) door.edit({ deed: 'removed', path }, (draft) => putAt(draft, path, undefined))
      }}
    />
  )
}
