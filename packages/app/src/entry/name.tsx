import { useState } from 'react'
import { useDoor } from '../screens/at-door.ts'
import { LONGEST_TEXT, printable } from '../store/printable.ts'
import { putAt, valueAt } from './places.ts'

/** A name set in a sentence, written in place; it is kept when the field is left or Enter is pressed. */
export function Name({ path, label, missing }: { readonly path: string; readonly label: string; readonly missing?: string }) {
  const { door, snapshot } = useDoor()
  const found = valueAt(snapshot.file, path)
  const kept = typeof found === 'string' ? found : ''
  const [text, setText] = useState<string>()
  const keep = () => {
    const tidy = printable(text ?? kept)
    if (text !== undefined && tidy !== kept && tidy !== '') {
      door.edit({ deed: 'set', path, typed: tidy }, (draft) => putAt(draft, path, tidy))
    }
    setText(undefined)
  }
  return (
    <textarea
      className="name"
      data-at={path}
      rows={1}
      aria-label={label}
      placeholder={missing ?? label}
      maxLength={LONGEST_TEXT}
      disabled={snapshot.readOnly !== undefined}
      value={text ?? kept}
      onChange={(event) => setText(event.target.value)}
      onBlur={keep}
      onKeyDown={(event) => {
        if (event.key === 'Enter') {
          event.preventDefault() // a name is one line, however many it takes to show it
          event.currentTarget.blur()
        }
        if (event.key === 'Escape') setText(undefined)
      }}
    />
  )
}
