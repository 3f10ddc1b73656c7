import { describe, expect, it } from 'vitest'
import { changed, exampleFile } from '../../test/example-files.ts'
import { parseDocument, toDoor } from '../index.ts'

const parsed = (dangers: object) => parseDocument(JSON.stringify(changed(exampleFile(), 'survey/dangers', dangers)))
function read(dangers: object) {
  const result = parsed(dangers)
  if (!result.ok) throw new Error(JSON.stringify(result.issues))
  return toDoor(result.document, result.catalogue).dangers
}
function issues(dangers: object) {
  const result = parsed(dangers)
  return result.ok ? [] : result.issues.map(({ path, expected, got }) => `${path.replace('survey/dangers/', '')}: ${expected}, got ${got}`)
}

describe('the danger points of a door file', () => {
  it('keep what nobody said as unknown, and take openings of no shape as slots', () => {
    const guards = [
      { how: 'cover', upTo_mm: 2500, opening_mm: 20, distance_mm: 200 },
      { how: 'nothing-to-hold' },
      { how: 'presence', zone: 'leaf', stops: 'yes' },
    ]
    expect(read({ points: [{ id: 'p', kind: 'lifting', guards }], none: ['draw-in'] })).toEqual({
      points: [
        {
          id: 'p',
          name: 'p',
          kind: 'lifting',
          obstacle: undefined,
          gap_mm: undefined,
          part: undefined,
          from_mm: undefined,
          place: undefined,
          guards: [
            { how: 'cover', upTo_mm: 2500, opening_mm: 20, distance_mm: 200, shape: 'slot' },
            { how: 'nothing-to-hold' },
            { how: 'presence', id: 'leaf', stops: true },
          ],
        },
      ],
      none: ['draw-in'],
    })
  })

  it('refuse what contradicts itself and ids that nothing has', () => {
    const point = { id: 'p', kind: 'tail' }
    expect(issues({ points: [point, point] })).toEqual(['points/1/id: an id that stands only once, got "p"'])
    expect(issues({ points: [point], none: ['tail'] })).toEqual(['none/0: a kind that no listed point has, got "tail"'])
    expect(issues({ points: [{ ...point, x_mm: 4 }] })).toEqual(['points/0/y_mm: both x_mm and y_mm, or neither, got x_mm 4 alone'])
    expect(issues({ points: [{ ...point, obstacle: 'none-such' }] })[0]).toMatch(
      /^points\/0\/obstacle: an obstacle \(.*\), got "none-such"$/,
    )
    for (const guard of [
      { how: 'presence', zone: 'none-such' },
      { how: 'edge', sensor: 'none-such' },
    ])
      expect(issues({ points: [{ ...point, guards: [guard] }] })[0]).toContain('got "none-such"')
    expect(issues({ points: [{ ...point, gap_mm: -1 }] })).toEqual(['points/0/gap_mm: a number from 0, got -1'])
    expect(issues({ points: [{ ...point, guards: [{ how: 'hope' }] }] })).toHaveLength(1)
  })
})
