import type { Door } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { judgementOf, loadingDoor } from '../../test/doors.ts'
import { findingWith, randomCourse } from '../../test/random-courses.ts'
import { FEET, GERMAN, METRIC } from '../../test/readers.ts'
import { expectWellFormed } from '../../test/well-formed.ts'
import { type Box, overlap } from './model.ts'
import { drawTimeline, timelineHeight_mm } from './timeline.ts'
import { drawTimelineSheet, timelineSvg } from './timeline-sheet.ts'

const SEEDS = Array.from({ length: 150 }, (_, i) => i + 1)

function drawn(seed: number, width_mm: number, reader = METRIC) {
  const course = randomCourse(seed)
  const box: Box = { left_mm: 0, top_mm: 0, right_mm: width_mm, bottom_mm: timelineHeight_mm(course) }
  return { course, box, ...drawTimeline(loadingDoor, course, box, reader) }
}

function circlesOf({ marks }: Pick<ReturnType<typeof drawTimeline>, 'marks'>): readonly Box[] {
  return marks.flatMap((mark) => {
    if (mark.kind !== 'circle' || mark.radius_mm < 2) return []
    const { centre, radius_mm } = mark
    return [
      {
        left_mm: centre.x_mm - radius_mm,
        right_mm: centre.x_mm + radius_mm,
        top_mm: centre.y_mm - radius_mm,
        bottom_mm: centre.y_mm + radius_mm,
      },
    ]
  })
}

const touching = (all: readonly Box[]): readonly (readonly [Box, Box])[] =>
  all.flatMap((a, i) => all.slice(i + 1).flatMap((b) => (overlap(a, b) ? [[a, b] as const] : [])))

describe('a timeline', () => {
  it('has no lettering on other lettering or on hatching, on a phone and on paper, in each language and unit (seeds 1 to 150)', () => {
    const wrong: string[] = []
    for (const seed of SEEDS)
      for (const [width_mm, reader] of [
        [88, METRIC],
        [88, FEET],
        [186, GERMAN],
      ] as const) {
        const { texts, hatched, box } = drawn(seed, width_mm, reader)
        const isOff = ({ left_mm, right_mm }: Box) => left_mm < box.left_mm - 0.01 || right_mm > box.right_mm + 0.01
        if (touching(texts).length > 0 || hatched.some((hatch) => texts.some((text) => overlap(text, hatch))) || texts.some(isOff))
          wrong.push(`seed ${seed}, ${width_mm}`)
      }
    expect(wrong).toEqual([])
  })

  it('numbers its instants in the order of time, in circles that do not touch (seeds 1 to 150)', () => {
    for (const seed of SEEDS) {
      const timeline = drawn(seed, 88)
      const numbers = timeline.instants.flatMap(({ number }) => number ?? [])
      expect(numbers).toEqual(numbers.map((_, i) => i + 1))
      const circles = circlesOf(timeline)
      expect(circles.length).toBe(numbers.length)
      expect(touching(circles), `seed ${seed}`).toEqual([])
    }
  })

  it('hatches the time in which a field does not see the body, and nothing else: as long as the axis less what is seen (seeds 1 to 150)', () => {
    for (const seed of SEEDS) {
      const { course, axis, hatched } = drawn(seed, 186)
      const perSecond = (axis.right_mm - axis.left_mm) / (axis.to_s - axis.from_s)
      const seen = course.fields.slice(0, 4).flatMap(({ visible }) => visible)
      const seen_mm = seen.reduce(
        (sum, { from_s, to_s }) => sum + perSecond * Math.max(0, Math.min(axis.to_s, to_s) - Math.max(axis.from_s, from_s)),
        0,
      )
      const rows = Math.min(4, course.fields.length)
      const hatched_mm = hatched.reduce((sum, { left_mm, right_mm }) => sum + right_mm - left_mm, 0)
      expect(Math.abs(hatched_mm + seen_mm - rows * (axis.right_mm - axis.left_mm)), `seed ${seed}`).toBeLessThan(1)
    }
  })

  it('shows the contact always, and a little of the time around it', () => {
    for (const seed of SEEDS) {
      const { course, axis } = drawn(seed, 88)
      expect(course.at_s >= axis.from_s && course.at_s <= axis.to_s).toBe(true)
    }
  })
})

describe('the timeline of a leaf that turns', () => {
  const hinged = { hinge: 'at-zero', opensTo: 'a', length_mm: 2000, secondPanel_mm: 2000, openAngle_rad: 1.5 } as const
  const door: Door = { ...loadingDoor, leaf: { travel: 'turning', thickness_mm: 40, bulge_mm: 0, hinged } }

  it('speaks of its angle and its sweep, and nowhere of a plane or of an edge with a way to go, in each language (seeds 1 to 40)', () => {
    const said = SEEDS.slice(0, 40).flatMap((seed) =>
      [METRIC, GERMAN].flatMap((reader) => {
        const course = randomCourse(seed)
        const box: Box = { left_mm: 0, top_mm: 0, right_mm: 186, bottom_mm: timelineHeight_mm(course) }
        const { instants, marks } = drawTimeline(door, course, box, reader)
        const lettering = marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
        return [...instants.flatMap(({ words }) => words), ...lettering.filter((text) => !text.includes('sensor'))]
      }),
    )
    expect(said.filter((text) => /plane|Ebene|edge|Kante/.test(text))).toEqual([])
    expect(said.filter((text) => /comes within the sweep of the leaf|kommt in den Schwenkbereich/.test(text)).length).toBeGreaterThan(20)
    expect(said.filter((text) => /stands at [\d.]+° from shut|steht noch [\d,]+° offen/.test(text)).length).toBe(80)
  })
})

describe('the sheet of a timeline', () => {
  const sheetOf = (seed: number) => {
    const finding = findingWith(randomCourse(seed))
    return drawTimelineSheet(loadingDoor, judgementOf(loadingDoor, [], [finding]), finding, METRIC)
  }

  it('keeps lettering apart, and everything on the paper (seeds 1 to 25)', () => {
    for (let seed = 1; seed <= 25; seed++) {
      const { texts, hatched, sheet } = sheetOf(seed)
      const isOff = ({ bottom_mm, right_mm, left_mm }: Box) => bottom_mm > sheet.height_mm || right_mm > sheet.width_mm || left_mm < 0
      expect(touching(texts), `seed ${seed}`).toEqual([])
      expect(
        texts.filter((text) => isOff(text) || hatched.some((hatch) => overlap(text, hatch))),
        `seed ${seed}`,
      ).toEqual([])
    }
  })

  it('is well-formed and the same bytes each time, says every instant to whoever does not see it, and escapes names', () => {
    const finding = findingWith(randomCourse(3))
    const door = { ...loadingDoor, name: '"><script>' }
    const draw = () => timelineSvg(door, judgementOf(door, [], [finding]), finding, METRIC)
    expectWellFormed(draw())
    expect(draw()).toBe(draw())
    expect(draw()).not.toContain('<script')
    expect(draw()).toMatch(/<desc>[^<]*0 s: the leaf begins to close/)
  })
})
