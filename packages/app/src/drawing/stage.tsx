import { drawOnScreen, type ProjectionName } from '@sillsight/report'
import { useEffect, useMemo, useRef, useState } from 'react'
import type { Answers } from '../judging/judging.ts'
import { usePreferences } from '../preferences.ts'
import type { DoorSnapshot, OpenDoor } from '../store/contract.ts'
import { useWords } from '../words/words.ts'
import { Marks } from './marks.tsx'

/** One mm of paper on a screen, in CSS px. */
const PX_PER_MM = 96 / 25.4
const VIEWS: readonly ProjectionName[] = ['plan', 'elevation', 'section']

interface Props {
  readonly door: OpenDoor
  readonly snapshot: DoorSnapshot
  readonly answers: Answers
  /** Id of the finding that somebody points at. */
  readonly pointed: string | undefined
}

/** The drawing: plan or elevation, filling its room. */
export function Stage({ answers }: Props) {
  const words = useWords()
  const { units } = usePreferences()
  const [projection, setProjection] = useState<ProjectionName>('plan')
  const [room, size] = useRoom()
  const { shown } = answers
  const drawing = useMemo(
    () =>
      shown && size.width > 0
        ? drawOnScreen(shown.door, shown.judgement, {
            projection,
            units,
            width_mm: size.width / PX_PER_MM,
            height_mm: size.height / PX_PER_MM,
          })
        : undefined,
    [shown, projection, units, size],
  )
  return (
    <section className="stage">
      <div className="stage-head">
        <h2>
          {drawing?.heading}
          {drawing && <span>, {drawing.seen}</span>}
        </h2>
        <div className="switch" role="radiogroup" aria-label={words.views.label}>
          {VIEWS.map((view) => (
            // biome-ignore lint/a11y/useSemanticElements: buttons in one row, told apart by aria
            <button key={view} type="button" role="radio" aria-checked={view === projection} onClick={() => setProjection(view)}>
              {words.views[view]}
            </button>
          ))}
        </div>
      </div>
      <div className="stage-room" ref={room}>
        {drawing && (
          <svg
            className="drawing"
            width={size.width}
            height={size.height}
            viewBox={`0 0 ${size.width / PX_PER_MM} ${size.height / PX_PER_MM}`}
            role="img"
            aria-label={`${drawing.heading}, ${drawing.seen}`}
          >
            <Marks marks={drawing.marks} />
          </svg>
        )}
      </div>
    </section>
  )
}

/** The size of an element, followed as it changes. */
function useRoom(): readonly [React.RefObject<HTMLDivElement | null>, { readonly width: number; readonly height: number }] {
  const ref = useRef<HTMLDivElement>(null)
  const [size, setSize] = useState({ width: 0, height: 0 })
  useEffect(() => {
    const element = ref.current
    if (!element) return
    const watch = new ResizeObserver(([entry]) => {
      if (entry) setSize({ width: Math.floor(entry.contentRect.width), height: Math.floor(entry.contentRect.height) })
    })
    watch.observe(element)
    return () => watch.disconnect()
  }, [])
  return [ref, size]
}
