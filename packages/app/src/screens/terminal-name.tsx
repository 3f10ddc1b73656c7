import { AskedName } from '../entry/name.tsx'
import { valueAt } from '../entry/places.ts'
import { useDoor } from './at-door.ts'
import { renameTerminal, terminalName } from './terminals.ts'

/** A terminal by its name; another name goes along to every core that ends there. What cannot be a name is not taken. */
export function TerminalName({ path, device, label }: { readonly path: string; readonly device: string; readonly label: string }) {
  const { door, snapshot } = useDoor()
  const found = valueAt(snapshot.file, path)
  const value = typeof found === 'string' ? found : ''
  return (
    <AskedName
      at={path}
      label={label}
      readOnly={snapshot.readOnly !== undefined}
      value={value}
      onName={(typed) => {
        const next = terminalName(typed, device)
        if (next !== undefined && next !== value)
          door.edit({ deed: 'set', path, name: label, typed: next }, (draft) => renameTerminal(draft, value, next))
      }}
    />
  )
}
