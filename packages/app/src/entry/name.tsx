import { useDoor } from '../screens/at-door.ts'
import { LONGEST_NOTE, LONGEST_TEXT, printable } from '../store/printable.ts'
import { putAt, valueAt } from './places.ts'
import { useWritten } from './written.ts'

/** A name of the door set in a sentence. */
export function Name({ path, label, missing }: { readonly path: string; readonly label: string; readonly missing?: string }) {
  const { door, snapshot } = useDoor()
  const found = valueAt(snapshot.file, path)
  return (
    <AskedName
      at={path}
      label={label}
      missing={missing}
      longest={/(^|\/)note$/.test(path) ? LONGEST_NOTE : LONGEST_TEXT}
      readOnly={snapshot.readOnly !== undefined}
      value={typeof found === 'string' ? found : ''}
      onName={(tidy) => door.edit({ deed: 'set', path, typed: tidy }, (draft) => putAt(draft, path, tidy))}
    />
  )
}

interface Asked {
  readonly label: string
  readonly value: string
  readonly at?: string | undefined
  readonly missing?: string | undefined
  readonly readOnly?: boolean
  readonly longest?: number
  readonly onName: (tidy: string) => void
}

/** A name written in place; it is kept when the field is left, the page goes out of sight, or Enter is pressed. */
export function AskedName({ label, value, at, missing, readOnly = false, longest = LONGEST_TEXT, onName }: Asked) {
  const { leave, ...written } = useWritten(value, (text) => {
    const tidy = printable(text, longest)
    if (tidy !== value && tidy !== '') onName(tidy)
  })
  return (
    <textarea
      className="name"
      data-at={at}
      rows={1}
      aria-label={label}
      placeholder={missing ?? label}
      maxLength={longest}
      disabled={readOnly}
      {...written}
      onKeyDown={(event) => {
        if (event.key === 'Enter') {
          event.preventDefault() // a name is one line, however many it takes to show it
          event.currentTarget.blur()
        }
        if (event.key === 'Escape') leave()
      }}
    />
  )
}
