import type { Door } from '@sillsight/engine'
import { onSheet, type Place, type ProjectionName, type View } from '@sillsight/report'
import { type KeyboardEvent, type PointerEvent, useMemo, useRef, useState } from 'react'
import type { Draft } from '../store/contract.ts'
import { useWords } from '../words/words.ts'
import { ARROWS, FINE_STEP_MM, GRIP_ARM_MM, type Grip, gripsOf, type Hold, move, STEP_MM } from './moving.ts'

interface Props {
  readonly door: Door
  readonly view: View
  readonly projection: ProjectionName
  /** Id of the zone that is shown. */
  readonly zone: string | undefined
  /** CSS px of one mm of paper. */
  readonly pxPerMm: number
  /** How large a thumb is, in CSS px. */
  readonly touchPx: number
  readonly onName: (name: string | undefined) => void
  /** While it is held: shown and judged, not kept. undefined ends it. */
  readonly onPreview: (change: ((draft: Draft) => void) | undefined) => void
  readonly onMoved: (grip: Grip, change: (draft: Draft) => void) => void
}

interface Dragged {
  readonly grip: Grip
  readonly from: { readonly x: number; readonly y: number }
  readonly by: Place
}

const STILL: Place = { u_mm: 0, v_mm: 0 }

/** What can be taken hold of, over the drawing: by a finger, or with the arrow keys (Shift for single millimetres). */
export function Grips(props: Props) {
  const { door, view, projection, zone, pxPerMm, touchPx, onName, onPreview, onMoved } = props
  const words = useWords()
  const [dragged, setDragged] = useState<Dragged>()
  const held = useRef<Dragged>(undefined)
  const grips = useMemo(() => gripsOf(door, { projection, zone }, (hold) => gripName(hold, door, words)), [door, projection, zone, words])
  const radius_mm = touchPx / 2 / pxPerMm

  const drag = (next: Dragged | undefined) => {
    held.current = next
    setDragged(next)
  }
  /** Where thumbs' rooms overlap, the grip answers whose middle is nearest, not the one that was painted last. */
  const nearest = (touched: Grip, event: PointerEvent<SVGGElement>): Grip => {
    const sheet = event.currentTarget.ownerSVGElement?.getBoundingClientRect()
    if (!sheet) return touched
    const far_mm = (grip: Grip) => {
      const { x_mm, y_mm } = onSheet(view, grip.at)
      return Math.hypot(x_mm - (event.clientX - sheet.left) / pxPerMm, y_mm - (event.clientY - sheet.top) / pxPerMm)
    }
    return grips.reduce((best, grip) => (far_mm(grip) < far_mm(best) ? grip : best), touched)
  }
  const onDown = (touched: Grip) => (event: PointerEvent<SVGGElement>) => {
    const grip = nearest(touched, event)
    event.preventDefault()
    event.currentTarget.setPointerCapture(event.pointerId)
    const element = event.currentTarget.parentElement?.children[grips.indexOf(grip)]
    if (element instanceof SVGElement) element.focus()
    onName(grip.name)
    drag({ grip, from: { x: event.clientX, y: event.clientY }, by: STILL })
  }
  const onMove = (event: PointerEvent<SVGGElement>) => {
    const now = held.current
    if (!now) return
    const { grip, from } = now
    const by = stepped({
      u_mm: grip.along ? ((event.clientX - from.x) / pxPerMm) * view.scale : 0,
      v_mm: grip.up ? (-(event.clientY - from.y) / pxPerMm) * view.scale : 0,
    })
    if (by.u_mm === now.by.u_mm && by.v_mm === now.by.v_mm) return
    drag({ ...now, by })
    onPreview((draft) => move(draft, grip.hold, projection, by))
  }
  const onUp = () => {
    const now = held.current
    drag(undefined)
    onPreview(undefined)
    if (now && (now.by.u_mm !== 0 || now.by.v_mm !== 0)) {
      const { grip, by } = now
      onMoved(grip, (draft) => move(draft, grip.hold, projection, by))
    }
  }
  const onCancel = () => {
    drag(undefined)
    onPreview(undefined)
  }
  const onKey = (grip: Grip) => (event: KeyboardEvent) => {
    if (event.key === 'Escape') onCancel()
    const way = ARROWS.get(event.key)
    if (!way) return
    event.preventDefault()
    const step_mm = event.shiftKey ? FINE_STEP_MM : STEP_MM
    const by = { u_mm: grip.along ? way[0] * step_mm : 0, v_mm: grip.up ? way[1] * step_mm : 0 }
    if (by.u_mm !== 0 || by.v_mm !== 0) onMoved(grip, (draft) => move(draft, grip.hold, projection, by))
  }

  return (
    <g className="grips">
      {grips.map((grip) => {
        const moved = dragged?.grip.id === grip.id ? dragged.by : STILL
        const at = onSheet(view, dragged?.grip.id === grip.id ? plus(dragged.grip.at, moved) : grip.at)
        return (
          <g
            key={grip.id}
            role="button"
            tabIndex={0}
            className="grip"
            data-held={dragged?.grip.id === grip.id || undefined}
            aria-label={words.drawing.grip(grip.name)}
            onPointerEnter={() => onName(grip.name)}
            onPointerLeave={() => !held.current && onName(undefined)}
            onFocus={() => onName(grip.name)}
            onBlur={() => onName(undefined)}
            onPointerDown={onDown(grip)}
            onPointerMove={onMove}
            onPointerUp={onUp}
            onPointerCancel={onCancel}
            onKeyDown={onKey(grip)}
          >
            <circle className="grip-reach" cx={at.x_mm} cy={at.y_mm} r={radius_mm} />
            <GripMark grip={grip} x={at.x_mm} y={at.y_mm} />
          </g>
        )
      })}
    </g>
  )
}

/** A small cross of arrows, only along the ways that it can go. */
function GripMark({ grip, x, y }: { readonly grip: Grip; readonly x: number; readonly y: number }) {
  const arm = GRIP_ARM_MM
  const head = 1
  const d = [
    grip.along &&
      `M${x - arm} ${y}H${x + arm}M${x - arm + head} ${y - head}L${x - arm} ${y}l${head} ${head}M${x + arm - head} ${y - head}L${x + arm} ${y}l${-head} ${head}`,
    grip.up &&
      `M${x} ${y - arm}V${y + arm}M${x - head} ${y - arm + head}L${x} ${y - arm}l${head} ${head}M${x - head} ${y + arm - head}L${x} ${y + arm}l${head} ${-head}`,
  ]
    .filter(Boolean)
    .join('')
  return <path className="grip-mark" d={d} />
}

function gripName(hold: Hold, door: Door, words: ReturnType<typeof useWords>): string {
  if (hold.kind === 'opening') return words.drawing.opening[hold.side]
  if (hold.kind === 'zone-edge') return words.drawing.zoneEdge(door.zones[hold.index]?.name ?? '', words.drawing.edges[hold.edge])
  return ''
}

function stepped({ u_mm, v_mm }: Place): Place {
  return { u_mm: Math.round(u_mm / STEP_MM) * STEP_MM + 0, v_mm: Math.round(v_mm / STEP_MM) * STEP_MM + 0 }
}

function plus(a: Place, b: Place): Place {
  return { u_mm: a.u_mm + b.u_mm, v_mm: a.v_mm + b.v_mm }
}
