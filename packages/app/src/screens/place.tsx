import { builtinSensors } from '@sillsight/document'
import { called } from '@sillsight/report'
import { lazy, Suspense, useState } from 'react'
import { Stage } from '../drawing/stage.tsx'
import type { BodyAt } from '../drawing/test-body.tsx'
import { Choose } from '../entry/choose.tsx'
import { Cross } from '../entry/cross.tsx'
import { hardly, USUAL_IN_TIME } from '../entry/doubts.ts'
import { Figure } from '../entry/figure.tsx'
import { freeId } from '../entry/free-id.ts'
import { shownFigure } from '../entry/kinds.ts'
import { Name } from '../entry/name.tsx'
import { putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Explained } from '../help/explained.tsx'
import { type LevelWish, looksTo, rollWish, tiltWish } from '../level/wish.ts'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Beside } from './beside.tsx'
import { Cautions } from './cautions.tsx'
import { Chapter } from './chapter.tsx'
import { Group } from './group.tsx'
import { Missing } from './missing.tsx'
import { withoutSensor } from './without-sensor.ts'

const TestBody = lazy(() => import('../drawing/test-body.tsx').then(({ TestBody }) => ({ default: TestBody })))
const TestBodyNote = lazy(() => import('../drawing/test-body.tsx').then(({ TestBodyNote }) => ({ default: TestBodyNote })))
const Zones = lazy(() => import('./zones.tsx').then(({ Zones }) => ({ default: Zones })))
const SensorMore = lazy(() => import('./sensor-more.tsx').then(({ SensorMore }) => ({ default: SensorMore })))

/** Stands in the door file: nobody measured these two yet. */
const OFFERED = 'mounting height and offset: offered by the app, not measured'

/** Which sensor, where, looking how: dragged on the drawing or typed in its sentence. A test body shows at once what sees it. */
export function PlaceScreen() {
  const words = useWords()
  const [body, setBody] = useState(false)
  const [at, setAt] = useState<BodyAt>()
  return (
    <main className="stage-and-words" data-part="place">
      <Stage
        first="plan"
        tools={
          <button type="button" className="second" data-stop="body" aria-pressed={body} onClick={() => setBody(!body)}>
            {words.drawing.body}
          </button>
        }
        over={
          body
            ? (drawn) => (
                <Suspense fallback={null}>
                  <TestBody {...drawn} body={at} onMove={setAt} />
                </Suspense>
              )
            : undefined
        }
        note={
          body
            ? (drawn) => (
                <Suspense fallback={null}>
                  <TestBodyNote {...drawn} body={at} onMove={setAt} />
                </Suspense>
              )
            : undefined
        }
      />
      <section className="entries" aria-label={words.parts.place}>
        <Beside>
          <Missing of={(need) => need.startsWith('sensors') || need.startsWith('zones') || need.startsWith('bodies')} />
          {body && (
            <p className="entry-doubt">
              <Explained text={words.place.testBody} />
            </p>
          )}
          <Sensors />
          <Suspense
            fallback={
              <p className="group quiet" data-coming>
                {words.loading}
              </p>
            }
          >
            <Zones />
          </Suspense>
          <Cautions lines={words.help.cautions.place} />
        </Beside>
      </section>
    </main>
  )
}

export function Sensors() {
  const words = useWords()
  const { door, snapshot } = useDoor()
  const sensors = snapshot.file.sensors ?? []
  const add = (use: string, name: string) =>
    door.edit({ deed: 'added', path: 'sensors', name }, (draft) => {
      const height_mm = draft.survey.opening.height_mm
      const made = {
        id: freeId(
          'sensor',
          sensors.map(({ id }) => id),
        ),
        use,
        side: 'a',
        mountingHeight_mm: height_mm,
        offset_mm: 150,
        source: { basis: 'our decision', note: OFFERED },
      }
      if (draft.sensors === undefined) putAt(draft, 'sensors', [made])
      else (draft.sensors as unknown[]).push(made)
    })
  const reader = useReader()
  const remove = (index: number, name: string) =>
    door.edit({ deed: 'removed', path: 'sensors', name }, (draft) => withoutSensor(draft, index))
  return (
    <Group
      title={words.place.sensors}
      holds={['sensors']}
      said={words.chapters.named(sensors.map(({ name, use, id }) => name ?? use ?? id ?? ''))}
      isFirst
    >
      {sensors.length === 0 && (
        <p>
          <Explained text={words.place.none} />
        </p>
      )}
      {sensors.map((sensor, i) => (
        <SensorWords key={sensor.id ?? i} index={i} onRemove={() => remove(i, sensor.name ?? sensor.use ?? sensor.id ?? '')} />
      ))}
      <h3>{words.place.add}</h3>
      <p className="quiet">
        <Explained text={words.place.addNote} />
      </p>
      <div className="row">
        {builtinSensors().map(({ id, name }) => (
          <button key={id} type="button" className="second" data-at="sensors" onClick={() => add(id, name)}>
            {called(name, reader)}
          </button>
        ))}
      </div>
    </Group>
  )
}

function SensorWords({ index, onRemove }: { readonly index: number; readonly onRemove: () => void }) {
  const words = useWords()
  const reader = useReader()
  const { snapshot, answers } = useDoor()
  const sensor = snapshot.file.sensors?.[index]
  if (!sensor) return null
  const path = `sensors/${index}`
  const shown = answers.shown?.door.sensors[index]
  const name = sensor.name ?? shown?.name ?? sensor.use ?? ''
  const { sides } = snapshot.file
  const length = (place: string, label: string, signed = false) => (
    <Figure
      path={`${path}/${place}`}
      label={label}
      signed={signed}
      {...((place === 'mountingHeight_mm' || place === 'pose/z_mm') && { tolerancePath: `${path}/tolerance_mm` })}
    />
  )
  const timed = (at: string, name: 'response_s' | 'fastestResponse_s' | 'hold_s', label: string) => (
    <Figure
      path={`${at}/${name}`}
      label={label}
      kind="seconds"
      optional
      question={hardly(words, USUAL_IN_TIME[name === 'hold_s' ? 'hold_s' : 'response_s'], (value) => shownFigure(value, 'seconds', reader))}
    />
  )
  const angle = (place: string, label: string, missing?: string, level?: LevelWish) => (
    <Figure
      path={`${path}/${place}`}
      label={label}
      kind="angle"
      signed
      optional
      {...(missing !== undefined && { missing })}
      {...(level && { level })}
    />
  )
  return (
    <div className="thing">
      <div>
        <h3>
          <Name path={`${path}/name`} label={words.measure.nameOf} missing={name} />
        </h3>
        {sensor.pose ? (
          <p>
            <Sentence
              text={words.place.pose}
              figures={{
                x: length('pose/x_mm', words.place.along, true),
                y: length('pose/y_mm', words.place.out, true),
                z: length('pose/z_mm', words.place.up, true),
                tilt: angle('pose/tilt_deg', words.place.tilt, '0°', tiltWish(words.level, sides, looksTo(sensor.pose.yaw_deg ?? 0))),
                yaw: angle('pose/yaw_deg', words.place.yaw, '0°'),
                roll: angle('pose/roll_deg', words.place.roll, '0°', rollWish(words.level, sensor.pose.tilt_deg ?? 0)),
              }}
            />
          </p>
        ) : (
          sensor.mountingHeight_mm !== undefined && (
            <p>
              <Sentence
                text={words.place.shortPose}
                figures={{
                  side: (
                    <Choose
                      path={`${path}/side`}
                      label={words.place.side}
                      options={{ a: snapshot.file.sides?.a ?? 'A', b: snapshot.file.sides?.b ?? 'B' }}
                    />
                  ),
                  height: length('mountingHeight_mm', words.place.up),
                  offset: length('offset_mm', words.place.out),
                  x: <Figure path={`${path}/x_mm`} label={words.place.along} signed optional missing={words.place.middle} />,
                  tilt: angle('tilt_deg', words.place.tilt, words.place.usual, tiltWish(words.level, sides, sensor.side ?? 'a')),
                }}
              />
            </p>
          )
        )}
        {sensor.fields?.map((field, i) => {
          const at = `${path}/fields/${i}`
          return (
            <p key={field.id}>
              <Sentence
                text={words.place.fieldWords}
                figures={{
                  name: <Name path={`${at}/name`} label={words.measure.nameOf} missing={field.id} />,
                  cluster: <Figure path={`${at}/clusterBeams`} label={words.place.cluster} kind="count" missing="1" />,
                  clearance: <Figure path={`${at}/clearance_mm`} label={words.place.clearance} missing="0 mm" />,
                  response: timed(at, 'response_s', words.place.response),
                  fastest: timed(at, 'fastestResponse_s', words.place.fastest),
                  stays: timed(at, 'hold_s', words.place.stays),
                  hold: (
                    <Figure
                      path={`${at}/presenceTime_s`}
                      label={words.place.hold}
                      kind="seconds"
                      optional
                      {...(field.presenceTime_s === 'for-ever' && { missing: words.place.forEver })}
                      put={(draft, value) => putAt(draft, `${at}/presenceTime_s`, value ?? 'for-ever')}
                    />
                  ),
                }}
              />
            </p>
          )
        })}
        <Chapter title={words.chapters.sensor} said={words.chapters.sensorSaid} holds={[path]} isInner>
          <SensorMore index={index} />
        </Chapter>
      </div>
      <Cross name={name} onAway={onRemove} />
    </div>
  )
}
