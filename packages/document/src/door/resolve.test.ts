import type { Door, Obstacle, RangingSensor } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { changed, exampleFile, SIX_VALUES } from '../../test/example-files.ts'
import { parseDocument } from '../parse.ts'
import { toDoor } from './resolve.ts'

function door(file: unknown): Door {
  const result = parseDocument(JSON.stringify(file))
  if (!result.ok) throw new Error(JSON.stringify(result.issues))
  return toDoor(result.document, result.catalogue)
}
const ranging = (file: unknown, i = 0) => door(file).sensors[i] as RangingSensor

const PARTS = {
  ...SIX_VALUES,
  bodies: [
    { id: 'whole', reflectance: 0.1, source: { basis: 'measured' }, postures: [{ shape: 'box', size_mm: [300, 200, 700] }] },
    {
      id: 'cart',
      reflectance: 0.2,
      source: { basis: 'measured' },
      postures: [
        {
          shape: 'parts',
          parts: [
            { shape: 'box', name: 'load', size_mm: [600, 400, 500], at_mm: [0, 0], from_mm: 200 },
            { shape: 'cylinder', radius_mm: 50, height_mm: 900, at_mm: [100, 950], reflectance: 0.05 },
          ],
        },
      ],
    },
  ],
}

describe('a body of several parts', () => {
  // Hand calculation: along y from -200 to 1000, so the middle lies at 400; along x from -300 to 300
  it('is told from the middle of the box around its parts, whatever point they were measured from', () => {
    const { bodies, zones } = door(PARTS)
    const posture = bodies[1]?.postures[0]
    expect(posture).toMatchObject({ shape: 'box', name: '600 x 1200 x 900', a_mm: 600, b_mm: 1200, c_mm: 900 })
    expect(posture?.shape === 'box' && posture.parts).toEqual([
      { shape: 'box', name: 'load', alongX_mm: 0, alongY_mm: -400, from_mm: 200, reflectance: 0.2, a_mm: 600, b_mm: 400, c_mm: 500 },
      {
        shape: 'cylinder',
        name: 'radius 50, height 900',
        alongX_mm: 100,
        alongY_mm: 550,
        from_mm: 0,
        reflectance: 0.05,
        radius_mm: 50,
        height_mm: 900,
      },
    ])
    expect(zones[0]?.bodies).toEqual(['whole'])
  })
})

describe('toDoor', () => {
  it('turns degrees, percents and metres once', () => {
    const { sensors, states, extinction_per_mm, bodies } = door(exampleFile())
    expect((sensors[0] as RangingSensor).pose).toMatchObject({ yaw_rad: Math.PI, tilt_rad: (4 * Math.PI) / 180 })
    expect(states[0]?.floor.slopeX).toBe(0.01)
    expect(extinction_per_mm).toBeCloseTo(3.912 / 40_000, 15) // Koschmieder, hand calculation
    expect(bodies[1]?.postures[0]).toMatchObject({ a_mm: 100, b_mm: 200, c_mm: 300, yawFrom_rad: 0, yawTo_rad: Math.PI / 9 })
  })

  it('takes the widest tolerance of what was measured for all of its kind, where the door is judged over tolerances at all', () => {
    const tolerances = { length_mm: 2, position_mm: 3, floor_mm: 0, tilt_deg: 0, roll_deg: 0, yaw_deg: 0, range_percent: 0 }
    const file = { ...(exampleFile() as { sensors: object[]; survey: { opening: object; obstacles: object[] } }), tolerances }
    expect(door(file).tolerances).toMatchObject({ length_mm: 2, position_mm: 3 })
    const wide = { ...file.survey, opening: { ...file.survey.opening, tolerance_mm: 7 } }
    const obstacles = [
      ...file.survey.obstacles,
      { id: 'far', shape: 'post', x_mm: -900, y_mm: 5000, radius_mm: 50, from_mm: 0, to_mm: 900, tolerance_mm: 30 },
    ]
    const sensors = file.sensors.map((sensor) => ({ ...sensor, tolerance_mm: 12 }))
    expect(door({ ...file, survey: wide }).tolerances).toMatchObject({ length_mm: 7, position_mm: 3 })
    expect(door({ ...file, survey: { ...file.survey, obstacles } }).tolerances).toMatchObject({ length_mm: 30 })
    expect(door({ ...file, sensors }).tolerances).toMatchObject({ length_mm: 2, position_mm: 12 })
    expect(door({ ...file, survey: wide, tolerances: undefined }).tolerances).toBeUndefined()
  })

  it('opens the sides of a field where the file says "open" or nothing', () => {
    expect(ranging(exampleFile()).fields[1]).toMatchObject({
      xMin_mm: -Infinity,
      xMax_mm: Infinity,
      yMin_mm: -2000,
      yMax_mm: Infinity,
      top_mm: 2000,
    })
    expect(ranging(exampleFile()).fields[1]?.presenceTime_s).toBe(Infinity)
  })

  it('gives a field all planes of its sensor unless it names some', () => {
    expect(ranging(exampleFile()).fields.map((field) => field.planes)).toEqual([['p1'], ['p1', 'p2']])
  })

  it('makes the obstacles that the survey implies from their measures, and says that they are implied', () => {
    const implied = door(exampleFile()).states[0]?.obstacles.filter((each) => each.implied) ?? []
    const box = (id: string) => {
      const found = implied.find((each) => each.id === id)
      return found?.shape === 'box'
        ? [found.x_mm - found.size_mm[0] / 2, found.x_mm + found.size_mm[0] / 2, found.from_mm, found.to_mm]
        : undefined
    }
    expect(implied.map(({ id }) => id)).toEqual([
      'wall-at-zero',
      'wall-at-width',
      'lintel',
      'guide-at-zero',
      'guide-at-width',
      'parked-leaf',
    ])
    expect(box('wall-at-zero')?.slice(0, 2)).toEqual([-1000, 0])
    expect(box('wall-at-width')?.slice(0, 2)).toEqual([3000, 3500])
    expect(box('lintel')).toEqual([0, 3000, 2500, 4000])
    expect(box('guide-at-width')?.slice(0, 2)).toEqual([3000, 3060])
    expect(box('parked-leaf')).toEqual([0, 3000, 2600, 5000])
    expect(Math.max(...implied.filter(({ id }) => id.startsWith('wall')).map(({ from_mm }) => from_mm))).toBeLessThanOrEqual(0)
  })

  it('names left and right from the side that it says', () => {
    // Seen from side A, x = 0 is at the right hand (docs/method.md, section 1)
    const names = door(exampleFile()).states[0]?.obstacles.map(({ name }) => name)
    expect(names).toContain('wall, right seen from yard')
    expect(names).toContain('guide, left seen from yard')
  })

  it('leaves out what the survey says is not there', () => {
    const { walls: _, guides: __, ...rest } = exampleFile().survey
    const ids = (survey: unknown) => door({ ...exampleFile(), survey }).states[0]?.obstacles.map(({ id }) => id)
    expect(ids({ ...rest, walls: 'none' })).toEqual(['parked-leaf', 'bollard', 'rack'])
    expect(ids({ ...exampleFile().survey, lintel: 'none', guides: 'none' })).toEqual([
      'wall-at-zero',
      'wall-at-width',
      'parked-leaf',
      'bollard',
      'rack',
    ])
    expect(ids({ ...rest, walls: 'none', lintel: { yMin_mm: 0, yMax_mm: 100, underside_mm: 2700, top_mm: 3000 } })?.[0]).toBe('lintel')
    expect(ids(changed(exampleFile().survey, 'walls/beyondZero_mm', 0))?.[0]).toBe('wall-at-width')
  })

  it('hangs a hood and stands jambs where they are measured', () => {
    const survey = {
      ...exampleFile().survey,
      jambs: { yMin_mm: 20, yMax_mm: 240, width_mm: 80, top_mm: 2600 },
      hood: { yMin_mm: 230, yMax_mm: 600, from_mm: 2600, to_mm: 3100, beyond_mm: 100 },
    }
    const find = (id: string) => door({ ...exampleFile(), survey }).states[0]?.obstacles.find((each) => each.id === id) as Obstacle
    expect(find('jamb-at-zero')).toMatchObject({ x_mm: -40, y_mm: 130, size_mm: [80, 220], to_mm: 2600 })
    expect(find('hood')).toMatchObject({ x_mm: 1500, y_mm: 415, size_mm: [3200, 370], from_mm: 2600, to_mm: 3100 })
  })

  it('resolves states: floor, what is added and what is taken away', () => {
    const [empty, docked] = door(exampleFile()).states
    expect(empty?.obstacles.map(({ id }) => id).filter((id) => !id.includes('-'))).toEqual(['lintel', 'bollard', 'rack'])
    expect(docked?.obstacles.map(({ id }) => id).filter((id) => !id.includes('-'))).toEqual(['lintel', 'rack', 'trailer'])
    expect(empty?.floor.profile).toHaveLength(3)
    expect(docked?.floor.profile).toEqual([{ y_mm: 0, z_mm: 0 }])
  })

  it('has one state as surveyed where the file lists none', () => {
    expect(door(SIX_VALUES).states.map(({ id, name }) => [id, name])).toEqual([['as-surveyed', 'as surveyed']])
  })

  it('lists every default that stands in for something nobody entered', () => {
    expect([...door(SIX_VALUES).assumed].sort()).toEqual(
      ['bodies', 'sensors/0/tilt_deg', 'sensors/0/x_mm', 'survey/floor', 'survey/visibility_m', 'survey/walls', 'zones'].sort(),
    )
    expect(door(exampleFile()).assumed).toEqual([])
  })

  it.each([
    ['survey/floor', 'survey/floor'],
    ['survey/floor/slopeX_percent', 'survey/floor/slopeX_percent'],
    ['survey/leaf/bulge_mm', 'survey/leaf/bulge_mm'],
    ['survey/visibility_m', 'survey/visibility_m'],
    ['survey/walls', 'survey/walls'],
    ['sensors/0/source', 'sensors/0/source'],
    ['sensors/0/backgroundMargin_mm', 'sensors/0/backgroundMargin_mm'],
    ['sensors/0/learnedIn', 'sensors/0/learnedIn'],
    ['sensors/0/fields', 'sensors/0/fields'],
    ['sensors/0/fields/0/xMin_mm', 'sensors/0/fields/0/xMin_mm'],
    ['sensors/0/fields/0/clearance_mm', 'sensors/0/fields/0/clearance_mm'],
    ['sensors/0/fields/0/top_mm', 'sensors/0/fields/0/top_mm'],
    ['sensors/0/fields/0/clusterBeams', 'sensors/0/fields/0/clusterBeams'],
    ['sensors/1/fields', 'sensors/1/fields'],
    ['sensors/3/x_mm', 'sensors/3/x_mm'],
    ['bodies/1/source', 'bodies/1/source'],
  ])('assumes something, and says so, where %s is missing', (path, assumed) => {
    expect(door(changed(exampleFile(), path, undefined)).assumed).toEqual([assumed])
  })

  it('needs no word about clear air, free-standing posts and open sides beyond saying so', () => {
    const survey = { ...exampleFile().survey, walls: 'none', visibility_m: 'clear' }
    expect(door({ ...exampleFile(), survey }).assumed).toEqual([])
    expect(door({ ...exampleFile(), survey }).extinction_per_mm).toBe(0)
  })

  it('leaves what has no default undefined', () => {
    const { leaf, concept } = door(SIX_VALUES)
    expect([leaf, concept]).toEqual([undefined, undefined])
    expect(ranging(changed(exampleFile(), 'sensors/0/fields/0/presenceTime_s', undefined)).fields[0]?.presenceTime_s).toBeUndefined()
  })

  it('places a sensor by side, mounting height and offset, facing away from the leaf', () => {
    const a = ranging(SIX_VALUES).pose
    expect(a).toMatchObject({ x_mm: 1730, y_mm: 150, z_mm: 4070, yaw_rad: 0, roll_rad: 0 })
    const b = ranging(changed(SIX_VALUES, 'sensors/0/side', 'b')).pose
    expect(b).toEqual({ ...a, y_mm: -150, yaw_rad: Math.PI })
  })

  it('judges presence at the leaf on each side that has a sensor where no zone is listed', () => {
    const zones = (file: unknown) => door(file).zones.map(({ id, yMin_mm, yMax_mm, xMax_mm }) => [id, yMin_mm, yMax_mm, xMax_mm])
    expect(zones(SIX_VALUES)).toEqual([['leaf-a', 0, 1000, 3460]])
    expect(zones(changed(SIX_VALUES, 'sensors/0/side', 'b'))).toEqual([['leaf-b', -1000, 0, 3460]])
    expect(zones(changed(SIX_VALUES, 'sensors', undefined))).toHaveLength(2)
  })

  it('sets a row of beams about its pose, and leans it toward the side that it faces', () => {
    const row = (side: string) => {
      const sensor = {
        use: 'demo-header-row',
        side,
        mountingHeight_mm: 3000,
        offset_mm: 200,
        x_mm: 1000,
        tilt_deg: 2,
        sources: { planes: { basis: 'measured' } },
        planes: [{ id: 'r', beamCount: 3, spacing_mm: 100, tilt_deg: 3 }],
      }
      const plane = ranging({ ...SIX_VALUES, sensors: [sensor] }).planes[0]
      return plane?.kind === 'row'
        ? { xs: plane.places.map(({ x_mm }) => x_mm), y: plane.places[0]?.y_mm, tilt: plane.tilt_rad }
        : undefined
    }
    expect(row('a')).toEqual({ xs: [900, 1000, 1100], y: 200, tilt: (5 * Math.PI) / 180 })
    expect(row('b')).toEqual({ xs: [1100, 1000, 900], y: -200, tilt: (-5 * Math.PI) / 180 })
  })

  it('stretches the beams of a light grid between its uprights', () => {
    const grid = door(exampleFile()).sensors[1]
    expect(grid?.kind === 'segment' && grid.planes[0]?.segments[1]).toEqual({ from_mm: [-50, 300, 400], to_mm: [3050, 300, 400] })
  })

  it('knows a sensor no better than the worst known of its values', () => {
    const file = changed(exampleFile(), 'sensors/0/sources', { maxRange_mm: { basis: 'from memory', note: 'heard it once' } })
    expect(ranging(file).source).toEqual({ basis: 'from memory', note: 'heard it once; maxRange_mm: from memory' })
    expect(ranging(changed(exampleFile(), 'sensors/0/sources', { rangeRef_mm: { basis: 'measured' } })).source.basis).toBe('invented')
  })

  it('takes a sensor without any source for one from memory', () => {
    expect(ranging(changed(exampleFile(), 'sensors/0/source', undefined)).source.basis).toBe('from memory')
  })

  it('takes a place that may stay unseen only from somebody who allows it', () => {
    expect(door(exampleFile()).zones[1]?.allowedPocket_mm).toBe(50)
    expect(door(changed(exampleFile(), 'zones/1/allowedPocketSource', { basis: 'from memory' })).zones[1]?.allowedPocket_mm).toBe(0)
  })

  it('throws on a document that never passed the parser', () => {
    expect(() => toDoor(changed(SIX_VALUES, 'sensors/0/use', 'nothing') as Parameters<typeof toDoor>[0])).toThrow(
      'must have passed parseDocument',
    )
  })
})
