import type { Door, Field, RangingSensor } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { judgementOf, loadingDoor, loadingDoorJudged } from '../../test/doors.ts'
import { randomDoor } from '../../test/random-doors.ts'
import { FEET, METRIC } from '../../test/readers.ts'
import { expectWellFormed } from '../../test/well-formed.ts'
import { type Box, boxAround, overlap } from './model.ts'
import { drawSheet, sheetSvg } from './sheet.ts'

const metric = { ...METRIC } as const

function clashes(boxes: readonly Box[], hatched: readonly Box[]): { readonly each: readonly Box[]; readonly hatching: readonly Box[] } {
  return {
    each: boxes.filter((box, i) => boxes.some((other, j) => i !== j && overlap(box, other))),
    hatching: boxes.filter((box) => hatched.some((other) => overlap(box, other))),
  }
}

describe('a sheet', () => {
  it('keeps labels and figures off each other, off hatching and on the paper (doors 1 to 80)', () => {
    for (let seed = 1; seed <= 80; seed++) {
      const { door, judgement } = randomDoor(seed)
      const { texts, hatched, sheet, labellings } = drawSheet(door, judgement, metric)
      const labels = labellings.flatMap(({ placed }) => placed.map(({ box }) => box))
      const isOff = (box: Box): boolean =>
        box.left_mm < 0 || box.top_mm < 0 || box.right_mm > sheet.width_mm || box.bottom_mm > sheet.height_mm
      expect({ seed, off: texts.filter(isOff), ...clashes(texts, hatched) }).toEqual({ seed, off: [], each: [], hatching: [] })
      expect({ seed, ...clashes(labels, hatched) }).toEqual({ seed, each: [], hatching: [] })
    }
  })

  it('names nearly every pocket that it letters beside the drawing or in it', () => {
    let wanted = 0
    let placed = 0
    for (let seed = 1; seed <= 60; seed++) {
      const { door, judgement } = randomDoor(seed)
      const [planLabels] = drawSheet(door, judgement, metric).labellings.filter(({ placed: found, unplaced }) =>
        [...found.map(({ request }) => request), ...unplaced].some(({ text }) => text === 'yard'),
      )
      wanted += Math.min(12, judgement.coverages[0]?.pockets.length ?? 0)
      placed += planLabels?.placed.filter(({ request }) => request.circled).length ?? 0
    }
    expect(placed / wanted).toBeGreaterThan(0.95)
  })

  it('explains the three largest pockets beside the drawing on every sheet', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const { door, judgement } = randomDoor(seed)
      const letters = (judgement.coverages[0]?.pockets ?? []).slice(0, 3).map(({ letter }) => letter)
      expect({ seed, told: drawSheet(door, judgement, metric).told.slice(0, 3) }).toEqual({ seed, told: letters })
    }
  })

  it('gives the same bytes for the same door', () => {
    expect(sheetSvg(loadingDoor, loadingDoorJudged, metric)).toBe(
      sheetSvg(structuredClone(loadingDoor), structuredClone(loadingDoorJudged), metric),
    )
  })

  it('is drawn to scale: an opening of 4000 mm is 200 mm of paper at 1:20 and 80 mm at 1:50', () => {
    for (const [scale, onPaper_mm] of [
      [20, 200],
      [50, 80],
      [100, 40],
    ] as const) {
      const { sheet, scales } = drawSheet(loadingDoor, loadingDoorJudged, { ...metric, scale })
      expect(scales).toEqual({ plan: scale, upright: scale })
      const leaves = sheet.marks.flatMap((mark) =>
        mark.kind === 'area' && mark.layer === 'thing' && mark.rings[0]?.length === 4 ? [boxAround(mark.rings[0])] : [],
      )
      expect(
        leaves.some(
          ({ left_mm, right_mm, top_mm, bottom_mm }) =>
            Math.abs(right_mm - left_mm - onPaper_mm) < 1e-9 && Math.abs(bottom_mm - top_mm - 40 / scale) < 1e-9,
        ),
      ).toBe(true)
    }
  })

  it('chooses trade scales, on A4 or A3 as long as these carry the door', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const { door, judgement } = randomDoor(seed)
      const { scales, sheet } = drawSheet(door, judgement, metric)
      expect([20, 25, 50, 100]).toContain(scales.plan)
      expect([
        [210, 297],
        [297, 210],
        [297, 420],
        [420, 297],
      ]).toContainEqual([sheet.width_mm, sheet.height_mm])
    }
  })

  it('carries doors of any size', () => {
    for (const width_mm of [1, 120, 40_000, 1_000_000]) {
      const door: Door = { ...loadingDoor, opening: { width_mm, height_mm: Math.min(width_mm, 20_000) }, sensors: [], zones: [] }
      expectWellFormed(sheetSvg(door, judgementOf(door, []), metric))
    }
  })

  it('draws no end of a level grid that lies off the paper', () => {
    const at = (y_mm: number) => ({ id: `p${y_mm}`, segments: [{ from_mm: [0, y_mm, 300] as const, to_mm: [4000, y_mm, 300] as const }] })
    const field = { ...(loadingDoor.sensors[0] as RangingSensor).fields[0], planes: ['p100', 'p90000'] } as Field
    const { id, name, source } = loadingDoor.sensors[0] as RangingSensor
    const grid = { kind: 'segment', id, name, source, spotRadius_mm: 0, planes: [at(100), at(90_000)], fields: [field] } as const
    const { sheet } = drawSheet({ ...loadingDoor, sensors: [grid] }, loadingDoorJudged, metric)
    const spots = sheet.marks.flatMap((mark) => (mark.kind === 'area' ? mark.rings.flat() : []))
    expect(spots.filter(({ x_mm, y_mm }) => x_mm < 0 || y_mm < 0 || x_mm > sheet.width_mm || y_mm > sheet.height_mm)).toEqual([])
  })

  it('says millimetres of paper in its size, so that it prints to scale', () => {
    expect(sheetSvg(loadingDoor, loadingDoorJudged, metric)).toMatch(/<svg [^>]*width="(\d+)mm" height="(\d+)mm" viewBox="0 0 \1 \2"/)
  })

  it('escapes hostile names and stays well-formed', () => {
    const hostile = '"><script>alert(1)</script><!-- &amp; \u0000\ud800 ]]>'
    const [state] = loadingDoor.states
    if (!state) throw new Error('a door has a state')
    const door: Door = {
      ...loadingDoor,
      name: hostile,
      sides: { a: hostile, b: hostile },
      states: [{ ...state, name: hostile, obstacles: state.obstacles.map((obstacle) => ({ ...obstacle, name: hostile })) }],
      sensors: loadingDoor.sensors.map((sensor) => ({ ...sensor, name: hostile })),
      zones: loadingDoor.zones.map((zone) => ({ ...zone, name: hostile })),
      edition: hostile,
    }
    const drawn = sheetSvg(door, loadingDoorJudged, metric)
    expectWellFormed(drawn)
    expect(drawn).not.toContain('<script')
  })

  it('hatches what is unseen and nothing else', () => {
    const hatches = (judgement: typeof loadingDoorJudged): number =>
      drawSheet(loadingDoor, judgement, metric).sheet.marks.filter(({ layer }) => layer === 'hatch').length
    expect(hatches(loadingDoorJudged)).toBeGreaterThan(100)
    expect(hatches(judgementOf(loadingDoor, []))).toBe(0)
  })

  it('draws the zone and state that are asked for', () => {
    const words = (zone: string | undefined): string => drawSheet(loadingDoor, loadingDoorJudged, { ...metric, zone }).sheet.description
    expect(words('leaf-yard')).toContain('Zone: at the leaf, yard')
    expect(words('nowhere')).toContain('Zone: none')
  })

  it('writes figures in feet and inches on request', () => {
    const texts = drawSheet(loadingDoor, loadingDoorJudged, { ...FEET }).sheet.marks.flatMap((mark) =>
      mark.kind === 'text' ? [mark.text] : [],
    )
    expect(texts).toContain('13\' 1 1/2"') // 4000 mm = 157.48 in -> 157 1/2, hand calculation
    expect(texts.join(' ')).not.toMatch(/\d mm\b/)
  })
})
