import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { bodyOf, box, plainDoor } from '../../cases/plain-door.ts'
import { driven, laneOf, wideGrid } from '../../cases/plain-traffic.ts'
import { randomNumbers } from '../../cases/random-numbers.ts'
import { type Course, courseEnds, readingAt } from '../model/course.ts'
import type { Door } from '../model/door.ts'
import { closingFrom, runOf, wayAt } from '../motion/leaf-run.ts'

const standing = bodyOf([box(300, 200, 1500)])
const judged = (changes: Partial<Door> = {}) =>
  findingOf('struck-by-leaf', plainDoor({ bodies: [standing], sensors: wideGrid(), drive: driven(), lanes: [laneOf()], ...changes }))

function courseOf(changes: Partial<Door> = {}): Course {
  const { course } = judged(changes)
  if (course === undefined) throw new Error('the finding must have a course')
  return course
}

describe('the course of a contact', () => {
  const pace = { slowest_mm_per_s: 250, fastest_mm_per_s: 250 }
  const late = { sensors: wideGrid({ response_s: 9.3 }), lanes: [laneOf(pace)] }

  it('says the same instants as the chain of times', () => {
    const { steps } = judged(late)
    const course = courseOf(late)
    const at = (name: string) => steps.find((step) => step.name === name)?.quantity.value ?? Number.NaN
    expect(course.isContact).toBe(true)
    expect(course.at_s).toBe(at('nearest'))
    expect(course.enters_s).toBeCloseTo(at("body enters the leaf's plane"), 9)
    expect(Math.min(...course.fields.flatMap(({ visible }) => visible.map(({ from_s }) => from_s)))).toBeCloseTo(
      at('body becomes visible'),
      9,
    )
    expect(Math.min(...course.fields.flatMap(({ output }) => output.map(({ from_s }) => from_s)))).toBeCloseTo(at('output changes'), 9)
    expect(readingAt(course.leaf, course.at_s)).toBeCloseTo(at('way still to go'), 3)
  })

  // Hand calculation: at 250 mm/s the body is 200 + 40 mm long against the leaf's slab, 0.96 s in its plane
  it('has the body in the plane for as long as its length and that of the leaf take at its pace', () => {
    const { enters_s = Number.NaN, leaves_s = Number.NaN, place } = courseOf(late)
    expect(leaves_s - enters_s).toBeCloseTo((200 + 40) / 250, 9)
    expect(Math.abs(readingAt(place, enters_s))).toBeCloseTo(120, 9)
  })

  it('has nothing visible and no output where nobody is seen', () => {
    const course = courseOf({ sensors: [], lanes: [laneOf(pace)] })
    expect([course.fields, course.brake_s, course.rest_s]).toEqual([[], undefined, undefined])
  })

  it('holds finite figures alone, and places that go one way, on passing and failing doors (seeds 1 to 40)', () => {
    let contacts = 0
    for (let seed = 1; seed <= 40; seed++) {
      const dice = randomNumbers(seed)
      const slowest = dice.between(0, 400)
      const course = judged({
        sensors: wideGrid({ response_s: dice.between(0, 12), hold_s: dice.between(0, 1) }).slice(0, dice.between(0, 1) < 0.2 ? 0 : 1),
        drive: driven({ afterStop: dice.between(0, 1) < 0.5 ? 'reverse' : 'stay', stopDelay_s: dice.between(0, 0.5) }),
        lanes: [laneOf({ slowest_mm_per_s: slowest, fastest_mm_per_s: slowest + dice.between(1, 800) })],
      }).course
      if (course === undefined) continue
      contacts += course.isContact ? 1 : 0
      expect(JSON.parse(JSON.stringify(course)), `seed ${seed}`).toEqual(course) // no infinity, no NaN, nothing undefined
      const { from_s, to_s } = courseEnds(course)
      expect(course.at_s >= from_s && course.at_s <= to_s, `seed ${seed}`).toBe(true)
      const away = course.place.map(([, mm]) => (course.from === 'b' ? mm : -mm))
      expect([...away].sort((a, b) => a - b)).toEqual(away)
    }
    expect(contacts).toBeGreaterThan(5)
  })
})

describe('the readings of the leaf', () => {
  it('are nowhere farther than 2 mm from where the closed form has it', () => {
    const course = courseOf({ sensors: wideGrid({ response_s: 9.3 }), lanes: [laneOf({ slowest_mm_per_s: 250, fastest_mm_per_s: 250 })] })
    const drive = {
      way: course.opening_mm,
      close: { speed: 500, accel: 1000 },
      open: { speed: 500, accel: 1000 },
      stopDelay_s: 0.1,
      stopDecel: 1000,
      reverseDelay_s: 0.2,
    }
    const run = runOf(closingFrom(drive, course.opening_mm), course.brake_s === undefined ? Number.POSITIVE_INFINITY : course.brake_s - 0.1)
    const { from_s, to_s } = courseEnds(course)
    for (let i = 0; i <= 500; i++) {
      const t_s = from_s + ((to_s - from_s) * i) / 500
      expect(Math.abs(readingAt(course.leaf, t_s) - wayAt(run, t_s))).toBeLessThan(2)
    }
  })
})
