import { useDoor } from '../screens/at-door.ts'

interface Props<T extends string> {
  readonly label: string
  /** What is read before anything is picked, where that is shorter than the label. */
  readonly shown?: string
  readonly options: Readonly<Record<T, string>>
  /** The place that what is picked is added to. */
  readonly at?: string
  readonly onPick: (picked: T) => void
}

/** Adds one of a few: a list that goes back to what it offers once something was picked. */
export function Pick<T extends string>({ label, shown = label, options, at, onPick }: Props<T>) {
  const { snapshot } = useDoor()
  if (snapshot.readOnly !== undefined) return null
  return (
    <p>
      <select className="choose pick" data-at={at} aria-label={label} value="" onChange={(event) => onPick(event.target.value as T)}>
        <option value="">{shown}</option>
        {(Object.entries(options) as [T, string][]).map(([key, word]) => (
          <option key={key} value={key}>
            {word}
          </option>
        ))}
      </select>
    </p>
  )
}
