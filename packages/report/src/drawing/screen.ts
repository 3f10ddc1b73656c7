import type { Door, Judgement } from '@sillsight/engine'
import type { Reader } from '../wording/language.ts'
import { ranked, roomAround } from './dimensions.ts'
import { elevation } from './elevation.ts'
import type { Box, Mark } from './model.ts'
import { plan } from './plan.ts'
import type { Projection, Scene } from './scene.ts'
import { section } from './section.ts'
import { drawInPlace, sceneOf } from './sheet.ts'
import { heightOnPaper_mm, onSheet, type Place, type View, viewAt, type Window, widthOnPaper_mm } from './view.ts'

export type ProjectionName = 'plan' | 'elevation' | 'section'

export interface ScreenOptions extends Reader {
  readonly projection: ProjectionName
  /** Room for the drawing in mm of paper; on a screen one mm is 96 / 25.4 px. */
  readonly width_mm: number
  readonly height_mm: number
  readonly state?: string | undefined
  readonly zone?: string | undefined
  /** What to show, in mm of the real thing; all of it if left out. Kept while something is dragged, so that the drawing stands still. */
  readonly window?: Window | undefined
  /** What somebody else draws over it, given the zone that is shown: no name lies there. */
  readonly kept?: ((shown: { readonly zone: string | undefined }) => readonly KeptRoom[]) | undefined
}

/** Room on the paper around a place, half of it on each side, whatever the scale. */
export interface KeptRoom {
  readonly at: Place
  readonly along_mm: number
  readonly up_mm: number
}

/** One projection that fills a given room: the same marks as on paper, and the view that says which place lies where. */
export interface ScreenDrawing {
  readonly heading: string
  readonly seen: string
  readonly view: View
  readonly marks: readonly Mark[]
  /** Where the lettering of each dimension lies that can be changed, and what it measures. */
  readonly figures: readonly { readonly of: string; readonly box: Box }[]
  /** Names that found no place on the drawing. */
  readonly unplaced: readonly string[]
  /** Door state and zone that are shown. */
  readonly state: string
  readonly zone: string | undefined
}

const PROJECTIONS: Readonly<Record<ProjectionName, (scene: Scene) => Projection>> = { plan, elevation, section }
const SMALLEST_SCALE = 2
const LARGEST_SCALE = 5000

/** Draws one projection of a door as large as the room allows. A judgement without coverages draws the door alone. */
export function drawOnScreen(door: Door, judgement: Judgement, options: ScreenOptions): ScreenDrawing {
  const scene = sceneOf(door, judgement, options)
  const whole = PROJECTIONS[options.projection](scene)
  const projection = options.window ? { ...whole, window: options.window } : whole
  const scale = fittingScale(projection, options)
  const dimensions = ranked(projection.dimensions, scale)
  const room = roomAround(dimensions, projection.window, scale)
  const spare_mm = {
    across: options.width_mm - room.left - room.right - widthOnPaper_mm(projection.window, scale),
    up: options.height_mm - room.top - room.bottom - heightOnPaper_mm(projection.window, scale),
  }
  const view = viewAt(projection.window, scale, { x_mm: room.left + spare_mm.across / 2, y_mm: room.top + spare_mm.up / 2 })
  const bounds = { left_mm: 0, top_mm: 0, right_mm: options.width_mm, bottom_mm: options.height_mm }
  const kept = (options.kept?.({ zone: scene.zone?.id }) ?? []).map((room) => keptBox(view, room))
  const { marks, labelling, figures } = drawInPlace({ projection, view, dimensions, bounds }, [], kept)
  return {
    heading: projection.heading,
    seen: projection.seen,
    view,
    marks,
    figures,
    unplaced: labelling.unplaced.map(({ text }) => text),
    state: scene.state.id,
    zone: scene.zone?.id,
  }
}

function keptBox(view: View, { at, along_mm, up_mm }: KeptRoom): Box {
  const { x_mm, y_mm } = onSheet(view, at)
  return { left_mm: x_mm - along_mm, right_mm: x_mm + along_mm, top_mm: y_mm - up_mm, bottom_mm: y_mm + up_mm }
}

/** The largest scale at which window and dimensions fit; room for dimensions changes with the scale, so it is halved in on. */
function fittingScale({ window, dimensions }: Projection, { width_mm, height_mm }: ScreenOptions): number {
  const fits = (scale: number): boolean => {
    const room = roomAround(ranked(dimensions, scale), window, scale)
    return (
      widthOnPaper_mm(window, scale) + room.left + room.right <= width_mm &&
      heightOnPaper_mm(window, scale) + room.top + room.bottom <= height_mm
    )
  }
  let [tooLarge, fitting] = [SMALLEST_SCALE, LARGEST_SCALE]
  for (let i = 0; i < 24; i++) {
    const middle = Math.sqrt(tooLarge * fitting)
    if (fits(middle)) fitting = middle
    else tooLarge = middle
  }
  return fitting
}
