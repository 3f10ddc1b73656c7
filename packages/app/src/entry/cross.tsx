import { Icon } from '../look/icons.tsx'
import { useDoor } from '../screens/at-door.ts'
import { useWords } from '../words/words.ts'

type Props = {
  readonly disabled?: boolean
  readonly onAway: () => void
} & (
  | {
      /** What goes, as it is heard. */
      readonly name: string
    }
  | {
      /** All that is heard, where something else happens than that a thing goes. */
      readonly heard: string
    }
)

/** The cross beside a thing, which takes it away. */
export function Cross({ disabled = false, onAway, ...said }: Props) {
  const { entry } = useWords()
  const { snapshot } = useDoor()
  return (
    <button
      type="button"
      className="quiet-button"
      aria-label={'name' in said ? entry.remove(said.name) : said.heard}
      disabled={disabled || snapshot.readOnly !== undefined}
      onClick={onAway}
    >
      <Icon name="cross" />
    </button>
  )
}
