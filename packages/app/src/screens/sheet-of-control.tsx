import type { DoorFile } from '@sillsight/document'
import { Choose } from '../entry/choose.tsx'
import { Figure } from '../entry/figure.tsx'
import { useListed } from '../entry/listed.ts'
import { putAt, valueAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { useFacts } from '../words/facts.ts'
import { useDoor } from './at-door.ts'
import { InputMore } from './input-more.tsx'
import { newInput } from './new-wiring.ts'
import { Away, Begin } from './sheet-of-sensor.tsx'
import { TerminalName } from './terminal-name.tsx'

type FileControl = NonNullable<DoorFile['wiring']>['control']
type Input = FileControl['inputs'][number]

const PATH = 'wiring/control'

/** The inputs of the control, what a voltage at each means, and its test output. */
export function SheetOfControl({ control }: { readonly control: FileControl }) {
  const words = useFacts().sheets
  const { door } = useDoor()
  const listed = useListed(`${PATH}/inputs`)
  const device = control.inputs[0]?.plus.split('.')[0] ?? 'control'
  const add = () => {
    const made = newInput(control)
    listed.add(made, made.id)
  }
  const begin = () => {
    const expects = control.inputs.filter(({ acts }) => acts === 'stop' || acts === 'reverse').map(({ id }) => id)
    const made = {
      from: `${device}.24V`,
      to: `${device}.test`,
      closedWhile: 'resting',
      expects,
      every_s: 3600,
      whenFailed: 'does-not-close',
    }
    door.edit({ deed: 'added', path: `${PATH}/test`, name: words.testOutput }, (draft) => putAt(draft, `${PATH}/test`, made))
  }
  const canTest = control.inputs.some(({ acts }) => acts === 'stop' || acts === 'reverse')
  return (
    <>
      {control.inputs.map((input, i) => (
        <InputWords key={input.id} input={input} index={i} control={control} device={device} />
      ))}
      {control.inputs.length < 32 && <Begin text={words.moreInputs} onBegin={add} />}
      {control.test ? <TestOutput device={device} /> : canTest && <Begin text={words.addTestOutput} onBegin={begin} />}
    </>
  )
}

interface OfInput {
  readonly input: Input
  readonly index: number
  readonly control: FileControl
  readonly device: string
}

function InputWords({ input, index, control, device }: OfInput) {
  const words = useFacts().sheets
  const { door } = useDoor()
  const path = `${PATH}/inputs/${index}`
  const bands = useListed(`${path}/bands`)
  const { id } = input
  const isExpected = control.test?.expects.includes(id) === true
  const isPaired = control.inputs.some(({ pairedWith }) => pairedWith?.id === id)
  const highest = Math.max(...input.bands.map(({ to_V }) => to_V))
  const expect = (is: boolean) =>
    door.edit({ deed: 'set', path: `${PATH}/test/expects`, name: id, typed: is ? words.yes : words.no }, (draft) => {
      const list = valueAt(draft, `${PATH}/test/expects`)
      if (!Array.isArray(list)) return
      if (is) list.push(id)
      else list.splice(list.indexOf(id), 1)
    })
  return (
    <div className="thing">
      <div>
        <p>
          <Sentence
            text={words.input}
            figures={{
              id,
              acts: <Choose path={`${path}/acts`} label={words.inputActs(id)} options={words.inputDoes} />,
              plus: <TerminalName path={`${path}/plus`} device={device} label={words.plusOf(id)} />,
              minus: <TerminalName path={`${path}/minus`} device={device} label={words.minusOf(id)} />,
              ohm: <Figure path={`${path}/ohm`} label={words.inputOhm(id)} kind="ohm" />,
            }}
          />
        </p>
        <p>
          <Sentence
            text={words.settings}
            figures={{
              settable: (
                <Choose path={`${path}/settable`} label={words.settableOf(id)} options={words.settable} unknown={words.settableUnsaid} />
              ),
              end: <Figure path={`${path}/endOfLine_ohm`} label={words.endOfLine(id)} kind="ohm" optional missing={words.noEndOfLine} />,
            }}
          />
        </p>
        {input.bands.map((_, k) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: ranges have no names, and keep their order
          <div className="thing" key={k}>
            <p>
              <Sentence
                text={words.band}
                figures={{
                  from: <Figure path={`${path}/bands/${k}/from_V`} label={words.bandFrom(k + 1, id)} kind="volt" signed />,
                  to: <Figure path={`${path}/bands/${k}/to_V`} label={words.bandTo(k + 1, id)} kind="volt" signed />,
                  means: <Choose path={`${path}/bands/${k}/means`} label={words.bandMeans(k + 1, id)} options={words.means} />,
                }}
              />
            </p>
            {input.bands.length > 1 && <Away path={`${path}/bands/${k}`} name={words.bandName(k + 1, id)} />}
          </div>
        ))}
        {input.bands.length < 8 && highest < 58 && (
          <Begin
            text={words.moreBands(id)}
            onBegin={() =>
              bands.add({ from_V: highest + 0.5, to_V: highest + 1.5, means: 'fault' }, words.bandName(input.bands.length + 1, id))
            }
          />
        )}
        <InputMore input={input} index={index} control={control} />
        {control.test && (
          <p>
            <button
              type="button"
              className="toggle"
              aria-pressed={isExpected}
              data-at={`${PATH}/test/expects`}
              disabled={isExpected && control.test.expects.length === 1}
              onClick={() => expect(!isExpected)}
            >
              {words.expected(id)}
            </button>
          </p>
        )}
      </div>
      <Away path={path} name={id} disabled={control.inputs.length === 1 || isExpected || isPaired} />
    </div>
  )
}

function TestOutput({ device }: { readonly device: string }) {
  const words = useFacts().sheets
  const path = `${PATH}/test`
  return (
    <div className="thing">
      <p>
        <Sentence
          text={words.control}
          figures={{
            from: <TerminalName path={`${path}/from`} device={device} label={words.testFrom} />,
            to: <TerminalName path={`${path}/to`} device={device} label={words.testTo} />,
            closed: <Choose path={`${path}/closedWhile`} label={words.closedWhile} options={words.closed} />,
            on: <Figure path={`${path}/on_ohm`} label={words.onOf(words.testOutput)} kind="ohm" optional missing={words.usual} />,
            off: <Figure path={`${path}/off_ohm`} label={words.offOf(words.testOutput)} kind="ohm" optional missing={words.usual} />,
            waits: <Figure path={`${path}/waits_s`} label={words.waits} kind="seconds" optional missing={words.unsaid} />,
          }}
        />
      </p>
      <Away path={path} name={words.testOutput} />
    </div>
  )
}
