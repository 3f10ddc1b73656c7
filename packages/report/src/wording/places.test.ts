import { describe, expect, it } from 'vitest'
import { loadingDoor } from '../../test/doors.ts'
import { FEET, METRIC } from '../../test/readers.ts'
import { handOf, place, sideName, sideOf } from './places.ts'

// Hand calculation on an opening 4000 wide with a leaf 40 thick, whose face is 20 from the mid-plane.
describe('places', () => {
  it('puts x = 0 at the right hand on side A and at the left on side B', () => {
    expect([handOf('zero', 'a'), handOf('width', 'a'), handOf('zero', 'b'), handOf('width', 'b')]).toEqual([
      'right',
      'left',
      'left',
      'right',
    ])
  })

  it('measures from the nearer jamb edge and from the leaf face, and names the viewer', () => {
    expect(place(loadingDoor, { x_mm: 450, y_mm: 660 }, METRIC)).toBe(
      '450 mm from the right jamb edge, 640 mm out from the leaf face, seen from the yard',
    )
    expect(place(loadingDoor, { x_mm: 450, y_mm: -660 }, METRIC)).toBe(
      '450 mm from the left jamb edge, 640 mm out from the leaf face, seen from the hall',
    )
    expect(place(loadingDoor, { x_mm: 2450, y_mm: 1220 }, METRIC)).toBe(
      '1.55 m from the left jamb edge, 1.20 m out from the leaf face, seen from the yard',
    )
  })

  it('says so where a place lies beyond the opening or under the leaf', () => {
    expect(place(loadingDoor, { x_mm: -120, y_mm: 520 }, METRIC)).toBe(
      '120 mm beyond the right jamb edge, 500 mm out from the leaf face, seen from the yard',
    )
    expect(place(loadingDoor, { x_mm: 4300, y_mm: 10 }, METRIC)).toBe(
      '300 mm beyond the left jamb edge, in the way of the leaf, seen from the yard',
    )
  })

  it('measures from the line of the opening where there is no leaf', () => {
    expect(place({ ...loadingDoor, leaf: undefined }, { x_mm: 100, y_mm: 500 }, METRIC)).toContain(
      '500 mm out from the line of the opening',
    )
  })

  it('says feet and inches on request', () => {
    // 450 mm = 17.717 in -> 17 11/16; 640 mm = 25.197 in -> 2 ft 1 3/16 in
    expect(place(loadingDoor, { x_mm: 450, y_mm: 660 }, FEET)).toBe(
      '1\' 5 11/16" from the right jamb edge, 2\' 1 3/16" out from the leaf face, seen from the yard',
    )
  })

  it('gives a mirrored door the other hand', () => {
    for (const y_mm of [30, 700, -30, -700]) {
      const here = place(loadingDoor, { x_mm: 1300, y_mm }, METRIC)
      const mirrored = place(loadingDoor, { x_mm: 2700, y_mm }, METRIC)
      expect(mirrored).toBe(here.includes('left') ? here.replace('left', 'right') : here.replace('right', 'left'))
    }
  })

  it('names a side with an article unless its name has one', () => {
    const named = (a: string): string => sideName({ ...loadingDoor, sides: { a, b: 'hall' } }, 'a', METRIC)
    expect([named('yard'), named('side A'), named('the yard')]).toEqual(['the yard', 'side A', 'the yard'])
  })

  it('counts the mid-plane of the leaf to side A', () => {
    expect([sideOf(0), sideOf(-0.1), sideOf(0.1)]).toEqual(['a', 'b', 'a'])
  })
})
