import { onSheet, type Place } from '@sillsight/report'
import { type KeyboardEvent, lazy, type PointerEvent, Suspense, useEffect, useRef, useState } from 'react'
import { ARROWS, FINE_STEP_MM, STEP_MM } from '../drawing/moving.ts'
import type { Drawn } from '../drawing/stage.tsx'
import { useDoor } from '../screens/at-door.ts'
import type { Photo } from '../store/contract.ts'
import { shownTime } from '../words/time.ts'
import { useWords } from '../words/words.ts'
import { usePicture } from './use-picture.ts'

const Pins = lazy(() => import('./pins.tsx').then(({ Pins }) => ({ default: Pins })))

interface Props extends Drawn {
  /** Whether marks can be moved here. */
  readonly movable: boolean
  /** The photo whose mark is to be gone to; a new object for each wish. */
  readonly wish: { readonly photo: string } | undefined
  readonly onName: (name: string | undefined) => void
}

/** Where photos were taken, on the drawing on which somebody marked it: opened by a touch or Enter, moved by a finger or the arrow keys. */
export function PhotoMarks({ wish, ...props }: Props) {
  const { snapshot } = useDoor()
  const [open, setOpen] = useState<string>()
  const marked = snapshot.photos.flatMap((photo, i) =>
    photo.onDrawing?.view === props.projection ? [{ photo, number: i + 1, at: photo.onDrawing }] : [],
  )
  const opened = marked.find(({ photo }) => photo.id === open)
  return (
    <g className="photo-marks">
      {marked.map((mark) => (
        <PhotoMark
          key={mark.photo.id}
          {...props}
          {...mark}
          wish={wish?.photo === mark.photo.id ? wish : undefined}
          onOpen={() => setOpen(mark.photo.id)}
        />
      ))}
      {opened && <OpenPhoto photo={opened.photo} onClose={() => setOpen(undefined)} />}
    </g>
  )
}

export function photoName({ caption, takenAt_ms }: Photo): string {
  return caption || shownTime(takenAt_ms)
}

function OpenPhoto({ photo, onClose }: { readonly photo: Photo; readonly onClose: () => void }) {
  const url = usePicture(photo.id)
  if (url === undefined) return null
  return (
    <Suspense fallback={null}>
      <Pins photo={photo} url={url} name={photoName(photo)} onClose={onClose} />
    </Suspense>
  )
}

/** Half of the plate that is drawn, in mm of paper. */
const HALF_MM = 2.9
/** A finger that moves less than this meant to touch, in CSS px. */
const STILL_PX = 4

interface MarkProps extends Props {
  readonly photo: Photo
  readonly number: number
  readonly at: Place
  readonly onOpen: () => void
}

function PhotoMark({ photo, number, at, drawing, projection, pxPerMm, touchPx, movable, wish, onName, onOpen }: MarkProps) {
  const words = useWords().photos
  const { door } = useDoor()
  const element = useRef<SVGGElement>(null)
  const from = useRef<{ readonly x: number; readonly y: number }>(undefined)
  const [dragged, setDragged] = useState<Place>()
  const name = photoName(photo)
  useEffect(() => {
    if (!wish) return
    element.current?.focus({ preventScroll: true })
    element.current?.scrollIntoView({ block: 'center' })
  }, [wish])
  const place = (to: Place) =>
    projection !== 'section' && door.placePhoto(photo.id, { view: projection, u_mm: Math.round(to.u_mm), v_mm: Math.round(to.v_mm) })
  const pulled = (event: PointerEvent): Place | undefined => {
    const start = from.current
    if (!start || !movable) return undefined
    const [x, y] = [event.clientX - start.x, event.clientY - start.y]
    if (dragged === undefined && Math.abs(x) < STILL_PX && Math.abs(y) < STILL_PX) return undefined
    return { u_mm: at.u_mm + (x / pxPerMm) * drawing.view.scale, v_mm: at.v_mm - (y / pxPerMm) * drawing.view.scale }
  }
  const onKey = (event: KeyboardEvent) => {
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault()
      onOpen()
      return
    }
    const way = ARROWS.get(event.key)
    if (!way || !movable) return
    event.preventDefault()
    const step_mm = event.shiftKey ? FINE_STEP_MM : STEP_MM
    place({ u_mm: at.u_mm + way[0] * step_mm, v_mm: at.v_mm + way[1] * step_mm })
  }
  const release = () => {
    from.current = undefined
    setDragged(undefined)
  }
  const { x_mm: x, y_mm: y } = onSheet(drawing.view, dragged ?? at)
  return (
    <g
      ref={element}
      role="button"
      tabIndex={0}
      className="photo-mark"
      data-held={dragged !== undefined || undefined}
      aria-label={movable ? words.markMoves(number, name) : words.mark(number, name)}
      onPointerEnter={() => onName(words.markNamed(number, name))}
      onPointerLeave={() => !from.current && onName(undefined)}
      onFocus={() => onName(words.markNamed(number, name))}
      onBlur={() => onName(undefined)}
      onPointerDown={(event) => {
        event.preventDefault()
        event.currentTarget.setPointerCapture(event.pointerId)
        event.currentTarget.focus()
        from.current = { x: event.clientX, y: event.clientY }
      }}
      onPointerMove={(event) => {
        const to = pulled(event)
        if (to) setDragged(to)
      }}
      onPointerUp={(event) => {
        const to = pulled(event)
        const isTouched = from.current !== undefined && to === undefined
        release()
        if (to) place(to)
        if (isTouched) onOpen()
      }}
      onPointerCancel={release}
      onKeyDown={onKey}
    >
      <circle className="grip-reach" cx={x} cy={y} r={touchPx / 2 / pxPerMm} />
      <path
        className="photo-plate-mark"
        d={`M${x - HALF_MM} ${y - HALF_MM * 0.7}h${HALF_MM * 0.6}l${HALF_MM * 0.25} ${-HALF_MM * 0.3}h${HALF_MM * 0.5}l${HALF_MM * 0.25} ${HALF_MM * 0.3}h${HALF_MM * 0.4}v${HALF_MM * 1.5}h${-HALF_MM * 2}z`}
      />
      <text className="photo-mark-number" x={x} y={y + 1.25}>
        {number}
      </text>
    </g>
  )
}
