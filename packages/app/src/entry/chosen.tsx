import { Cross } from './cross.tsx'
import { useListed } from './listed.ts'
import { Pick } from './pick.tsx'

interface Props {
  /** Place of the list of ids in the door file. */
  readonly path: string
  readonly chosen: readonly string[]
  /** What can be chosen, by id. */
  readonly options: Readonly<Record<string, string>>
  readonly add: string
  /** For what, where more than one such list stands on a sheet. */
  readonly of?: string
  /** What the cross beside one that was chosen says. */
  readonly remove: (name: string) => string
  /** Where choosing one brings more with it. */
  readonly onAdd?: (id: string) => void
}

/** Some out of a few, each on a line of its own; a list that is empty again is taken away. */
export function Chosen({ path, chosen, options, add, of, remove, onAdd }: Props) {
  const listed = useListed(path)
  const nameOf = (id: string) => options[id] ?? id
  const left = Object.fromEntries(Object.entries(options).filter(([id]) => !chosen.includes(id)))
  return (
    <>
      {chosen.map((id, i) => (
        <div className="thing chosen" key={id}>
          <span>{nameOf(id)}</span>
          <Cross heard={remove(nameOf(id))} onAway={() => listed.remove(i, nameOf(id))} />
        </div>
      ))}
      {Object.keys(left).length > 0 && (
        <Pick
          label={of === undefined ? add : `${add}: ${of}`}
          shown={add}
          at={path}
          options={left}
          onPick={(id) => (onAdd ? onAdd(id) : listed.add(id, nameOf(id)))}
        />
      )}
    </>
  )
}
