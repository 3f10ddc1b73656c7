import type { Course, Finding, Reading, TimeSpan } from '@sillsight/engine'
import { seeded } from './doors.ts'

/** A course of any kind for the loading door, for laws about drawings. Nothing of it is computed. */
export function randomCourse(seed: number): Course {
  const random = seeded(seed)
  const between = (from: number, to: number): number => from + random() * (to - from)
  const opening_mm = between(800, 5000)
  const begins_s = random() < 0.5 ? 0 : -between(0, 8)
  const stop_s = between(0.1, 6)
  const brake_s = stop_s + (random() < 0.3 ? 0 : between(0, 0.4))
  const rest_s = brake_s + between(0.01, 0.8)
  const opens_s = rest_s + between(0, 0.6)
  const ends_s = opens_s + between(0.2, 6)
  const low_mm = between(0, opening_mm * 0.8)
  const leaf: Reading[] = [
    [begins_s, opening_mm],
    [0, opening_mm],
    [brake_s, low_mm + (opening_mm - low_mm) * 0.1],
    [rest_s, low_mm],
    [opens_s, low_mm],
    [ends_s, opening_mm],
  ]
  const at_s = between(0, rest_s)
  const stays = random() < 0.2
  const spans = (): TimeSpan[] => {
    const cuts = Array.from({ length: 2 * Math.floor(between(0, 3)) }, () => between(begins_s, ends_s)).sort((a, b) => a - b)
    return cuts.flatMap((from_s, i) => (i % 2 === 0 ? [{ from_s, to_s: cuts[i + 1] ?? ends_s }] : []))
  }
  return {
    body: 'lying',
    posture: Math.floor(between(0, 3)),
    yaw_rad: 0,
    x_mm: between(0, 4000),
    from: random() < 0.5 ? 'a' : 'b',
    opening_mm,
    clear_mm: between(0, opening_mm * 1.2),
    leaf,
    place: [
      [begins_s, -between(100, 4000)],
      [ends_s, between(100, 4000)],
    ],
    ...(stays ? {} : { enters_s: between(begins_s, at_s), leaves_s: between(at_s, ends_s) }),
    fields: Array.from({ length: Math.floor(between(0, 7)) }, (_, i) => ({
      field: i === 0 ? 'scanner/front' : `a sensor with quite a long name, number ${i}/field`,
      visible: spans(),
      output: spans(),
    })),
    ...(random() < 0.8 ? { brake_s, rest_s, ...(random() < 0.8 ? { opens_s } : {}) } : {}),
    at_s,
    isContact: random() < 0.7,
  }
}

/** A finding with this course, as the judge would make it. */
export function findingWith(course: Course): Finding & { readonly course: Course } {
  return {
    id: 'struck-by-leaf:lane',
    rule: 'struck-by-leaf',
    subject: { kind: 'lane', id: 'lane' },
    edition: '2026-11',
    steps: [],
    basis: [],
    facts: { lane: 'lane', laneName: 'middle of the yard', from: course.from, body_mm_per_s: 900, leaf_mm_per_s: 300, isSeen: true },
    verdict: 'fail',
    measured: { value: 950, unit: 'mm_per_s' },
    limit: { value: 0, unit: 'mm_per_s' },
    course,
  }
}
