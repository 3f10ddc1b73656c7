import { Icon } from '../look/icons.tsx'
import { useDoor } from '../screens/at-door.ts'
import { useWords } from '../words/words.ts'

interface Props {
  /** What goes, as it is heard. */
  readonly name: string
  readonly disabled?: boolean
  readonly onAway: () => void
}

/** The cross beside a thing, which takes it away. */
export function Cross({ name, disabled = false, onAway }: Props) {
  const { entry } = useWords()
  const { snapshot } = useDoor()
  return (
    <button
      type="button"
      className="quiet-button"
      aria-label={entry.remove(name)}
      disabled={disabled || snapshot.readOnly !== undefined}
      onClick={onAway}
    >
      <Icon name="cross" />
    </button>
  )
}
