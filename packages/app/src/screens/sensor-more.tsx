import type { DoorFile } from '@sillsight/document'
import type { Field, Sensor } from '@sillsight/engine'
import { Choose } from '../entry/choose.tsx'
import { Figure } from '../entry/figure.tsx'
import { Name } from '../entry/name.tsx'
import { putAt, valueAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { useFacts } from '../words/facts.ts'
import { useDoor } from './at-door.ts'
import { Declares } from './declares.tsx'

/** What a sensor's sentence leaves out: where its values come from, what it learned, how far its fields reach, how people come to them. */
export function SensorMore({ index }: { readonly index: number }) {
  const words = useFacts().sensing
  const { door, snapshot, answers } = useDoor()
  const path = `sensors/${index}`
  const sensor = snapshot.file.sensors?.[index]
  const shown = answers.shown?.door.sensors[index]
  if (!sensor) return null
  const states = snapshot.file.survey.states ?? []
  const isRanging = shown?.kind === 'ranging'
  const basis = sensor.source?.basis
  return (
    <>
      <p>
        <Sentence
          text={words.known}
          figures={{
            basis: <Choose path={`${path}/source/basis`} at={`${path}/source`} label={words.basis} options={words.bases} />,
            where: (
              <Name
                path={basis === 'measured' || basis === 'our decision' ? `${path}/source/note` : `${path}/source/document`}
                label={words.where}
                missing={words.where}
              />
            ),
          }}
        />
      </p>
      {isRanging && (
        <p>
          <Sentence
            text={words.margin}
            figures={{
              margin: (
                <Figure
                  path={`${path}/backgroundMargin_mm`}
                  label={words.marginLabel}
                  put={marginPut(path, sensor.use !== undefined)}
                  optional
                />
              ),
            }}
          />
        </p>
      )}
      {states.length > 1 && (
        <p>
          <Sentence
            text={words.learned}
            figures={{
              state: (
                <Choose
                  path={`${path}/learnedIn`}
                  label={words.learnedLabel}
                  options={Object.fromEntries(states.map(({ id, name = id }) => [id, name]))}
                  unknown={words.unsaid}
                />
              ),
            }}
          />
        </p>
      )}
      {shown !== undefined && shown.kind !== 'zone-only' && (
        <Outputs path={path} fields={shown.fields} listed={sensor.outputs} own={sensor.fields} />
      )}
      {isProtecting(shown) && <Declares path={path} />}
      {sensor.fields === undefined && shown !== undefined && shown.kind !== 'zone-only' && (
        <>
          <p>{words.fieldsElsewhere}</p>
          <div className="row">
            <button
              type="button"
              className="second"
              data-at={`${path}/fields`}
              disabled={snapshot.readOnly !== undefined}
              onClick={() =>
                door.edit({ deed: 'added', path: `${path}/fields` }, (draft) =>
                  putAt(draft, `${path}/fields`, shown.fields.map(inFile(shown))),
                )
              }
            >
              {words.writeFields}
            </button>
          </div>
        </>
      )}
      {sensor.fields?.map((field, i) => (
        <FieldMore key={field.id} path={`${path}/fields/${i}`} name={field.name ?? field.id} isRanging={isRanging} />
      ))}
    </>
  )
}

function isProtecting(sensor: Sensor | undefined): boolean {
  if (sensor === undefined) return false
  return sensor.kind === 'zone-only' ? sensor.function === 'presence' : sensor.fields.some((field) => field.function === 'presence')
}

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
function Outputs({ path, fields, listed, own }: OutputsOf) {
  const words = useFacts().sensing
  const { door } = useDoor()
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
  return (
    <>
      {own !== undefined &&
        outputs.map(({ name, function: acts }, i) => (
          <p key={name}>
            <Sentence
              text={words.outputDoes}
              figures={{
                output: name,
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

/** A figure that takes the place of the library's says where it comes from: somebody entered it here, from memory until he says better. */
function marginPut(path: string, isOfLibrary: boolean) {
  return (draft: Parameters<typeof putAt>[0], value: number | undefined) => {
    putAt(draft, `${path}/backgroundMargin_mm`, value)
    const isSourced = valueAt(draft, `${path}/source`) !== undefined
    if (isOfLibrary && !isSourced)
      putAt(draft, `${path}/sources/backgroundMargin_mm`, value === undefined ? undefined : { basis: 'from memory' })
  }
}

function FieldMore({ path, name, isRanging }: { readonly path: string; readonly name: string; readonly isRanging: boolean }) {
  const words = useFacts().sensing
  const { snapshot } = useDoor()
  /** Open ends are said with a word in the file. */
  const end = (place: 'xMin' | 'xMax' | 'top', signed: boolean) => (
    <Figure
      path={`${path}/${place}_mm`}
      label={`${words.ends[place]}: ${name}`}
      signed={signed}
      optional
      {...(valueAt(snapshot.file, `${path}/${place}_mm`) === 'open' && { missing: words.openEnd })}
      put={(draft, value) => putAt(draft, `${path}/${place}_mm`, value ?? 'open')}
    />
  )
  return (
    <>
      {isRanging && (
        <p>
          <Sentence text={words.limits} figures={{ name, xMin: end('xMin', true), xMax: end('xMax', true), top: end('top', false) }} />
        </p>
      )}
      <Approach path={`${path}/approach`} of={name} />
    </>
  )
}

/** What the separation-distance standard asks about a field; what this program does not have is read off the page by whoever holds it. */
function Approach({ path, of }: { readonly path: string; readonly of: string }) {
  const words = useFacts().sensing
  const { door, snapshot } = useDoor()
  const way = valueAt(snapshot.file, `${path}/way`)
  const hasSource = valueAt(snapshot.file, `${path}/source`) !== undefined
  const page = (name: 'addend_mm' | 'supplement_mm', label: string) => (
    <Figure
      path={`${path}/${name}`}
      label={`${label}: ${of}`}
      missing={words.notRead}
      optional
      put={(draft, value) => {
        putAt(draft, `${path}/${name}`, value)
        if (!hasSource && value !== undefined) putAt(draft, `${path}/source`, { basis: 'from memory' })
      }}
    />
  )
  return (
    <>
      <p>
        <Sentence
          text={way === undefined ? words.approachFirst : words.approach}
          figures={{
            way: (
              <Choose
                path={`${path}/way`}
                at={path}
                label={`${words.way}: ${of}`}
                options={words.ways}
                unknown={words.wayUnknown}
                onUnknown={() => door.edit({ deed: 'removed', path }, (draft) => putAt(draft, path, undefined))}
              />
            ),
            capability: <Figure path={`${path}/capability_mm`} label={`${words.capability}: ${of}`} optional />,
          }}
        />
      </p>
      {way === 'parallel' && (
        <p>
          <Sentence
            text={words.height}
            figures={{ height: <Figure path={`${path}/height_mm`} label={`${words.heightLabel}: ${of}`} optional /> }}
          />
        </p>
      )}
      {way !== undefined && (
        <p>
          <Sentence
            text={words.addend}
            figures={{
              addend: page('addend_mm', words.addendLabel),
              supplement: page('supplement_mm', words.supplementLabel),
              basis: (
                <Choose
                  path={`${path}/source/basis`}
                  label={`${words.pageBasis}: ${of}`}
                  options={words.bases}
                  unknown={words.notRead}
                  onUnknown={() =>
                    door.edit({ deed: 'removed', path: `${path}/source` }, (draft) => putAt(draft, `${path}/source`, undefined))
                  }
                />
              ),
            }}
          />
        </p>
      )}
    </>
  )
}

/** A field as the door file writes it: what is open is a word there. */
function inFile(sensor: Exclude<Sensor, { kind: 'zone-only' }>) {
  const limit = (value: number) => (Number.isFinite(value) ? value : 'open')
  return ({ id, name, planes, output, function: acts, presenceTime_s, response_s, fastestResponse_s, hold_s, ...field }: Field) => ({
    id,
    ...(name !== id && { name }),
    ...(planes.length > 0 && { planes: [...planes] }),
    ...(sensor.kind === 'ranging' && {
      xMin_mm: limit(field.xMin_mm),
      xMax_mm: limit(field.xMax_mm),
      ...(Number.isFinite(field.yMin_mm) && { yMin_mm: field.yMin_mm }),
      ...(Number.isFinite(field.yMax_mm) && { yMax_mm: field.yMax_mm }),
      clearance_mm: field.clearance_mm,
      top_mm: limit(field.top_mm),
      clusterBeams: field.clusterBeams,
    }),
    output,
    function: acts,
    ...(presenceTime_s !== undefined && { presenceTime_s: Number.isFinite(presenceTime_s) ? presenceTime_s : 'for-ever' }),
    ...(response_s !== undefined && { response_s }),
    ...(fastestResponse_s !== undefined && { fastestResponse_s }),
    ...(hold_s !== undefined && { hold_s }),
  })
}
