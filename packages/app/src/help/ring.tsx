import { useLayoutEffect, useState } from 'react'

interface Rect {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** Room between a thing and the ring around it. */
const APART_PX = 6
/** A leader line that is longer than this crosses too much to explain anything. */
const LONGEST_PX = 180
const NUMBER_RADIUS_PX = 13
interface Point {
  readonly x: number
  readonly y: number
}
/** What cuts its contents off: a thing that was scrolled out of it gets no ring. */
const ROOMS = '.findings, .entries, .tape, .stage-room'

/**
 * A position number as drawings have it: a ring around the thing and a thin leader line to its number; where that would cross half the sheet,
 * the number sits on the ring. It lies over the sheet and takes no touch.
 */
export function Ring({
  number,
  of,
  from,
}: {
  readonly number: number
  readonly of: () => Element | undefined
  readonly from: () => Element | null
}) {
  const [lines, setLines] = useState<{ readonly ring: Rect; readonly leader: string | undefined; readonly corner: Point }>()
  useLayoutEffect(() => {
    let asked = 0
    const look = () => {
      asked = 0
      const [thing, source] = [of(), from()]
      const ring = thing && ringAround(thing)
      const next = ring && source ? { ring, leader: leaderTo(ring, source.getBoundingClientRect()), corner: cornerFor(ring) } : undefined
      setLines((now) => (JSON.stringify(now) === JSON.stringify(next) ? now : next))
    }
    const ask = () => {
      asked ||= requestAnimationFrame(look)
    }
    look()
    const changes = new MutationObserver(ask)
    changes.observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true })
    const sizes = new ResizeObserver(ask)
    sizes.observe(document.body)
    window.addEventListener('scroll', ask, { capture: true, passive: true })
    window.addEventListener('resize', ask)
    return () => {
      cancelAnimationFrame(asked)
      changes.disconnect()
      sizes.disconnect()
      window.removeEventListener('scroll', ask, { capture: true })
      window.removeEventListener('resize', ask)
    }
  }, [of, from])
  if (!lines) return null
  const { ring, leader, corner } = lines
  const [width, height] = [ring.right - ring.left, ring.bottom - ring.top]
  const radius = Math.min(width, height) / 2
  return (
    <svg className="ring" aria-hidden="true">
      {(['halo', 'pen'] as const).map((pen) => (
        <g key={pen} className={`ring-${pen}`}>
          {leader !== undefined && <path d={leader} />}
          <rect x={ring.left} y={ring.top} width={width} height={height} rx={radius} />
        </g>
      ))}
      {leader === undefined && (
        <g className="ring-number" transform={`translate(${corner.x} ${corner.y})`}>
          <circle r={NUMBER_RADIUS_PX} />
          <text>{number}</text>
        </g>
      )}
    </svg>
  )
}

/** Undefined where the thing is not on the screen. */
function ringAround(thing: Element): Rect | undefined {
  const at = thing.getBoundingClientRect()
  if (at.width === 0 && at.height === 0) return undefined
  const [x, y] = [(at.left + at.right) / 2, (at.top + at.bottom) / 2]
  const room = thing.closest(ROOMS)?.getBoundingClientRect()
  if (room && (x < room.left || x > room.right || y < room.top || y > room.bottom)) return undefined
  const apart = (size: number) => Math.max(APART_PX, (36 - size) / 2) // around a thin thing too the ring is as large as a finger
  return {
    left: Math.max(2, at.left - apart(at.width)),
    right: Math.min(innerWidth - 2, at.right + apart(at.width)),
    top: Math.max(2, at.top - apart(at.height)),
    bottom: Math.min(innerHeight - 2, at.bottom + apart(at.height)),
  }
}

/** The corner of a ring for its number: the first where that covers no words. */
function cornerFor({ left, right, top, bottom }: Rect): Point {
  const corners = [left - 7, right + 7].flatMap((x) =>
    [top - 7, bottom + 7].map((y) => ({ x: clamp(x, 14, innerWidth - 14), y: clamp(y, 14, innerHeight - 14) })),
  )
  return corners.find((corner) => !isOnWords(corner)) ?? (corners[0] as Point)
}

function isOnWords({ x, y }: Point): boolean {
  return [-1, 0, 1].some((across) =>
    [-1, 0, 1].some((down) => {
      const at = { x: x + across * (NUMBER_RADIUS_PX - 2), y: y + down * (NUMBER_RADIUS_PX - 2) }
      const words = [...(document.elementFromPoint(at.x, at.y)?.childNodes ?? [])].filter(({ nodeType }) => nodeType === Node.TEXT_NODE)
      return words.some((node) => {
        const range = document.createRange()
        range.selectNode(node)
        return [...range.getClientRects()].some((box) => at.x >= box.left && at.x <= box.right && at.y >= box.top && at.y <= box.bottom)
      })
    }),
  )
}

/** From the lower edge of the number to the nearest point of a ring below it; undefined where the ring is far away or not below. */
function leaderTo(ring: Rect, number: DOMRect): string | undefined {
  const [x, y] = [(number.left + number.right) / 2, number.bottom]
  const radius = Math.min(ring.right - ring.left, ring.bottom - ring.top) / 2
  // the spine of the ring's rounded outline: every point of the outline is one radius away from it
  const [sx, sy] = [clamp(x, ring.left + radius, ring.right - radius), clamp(y, ring.top + radius, ring.bottom - radius)]
  const far = Math.hypot(sx - x, sy - y)
  if (sy - y < Math.abs(sx - x) / 2 || far <= radius || far - radius > LONGEST_PX) return undefined
  const on = far - radius
  return `M${Math.round(x)} ${Math.round(y)}L${Math.round(x + ((sx - x) * on) / far)} ${Math.round(y + ((sy - y) * on) / far)}`
}

function clamp(value: number, low: number, high: number): number {
  return Math.max(low, Math.min(high, value))
}
