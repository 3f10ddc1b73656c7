import { useDoor } from '../screens/at-door.ts'
import { putAt, valueAt } from './places.ts'

interface Props<T extends string> {
  /** Place of a list of words in the door file. */
  readonly path: string
  readonly label: string
  readonly options: Readonly<Record<T, string>>
}

/** Some of a few words, each a button that is pressed or not. */
export function Toggles<T extends string>({ path, label, options }: Props<T>) {
  const { door, snapshot } = useDoor()
  const found = valueAt(snapshot.file, path)
  const chosen: readonly unknown[] = Array.isArray(found) ? found : []
  const keys = Object.keys(options) as T[]
  const toggle = (key: T) => {
    const next = keys.filter((each) => chosen.includes(each) !== (each === key))
    door.edit({ deed: 'set', path, name: label, typed: next.map((each) => options[each]).join(', ') }, (draft) => putAt(draft, path, next))
  }
  return (
    <span role="group" aria-label={label} className="toggles">
      {keys.map((key) => (
        <button
          key={key}
          type="button"
          className="toggle"
          data-at={path}
          aria-pressed={chosen.includes(key)}
          disabled={snapshot.readOnly !== undefined}
          onClick={() => toggle(key)}
        >
          {options[key]}
        </button>
      ))}
    </span>
  )
}
