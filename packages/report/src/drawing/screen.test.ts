import { describe, expect, it } from 'vitest'
import { randomDoor } from '../../test/random-doors.ts'
import { METRIC } from '../../test/readers.ts'
import { crosses } from './labels.ts'
import { letteringBox } from './lettering.ts'
import { type Box, boxAround, overlap } from './model.ts'
import { drawOnScreen, type KeptRoom, type ScreenDrawing } from './screen.ts'
import { onSheet } from './view.ts'

/** Rooms for a drawing on a phone and on a desk, in mm of paper. */
const ROOMS = [
  { width_mm: 87, height_mm: 50 },
  { width_mm: 240, height_mm: 150 },
]
const PROJECTIONS = ['plan', 'elevation', 'section'] as const

function drawn(seed: number, kept: readonly KeptRoom[] = []): readonly { readonly at: string; readonly drawing: ScreenDrawing }[] {
  const { door, judgement } = randomDoor(seed)
  return ROOMS.flatMap((room) =>
    PROJECTIONS.map((projection) => ({
      at: `door ${seed}, ${projection}, ${room.width_mm} mm`,
      drawing: drawOnScreen(door, judgement, { ...METRIC, projection, ...room, kept: () => kept }),
    })),
  )
}

function texts({ marks }: ScreenDrawing): readonly { readonly text: string; readonly box: Box }[] {
  return marks.flatMap((mark) => (mark.kind === 'text' ? [{ text: mark.text, box: letteringBox(mark) }] : []))
}

describe('a drawing on a screen', () => {
  it('keeps lettering off other lettering and off hatching, in every projection (doors 13 to 24)', () => {
    const found: string[] = []
    for (let seed = 13; seed <= 24; seed++)
      for (const { at, drawing } of drawn(seed)) {
        const all = texts(drawing)
        const hatching = drawing.marks.flatMap((mark) =>
          mark.kind === 'line' && mark.layer === 'hatch' && mark.points[0] && mark.points[1]
            ? [[mark.points[0], mark.points[1]] as const]
            : [],
        )
        for (const [i, { text, box }] of all.entries()) {
          for (const other of all.slice(i + 1)) if (overlap(box, other.box)) found.push(`${at}: "${text}" on "${other.text}"`)
          if (hatching.some((line) => crosses(line, box))) found.push(`${at}: "${text}" on hatching`)
        }
      }
    expect(found).toEqual([])
  })

  it('keeps lettering inside of its room (doors 13 to 24)', () => {
    const found: string[] = []
    for (let seed = 13; seed <= 24; seed++)
      for (const [i, { at, drawing }] of drawn(seed).entries()) {
        const room = ROOMS[Math.floor(i / PROJECTIONS.length)]
        for (const { text, box } of texts(drawing))
          if (room && (box.left_mm < 0 || box.top_mm < 0 || box.right_mm > room.width_mm || box.bottom_mm > room.height_mm))
            found.push(`${at}: "${text}"`)
      }
    expect(found).toEqual([])
  })

  it('keeps lettering off the symbols of sensors, at both ends of a light grid too (doors 13 to 24)', () => {
    const found: string[] = []
    let symbols = 0
    for (let seed = 13; seed <= 24; seed++) {
      const { door, judgement } = randomDoor(seed)
      const { width_mm } = door.opening
      const at = (y_mm: number, z_mm: number) => ({ from_mm: [-60, y_mm, z_mm], to_mm: [width_mm + 60, y_mm, z_mm] }) as const
      const grids = [-180, 400].map((y_mm, i) => ({
        kind: 'segment' as const,
        spotRadius_mm: 5,
        id: `grid-${i}`,
        name: 'light grid at the line of the gate',
        source: { basis: 'invented' as const },
        fields: [],
        planes: [{ id: 'curtain', segments: [150, 600, 1200].map((z_mm) => at(y_mm, z_mm)) }],
      }))
      const whole = { ...door, sensors: [...door.sensors, ...grids] }
      for (const room of [...ROOMS, { width_mm: 70, height_mm: 60 }])
        for (const projection of PROJECTIONS) {
          const drawing = drawOnScreen(whole, judgement, { ...METRIC, projection, ...room })
          const inked = drawing.marks.flatMap((mark) =>
            mark.kind === 'area' && mark.layer === 'thing' && mark.fill === 'ink' ? [boxAround(mark.rings.flat())] : [],
          )
          symbols += inked.length
          for (const { text, box } of texts(drawing).filter(({ text }) => !/^[\d\s,.+-]+$/.test(text)))
            if (inked.some((other) => overlap(box, other))) found.push(`door ${seed}, ${projection}, ${room.width_mm} mm: "${text}"`)
        }
    }
    expect(found).toEqual([])
    expect(symbols).toBeGreaterThan(500)
  })

  it('keeps names off what somebody else draws over it (doors 13 to 24)', () => {
    const found: string[] = []
    for (let seed = 13; seed <= 24; seed++) {
      const { door } = randomDoor(seed)
      const { width_mm } = door.opening
      const kept = [0, 0.5, 1].map((share) => ({ at: { u_mm: share * width_mm, v_mm: 200 }, along_mm: 2.8, up_mm: 2.8 }))
      for (const { at, drawing } of drawn(seed, kept)) {
        const figures = drawing.marks.filter((mark) => mark.kind === 'text' && /^[\d\s,.+-]+$/.test(mark.text)).length // they stay with their lines
        const boxes = kept.map((room) => {
          const { x_mm, y_mm } = onSheet(drawing.view, room.at)
          return { left_mm: x_mm - 2.8, right_mm: x_mm + 2.8, top_mm: y_mm - 2.8, bottom_mm: y_mm + 2.8 }
        })
        const on = texts(drawing).filter(({ text, box }) => !/^[\d\s,.+-]+$/.test(text) && boxes.some((other) => overlap(box, other)))
        expect(figures).toBeGreaterThan(0)
        found.push(...on.map(({ text }) => `${at}: "${text}"`))
      }
    }
    expect(found).toEqual([])
  })
})
