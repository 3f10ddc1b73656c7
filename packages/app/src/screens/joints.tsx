import type { DoorFile } from '@sillsight/document'
import { Choose } from '../entry/choose.tsx'
import { Cross } from '../entry/cross.tsx'
import { Figure } from '../entry/figure.tsx'
import { useListed } from '../entry/listed.ts'
import { Name } from '../entry/name.tsx'
import { Sentence } from '../entry/sentence.tsx'
import { useFacts } from '../words/facts.ts'
import { useDoor } from './at-door.ts'
import { newJoint, newResistor } from './new-wiring.ts'
import { TerminalName } from './terminal-name.tsx'

type FileWiring = NonNullable<DoorFile['wiring']>

const JOINTS = 'wiring/joints'
const RESISTORS = 'wiring/resistors'
const MOST = { joints: 200, resistors: 64 }

interface Props {
  readonly wiring: FileWiring
  readonly terminals: Readonly<Record<string, string>>
}

/** What cores end at that belongs to no device: joints, resistors, and what else there is to say. */
export function Joints({ wiring, terminals }: Props) {
  const words = useFacts().wiring
  const { snapshot } = useDoor()
  const isLocked = snapshot.readOnly !== undefined
  const [listed, listedResistors] = [useListed(JOINTS), useListed(RESISTORS)]
  const { joints = [], resistors = [] } = wiring
  const ends = [...wiring.cables.flatMap(({ cores }) => cores), ...resistors].flatMap(({ from, to }) => [from, to])
  const addJoint = () => {
    const joint = newJoint(Object.keys(terminals))
    listed.add(joint, words.jointName(joint))
  }
  const addResistor = () => {
    const made = newResistor(wiring)
    listedResistors.add(made, words.resistorName(made.id))
  }
  return (
    <>
      {joints.map((joint, i) => (
        <div className="thing" key={joint}>
          <p>
            <Sentence
              text={words.joint}
              figures={{ name: <TerminalName path={`${JOINTS}/${i}`} device="joint" label={words.nameOfJoint(joint)} /> }}
            />
          </p>
          <Cross name={words.jointName(joint)} disabled={ends.includes(joint)} onAway={() => listed.remove(i, words.jointName(joint))} />
        </div>
      ))}
      {resistors.map(({ id }, i) => (
        <div className="thing" key={id}>
          <p>
            <Sentence
              text={words.resistor}
              figures={{
                id,
                ohm: <Figure path={`${RESISTORS}/${i}/ohm`} label={words.resistorOhm(id)} kind="ohm" />,
                from: <Choose path={`${RESISTORS}/${i}/from`} label={words.resistorFrom(id)} options={terminals} />,
                to: <Choose path={`${RESISTORS}/${i}/to`} label={words.resistorTo(id)} options={terminals} />,
              }}
            />
          </p>
          <Cross name={words.resistorName(id)} onAway={() => listedResistors.remove(i, words.resistorName(id))} />
        </div>
      ))}
      <div className="row">
        {joints.length < MOST.joints && (
          <button type="button" className="link" data-at={JOINTS} disabled={isLocked} onClick={addJoint}>
            {words.moreJoints}
          </button>
        )}
        {resistors.length < MOST.resistors && (
          <button type="button" className="link" data-at={RESISTORS} disabled={isLocked} onClick={addResistor}>
            {words.moreResistors}
          </button>
        )}
      </div>
      <p>
        <Name path="wiring/note" label={words.note} />
      </p>
    </>
  )
}
