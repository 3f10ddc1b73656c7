import { type Course, type Door, type Field, readingAt, type Sensor, turningLeaf } from '@sillsight/engine'
import { dimensionFigure, figure } from './figures.ts'
import type { Reader } from './language.ts'

/** One instant of a course, with everything that happens in it. */
export interface Instant {
  readonly at_s: number
  readonly words: readonly string[]
}

/** Shorter apart, two things happen at once. */
const AT_ONCE_S = 5e-4

/** When an output first forbids this closing; undefined where none does. */
export function outputChanges_s({ fields }: Course): number | undefined {
  const on = fields.flatMap(({ output }) => output).filter(({ to_s }) => to_s > AT_ONCE_S)
  return on.length === 0 ? undefined : Math.min(...on.map(({ from_s }) => from_s))
}

/** When the body came into the sight of the output that changes first, or else of any. */
function becomesVisible_s(course: Course): number | undefined {
  const changes_s = outputChanges_s(course)
  const seeing = course.fields.filter(({ output }) => changes_s === undefined || output.some(({ from_s }) => from_s === changes_s))
  const starts = seeing.flatMap(({ visible }) => visible.map(({ from_s }) => from_s)).filter((at_s) => at_s <= (changes_s ?? Infinity))
  if (starts.length === 0) return undefined
  return changes_s === undefined ? Math.min(...starts) : Math.max(...starts)
}

/** What happens in a course, in the order of time; what happens at once stands together. */
export function instantsOf(door: Door, course: Course, reader: Reader): readonly Instant[] {
  const { instants } = reader.language.timeline
  const way_mm = Math.max(0, readingAt(course.leaf, course.at_s))
  const isTurning = turningLeaf(door) !== undefined
  const told = isTurning ? { contact: instants.contactAt, nearest: instants.nearestAt } : instants
  const where = isTurning ? edgeFigure(door, way_mm, reader) : figure({ value: way_mm, unit: 'mm' }, reader, 'smaller-is-worse')
  const all: readonly (readonly [at_s: number | undefined, words: string])[] = [
    [course.warns_s, instants.warns],
    [0, instants.begins],
    [becomesVisible_s(course), instants.visible],
    [outputChanges_s(course), instants.output],
    [course.brake_s, instants.brakes],
    [course.enters_s, isTurning ? instants.entersSweep : instants.enters],
    [course.at_s, course.isContact ? told.contact(where) : told.nearest(where)],
    [course.rest_s, instants.rests],
    [course.opens_s, instants.opens],
    [course.leaves_s, isTurning ? instants.leavesSweep : instants.leaves],
  ]
  const found: { at_s: number; words: string[] }[] = []
  for (const [at_s, words] of [...all].sort(([a = 0], [b = 0]) => a - b)) {
    if (at_s === undefined) continue
    const last = found[found.length - 1]
    if (last && at_s - last.at_s < AT_ONCE_S) last.words.push(words)
    else found.push({ at_s, words: [words] })
  }
  return found
}

/** A way still to go, of a leaf that turns as its angle from shut. */
export function edgeFigure(door: Door, way_mm: number, reader: Reader): string {
  const turning = turningLeaf(door)
  if (turning === undefined) return dimensionFigure(way_mm, reader)
  return figure({ value: (way_mm / turning.arm_mm) * (180 / Math.PI), unit: 'deg' }, reader)
}

/** "2.65 s: the body becomes visible". */
export function instantWords({ at_s, words }: Instant, reader: Reader): string {
  return reader.language.timeline.at(figure({ value: at_s, unit: 's' }, reader), words)
}

/** The sensor and the output of a field as `<sensor>/<field>`. */
export function fieldAndOutput(door: Door, field: string): { readonly sensor: string; readonly output: string } {
  const found = fieldAt(door, field)
  return { sensor: found?.sensor.name ?? field, output: found?.field?.output ?? field }
}

/** A field as `<sensor>/<field>`, with its sensor; undefined where there is no such sensor. */
export function fieldAt(door: Door, field: string): { readonly sensor: Sensor; readonly field: Field | undefined } | undefined {
  const sensor = door.sensors.find(({ id }) => field.startsWith(`${id}/`))
  if (!sensor) return undefined
  const fields = sensor.kind === 'zone-only' ? [] : sensor.fields
  return { sensor, field: fields.find(({ id }) => field === `${sensor.id}/${id}`) }
}
