import { lazy, type ReactNode, useMemo, useState } from 'react'
import { type PhotoWish, Stage } from '../drawing/stage.tsx'
import { Choose } from '../entry/choose.tsx'
import { hardly, USUAL_MM } from '../entry/doubts.ts'
import { Figure } from '../entry/figure.tsx'
import { shownFigure } from '../entry/kinds.ts'
import { Name } from '../entry/name.tsx'
import { putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import { Whole } from '../entry/whole.tsx'
import { Explained } from '../help/explained.tsx'
import { floorWish } from '../level/wish.ts'
import type { Draft } from '../store/contract.ts'
import { useAround } from '../words/around.ts'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Building } from './building.tsx'
import { Cautions } from './cautions.tsx'
import { Chapter } from './chapter.tsx'
import { DriveGroup } from './drive.tsx'
import { Group } from './group.tsx'
import { CONTROL_FACTS, dangersToLookFor, statedFacts } from './known.ts'
import { Lanes } from './lanes.tsx'
import { Missing } from './missing.tsx'
import { Obstacles } from './obstacles.tsx'
import { Photos } from './photos.tsx'

const Control = lazy(() => import('./control.tsx').then(({ Control }) => ({ default: Control })))
const Dangers = lazy(() => import('./dangers.tsx').then(({ Dangers }) => ({ default: Dangers })))
const Stops = lazy(() => import('./stops.tsx').then(({ Stops }) => ({ default: Stops })))
const Parked = lazy(() => import('./parked.tsx').then(({ Parked }) => ({ default: Parked })))
const PassingBy = lazy(() => import('./passing-by.tsx').then(({ PassingBy }) => ({ default: PassingBy })))

/** The opening as it is: figures in sentences, each touched to be typed; the same lengths stand on the drawing. */
export function MeasureScreen() {
  const words = useWords()
  const [wish, setWish] = useState<PhotoWish>()
  return (
    <main className="stage-and-words" data-part="measure">
      <Stage first="elevation" wish={wish} />
      <section className="entries" aria-label={words.parts.measure}>
        <Missing of={(need) => need.startsWith('survey') || need.startsWith('tolerances')} />
        <OpeningGroup />
        <LeafGroup />
        <DriveGroup />
        <FloorGroup />
        <Building />
        <Obstacles />
        <Lanes />
        <Chapters />
        <AirGroup />
        <TolerancesGroup />
        <Photos onWish={setWish} />
      </section>
    </main>
  )
}

/** What is opened when somebody wants to say it; how far it is known is read without opening. */
function Chapters() {
  const { chapters } = useWords()
  const { file } = useDoor().snapshot
  const { expected, open } = dangersToLookFor(file)
  const points = file.survey.dangers?.points?.length ?? 0
  const { crossings = [], drive, leaf } = file.survey
  return (
    <>
      <Chapter title={chapters.stops} holds={['survey/drive/stopTimes']} said={chapters.listed(drive?.stopTimes?.readings_s.length ?? 0)}>
        <Stops />
      </Chapter>
      {leaf && (
        <Chapter title={chapters.parked} holds={['survey/leaf/parked']} said={chapters.isKnown(leaf.parked !== undefined)}>
          <Parked />
        </Chapter>
      )}
      <Chapter title={chapters.passingBy} holds={['survey/crossings', 'survey/air']} said={chapters.listed(crossings.length)}>
        <PassingBy />
      </Chapter>
      <Chapter
        title={chapters.dangers}
        holds={['survey/dangers']}
        said={open.length > 0 ? chapters.known(expected.length - open.length, expected.length) : chapters.listed(points)}
      >
        <Dangers />
      </Chapter>
      <Chapter title={chapters.control} holds={['survey/control']} said={chapters.known(statedFacts(file), CONTROL_FACTS.length)}>
        <Control />
      </Chapter>
    </>
  )
}

function useDoubt(usual: readonly [number, number]): (value: number) => string | undefined {
  const words = useWords()
  const reader = useReader()
  return hardly(words, usual, (value) => shownFigure(value, 'length', reader))
}

function OpeningGroup() {
  const words = useWords()
  const width = useDoubt(USUAL_MM.openingWidth)
  const height = useDoubt(USUAL_MM.openingHeight)
  const tolerancePath = 'survey/opening/tolerance_mm'
  const opening = 'survey/opening'
  return (
    <Group title={words.measure.opening} path={opening}>
      <p>
        <Name path="name" label={words.measure.doorName} />
      </p>
      <p>
        <Sentence
          text={words.measure.openingWords}
          figures={{
            width: (
              <Figure
                path={`${opening}/width_mm`}
                label={words.first.width}
                hint={words.first.widthHint}
                {...{ tolerancePath, question: width }}
              />
            ),
            height: <Figure path={`${opening}/height_mm`} label={words.first.height} hint={words.first.heightHint} question={height} />,
          }}
        />
      </p>
      <Diagonals />
      <p>
        <Sentence
          text={words.measure.sides}
          figures={{
            a: <Name path="sides/a" label={words.measure.sideA} />,
            b: <Name path="sides/b" label={words.measure.sideB} />,
          }}
        />
      </p>
      <Cautions lines={words.help.cautions.opening} />
    </Group>
  )
}

/** Both diagonals, kept as readings: with width and height they find the misread one. */
function Diagonals() {
  const words = useWords()
  const { answers } = useDoor()
  const notes = answers.shown?.notes.filter(({ code }) => code === 'readings-disagree') ?? []
  return (
    <>
      <p>
        <Sentence
          text={words.measure.diagonals}
          figures={Object.fromEntries(
            ['first', 'second'].map((name, i) => [
              name,
              <DiagonalFigure key={name} index={i as 0 | 1} label={words.measure.diagonal(i + 1)} />,
            ]),
          )}
        />
      </p>
      {notes.map(({ path, text }) => (
        <p className="entry-doubt" key={path}>
          {text}
        </p>
      ))}
    </>
  )
}

function DiagonalFigure({ index, label }: { readonly index: 0 | 1; readonly label: string }) {
  const list = 'survey/opening/readings/diagonals'
  const put = (draft: Draft, value: number | undefined) => {
    const known = draft.survey.opening.readings?.diagonals ?? []
    const next = known.map((reading, i) => (i === index && value !== undefined ? value : reading))
    putAt(draft, list, index < known.length ? next : [...next, value])
  }
  return <Figure path={`${list}/${index}`} label={label} put={put} />
}

/** Travel and thickness are written together: the door file has no leaf with one of them, and none is made up. */
function LeafGroup() {
  const words = useWords()
  const { door, snapshot } = useDoor()
  const [travel, setTravel] = useState<string>()
  const thickness = useDoubt(USUAL_MM.leafThickness)
  const bulge = useDoubt(USUAL_MM.leafBulge)
  const isThere = snapshot.file.survey.leaf !== undefined
  const path = 'survey/leaf/thickness_mm'
  const figures = {
    travel: (
      <Choose
        path="survey/leaf/travel"
        label={words.measure.travel}
        options={words.measure.travels}
        waiting={travel}
        onChoose={(chosen) => {
          setTravel(chosen)
          if (isThere)
            door.edit({ deed: 'set', path: 'survey/leaf/travel', typed: words.measure.travels[chosen] }, (draft) =>
              putAt(draft, 'survey/leaf/travel', chosen),
            )
        }}
      />
    ),
    thickness: (
      <Figure
        path={path}
        label={words.measure.thickness}
        question={thickness}
        put={(draft, value) => (isThere ? putAt(draft, path, value) : putAt(draft, 'survey/leaf', { travel, thickness_mm: value }))}
      />
    ),
    bulge: <Figure path="survey/leaf/bulge_mm" label={words.measure.bulge} question={bulge} optional />,
  }
  const text = isThere ? words.measure.leafWords : travel === undefined ? words.measure.leafFirst : words.measure.leafNext
  return (
    <Group title={words.measure.leaf} path="survey/leaf">
      <p>
        <Sentence text={text} figures={figures} />
      </p>
      <Cautions lines={words.help.cautions.leaf} />
    </Group>
  )
}

function FloorGroup() {
  const words = useWords()
  const { door, snapshot } = useDoor()
  const { floor } = snapshot.file.survey
  const points = floor?.profile_mm ?? []
  const [asked, setAsked] = useState(false)
  /** A point comes into the file at its place along y. */
  const enter = ({ out = 0, height = 0 }: Readonly<Record<string, number>>) => {
    door.edit({ deed: 'added', path: 'survey/floor' }, (draft) =>
      putAt(
        draft,
        'survey/floor/profile_mm',
        [...points.map(([y, z]) => [y, z]), [out, height]].sort(([a = 0], [b = 0]) => a - b),
      ),
    )
    setAsked(false)
  }
  const sayLevel = () =>
    door.edit({ deed: 'set', path: 'survey/floor' }, (draft) => putAt(draft, 'survey/floor', { profile_mm: [[0, 0]], slopeX_percent: 0 }))
  return (
    <Group title={words.measure.floor} path="survey/floor">
      {points.length === 0 ? (
        <p>
          <Explained text={words.measure.floorLevel} />
        </p>
      ) : (
        <>
          <p>
            <Sentence
              text={words.measure.floorWords}
              figures={{
                slope: (
                  <Figure
                    path="survey/floor/slopeX_percent"
                    label={words.measure.slope}
                    kind="percent"
                    level={floorWish(words.level, snapshot.file.sides)}
                    signed
                    optional
                  />
                ),
                tolerance: <Figure path="survey/floor/tolerance_mm" label={words.measure.floorTolerance} optional />,
              }}
            />
          </p>
          {points.map((_, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: points of a profile have no other name
            <p key={i}>
              <Sentence
                text={words.measure.floorPoint}
                figures={{
                  out: <Figure path={`survey/floor/profile_mm/${i}/0`} label={words.measure.floorOut} signed />,
                  height: <Figure path={`survey/floor/profile_mm/${i}/1`} label={words.measure.floorHeight} signed />,
                }}
              />
            </p>
          ))}
        </>
      )}
      <StateFloors />
      {asked && (
        <Whole
          text={words.measure.floorPoint}
          figures={{ out: { label: words.measure.floorOut, signed: true }, height: { label: words.measure.floorHeight, signed: true } }}
          onWhole={enter}
        />
      )}
      <div className="row">
        {points.length === 0 && (
          <button type="button" className="second" data-at="survey/floor" onClick={sayLevel}>
            {words.measure.floorIsLevel}
          </button>
        )}
        <button type="button" className="second" onClick={() => setAsked(true)}>
          {words.measure.addPoint}
        </button>
      </div>
    </Group>
  )
}

/** A state with a floor of its own has its own rise and tolerance. */
function StateFloors() {
  const words = useWords()
  const { states } = useAround()
  const { snapshot } = useDoor()
  return (snapshot.file.survey.states ?? []).map(({ id, name = id, floor }, i) =>
    floor === undefined ? null : (
      <p key={id}>
        <Sentence
          text={states.floor}
          figures={{
            state: `\u201c${name}\u201d`,
            slope: <Figure path={`survey/states/${i}/floor/slopeX_percent`} label={words.measure.slope} kind="percent" signed optional />,
            tolerance: <Figure path={`survey/states/${i}/floor/tolerance_mm`} label={words.measure.floorTolerance} optional />,
          }}
        />
      </p>
    ),
  )
}

function AirGroup() {
  const words = useWords()
  return (
    <Group title={words.measure.air} path="survey/visibility_m">
      <p>
        <Sentence
          text={words.measure.airWords}
          figures={{
            visibility: (
              <Figure
                path="survey/visibility_m"
                label={words.measure.visibility}
                kind="metres"
                missing={words.measure.clear}
                optional
                put={(draft, value) => putAt(draft, 'survey/visibility_m', value ?? 'clear')}
              />
            ),
          }}
        />
      </p>
    </Group>
  )
}

const USUAL_TOLERANCES = { length_mm: 5, position_mm: 5, tilt_deg: 0.3, roll_deg: 0.3, yaw_deg: 0.3, floor_mm: 5, range_percent: 0 }

function TolerancesGroup() {
  const words = useWords()
  const { door, snapshot } = useDoor()
  const figures = useMemo(() => {
    const of = (name: keyof typeof USUAL_TOLERANCES): ReactNode => (
      <Figure
        path={`tolerances/${name}`}
        label={words.measure.tolerance}
        kind={name.endsWith('_deg') ? 'angle' : name.endsWith('_percent') ? 'percent' : 'length'}
      />
    )
    return {
      length: of('length_mm'),
      position: of('position_mm'),
      tilt: of('tilt_deg'),
      roll: of('roll_deg'),
      yaw: of('yaw_deg'),
      floor: of('floor_mm'),
      range: of('range_percent'),
    }
  }, [words])
  return (
    <Group title={words.measure.tolerances} path="tolerances">
      {snapshot.file.tolerances === undefined ? (
        <>
          <p>
            <Explained text={words.measure.tolerancesNone} />
          </p>
          <button
            type="button"
            className="second"
            data-at="tolerances"
            onClick={() => door.edit({ deed: 'added', path: 'tolerances' }, (draft) => putAt(draft, 'tolerances', { ...USUAL_TOLERANCES }))}
          >
            {words.measure.tolerancesAdd}
          </button>
        </>
      ) : (
        <p>
          <Sentence text={words.measure.tolerancesWords} figures={figures} />
        </p>
      )}
    </Group>
  )
}
