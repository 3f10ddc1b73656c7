import { passingBodies } from '@sillsight/document'
import { called } from '@sillsight/report'
import { Chosen } from '../entry/chosen.tsx'
import { pushAt } from '../entry/places.ts'
import { Explained } from '../help/explained.tsx'
import type { Draft } from '../store/contract.ts'
import { useAround } from '../words/around.ts'
import { useReader } from '../words/reader.ts'
import { useDoor } from './at-door.ts'

interface Props {
  /** Place of the list in the door file. */
  readonly path: string
  /** What is judged with them, by name. */
  readonly of: string
  readonly chosen: readonly string[]
  /** Said while none is chosen. */
  readonly all: string
}

/** The bodies that stand in for whoever passes; a new one comes out of the invented ones that pass, and into the door with what it is chosen for. */
export function ChosenBodies({ path, of, chosen, all }: Props) {
  const words = useAround().calls
  const reader = useReader()
  const { door, snapshot, answers } = useDoor()
  const own = snapshot.file.bodies ?? []
  const offered = new Map(passingBodies().map((body) => [body.id, body.name]))
  const nameOf = (id: string) => {
    const shown = answers.shown?.door.bodies.find((body) => body.id === id)?.name
    const use = own.find((body) => body.id === id)?.use ?? id
    return called(shown ?? offered.get(use) ?? id, reader)
  }
  const ids = [...new Set([...own.map(({ id }) => id), ...offered.keys()])]
  return (
    <>
      <p>
        <Explained text={chosen.length === 0 ? all : words.chosen} />
      </p>
      <Chosen
        path={path}
        chosen={chosen}
        options={Object.fromEntries(ids.map((id) => [id, nameOf(id)]))}
        add={words.addBody}
        remove={(body) => words.removeBody(body, of)}
        onAdd={(id) =>
          door.edit({ deed: 'added', path, name: nameOf(id) }, (draft) => {
            bring(draft, id)
            pushAt(draft, path, id)
          })
        }
      />
    </>
  )
}

/** A body of the library in the door; the one that was assumed so far is written beside it, so that zones keep theirs. */
function bring(draft: Draft, id: string): void {
  const made = { id, use: id }
  if (!draft.bodies?.length) pushAt(draft, 'bodies', { id: REFERENCE, use: REFERENCE })
  if (!draft.bodies?.some((body) => body.id === id)) pushAt(draft, 'bodies', made)
}
const REFERENCE = 'presence-reference-body'
