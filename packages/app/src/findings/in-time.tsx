import { type Course, courseEnds, type Door, readingAt } from '@sillsight/engine'
import { drawTimeline, figure, instantWords, type Reader, type TimedFinding, timelineHeight_mm } from '@sillsight/report'
import { useEffect, useMemo, useRef, useState } from 'react'
import { Marks } from '../drawing/marks.tsx'
import { PX_PER_MM, useRoom } from '../drawing/use-room.ts'
import { Explained } from '../help/explained.tsx'
import type { Words } from '../words/en.ts'
import { useReader } from '../words/reader.ts'
import { useWords } from '../words/words.ts'

interface Props {
  readonly door: Door
  readonly finding: TimedFinding
  /** Where the slider stands. */
  readonly at_s: number
  readonly onAt: (at_s: number) => void
}

/** What decides takes this long to watch, the rest this: a box is met within a sixth of a second. */
const NEAR_MS = 5000
const FAR_MS = 2500

/** One finding over time: its timeline, and a slider that moves leaf and body on the drawing to any instant of it. */
export function InTime({ door, finding, at_s, onAt }: Props) {
  const words = useWords()
  const reader = useReader()
  const { course } = finding
  const [room, { width }] = useRoom<HTMLDivElement>()
  const height_mm = timelineHeight_mm(course)
  const width_mm = width / PX_PER_MM
  const drawn = useMemo(() => {
    if (width_mm <= 60) return undefined
    const box = { left_mm: 0, top_mm: 0, right_mm: width_mm, bottom_mm: timelineHeight_mm(course) }
    const { marks, ...rest } = drawTimeline(door, course, box, reader)
    const isText = ({ kind }: (typeof marks)[number]) => kind === 'text'
    return { ...rest, below: marks.filter((mark) => !isText(mark)), lettering: marks.filter(isText) }
  }, [door, course, width_mm, reader])
  const axis = drawn?.axis
  const x_mm = axis && axis.left_mm + ((at_s - axis.from_s) / (axis.to_s - axis.from_s)) * (axis.right_mm - axis.left_mm)
  const isOnAxis = axis !== undefined && at_s >= axis.from_s && at_s <= axis.to_s
  return (
    <section className="in-time" aria-label={words.inTime.title}>
      <div ref={room}>
        {drawn && (
          <svg
            className="drawing"
            width={width}
            height={height_mm * PX_PER_MM}
            viewBox={`0 0 ${width_mm} ${height_mm}`}
            role="img"
            aria-label={words.inTime.title}
          >
            <Marks marks={drawn.below} />
            {isOnAxis && <path className="in-time-now" d={`M${x_mm} ${drawn.chart.top_mm}V${drawn.chart.bottom_mm}`} strokeWidth={0.7} />}
            <g className="lettering-over">
              <Marks marks={drawn.lettering} />
            </g>
          </svg>
        )}
      </div>
      <Player course={course} near={axis} at_s={at_s} onAt={onAt} stops={drawn?.instants.map((instant) => instant.at_s) ?? []}>
        {placeWords(door, course, at_s, words, reader)}
      </Player>
      <ul className="in-time-list">
        {drawn?.instants.map((instant) => (
          <li key={instant.at_s}>
            <span className="in-time-number">{instant.number}</span>
            <span>
              <Explained text={instantWords(instant, reader)} />
            </span>
          </li>
        ))}
        <li>
          <svg viewBox="0 0 34 14" aria-hidden="true" className="key-hatch in-time-number">
            <rect x="0.5" y="0.5" width="33" height="13" />
            <path d="M4 13L14 1M10 13L20 1M16 13L26 1M22 13L32 1" />
          </svg>
          <span>
            <Explained text={reader.language.timeline.keys.unseen} />
          </span>
        </li>
        <li>
          <span className="in-time-number in-time-ink" />
          <span>
            <Explained text={reader.language.timeline.keys.output} />
          </span>
        </li>
      </ul>
    </section>
  )
}

/** The time, the way of the leaf and the place of the body, as they are at an instant. */
function placeWords(door: Door, course: Course, at_s: number, words: Words, reader: Reader): string {
  const said = (value: number, unit: 'mm' | 's') => figure({ value, unit }, reader)
  const y_mm = readingAt(course.place, at_s)
  const isOn = (kind: 'visible' | 'output') =>
    course.fields.some((field) => field[kind].some(({ from_s, to_s }) => from_s <= at_s && at_s <= to_s))
  const inPlane = at_s >= (course.enters_s ?? at_s) && at_s <= (course.leaves_s ?? at_s)
  return [
    words.inTime.now(said(at_s, 's'), said(Math.round(readingAt(course.leaf, at_s)), 'mm')),
    words.inTime.body(said(Math.abs(Math.round(y_mm)), 'mm'), reader.language.places.side(door.sides[y_mm >= 0 ? 'a' : 'b']), inPlane),
    isOn('visible') ? words.inTime.seen : words.inTime.unseen,
    isOn('output') ? words.inTime.forbids : words.inTime.allows,
  ].join('; ')
}

interface PlayerProps {
  readonly course: Course
  readonly near: { readonly from_s: number; readonly to_s: number } | undefined
  readonly at_s: number
  readonly onAt: (at_s: number) => void
  readonly stops: readonly number[]
  readonly children: string
}

/** A slider over the whole course, steps from instant to instant, and for whoever wants motion: play and pause. */
function Player({ course, near, at_s, onAt, stops, children }: PlayerProps) {
  const words = useWords().inTime
  const [playing, setPlaying] = useState(false)
  const ends = courseEnds(course)
  const now = useRef(at_s)
  now.current = at_s
  const asked = useRef({ near, ends, onAt })
  asked.current = { near, ends, onAt }
  useEffect(() => {
    if (!playing) return
    let last_ms = performance.now()
    let frame = 0
    const go = (ms: number) => {
      const next_s = now.current + pace(now.current, asked.current) * (ms - last_ms)
      last_ms = ms
      const { to_s } = asked.current.ends
      asked.current.onAt(Math.min(to_s, next_s))
      if (next_s >= to_s) setPlaying(false)
      else frame = requestAnimationFrame(go)
    }
    frame = requestAnimationFrame(go)
    return () => cancelAnimationFrame(frame)
  }, [playing])
  const still = matchMedia('(prefers-reduced-motion: reduce)').matches
  const move = (to_s: number) => {
    setPlaying(false)
    onAt(to_s)
  }
  const play = () => {
    if (!playing && at_s >= ends.to_s - 0.005) onAt(ends.from_s)
    setPlaying(!playing)
  }
  const before = [...stops].reverse().find((stop_s) => stop_s < at_s - 0.001) ?? ends.from_s
  const after = stops.find((stop_s) => stop_s > at_s + 0.001) ?? ends.to_s
  return (
    <div className="in-time-player">
      <p>{children}</p>
      <input
        type="range"
        aria-label={words.slider}
        aria-valuetext={children}
        min={ends.from_s}
        max={ends.to_s}
        step="any"
        value={at_s}
        onChange={({ target }) => move(Number(target.value))}
        onKeyDown={(event) => {
          // a step of a range without steps is a tenth of it: too coarse where hundredths decide
          const way =
            event.key === 'ArrowRight' || event.key === 'ArrowUp' ? 1 : event.key === 'ArrowLeft' || event.key === 'ArrowDown' ? -1 : 0
          if (way === 0) return
          event.preventDefault()
          move(Math.min(ends.to_s, Math.max(ends.from_s, at_s + way * (event.shiftKey ? 0.1 : 0.01))))
        }}
      />
      <div className="row">
        <button type="button" className="second" onClick={() => move(before)}>
          {words.back}
        </button>
        {!still && (
          <button type="button" className="second" onClick={play}>
            {playing ? words.pause : words.play}
          </button>
        )}
        <button type="button" className="second" onClick={() => move(after)}>
          {words.forward}
        </button>
      </div>
    </div>
  )
}

/** Seconds of the course in each millisecond: what the timeline shows is slowed down, the rest hurried. */
function pace(
  at_s: number,
  { near, ends }: { readonly near: PlayerProps['near']; readonly ends: { readonly from_s: number; readonly to_s: number } },
): number {
  const all_s = ends.to_s - ends.from_s
  if (near === undefined) return all_s / NEAR_MS
  const near_s = near.to_s - near.from_s
  return at_s >= near.from_s && at_s < near.to_s ? near_s / NEAR_MS : Math.max(0.001 * near_s, all_s - near_s) / FAR_MS
}
