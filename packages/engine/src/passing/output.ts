/**
 * What an output does while a body goes by at an even speed. Along its way (mm, or s at slowness 1) the body is visible in stretches; at a slowness in
 * s per mm every switching instant is one place on the way times the slowness, and a fixed time more.
 */
export interface View {
  /** Rising, apart from each other. */
  readonly visible: readonly Stretch[]
  /** From becoming visible, and staying so, until the output has changed, at the latest. */
  readonly response_s: number
  /** How long the output stays after the body was last visible. */
  readonly hold_s: number
  /** It sees so, and stops the leaf, only while the edge has at least this way to go; always if undefined. */
  readonly actsFrom_mm?: number | undefined
}
export interface Stretch {
  readonly from_mm: number
  readonly to_mm: number
}

/** The time place_mm * slowness + after_s. */
export interface Instant {
  readonly place_mm: number
  readonly after_s: number
}
/** The closing is forbidden from `on` to `off`; at both instants themselves it may still, or again, begin. */
export interface Span {
  readonly on: Instant
  readonly off: Instant
  /** From becoming visible to `on`. */
  readonly response_s: number
}

export function timeAt({ place_mm, after_s }: Instant, slowness: number): number {
  return place_mm * slowness + after_s
}

/** When one output forbids closing: each stretch that lasts for the response switches it; seen again during the hold, no new response is needed. */
export function spansOf({ visible, response_s, hold_s }: View, slowness: number): readonly Span[] {
  const spans: Span[] = []
  for (const { from_mm, to_mm } of visible) {
    const off = { place_mm: to_mm, after_s: hold_s }
    const last = spans[spans.length - 1]
    if (last && from_mm * slowness <= timeAt(last.off, slowness)) spans[spans.length - 1] = { ...last, off }
    else if ((to_mm - from_mm) * slowness >= response_s) spans.push({ on: { place_mm: from_mm, after_s: response_s }, off, response_s })
  }
  return spans
}

/** When at least one of several outputs forbids it. */
export function spansOfAll(views: readonly View[], slowness: number): readonly Span[] {
  const at = (instant: Instant) => timeAt(instant, slowness)
  const all = views.flatMap((view) => spansOf(view, slowness)).sort((a, b) => at(a.on) - at(b.on))
  const joined: Span[] = []
  for (const span of all) {
    const last = joined[joined.length - 1]
    if (!last || at(span.on) > at(last.off)) joined.push(span)
    else if (at(span.off) > at(last.off)) joined[joined.length - 1] = { ...last, off: span.off }
  }
  return joined
}

/**
 * Slownesses within a range at which something changes that is more than a shift: a stretch grows too short for the response, a gap is bridged by the
 * hold, the spans of two outputs begin to touch. Rising, with both ends of the range.
 */
export function turningPoints(views: readonly View[], from: number, to: number): readonly number[] {
  const points = [from, to]
  const keep = (time_s: number, way_mm: number) => {
    const point = time_s / way_mm
    if (point > from && point < to) points.push(point)
  }
  const instants: Instant[] = []
  for (const { visible, response_s, hold_s } of views)
    for (const [i, { from_mm, to_mm }] of visible.entries()) {
      keep(response_s, to_mm - from_mm)
      const next = visible[i + 1]
      if (next) keep(hold_s, next.from_mm - to_mm)
      instants.push({ place_mm: from_mm, after_s: response_s }, { place_mm: to_mm, after_s: hold_s })
    }
  if (views.length > 1)
    for (const a of instants) for (const b of instants) if (a.place_mm > b.place_mm) keep(b.after_s - a.after_s, a.place_mm - b.place_mm)
  return [...new Set(points)].sort((a, b) => a - b)
}
