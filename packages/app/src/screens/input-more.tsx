import type { DoorFile } from '@sillsight/document'
import { Choose } from '../entry/choose.tsx'
import { Figure } from '../entry/figure.tsx'
import { Pick } from '../entry/pick.tsx'
import { putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import type { Draft } from '../store/contract.ts'
import { useFacts } from '../words/facts.ts'
import { useDoor } from './at-door.ts'
import { Away, Begin } from './sheet-of-sensor.tsx'
import { terminalsOf } from './terminals.ts'

type FileControl = NonNullable<DoorFile['wiring']>['control']
type Input = FileControl['inputs'][number]

const PATH = 'wiring/control/inputs'
/** To begin with: how long two channels may disagree, and through what a control feeds a line. */
const DISCREPANCY_S = 0.5
const FED_OHM = 1000

interface OfInput {
  readonly input: Input
  readonly index: number
  readonly control: FileControl
}

/** What only some inputs have: a second channel, and a line that the control feeds itself. */
export function InputMore(of: OfInput) {
  return (
    <>
      <SecondChannel {...of} />
      <OwnFeed {...of} />
    </>
  )
}

/** Both inputs of a pair say it of each other, so that it is the same pair from either side. */
function SecondChannel({ input: { id, pairedWith }, index, control }: OfInput) {
  const words = useFacts().sheets
  const { door } = useDoor()
  const at = `${PATH}/${index}/pairedWith`
  const isFree = (each: Input) => each.id !== id && (each.pairedWith === undefined || each.pairedWith.id === id)
  const others = Object.fromEntries(control.inputs.filter(isFree).map((each) => [each.id, each.id]))
  const pair = (other: string) =>
    door.edit({ deed: pairedWith ? 'set' : 'added', path: at, name: words.pairName(id), typed: other }, (draft) => {
      unpair(draft, id)
      for (const [one, two] of [[id, other] as const, [other, id] as const])
        putPair(draft, one, { id: two, discrepancy_s: pairedWith?.discrepancy_s ?? DISCREPANCY_S })
    })
  if (!pairedWith)
    return Object.keys(others).length === 0 ? null : (
      <Pick label={words.addPair(id)} shown={words.addPairShort} at={at} options={others} onPick={pair} />
    )
  return (
    <p>
      <Sentence
        text={words.paired}
        figures={{
          other: <Choose path={`${at}/id`} label={words.pairedOf(id)} options={others} onChoose={pair} />,
          discrepancy: (
            <Figure
              path={`${at}/discrepancy_s`}
              label={words.discrepancy(id)}
              kind="seconds"
              put={(draft, value) => {
                if (value === undefined) return
                for (const each of inputsOf(draft)) {
                  const other = each.id === id ? pairedWith.id : each.pairedWith?.id === id ? id : undefined
                  if (other !== undefined) putPair(draft, each.id, { id: other, discrepancy_s: value })
                }
              }}
            />
          ),
        }}
      />
      <Away path={at} name={words.pairName(id)} onAway={(draft) => unpair(draft, id)} />
    </p>
  )
}

function inputsOf(draft: Draft): readonly Input[] {
  return draft.wiring?.control.inputs ?? []
}

function putPair(draft: Draft, id: string, pair: Input['pairedWith']): void {
  putAt(draft, `${PATH}/${inputsOf(draft).findIndex((each) => each.id === id)}/pairedWith`, pair)
}

/** Takes an input out of its pair, from both sides. */
function unpair(draft: Draft, id: string): void {
  for (const each of inputsOf(draft))
    if (each.pairedWith && (each.id === id || each.pairedWith.id === id)) putPair(draft, each.id, undefined)
}

function OwnFeed({ input: { id, fedFrom }, index }: OfInput) {
  const words = useFacts().sheets
  const { door, snapshot } = useDoor()
  const { wiring } = snapshot.file
  if (!wiring) return null
  const at = `${PATH}/${index}/fedFrom`
  const begin = () =>
    door.edit({ deed: 'added', path: at, name: words.fedName(id) }, (draft) =>
      putAt(draft, at, { terminal: wiring.supply.plus, ohm: FED_OHM }),
    )
  if (!fedFrom) return <Begin text={words.addFed(id)} onBegin={begin} />
  const terminals = Object.fromEntries(terminalsOf(wiring).map((each) => [each, each]))
  return (
    <p>
      <Sentence
        text={words.fed}
        figures={{
          terminal: <Choose path={`${at}/terminal`} label={words.fedFrom(id)} options={terminals} />,
          ohm: <Figure path={`${at}/ohm`} label={words.fedOhm(id)} kind="ohm" />,
        }}
      />
      <Away path={at} name={words.fedName(id)} />
    </p>
  )
}
