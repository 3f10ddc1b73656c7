import { lazy, Suspense, useState } from 'react'
import { type PhotoWish, Stage } from '../drawing/stage.tsx'
import { AskedFigure } from '../entry/asked-figure.tsx'
import { asBegun, useBegun } from '../entry/begun.ts'
import { Choose } from '../entry/choose.tsx'
import { hardly, USUAL_MM } from '../entry/doubts.ts'
import { Figure } from '../entry/figure.tsx'
import { shownFigure } from '../entry/kinds.ts'
import { Name } from '../entry/name.tsx'
import { putAt } from '../entry/places.ts'
import { Sentence } from '../entry/sentence.tsx'
import type { Draft } from '../store/contract.ts'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { useDoor } from './at-door.ts'
import { Beside } from './beside.tsx'
import { Cautions } from './cautions.tsx'
import { Group } from './group.tsx'
import { Missing } from './missing.tsx'
import { Photos } from './photos.tsx'

const around = () => import('./around.ts')
const DriveGroup = lazy(() => around().then(({ DriveGroup }) => ({ default: DriveGroup })))
const FloorGroup = lazy(() => around().then(({ FloorGroup }) => ({ default: FloorGroup })))
const Building = lazy(() => around().then(({ Building }) => ({ default: Building })))
const Obstacles = lazy(() => around().then(({ Obstacles }) => ({ default: Obstacles })))
const Lanes = lazy(() => around().then(({ Lanes }) => ({ default: Lanes })))
const AirGroup = lazy(() => around().then(({ AirGroup }) => ({ default: AirGroup })))
const TolerancesGroup = lazy(() => around().then(({ TolerancesGroup }) => ({ default: TolerancesGroup })))
const Hinged = lazy(() => around().then(({ Hinged }) => ({ default: Hinged })))
const Chapters = lazy(() => around().then(({ Chapters }) => ({ default: Chapters })))

/** The opening as it is: figures in sentences, each touched to be typed; the same lengths stand on the drawing. */
export function MeasureScreen() {
  const words = useWords()
  const [wish, setWish] = useState<PhotoWish>()
  return (
    <main className="stage-and-words" data-part="measure">
      <Stage first="elevation" wish={wish} />
      <section className="entries" aria-label={words.parts.measure}>
        <Beside>
          <Missing of={(need) => need.startsWith('survey') || need.startsWith('tolerances')} />
          <OpeningGroup />
          <LeafGroup />
          <Suspense
            fallback={
              <p className="group quiet" data-coming>
                {words.loading}
              </p>
            }
          >
            <DriveGroup />
            <FloorGroup />
            <Building />
            <Obstacles />
            <Lanes />
            <Chapters />
            <AirGroup />
            <TolerancesGroup />
          </Suspense>
          <Photos onWish={setWish} />
        </Beside>
      </section>
    </main>
  )
}

function useDoubt(usual: readonly [number, number]): (value: number) => string | undefined {
  const words = useWords()
  const reader = useReader()
  return hardly(words, usual, (value) => shownFigure(value, 'length', reader))
}

export function OpeningGroup() {
  const words = useWords()
  const width = useDoubt(USUAL_MM.openingWidth)
  const height = useDoubt(USUAL_MM.openingHeight)
  const tolerancePath = 'survey/opening/tolerance_mm'
  const opening = 'survey/opening'
  const reader = useReader()
  const { width_mm, height_mm } = useDoor().snapshot.file.survey.opening
  const said = [width_mm, height_mm].map((value) => shownFigure(value, 'length', reader)).join(' × ')
  return (
    <Group title={words.measure.opening} holds={[opening, 'name', 'sides']} said={said} isFirst>
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

/** Travel and thickness come into the door file together, which has no leaf with one of them; none is made up. */
export function LeafGroup() {
  const words = useWords()
  const { door, snapshot } = useDoor()
  const begun = useBegun('survey/leaf')
  const travel = begun.text('travel')
  const thickness = useDoubt(USUAL_MM.leafThickness)
  const bulge = useDoubt(USUAL_MM.leafBulge)
  const { leaf } = snapshot.file.survey
  const isThere = leaf !== undefined
  const path = 'survey/leaf/thickness_mm'
  const figures = {
    travel: (
      <Choose
        path="survey/leaf/travel"
        label={words.measure.travel}
        options={words.measure.travels}
        waiting={travel}
        onChoose={(chosen) => {
          if (!isThere) return begun.say(words.measure.travel, { travel: { value: chosen } })
          door.edit({ deed: 'set', path: 'survey/leaf/travel', typed: words.measure.travels[chosen] }, (draft) =>
            putAt(draft, 'survey/leaf/travel', chosen),
          )
        }}
      />
    ),
    thickness: isThere ? (
      <Figure path={path} label={words.measure.thickness} question={thickness} />
    ) : (
      <AskedFigure
        at={path}
        readOnly={snapshot.readOnly !== undefined}
        asked={{
          ...{ label: words.measure.thickness, kind: 'length', value: undefined, question: thickness },
          onEnter: (value, typed) =>
            begun.whole({ deed: 'set', path, typed }, (draft) => putAt(draft, 'survey/leaf', { travel, thickness_mm: value }), {
              thickness_mm: asBegun(value, typed, 'length'),
            }),
        }}
      />
    ),
    bulge: <Figure path="survey/leaf/bulge_mm" label={words.measure.bulge} question={bulge} optional />,
  }
  const text = isThere ? words.measure.leafWords : travel === undefined ? words.measure.leafFirst : words.measure.leafNext
  return (
    <Group
      title={words.measure.leaf}
      holds={['survey/leaf']}
      said={leaf ? words.measure.travels[leaf.travel] : words.chapters.isKnown(false)}
    >
      <p>
        <Sentence text={text} figures={figures} />
      </p>
      {leaf?.travel === 'turning' && (
        <Suspense fallback={<p className="quiet" data-coming />}>
          <Hinged />
        </Suspense>
      )}
      <Cautions lines={words.help.cautions.leaf} isMore />
    </Group>
  )
}
