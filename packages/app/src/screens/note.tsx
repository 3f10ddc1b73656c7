import { putAt } from '../entry/places.ts'
import { useWritten } from '../entry/written.ts'
import { LONGEST_NOTE, printableLines } from '../store/printable.ts'
import { useAround } from '../words/around.ts'
import { useDoor } from './at-door.ts'

/** Anything worth saying about the door, in as many lines as it takes; it is kept when the field is left or the page goes out of sight. */
export function Note() {
  const words = useAround().note
  const { door, snapshot } = useDoor()
  const kept = snapshot.file.note ?? ''
  const { leave, ...written } = useWritten(kept, (text) => {
    const tidy = printableLines(text)
    if (tidy === kept) return
    door.edit({ deed: tidy === '' ? 'removed' : 'set', path: 'note' }, (draft) => putAt(draft, 'note', tidy === '' ? undefined : tidy))
  })
  return (
    <textarea
      className="name lines"
      data-at="note"
      rows={4}
      aria-label={words.label}
      placeholder={words.label}
      maxLength={LONGEST_NOTE}
      disabled={snapshot.readOnly !== undefined}
      {...written}
      onKeyDown={(event) => event.key === 'Escape' && leave()}
    />
  )
}
