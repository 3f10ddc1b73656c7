import { expect, it } from 'vitest'
import { demoFiles, needsOf, patternOf } from './lacking-doors.ts'
import { EVERY_NEED } from './needs.ts'

/** Every place of a file, however deep. */
function placesOf(value: unknown, path = ''): readonly string[] {
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inside]) => {
    const place = path === '' ? key : `${path}/${key}`
    return [place, ...placesOf(inside, place)]
  })
}

function without(file: object, place: string): Record<string, unknown> {
  const copy = structuredClone(file) as Record<string, unknown>
  const way = place.split('/')
  const last = way.pop() ?? ''
  const holder = way.reduce<unknown>((here, step) => (here as Record<string, unknown>)[step], copy)
  if (Array.isArray(holder)) holder.splice(Number(last), 1)
  else delete (holder as Record<string, unknown>)[last]
  return copy
}

it('knows every need that a demonstration door states with any one of its values taken away', { timeout: 600_000 }, () => {
  const stated = new Set<string>()
  for (const file of demoFiles())
    for (const place of ['', ...placesOf(file)])
      for (const need of needsOf(place === '' ? file : without(file, place))) stated.add(patternOf(need))
  expect(stated.size).toBeGreaterThan(50)
  expect([...stated].filter((need) => !EVERY_NEED.includes(need))).toEqual([])
})
