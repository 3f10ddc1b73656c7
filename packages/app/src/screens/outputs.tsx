import type { DoorFile } from '@sillsight/document'
import type { Field } from '@sillsight/engine'
import { Choose } from '../entry/choose.tsx'
import { Figure } from '../entry/figure.tsx'
import { AskedName } from '../entry/name.tsx'
import { putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { useFacts } from '../words/facts.ts'
import { useDoor } from './at-door.ts'

interface OutputsOf {
  readonly path: string
  readonly fields: readonly Field[]
  readonly listed: FileSensor['outputs']
  /** The fields as the door file has them; undefined where they are the library's. */
  readonly own: FileSensor['fields']
}
type FileSensor = NonNullable<DoorFile['sensors']>[number]
type Does = NonNullable<FileSensor['outputs']>[number]['function']
type Says = NonNullable<NonNullable<FileSensor['outputs']>[number]['whileWarmingUp']>

/** What its outputs do, how long it takes after a loss of power, and what they say so long; the first answer lists them all in the file. */
export function Outputs({ path, fields, listed, own }: OutputsOf) {
  const words = useFacts().sensing
  const { door, snapshot } = useDoor()
  const outputs = listed ?? [...new Map(fields.map(({ output, function: acts }) => [output, { name: output, function: acts }])).values()]
  const say = (index: number, says: Says | undefined) =>
    door.edit({ deed: 'set', path: `${path}/outputs`, typed: says === undefined ? words.unsaidOutput : words.saysNames[says] }, (draft) => {
      if (listed === undefined) putAt(draft, `${path}/outputs`, structuredClone(outputs))
      putAt(draft, `${path}/outputs/${index}/whileWarmingUp`, says)
    })
  const act = (index: number, name: string, does: Does) =>
    door.edit({ deed: 'set', path: `${path}/outputs`, typed: words.doesNames[does] }, (draft) => {
      if (listed === undefined) putAt(draft, `${path}/outputs`, structuredClone(outputs))
      putAt(draft, `${path}/outputs/${index}/function`, does)
      if (does !== 'presence') putAt(draft, `${path}/outputs/${index}/presenceTime_s`, undefined)
      // a field that says a function of its own says that of its output
      for (const [k, field] of (own ?? []).entries())
        if (field.output === name && field.function !== undefined) putAt(draft, `${path}/fields/${k}/function`, does)
    })
  /** Fields name their output: they go along with its name. */
  const rename = (index: number, name: string, next: string) =>
    door.edit({ deed: 'set', path: `${path}/outputs/${index}/name`, typed: next }, (draft) => {
      putAt(draft, `${path}/outputs/${index}/name`, next)
      for (const [k, field] of (own ?? []).entries()) if (field.output === name) putAt(draft, `${path}/fields/${k}/output`, next)
    })
  return (
    <>
      {own !== undefined &&
        outputs.map(({ name, function: acts }, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: its name is what is changed here
          <p key={i}>
            <Sentence
              text={words.outputDoes}
              figures={{
                output:
                  listed === undefined ? (
                    name
                  ) : (
                    <AskedName
                      at={`${path}/outputs/${i}/name`}
                      label={`${words.outputName}: ${name}`}
                      value={name}
                      readOnly={snapshot.readOnly !== undefined}
                      onName={(next) => !outputs.some((other) => other.name === next) && rename(i, name, next)}
                    />
                  ),
                does: (
                  <Choose
                    path={`${path}/outputs/${i}/function`}
                    label={`${words.does}: ${name}`}
                    options={words.doesNames}
                    waiting={acts}
                    onChoose={(does) => act(i, name, does)}
                  />
                ),
              }}
            />
          </p>
        ))}
      <p>
        <Sentence
          text={words.waking}
          figures={{ warmUp: <Figure path={`${path}/warmUp_s`} label={words.warmUp} kind="seconds" optional /> }}
        />
      </p>
      {outputs.map(({ name, function: acts }, i) =>
        acts !== 'presence' ? null : (
          <p key={name}>
            <Sentence
              text={words.untilThen}
              figures={{
                output: name,
                says: (
                  <Choose
                    path={`${path}/outputs/${i}/whileWarmingUp`}
                    {...(listed === undefined && { at: `${path}/outputs` })}
                    label={`${words.says}: ${name}`}
                    options={words.saysNames}
                    unknown={words.unsaidOutput}
                    onChoose={(says) => say(i, says)}
                    onUnknown={() => say(i, undefined)}
                  />
                ),
              }}
            />
          </p>
        ),
      )}
    </>
  )
}
