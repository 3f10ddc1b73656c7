import type { Door } from '@sillsight/engine'
import { type Box, boxAround, type Mark, type Spot } from './model.ts'
import { stroke } from './pen.ts'
import { sensorSymbol } from './symbols.ts'
import { isInside, onSheet, type Place, type View } from './view.ts'

/** Beams that would lie closer than this on the paper run into a black area: of them a few are drawn. */
const APART_MM = 2

interface DrawnGrids {
  readonly beams: readonly Mark[]
  readonly bars: readonly Mark[]
  readonly ends: readonly Spot[]
  readonly boxes: readonly Box[]
}

/**
 * Light grids and photo-eyes: a line for each beam and a block at each end. Where beams lie too close for that the first, the last and some between
 * them are drawn, and their ends are one bar, as the housing is.
 *
 * @param flat where a point of the doorway frame lies in the view
 */
export function lightGrids({ sensors }: Door, view: View, flat: (point: readonly [number, number, number]) => Place): DrawnGrids {
  const planes = sensors.flatMap((sensor) => (sensor.kind === 'segment' ? sensor.planes : []))
  const drawn = planes.map(({ segments }) => {
    const all = segments.map(({ from_mm, to_mm }): Beam => [flat(from_mm), flat(to_mm)])
    // beams behind each other are one line here: drawn on each other they would look like a wall
    const lines = [...new Map(all.map((beam) => [beam.flatMap(({ u_mm, v_mm }) => [u_mm, v_mm]).join(), beam])).values()]
    const shown = apart(lines, view)
    const isDense = shown.length < lines.length
    return {
      beams: shown.flatMap((beam) => stroke(view, 'help', beam)),
      bars: isDense
        ? [0, 1].flatMap((end) =>
            stroke(
              view,
              'structure',
              lines.flatMap((beam) => beam[end] ?? []),
            ),
          )
        : [],
      ends: (isDense ? [...lines.slice(0, 1), ...lines.slice(-1)] : lines).flat(),
    }
  })
  const bars = drawn.flatMap((each) => each.bars)
  const places = drawn.flatMap(({ ends }) => ends).filter((place) => isInside(view.window, place)) // a level grid reaches farther than the view shows
  return {
    beams: drawn.flatMap(({ beams }) => beams),
    bars,
    ends: [...new Map(places.map((place) => [`${place.u_mm},${place.v_mm}`, place])).values()].map((place) => onSheet(view, place)),
    boxes: bars.flatMap((mark) => (mark.kind === 'line' ? [boxAround(mark.points)] : [])),
  }
}

type Beam = readonly [Place, Place]

/** Always the first and the last one. */
function apart(beams: readonly Beam[], view: View): readonly Beam[] {
  const [first] = beams
  const last = beams[beams.length - 1]
  if (!first || !last || first === last) return beams
  const shown = [first]
  for (const beam of beams.slice(1, -1))
    if (between_mm(shown[shown.length - 1] ?? first, beam, view) >= APART_MM && between_mm(beam, last, view) >= APART_MM) shown.push(beam)
  return [...shown, last]
}

/** On the paper, where two beams lie farthest from each other. */
function between_mm(a: Beam, b: Beam, view: View): number {
  const squares = [0, 1].map((end) => {
    const [p, q] = [onSheet(view, a[end as 0 | 1]), onSheet(view, b[end as 0 | 1])]
    return (p.x_mm - q.x_mm) ** 2 + (p.y_mm - q.y_mm) ** 2
  })
  return Math.sqrt(Math.max(...squares))
}

/** The blocks of sensors at these spots. */
export function blocks(spots: readonly Spot[]): { readonly marks: readonly Mark[]; readonly boxes: readonly Box[] } {
  const symbols = spots.map(sensorSymbol)
  return { marks: symbols.flatMap(({ marks }) => marks), boxes: symbols.map(({ box }) => box) }
}
