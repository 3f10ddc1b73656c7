import type { Door } from '@sillsight/engine'
import { drawOnScreen, type KeptRoom, type ProjectionName, type ScreenDrawing, type Window } from '@sillsight/report'
import { lazy, Suspense, useEffect, useMemo, useState } from 'react'
import { PhotoMarks } from '../photos/marks.tsx'
import { usePreferences } from '../preferences.ts'
import { useDoor } from '../screens/at-door.ts'
import type { Moment } from '../solid/moving-solids.ts'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { FigureHits } from './figure-hits.tsx'
import { Grips } from './grips.tsx'
import { Key } from './key.tsx'
import { Marks } from './marks.tsx'
import { GRIP_ARM_MM, type Grip, gripsOf } from './moving.ts'
import { PX_PER_MM, useRoom } from './use-room.ts'

/** Only where something is played over time. */
const MovingMarks = lazy(() => import('./moving-marks.tsx').then(({ MovingMarks }) => ({ default: MovingMarks })))
const SolidView = lazy(() => import('../solid/view.tsx').then(({ SolidView }) => ({ default: SolidView })))

/** Room around a grip, half of it on each side: a thumb. */
const TOUCH_PX = { paper: 48, sun: 64, dark: 48 } as const

/** What lies over a drawing is given. */
export interface Drawn {
  readonly door: Door
  readonly drawing: ScreenDrawing
  readonly projection: ProjectionName
  readonly pxPerMm: number
  /** How large a thumb is, in CSS px. */
  readonly touchPx: number
}

interface Props {
  readonly first: ProjectionName
  /** Whether things can be taken hold of here. */
  readonly grips?: boolean
  /** What is drawn over it: a test body, pins. */
  readonly over?: ((drawn: Drawn) => React.ReactNode) | undefined
  /** Said below the drawing in place of its key. */
  readonly note?: ((drawn: Drawn) => React.ReactNode) | undefined
  /** Door state and zone to show, where somebody points at a finding. */
  readonly state?: string | undefined
  readonly zone?: string | undefined
  /** An instant of a finding in time: leaf and body are shown as they then are. */
  readonly moment?: Moment | undefined
  readonly tools?: React.ReactNode
  /** A photo's mark to be gone to; a new object for each wish. */
  readonly wish?: PhotoWish | undefined
}

export interface PhotoWish {
  readonly photo: string
  readonly view: 'plan' | 'elevation'
}

/** The drawing: plan, elevation or section, filling its room. It shows one answer: door and findings of the same revision. */
export function Stage({ first, grips = true, over, note, state, zone, tools, wish, moment }: Props) {
  const words = useWords()
  const { theme } = usePreferences()
  const reader = useReader()
  const { door, snapshot, answers, preview } = useDoor()
  const [view, setView] = useState<ProjectionName | 'solid'>(first)
  useEffect(() => {
    if (wish) setView(wish.view)
  }, [wish])
  const inSpace = view === 'solid'
  const projection = inSpace ? 'plan' : view
  const [held, setHeld] = useState<Window>()
  const [named, setNamed] = useState<string>()
  const [room, size] = useRoom<HTMLDivElement>()
  const { shown } = answers
  const { photos } = snapshot
  const isReadOnly = snapshot.readOnly !== undefined
  const drawing = useMemo(
    () =>
      shown && size.width > 0 && !inSpace
        ? drawOnScreen(shown.door, shown.judgement, {
            projection,
            ...reader,
            state,
            zone,
            window: held,
            kept: (view) => [
              ...(grips && !isReadOnly ? gripsOf(shown.door, { projection, zone: view.zone }).map(roomOf) : []),
              ...photos.flatMap(({ onDrawing: at }) => (at?.view === projection ? [{ at, along_mm: PLATE_MM, up_mm: PLATE_MM }] : [])),
            ],
            width_mm: size.width / PX_PER_MM,
            height_mm: size.height / PX_PER_MM,
          })
        : undefined,
    [shown, projection, reader, size, held, state, zone, inSpace, grips, isReadOnly, photos],
  )
  // what moves over the drawing crosses its lettering, which has to stay legible: it comes last then
  const isOverdrawn = moment !== undefined || over !== undefined
  const [lines, letters] = useMemo(() => {
    const marks = drawing?.marks ?? []
    return [marks.filter(({ kind }) => kind !== 'text'), marks.filter(({ kind }) => kind === 'text')]
  }, [drawing])
  const drawn = drawing && shown && { door: shown.door, drawing, projection, pxPerMm: PX_PER_MM, touchPx: TOUCH_PX[theme] }
  return (
    <section className="stage" aria-label={words.drawing.title}>
      <div className="stage-head">
        <h2>
          {drawing || inSpace ? words.views[view] : ''}
          {drawing && <span>, {drawing.seen}</span>}
        </h2>
        <div className="stage-tools">
          {tools}
          <div className="switch" role="radiogroup" aria-label={words.views.label}>
            {(['plan', 'elevation', 'section', 'solid'] as const).map((each) => (
              <button key={each} type="button" role="radio" aria-checked={each === view} onClick={() => setView(each)}>
                {words.views[each]}
              </button>
            ))}
          </div>
        </div>
      </div>
      {inSpace && shown && (
        <div className="solid">
          <Suspense fallback={<p className="starting">{words.loading}</p>}>
            <SolidView door={shown.door} judgement={shown.judgement} state={state} zone={zone} moment={moment} />
          </Suspense>
        </div>
      )}
      <div className="stage-room" ref={room} hidden={inSpace}>
        {drawing && shown && (
          <svg
            className="drawing"
            width={size.width}
            height={size.height}
            viewBox={`0 0 ${size.width / PX_PER_MM} ${size.height / PX_PER_MM}`}
            role="group"
            aria-label={`${drawing.heading}, ${drawing.seen}`}
          >
            <Marks marks={isOverdrawn ? lines : drawing.marks} />
            {!isReadOnly && <FigureHits drawing={drawing} door={shown.door} touch_mm={TOUCH_PX[theme] / PX_PER_MM} />}
            {drawn && <PhotoMarks {...drawn} movable={grips && !isReadOnly} wish={wish} onName={setNamed} />}
            {grips && !isReadOnly && (
              <Grips
                door={shown.door}
                view={drawing.view}
                projection={projection}
                zone={drawing.zone}
                pxPerMm={PX_PER_MM}
                touchPx={TOUCH_PX[theme]}
                onName={setNamed}
                onPreview={(change) => {
                  setHeld(change ? (held ?? drawing.view.window) : undefined)
                  preview(change)
                }}
                onMoved={(grip, change) => door.edit({ deed: 'moved', name: grip.name }, change)}
              />
            )}
            {moment && (
              <Suspense fallback={null}>
                <MovingMarks door={shown.door} moment={moment} projection={projection} view={drawing.view} />
              </Suspense>
            )}
            {drawn && over?.(drawn)}
            {isOverdrawn && (
              <g className="lettering-over">
                <Marks marks={letters} />
              </g>
            )}
          </svg>
        )}
      </div>
      {!inSpace && <Key named={named} drawing={drawing} note={drawn && note?.(drawn)} />}
    </section>
  )
}

/** Half of a photo's mark, in mm of paper. */
const PLATE_MM = 3

/** What a grip's mark takes of the paper: names keep off it. */
function roomOf({ at, along, up }: Grip): KeptRoom {
  return { at, along_mm: along ? GRIP_ARM_MM : 1, up_mm: up ? GRIP_ARM_MM : 1 }
}
