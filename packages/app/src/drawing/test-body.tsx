import { type Door, type Look, looker, type Stance } from '@sillsight/engine'
import {
  type BodySolid,
  onSheet,
  type Place,
  type ProjectionName,
  postureWords,
  type ScreenDrawing,
  sizeWords,
  solidsOfBody,
} from '@sillsight/report'
import { type KeyboardEvent, type PointerEvent, useMemo, useRef, useState } from 'react'
import { Explained } from '../help/explained.tsx'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'
import { ARROWS, FINE_STEP_MM, STEP_MM } from './moving.ts'
import type { Drawn } from './stage.tsx'

interface Props extends Drawn {
  /** Undefined: in the middle of the zone. */
  readonly body: BodyAt | undefined
  readonly onMove: (body: BodyAt) => void
}

/** Where the test body is: which of the zone's stances, and the middle of its footprint in the doorway. */
export interface BodyAt {
  readonly stance: number
  readonly x_mm: number
  readonly y_mm: number
}

/** A body that is moved through a zone, and what sees it where it is. */
function useLook(door: Door | undefined, drawing: Pick<ScreenDrawing, 'zone' | 'state'> | undefined, body: BodyAt | undefined) {
  const prepared = useMemo(() => {
    const zone = door?.zones.find(({ id }) => id === drawing?.zone)
    const state = door?.states.find(({ id }) => id === drawing?.state)
    return door && zone && state ? { zone, ...looker(door, zone, state) } : undefined
  }, [door, drawing?.zone, drawing?.state])
  const start: BodyAt | undefined = prepared && {
    stance: 0,
    x_mm: (prepared.zone.xMin_mm + prepared.zone.xMax_mm) / 2,
    y_mm: (prepared.zone.yMin_mm + prepared.zone.yMax_mm) / 2,
  }
  const at = body ?? start
  const stance = at && (prepared?.stances[at.stance] ?? prepared?.stances[0])
  return { stances: prepared?.stances ?? [], at, stance, look: at && stance && prepared?.look(stance, at.x_mm, at.y_mm) }
}

/** What sees a body, or why nothing does, in one sentence. */
function useLookWords(look: Look | undefined, door: Door | undefined): string {
  const words = useWords().drawing
  if (!look || !door) return ''
  if (!look.free) return words.notFree
  const seeing = look.fields.filter(({ sees }) => sees)
  if (seeing.length > 0) {
    const names = seeing.map(({ field }) => door.sensors.find(({ id }) => id === field.split('/')[0])?.name ?? field)
    const beams = seeing.reduce((sum, { rays }) => sum + rays.length, 0)
    return words.seenBy([...new Set(names)].join(', '), beams)
  }
  const reasons = (['n', 'b', 'r', 's', 'c', 't'] as const).flatMap((rule) => {
    const beams = look.fields.reduce((sum, { failed, rays }) => sum + (rule === 'n' ? rays.length : (failed[rule] ?? 0)), 0)
    return beams > 0 ? [words.because[rule](beams)] : []
  })
  return `${words.unseen}: ${reasons.length > 0 ? reasons.join('; ') : words.noBeam}`
}

/** What sees the body, and which of the zone's bodies it is. */
export function TestBodyNote({ door, drawing, body, onMove }: Props) {
  const words = useWords().drawing
  const reader = useReader()
  const { at, stances, look } = useLook(door, drawing, body)
  const told = useLookWords(look, door)
  if (!at) return null
  return (
    <>
      <strong>
        <Explained text={told} />
      </strong>
      {stances.length > 1 && (
        <select
          className="choose"
          aria-label={words.stance}
          value={at.stance}
          onChange={(event) => onMove({ ...at, stance: Number(event.target.value) })}
        >
          {stances.map(({ posture, yaw_rad, body: { id }, index }, i) => (
            <option key={`${id} ${index} ${yaw_rad}`} value={i}>
              {postureWords(posture, reader, yaw_rad)}
            </option>
          ))}
        </select>
      )}
    </>
  )
}

/** The body on the drawing, with the beams that see it; moved by a finger or with the arrow keys. */
export function TestBody({ door, drawing, projection, pxPerMm, touchPx, body, onMove }: Props) {
  const words = useWords().drawing
  const reader = useReader()
  const { at, stance, look } = useLook(door, drawing, body)
  const from = useRef<{ readonly x: number; readonly y: number; readonly at: BodyAt }>(undefined)
  const [held, setHeld] = useState(false)
  if (!at || !stance || !look) return null
  const { view } = drawing
  const project = (x_mm: number, y_mm: number, z_mm: number): Place =>
    projection === 'plan'
      ? { u_mm: x_mm, v_mm: y_mm }
      : projection === 'elevation'
        ? { u_mm: x_mm, v_mm: z_mm }
        : { u_mm: -y_mm, v_mm: z_mm }
  const spot = (x_mm: number, y_mm: number, z_mm: number) => {
    const { x_mm: x, y_mm: y } = onSheet(view, project(x_mm, y_mm, z_mm))
    return `${round(x)} ${round(y)}`
  }
  const middle = onSheet(view, project(at.x_mm, at.y_mm, look.floor_mm))
  const by = (across_mm: number, up_mm: number, start: BodyAt): BodyAt => ({
    ...start,
    x_mm: projection === 'section' ? start.x_mm : start.x_mm + across_mm,
    y_mm: projection === 'plan' ? start.y_mm + up_mm : projection === 'section' ? start.y_mm - across_mm : start.y_mm,
  })
  const onDown = (event: PointerEvent<SVGGElement>) => {
    event.preventDefault()
    event.currentTarget.setPointerCapture(event.pointerId)
    event.currentTarget.focus()
    from.current = { x: event.clientX, y: event.clientY, at }
    setHeld(true)
  }
  const onDrag = (event: PointerEvent) => {
    const start = from.current
    if (!start) return
    const px = view.scale / pxPerMm
    onMove(by((event.clientX - start.x) * px, -(event.clientY - start.y) * px, start.at))
  }
  const onUp = () => {
    from.current = undefined
    setHeld(false)
  }
  const onKey = (event: KeyboardEvent) => {
    const step = event.shiftKey ? FINE_STEP_MM : STEP_MM
    const way = ARROWS.get(event.key)
    if (!way) return
    event.preventDefault()
    onMove(by(way[0] * step, way[1] * step, at))
  }
  const rays = look.fields.flatMap((field) => field.rays)
  const thin = Math.max(1, Math.ceil(rays.length / 12)) // more lines than these only blacken the drawing
  return (
    <g
      className="test-body"
      data-moved={body !== undefined || undefined}
      data-seen={look.fields.some(({ sees }) => sees) || undefined}
      data-held={held || undefined}
    >
      <path
        className="ray"
        d={rays
          .filter((_, i) => i % thin === 0)
          .map(({ from_mm, to_mm }) => `M${spot(...from_mm)}L${spot(...to_mm)}`)
          .join('')}
      />
      <g
        role="button"
        tabIndex={0}
        className="grip"
        aria-label={words.bodyMove(sizeWords(stance.posture, reader))}
        onPointerDown={onDown}
        onPointerMove={onDrag}
        onPointerUp={onUp}
        onPointerCancel={onUp}
        onKeyDown={onKey}
      >
        <circle className="grip-reach" cx={middle.x_mm} cy={middle.y_mm} r={touchPx / 2 / pxPerMm} />
        <path className="body-outline" d={outline(stance, at, look.floor_mm, projection, spot)} />
      </g>
    </g>
  )
}

/** The outlines of the body's parts in a projection, as an SVG path. */
function outline(
  { posture, yaw_rad }: Stance,
  { x_mm, y_mm }: BodyAt,
  z_mm: number,
  projection: ProjectionName,
  spot: (x_mm: number, y_mm: number, z_mm: number) => string,
): string {
  const path = (corners: readonly (readonly [number, number, number])[]) =>
    `${corners.map((corner, i) => `${i === 0 ? 'M' : 'L'}${spot(...corner)}`).join('')}Z`
  return solidsOfBody(posture, { x_mm, y_mm, z_mm, yaw_rad })
    .map((solid) => {
      const ring = ringOf(solid)
      const { from_mm, to_mm } = solid
      if (projection === 'plan') return path(ring.map(([x, y]) => [x, y, z_mm]))
      const [left, right] = [Math.min, Math.max].map((pick) => ({ x: pick(...ring.map(([x]) => x)), y: pick(...ring.map(([, y]) => y)) }))
      if (!left || !right) return ''
      return path([
        [left.x, left.y, from_mm],
        [right.x, right.y, from_mm],
        [right.x, right.y, to_mm],
        [left.x, left.y, to_mm],
      ])
    })
    .join('')
}

/** The footprint of one part in the doorway. */
function ringOf(solid: BodySolid): readonly (readonly [number, number])[] {
  const { x_mm, y_mm } = solid
  if (solid.shape === 'post')
    return Array.from({ length: 48 }, (_, i) => [
      x_mm + solid.radius_mm * Math.cos((i * Math.PI) / 24),
      y_mm + solid.radius_mm * Math.sin((i * Math.PI) / 24),
    ])
  const [cos, sin] = [Math.cos(solid.yaw_rad), Math.sin(solid.yaw_rad)]
  return [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([a = 0, b = 0]) => {
    const [along, across] = [(a * solid.size_mm[0]) / 2, (b * solid.size_mm[1]) / 2]
    return [x_mm + along * cos - across * sin, y_mm + along * sin + across * cos]
  })
}

function round(value: number): number {
  return Math.round(value * 100) / 100
}
