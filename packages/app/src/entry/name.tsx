import { useState } from 'react'
import { useDoor } from '../screens/at-door.ts'
import { putAt, valueAt } from './places.ts'

const LONGEST = 200

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
      rows={1}
      aria-label={label}
      placeholder={missing ?? label}
      maxLength={LONGEST}
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

/** Without what would steer a terminal or turn the writing direction: the door file refuses those characters. */
function printable(text: string): string {
  return text
    .replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069]/g, ' ')
    .trim()
    .slice(0, LONGEST)
}
