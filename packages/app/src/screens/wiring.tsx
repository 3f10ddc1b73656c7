import { protects } from '@sillsight/engine'
import { useFacts } from '../words/facts.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Cautions } from './cautions.tsx'
import { Connections } from './connections.tsx'
import { Group } from './group.tsx'
import { wire } from './new-wiring.ts'
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
  const begin = () => door.edit({ deed: 'added', path: PATH, name: words.name }, (draft) => wire(draft, ids))
  return (
    <>
      <Group title={words.title} holds={[PATH]} said={chapters.isKnown(wiring !== undefined)} isFirst={!wiring}>
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
      </Group>
      <Cautions lines={words.cautions} />
    </>
  )
}
