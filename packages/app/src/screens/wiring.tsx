import { type DoorFile, type FirstWired, firstWired, firstWiring } from '@sillsight/document'
import { protects } from '@sillsight/engine'
import { freeId } from '../entry/free-id.ts'
import { putAt, valueAt } from '../entry/places.ts'
import type { Draft } from '../store/contract.ts'
import { useFacts } from '../words/facts.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Cautions } from './cautions.tsx'
import { Connections } from './connections.tsx'
import { Group } from './group.tsx'
import { Supply } from './supply.tsx'

const PATH = 'wiring'

/** How the sensors are wired: a usual wiring to begin with, then every core where it goes. */
export function Wiring() {
  const words = useFacts().wiring
  const { door, snapshot, answers } = useDoor()
  const protecting = (answers.shown?.door.sensors ?? []).filter(protects)
  const { chapters } = useWords()
  const { wiring } = snapshot.file
  const ids = protecting.map(({ id }) => id).filter((id) => !wiring?.sensors.some(({ sensor }) => sensor === id))
  const begin = () =>
    door.edit({ deed: 'added', path: PATH, name: words.name }, (draft) => {
      const begun = draft.wiring
      if (begun === undefined) putAt(draft, PATH, firstWiring(ids))
      else for (const id of ids) join(draft, firstWired(id, freeNumber(begun)))
    })
  return (
    <Group title={words.title} holds={[PATH]} said={chapters.isKnown(wiring !== undefined)} isFirst>
      {wiring ? <Connections wiring={wiring} /> : <p>{words.none}</p>}
      {ids.length > 0 && (
        <div className="row">
          <button
            type="button"
            className="second"
            data-at={wiring ? `${PATH}/sensors` : PATH}
            disabled={snapshot.readOnly !== undefined}
            onClick={begin}
          >
            {wiring ? words.beginToo : words.begin}
          </button>
        </div>
      )}
      {wiring && <Supply wiring={wiring} />}
      <Cautions lines={words.cautions} />
    </Group>
  )
}

type Begun = NonNullable<DoorFile['wiring']>

/** The first number that no input and no cable has yet. */
function freeNumber({ control, cables }: Begun): number {
  const taken = [...control.inputs.map(({ id }) => id.replace('stop', 'n')), ...cables.map(({ id }) => id.replace('W', 'n-'))]
  return Number(freeId('n', taken).slice(2))
}

function join(draft: Draft, { sensor, input, cable }: FirstWired): void {
  const push = (path: string, made: object | string) => {
    const list = valueAt(draft, `${PATH}/${path}`)
    if (Array.isArray(list)) list.push(structuredClone(made))
  }
  push('sensors', sensor)
  push('control/inputs', input)
  push('control/test/expects', input.id)
  push('cables', cable)
}
