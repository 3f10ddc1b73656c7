import type { DoorFile } from '@sillsight/document'
import { Choose } from '../entry/choose.tsx'
import { Cross } from '../entry/cross.tsx'
import { Figure } from '../entry/figure.tsx'
import { useListed } from '../entry/listed.ts'
import { Sentence } from '../entry/sentence.tsx'
import { useFacts } from '../words/facts.ts'
import { useDoor } from './at-door.ts'
import { Chapter } from './chapter.tsx'
import { DataSheets } from './data-sheets.tsx'
import { Joints } from './joints.tsx'
import { newCable, newCore } from './new-wiring.ts'
import { terminalsOf } from './terminals.ts'

const PATH = 'wiring'
const COLOURS = ['BK', 'BN', 'RD', 'OG', 'YE', 'GN', 'BU', 'VT', 'GY', 'WH', 'PK', 'TQ', 'GNYE']

type FileWiring = NonNullable<DoorFile['wiring']>

/** Every core of a wiring in a sentence, and behind it what the data sheets say of supply, sensors and control. */
export function Connections({ wiring }: { readonly wiring: FileWiring }) {
  const words = useFacts().wiring
  const { snapshot } = useDoor()
  const listed = useListed(`${PATH}/cables`)
  const isLocked = snapshot.readOnly !== undefined
  const terminals = Object.fromEntries(terminalsOf(wiring).map((each) => [each, each]))
  const addCable = () => {
    const cable = newCable(wiring)
    listed.add(cable, words.cableName(cable.id))
  }
  return (
    <>
      {wiring.cables.map((cable, i) => (
        <CableWords key={cable.id} cable={cable} index={i} terminals={terminals} />
      ))}
      <div className="row">
        <button type="button" className="second" data-at={`${PATH}/cables`} disabled={isLocked} onClick={addCable}>
          {words.moreCables}
        </button>
      </div>
      <Joints wiring={wiring} terminals={terminals} />
      <Chapter title={words.data} said={words.dataSaid} holds={['supply', 'sensors', 'control'].map((name) => `${PATH}/${name}`)} isInner>
        <DataSheets wiring={wiring} />
      </Chapter>
    </>
  )
}

interface OfCable {
  readonly cable: FileWiring['cables'][number]
  readonly index: number
  readonly terminals: Readonly<Record<string, string>>
}

function CableWords({ cable, index, terminals }: OfCable) {
  const words = useFacts().wiring
  const { snapshot } = useDoor()
  const path = `${PATH}/cables/${index}`
  const cables = useListed(`${PATH}/cables`)
  const cores = useListed(`${path}/cores`)
  const size = 'area_mm2' in cable.conductor ? 'area_mm2' : 'awg'
  const colours = Object.fromEntries(COLOURS.map((colour) => [colour, colour]))
  const addCore = () => {
    const core = newCore(cable, Object.keys(terminals))
    cores.add(core, words.coreName(`${cable.id}.${core.id}`))
  }
  return (
    <div className="wiring-cable">
      <div className="thing">
        <p>
          <Sentence
            text={words.cable}
            figures={{
              id: cable.id,
              length: <Figure path={`${path}/length_mm`} label={words.length(cable.id)} />,
              size: <Figure path={`${path}/conductor/${size}`} label={words.size(cable.id)} kind={size === 'awg' ? 'count' : 'area'} />,
            }}
          />
        </p>
        <Cross name={words.cableName(cable.id)} onAway={() => cables.remove(index, words.cableName(cable.id))} />
      </div>
      {cable.cores.map((core, k) => {
        const id = `${cable.id}.${core.id}`
        const at = `${path}/cores/${k}`
        return (
          <div className="thing" key={core.id}>
            <p>
              <Sentence
                text={words.core}
                figures={{
                  id: core.id,
                  colour: <Choose path={`${at}/colour`} label={words.colour(id)} options={colours} unknown={words.noColour} />,
                  from: <Choose path={`${at}/from`} label={words.from(id)} options={terminals} />,
                  to: <Choose path={`${at}/to`} label={words.to(id)} options={terminals} />,
                }}
              />
            </p>
            <Cross name={words.coreName(id)} disabled={cable.cores.length === 1} onAway={() => cores.remove(k, words.coreName(id))} />
          </div>
        )
      })}
      <div className="row">
        <button type="button" className="link" disabled={snapshot.readOnly !== undefined} onClick={addCore}>
          {words.moreCores(cable.id)}
        </button>
      </div>
    </div>
  )
}
