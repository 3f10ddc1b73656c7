import type { Field, Sensor } from '@sillsight/engine'
import { Choose } from '../entry/choose.tsx'
import { Figure } from '../entry/figure.tsx'
import { Name } from '../entry/name.tsx'
import { putAt, valueAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { useFacts } from '../words/facts.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Declares } from './declares.tsx'
import { FieldMore } from './field-more.tsx'
import { KnownFrom } from './known-from.tsx'
import { Outputs } from './outputs.tsx'

/** What a sensor's sentence leaves out: where its values come from, what it learned, how far its fields reach, how people come to them. */
export function SensorMore({ index }: { readonly index: number }) {
  const words = useFacts().sensing
  const { door, snapshot, answers } = useDoor()
  const path = `sensors/${index}`
  const sensor = snapshot.file.sensors?.[index]
  const shown = answers.shown?.door.sensors[index]
  if (!sensor) return null
  const planes = shown === undefined || shown.kind === 'zone-only' ? [] : shown.planes.map(({ id }) => id)
  const states = snapshot.file.survey.states ?? []
  const isRanging = shown?.kind === 'ranging'
  return (
    <>
      <KnownFrom path={`${path}/source`} text={words.known} />
      {isRanging && <Sheet path={path} isOfLibrary={sensor.use !== undefined} />}
      {shown?.kind === 'zone-only' && <ZoneOnly path={path} />}
      {isRanging && (
        <p>
          <Sentence
            text={words.margin}
            figures={{
              margin: (
                <Figure
                  path={`${path}/backgroundMargin_mm`}
                  label={words.marginLabel}
                  put={sheetPut(path, 'backgroundMargin_mm', sensor.use !== undefined)}
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
        <FieldMore
          key={field.id}
          path={`${path}/fields/${i}`}
          name={field.name ?? field.id}
          isRanging={isRanging}
          planes={planes}
          outputs={sensor.outputs ?? []}
        />
      ))}
    </>
  )
}

function isProtecting(sensor: Sensor | undefined): boolean {
  if (sensor === undefined) return false
  return sensor.kind === 'zone-only' ? sensor.function === 'presence' : sensor.fields.some((field) => field.function === 'presence')
}

/** How far it sees, as its sheet says: a figure entered here takes the place of the library's. */
function Sheet({ path, isOfLibrary }: { readonly path: string; readonly isOfLibrary: boolean }) {
  const words = useFacts().sensing
  const of = (name: keyof typeof words.sheetNames, kind: 'length' | 'share' = 'length') => (
    <Figure
      path={`${path}/${name}`}
      label={words.sheetNames[name]}
      kind={kind}
      put={sheetPut(path, name, isOfLibrary)}
      {...(isOfLibrary && { missing: words.asSheet, optional: true })}
    />
  )
  return (
    <p>
      <Sentence
        text={words.sheet}
        figures={{
          maxRange: of('maxRange_mm'),
          rangeRef: of('rangeRef_mm'),
          reflectanceRef: of('reflectanceRef', 'share'),
          spot: of('spotRadius_mm'),
        }}
      />
    </p>
  )
}

/** What is drawn and not computed: what its output does, what sets it off, where it acts. */
function ZoneOnly({ path }: { readonly path: string }) {
  const words = useFacts().sensing
  const { edges } = useWords().place
  return (
    <>
      <p>
        <Sentence
          text={words.zoneOnly}
          figures={{
            output: <Name path={`${path}/output`} label={words.outputName} />,
            does: <Choose path={`${path}/function`} label={words.does} options={words.doesNames} />,
            needs: <Name path={`${path}/needs`} label={words.needs} missing={words.notRead} />,
          }}
        />
      </p>
      <p>
        <Sentence
          text={words.covers}
          figures={Object.fromEntries(
            (['xMin', 'xMax', 'yMin', 'yMax'] as const).map((name) => [
              name,
              <Figure key={name} path={`${path}/covers/${name}_mm`} label={edges[name]} signed />,
            ]),
          )}
        />
      </p>
    </>
  )
}

/** A figure that takes the place of the library's says where it comes from: somebody entered it here, from memory until he says better. */
function sheetPut(path: string, name: string, isOfLibrary: boolean) {
  return (draft: Parameters<typeof putAt>[0], value: number | undefined) => {
    putAt(draft, `${path}/${name}`, value)
    const isSourced = valueAt(draft, `${path}/source`) !== undefined
    if (isOfLibrary && !isSourced) putAt(draft, `${path}/sources/${name}`, value === undefined ? undefined : { basis: 'from memory' })
  }
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
    ...(field.approach && { approach: structuredClone(field.approach) }),
    ...(field.blanking.length > 0 && { blanking: structuredClone(field.blanking) }),
    ...(field.leafBlanking && { leafBlanking: { ...field.leafBlanking } }),
    ...(field.leafHides !== undefined && { leafHides: field.leafHides ? 'bodies' : 'nothing' }),
  })
}
