import type { DoorFile } from '@sillsight/document'
import { Choose } from '../entry/choose.tsx'
import { Cross } from '../entry/cross.tsx'
import { Figure } from '../entry/figure.tsx'
import { freeId } from '../entry/free-id.ts'
import { Pick } from '../entry/pick.tsx'
import { putAt, valueAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Toggles } from '../entry/toggles.tsx'
import type { Draft } from '../store/contract.ts'
import { useFacts } from '../words/facts.ts'
import { useDoor } from './at-door.ts'
import { TerminalName } from './terminal-name.tsx'
import { keepEnds } from './terminals.ts'

type FileSensor = NonNullable<DoorFile['wiring']>['sensors'][number]
type Output = FileSensor['outputs'][number]

/** The outputs and the test input of one sensor, as its data sheet has them. */
export function SheetOfSensor({ sensor, index }: { readonly sensor: FileSensor; readonly index: number }) {
  const words = useFacts().sheets
  const { door } = useDoor()
  const path = `wiring/sensors/${index}`
  const device = sensor.power.plus.split('.')[0] ?? sensor.sensor
  const add = (kind: Output['kind']) => {
    const name = freeId(
      'out',
      sensor.outputs.map((output) => output.name),
    )
    door.edit({ deed: 'added', path: `${path}/outputs`, name }, (draft) => {
      const list = valueAt(draft, `${path}/outputs`)
      if (Array.isArray(list)) list.push(newOutput(kind, name, `${device}.${name}`))
    })
  }
  const begin = () => {
    const made = { plus: `${device}.test`, minus: sensor.power.minus, ohm: 5000, asked: 'below', on_V: 11, off_V: 5 }
    door.edit({ deed: 'added', path: `${path}/test`, name: words.testInput }, (draft) => putAt(draft, `${path}/test`, made))
  }
  const isFull = sensor.outputs.length >= 16
  return (
    <>
      <p>
        <Sentence
          text={words.power}
          figures={{
            name: sensor.sensor,
            plus: <TerminalName path={`${path}/power/plus`} device={device} label={words.plusOf(sensor.sensor)} />,
            minus: <TerminalName path={`${path}/power/minus`} device={device} label={words.minusOf(sensor.sensor)} />,
            inrush: (
              <Figure path={`${path}/power/inrush_A`} label={words.inrush(sensor.sensor)} kind="ampere" optional missing={words.unsaid} />
            ),
            own: (
              <Figure
                path={`${path}/ownFaults_s`}
                label={words.ownFaults(sensor.sensor)}
                kind="seconds"
                optional
                missing={words.notItself}
              />
            ),
          }}
        />
      </p>
      {sensor.outputs.map((output, k) => (
        <OutputWords key={output.name} output={output} path={`${path}/outputs/${k}`} device={device} isLast={sensor.outputs.length === 1} />
      ))}
      {!isFull && <Pick label={words.moreOutputs(sensor.sensor)} shown={words.moreOutputsShort} options={words.kinds} onPick={add} />}
      {sensor.test ? (
        <TestWords path={`${path}/test`} device={device} of={sensor.sensor} />
      ) : (
        <Begin text={words.addTest} onBegin={begin} />
      )}
    </>
  )
}

function newOutput(kind: Output['kind'], name: string, at: string) {
  const common = { name, acts: 'presence' }
  if (kind === 'contact') return { kind, ...common, from: `${at}a`, to: `${at}b`, closedIn: ['clear'] }
  if (kind === 'change-over') return { kind, ...common, common: `${at}c`, energised: `${at}a`, released: `${at}b`, energisedIn: ['clear'] }
  return { kind, ...common, at, onIn: ['clear'] }
}

export function Begin({ text, onBegin }: { readonly text: string; readonly onBegin: () => void }) {
  const { snapshot } = useDoor()
  return (
    <div className="row">
      <button type="button" className="link" disabled={snapshot.readOnly !== undefined} onClick={onBegin}>
        {text}
      </button>
    </div>
  )
}

interface OfOutput {
  readonly output: Output
  readonly path: string
  readonly device: string
  readonly isLast: boolean
}

function OutputWords({ output, path, device, isLast }: OfOutput) {
  const words = useFacts().sheets
  const { name } = output
  const terminal = (field: string) => (
    <TerminalName
      path={`${path}/${field}`}
      device={device}
      label={words.terminal(words.fields[field as keyof typeof words.fields], name)}
    />
  )
  const states = (field: 'closedIn' | 'energisedIn' | 'onIn') => (
    <Toggles path={`${path}/${field}`} label={words.statesOf(name)} options={field === 'closedIn' ? words.states : words.powered} />
  )
  const common = {
    name,
    acts: <Choose path={`${path}/acts`} label={words.actsOf(name)} options={words.acts} />,
    on: <Figure path={`${path}/on_ohm`} label={words.onOf(name)} kind="ohm" optional missing={words.usual} />,
  }
  return (
    <div className="thing">
      <div>
        <p>
          {output.kind === 'contact' ? (
            <Sentence
              text={words.contact}
              figures={{ ...common, from: terminal('from'), to: terminal('to'), states: states('closedIn') }}
            />
          ) : output.kind === 'change-over' ? (
            <Sentence
              text={words.changeOver}
              figures={{
                ...common,
                common: terminal('common'),
                energised: terminal('energised'),
                released: terminal('released'),
                states: states('energisedIn'),
              }}
            />
          ) : (
            <Sentence
              text={output.kind === 'sourcing' ? words.sourcing : words.sinking}
              figures={{
                ...common,
                at: terminal('at'),
                states: states('onIn'),
                off: <Figure path={`${path}/off_ohm`} label={words.offOf(name)} kind="ohm" optional missing={words.usual} />,
              }}
            />
          )}
        </p>
        <p>
          <Sentence
            text={words.outputSetting}
            figures={{
              settable: (
                <Choose path={`${path}/settable`} label={words.settableOf(name)} options={words.settable} unknown={words.settableUnsaid} />
              ),
            }}
          />
        </p>
        {(output.kind === 'sourcing' || output.kind === 'sinking') && <Pulses output={output} path={`${path}/pulsed`} />}
      </div>
      <Away path={path} name={name} disabled={isLast} />
    </div>
  )
}

function Pulses({ output, path }: { readonly output: Extract<Output, { kind: 'sourcing' | 'sinking' }>; readonly path: string }) {
  const words = useFacts().sheets
  const { door } = useDoor()
  const begin = () => door.edit({ deed: 'added', path, name: words.pulses }, (draft) => putAt(draft, path, { off_V: 5, within_s: 0.1 }))
  if (!output.pulsed) return <Begin text={words.addPulses(output.name)} onBegin={begin} />
  return (
    <p>
      <Sentence
        text={words.pulsed}
        figures={{
          off: <Figure path={`${path}/off_V`} label={words.pulseVolt(output.name)} kind="volt" signed />,
          within: <Figure path={`${path}/within_s`} label={words.pulseTime(output.name)} kind="seconds" />,
        }}
      />
    </p>
  )
}

function TestWords({ path, device, of }: { readonly path: string; readonly device: string; readonly of: string }) {
  const words = useFacts().sheets
  const figure = (field: 'ohm' | 'on_V' | 'off_V', kind: 'ohm' | 'volt') => (
    <Figure path={`${path}/${field}`} label={words.testFigures[field](of)} kind={kind} signed={kind === 'volt'} />
  )
  return (
    <div className="thing">
      <p>
        <Sentence
          text={words.test}
          figures={{
            plus: <TerminalName path={`${path}/plus`} device={device} label={words.terminal(words.testInput, of)} />,
            minus: <TerminalName path={`${path}/minus`} device={device} label={words.terminal(words.testReturn, of)} />,
            ohm: figure('ohm', 'ohm'),
            asked: <Choose path={`${path}/asked`} label={words.askedOf(of)} options={words.asked} />,
            on: figure('on_V', 'volt'),
            off: figure('off_V', 'volt'),
            answers: <Figure path={`${path}/answers_s`} label={words.answers(of)} kind="seconds" optional missing={words.unsaid} />,
          }}
        />
      </p>
      <Away path={path} name={words.testInput} />
    </div>
  )
}

/** Takes a part of the wiring away; ends of cores that were there stay in the air. */
export function Away(props: {
  readonly path: string
  readonly name: string
  readonly disabled?: boolean
  /** Takes away more than what stands at the place. */
  readonly onAway?: (draft: Draft) => void
}) {
  const { path, name, disabled = false, onAway } = props
  const { door } = useDoor()
  const take = () =>
    door.edit({ deed: 'removed', path, name }, (draft) => {
      const at = path.slice(0, path.lastIndexOf('/'))
      const list = valueAt(draft, at)
      if (Array.isArray(list)) list.splice(Number(path.slice(at.length + 1)), 1)
      else putAt(draft, path, undefined)
      onAway?.(draft)
      keepEnds(draft)
    })
  return <Cross name={name} disabled={disabled} onAway={take} />
}
