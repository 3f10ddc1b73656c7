import { describe, expect, it } from 'vitest'
import { changed, exampleFile, SIX_VALUES } from '../test/example-files.ts'
import { BOUNDS } from './bounds.ts'
import { issueLine } from './issue.ts'
import { parseDocument } from './parse.ts'

/** The issues of a file, each as the line that people read. */
const lines = (file: unknown) => {
  const result = parseDocument(typeof file === 'string' ? file : JSON.stringify(file))
  return result.ok ? [] : result.issues.map(issueLine)
}
const notes = (file: unknown) => {
  const result = parseDocument(JSON.stringify(file))
  return result.ok ? result.notes.map(({ path, text }) => `${path}: ${text}`) : ['refused']
}

describe('parseDocument', () => {
  it('reads a file with something of everything, and one of six values', () => {
    expect(lines(exampleFile())).toEqual([])
    expect(lines(SIX_VALUES)).toEqual([])
  })

  it('says at which place what was expected and what was found', () => {
    expect(lines(changed(SIX_VALUES, 'survey/opening/width_mm', -3))).toEqual([
      'survey/opening/width_mm: expected a number above 0, got -3',
    ])
  })

  it('lists all issues at once', () => {
    const file = changed(changed(exampleFile(), 'survey/opening/width_mm', '3 m'), 'concept/drive', 'by hand')
    expect(lines(file)).toEqual([
      'survey/opening/width_mm: expected a number above 0, got "3 m"',
      'concept/drive: expected one of "hold-to-run", "impulse-in-view", "impulse-out-of-view", "automatic", got "by hand"',
    ])
  })

  it('asks for each of the six values by its name', () => {
    const asked = (path: string) => lines(changed(SIX_VALUES, path, undefined))[0]
    expect(asked('survey/opening/width_mm')).toBe(
      'survey/opening/width_mm: expected a number above 0, got nothing (add survey/opening/width_mm)',
    )
    expect(asked('survey/opening/height_mm')).toMatch(/^survey\/opening\/height_mm: .* got nothing/)
    expect(asked('sensors/0/use')).toMatch(/^sensors\/0\/use: expected a sensor of a library .* got nothing/)
    expect(asked('sensors/0/side')).toMatch(/^sensors\/0\/side: .* got nothing/)
    expect(asked('sensors/0/mountingHeight_mm')).toMatch(/^sensors\/0\/mountingHeight_mm: .* got nothing/)
    expect(asked('sensors/0/offset_mm')).toMatch(/^sensors\/0\/offset_mm: .* got nothing/)
  })

  // place, value, what the line has to contain
  it.each<[string, unknown, string]>([
    ['survey/opening/width_mm', 0, 'expected a number above 0, got 0'],
    ['survey/opening/height_mm', null, 'got null'],
    ['survey/opening/readings/widths/0/reading', '3 mm 5', 'expected a length'],
    ['survey/leaf/travel', 'up', 'one of "down"'],
    ['survey/walls', 'brick', 'expected "none" or the wall\'s measures, got "brick"'],
    ['survey/walls/yMax_mm', 30, 'survey/walls/yMax_mm: expected a y above yMin_mm (30), got 30'],
    ['survey/leaf/parked/to_mm', 2600, 'a height above from_mm (2600)'],
    [
      'survey/floor/profile_mm',
      [
        [0, 0],
        [0, 100],
      ],
      'survey/floor/profile_mm/1/0: expected y above 0',
    ],
    [
      'survey/floor/profile_mm',
      [
        [0, 0],
        [-5, 100],
      ],
      'survey/floor/profile_mm/1/0: expected y above 0',
    ],
    ['survey/floor/profile_mm', [], 'a list of 1 to 50'],
    ['survey/obstacles/0/radius_mm', 0, 'a number above 0'],
    ['survey/obstacles/0/to_mm', -1, 'a height above from_mm (0)'],
    ['survey/obstacles/1/shape', 'ball', 'expected "box" or "post", got "ball"'],
    ['survey/obstacles/1/id', 'bollard', 'survey/obstacles/1/id: expected an id that stands only once'],
    ['survey/obstacles/0/id', 'lintel', 'survey/obstacles/0/id: expected an id that stands only once'],
    ['survey/obstacles/0/id', 'a/b', 'a short name'],
    ['survey/states/1/id', 'empty', 'survey/states/1/id: expected an id that stands only once'],
    ['survey/states/1/removeObstacles/0', 'ballard', 'survey/states/1/removeObstacles/0: expected the id of an obstacle'],
    ['survey/states/1/addObstacles/0/id', 'rack', 'survey/states/1/addObstacles/0/id: expected an id that stands only once'],
    ['survey/lanes/0/xMax_mm', 400, 'a number above xMin_mm (500)'],
    ['survey/lanes/0/fastest_m_per_s', 0.1, 'at least slowest_m_per_s'],
    ['survey/visibility_m', 0, 'survey/visibility_m: expected a number from 0.1'],
    ['sensors/0/id', 'grid', 'sensors/1/id: expected an id that stands only once'],
    ['sensors/0/planes/1/id', 'p1', 'sensors/0/planes/1/id: expected an id that stands only once'],
    ['sensors/0/planes/0/fovMax_deg', -50, 'sensors/0/planes/0/fovMax_deg: expected an angle above fovMin_deg (-50), got -50'], // field of view 0
    ['sensors/0/planes/0/fovMax_deg', 310, 'expected a field of view below 360 degrees, got 360 degrees'],
    ['sensors/0/planes/0/fovMax_deg', 400, 'an angle from -360 to 360 degrees'],
    ['sensors/0/planes/0/beamCount', 0, 'a whole number from 1 up to 4096, got 0'],
    ['sensors/0/planes/0/beamCount', 1e9, 'a whole number from 1 up to 4096, got 1000000000'],
    ['sensors/0/planes/0/beamCount', 1.5, 'a whole number'],
    ['sensors/0/planes/0/heights_mm', [1], 'nothing here for device "scanner"'],
    ['sensors/0/fields/0/planes/0', 'p9', 'sensors/0/fields/0/planes/0: expected a plane of this sensor ("p1", "p2"), got "p9"'],
    ['sensors/0/fields/0/xMax_mm', 0, 'sensors/0/fields/0/xMax_mm: expected a number above xMin_mm (0)'],
    ['sensors/0/fields/1/top_mm', 90, 'a number above clearance_mm (100)'],
    ['sensors/0/fields/0/blanking/0/to_mm', 50, 'a number above from_mm (100)'],
    ['sensors/0/fields/1/id', 'leaf', 'sensors/0/fields/1/id: expected an id that stands only once'],
    ['sensors/0/maxRange_mm', undefined, 'sensors/0/maxRange_mm: expected a number above 0, got nothing'],
    ['sensors/0/reflectanceRef', 1.2, 'a number from 0.001 up to 1'],
    ['sensors/0/learnedIn', 'full', 'sensors/0/learnedIn: expected a state ("empty", "docked"), got "full"'],
    ['sensors/0/mountingHeight_mm', 2000, 'sensors/0/mountingHeight_mm: expected nothing here beside "pose"'],
    ['sensors/0/device', 'segments', 'sensors/0/maxRange_mm: expected nothing here for device "segments"'],
    ['sensors/0/planes', undefined, 'sensors/0/planes: expected the beams of device "scanner", got nothing'],
    ['sensors/1/planes/0/heights_mm', undefined, 'sensors/1/planes/0/heights_mm: expected the heights of the beams'],
    ['sensors/1/planes/0/between_mm/1', [-50, 300], 'another place than the first'],
    ['sensors/1/fields/0/clearance_mm', 5, 'sensors/1/fields/0/clearance_mm: expected nothing here for device "segments"'],
    ['sensors/2/covers', undefined, 'sensors/2/covers: expected the drawn rectangle'],
    ['sensors/2/covers/yMax_mm', 2000, 'a number above yMin_mm (2000)'],
    ['sensors/3/use', 'constructor', 'sensors/3/use: expected a sensor of a library'],
    ['sensors/3/maxRange_mm', 9000, "sensors/3/sources/maxRange_mm: expected the source of the value that replaces the library's"],
    ['bodies/0/id', 'own', 'bodies/1/id: expected an id that stands only once'],
    ['bodies/0/use', 'toString', 'bodies/0/use: expected a body of a library'],
    ['bodies/1/reflectance', undefined, 'bodies/1/reflectance: expected a number from 0.001 up to 1, got nothing'],
    ['bodies/1/postures/0/yaw_deg', [90, 0], 'the smaller angle first'],
    ['bodies/1/postures/0/yaw_deg', [-200, 200], 'at most one full turn'],
    ['bodies/1/postures/1/shape', 'ball', '"cylinder" or "parts"'],
    ['zones/0/bodies/0', 'nobody', 'zones/0/bodies/0: expected a body ("presence-reference-body", "own"), got "nobody"'],
    ['zones/0/xMax_mm', 0, 'zones/0/xMax_mm: expected a number above xMin_mm (0), got 0'],
    ['zones/0/pitch_mm', 1, 'zones/0/pitch_mm: expected at most 100000 cells in one zone, got 1950000'],
    ['zones/0/function', 'call', 'expected "presence", as the purpose is "presence-at-leaf"'],
    ['zones/1/id', 'leaf', 'zones/1/id: expected an id that stands only once'],
    ['zones/1/purpose', 'must-not-see', 'zones/1/function: expected the function that must not see here, got nothing'],
    ['zones/1/allowedPocketSource', undefined, 'zones/1/allowedPocketSource: expected who or what allows'],
    ['zones/1/family/step_mm', 700, 'at most largest_mm (600)'],
    ['zones/1/family/step_mm', 0.1, 'zones/1/family/step_mm: expected at most 400 sizes'],
    ['zones/1/family/required_mm', 700, 'at most largest_mm (600)'],
    ['confirmations/0/on', '25.11.2026', 'a day as 2026-11-25'],
    ['edition', '2026', 'an edition as 2026-11'],
    ['name', 'a\u001b[2Jb', 'that can be printed, got "a\\u001b[2Jb"'],
    ['libraries', [{ file: 'own.json', sha256: '0'.repeat(64) }], 'libraries/0/file: expected a place where libraries can be read'],
  ])('refuses %s = %j', (path, value, expected) => {
    expect(lines(changed(exampleFile(), path, value)).join('\n')).toContain(expected)
  })

  it('refuses a sensor inside of a post, a wall or the floor, in any state', () => {
    const at = (x_mm: number, y_mm: number, z_mm: number) => lines(changed(exampleFile(), 'sensors/0/pose', { x_mm, y_mm, z_mm }))
    expect(at(300, -400, 450)).toEqual([
      'sensors/0: expected a place in the open, got (300, -400, 450), inside of "bollard" in state "nobody docked"',
    ])
    expect(at(-200, 100, 2000)[0]).toContain('inside of "wall, right seen from yard"')
    expect(at(1500, 100, 2600)[0]).toContain('inside of "lintel"')
    expect(at(1500, 3000, 2000)[0]).toContain('inside of "trailer" in state "docked"')
    expect(at(1500, -400, 14)[0]).toContain('under the floor in state "nobody docked"') // slope 1 %: the floor stands at 15
    expect(at(1500, -400, 15)).toEqual([])
  })

  it('lets a sensor sit on a face', () => {
    const at = (x_mm: number, y_mm: number, z_mm: number) => lines(changed(exampleFile(), 'sensors/0/pose', { x_mm, y_mm, z_mm }))
    expect(at(1500, 230, 2600)).toEqual([])
    expect(at(360, -400, 450)).toEqual([])
    expect(at(359.9, -400, 450)).toHaveLength(1)
  })

  it('refuses a zone beyond the reach of every sensor, but not one that must not be seen', () => {
    const away = { id: 'leaf', purpose: 'opening', xMin_mm: 90_000, xMax_mm: 91_000, yMin_mm: 0, yMax_mm: 500, bodies: ['own'] }
    expect(lines(changed(exampleFile(), 'zones/0', away))).toEqual([
      'zones/0: expected a zone within the reach of a sensor, got x 90000 to 91000, y 0 to 500 (check its coordinates and signs)',
    ])
    expect(lines(changed(exampleFile(), 'zones/0', { ...away, purpose: 'must-not-see', function: 'opening' }))).toEqual([])
  })

  it('reports a contradiction of place beside all others', () => {
    const file = changed(changed(exampleFile(), 'sensors/0/pose', { x_mm: 300, y_mm: -400, z_mm: 450 }), 'zones/0/bodies/0', 'nobody')
    expect(lines(file).map((line) => line.split(':')[0])).toEqual(['zones/0/bodies/0', 'sensors/0'])
  })

  it('refuses numbers that JSON cannot hold, once for each place', () => {
    const text = JSON.stringify(SIX_VALUES).replace('3460', '1e999')
    expect(lines(text)).toEqual(['survey/opening/width_mm: expected a finite number, got 1e999'])
    expect(lines(JSON.stringify({ ...SIX_VALUES, records: 1 }).replace('"records":1', '"records":[-1e999]'))).toEqual([
      'records/0: expected a finite number, got -1e999',
    ])
  })

  it('refuses a name that stands twice in one object', () => {
    expect(lines('{"sillsight": 1, "survey": {"opening": {"width_mm": 1000, "width_mm": 3000, "height_mm": 2000}}}')).toEqual([
      'survey/opening/width_mm: expected every name once in its object, got "width_mm" twice',
    ])
  })

  it('refuses what is no door file, in one line', () => {
    expect(lines('')).toHaveLength(1)
    expect(lines('[]')).toEqual(['file: expected an object { "sillsight": 1, ... }, got []'])
    expect(lines('{}')).toEqual(['sillsight: expected the version of the file, 0 to 1, got nothing (add "sillsight": 1)'])
    expect(lines({ sillsight: '1' })[0]).toContain('got "1"')
    expect(lines({ sillsightLibrary: 1 })).toEqual([
      'file: expected a door file, got a library (name the library in "libraries" of a door file)',
    ])
  })

  it('refuses a newer version politely and says so alone', () => {
    expect(lines({ sillsight: 2, survey: 'of another shape' })).toEqual([
      'sillsight: expected version 1 or older, got version 2 (open it with a newer Sillsight; nothing was changed)',
    ])
  })

  it('refuses what is too large before it looks at it', () => {
    expect(lines('x'.repeat(BOUNDS.textLength + 1))).toEqual([
      `file: expected at most ${BOUNDS.textLength} characters, got ${BOUNDS.textLength + 1}`,
    ])
  })

  it('lists a hundred issues and counts the rest', () => {
    const zones = Array.from({ length: 30 }, (_, i) => ({ id: `z${i}` }))
    const result = parseDocument(JSON.stringify({ ...SIX_VALUES, zones }))
    expect(result).toMatchObject({ ok: false, issueCount: 150 })
    expect(!result.ok && result.issues).toHaveLength(100)
  })

  it('reads a text that begins with a byte order mark', () => {
    expect(lines(`\uFEFF${JSON.stringify(SIX_VALUES)}`)).toEqual([])
  })

  it('keeps unknown fields, notes them, and asks whether a near one was meant', () => {
    const file = changed(changed(exampleFile(), 'sensors/0/fields/0/clearence_mm', 5), 'survey/opening/width', 3)
    expect(notes(file)).toEqual([
      'survey/opening/width: unknown field, kept but not judged; did you mean "width_mm"?',
      'sensors/0/fields/0/clearence_mm: unknown field, kept but not judged; did you mean "clearance_mm"?',
    ])
    const result = parseDocument(JSON.stringify(file))
    expect(result.ok && result.document).toEqual(file)
    expect(notes({ ...SIX_VALUES, colour: 'blue' })).toEqual(['colour: unknown field, kept but not judged'])
  })

  it('takes names of the language itself for unknown fields like any other', () => {
    expect(notes({ ...SIX_VALUES, constructor: 1, toString: 2 })).toEqual([
      'constructor: unknown field, kept but not judged',
      'toString: unknown field, kept but not judged',
    ])
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined()
    expect(lines(JSON.stringify(SIX_VALUES).replace('{', '{"__proto__": {"polluted": 1},'))).toEqual([
      '__proto__: expected any other name, got "__proto__"',
    ])
  })

  it('notes what it does not know but a verdict could rest on', () => {
    expect(notes(changed(exampleFile(), 'confirmations/0/value', 'beam-gap'))).toEqual([
      'confirmations/0/value: confirms "beam-gap", which nothing here rests on',
    ])
    expect(notes(changed(exampleFile(), 'edition', '2031-01'))[0]).toContain('"2031-01" is not among the editions here')
    expect(notes(changed(exampleFile(), 'zones/1/allowedPocketSource', { basis: 'from memory' }))[0]).toContain('judged as not allowed')
  })

  it('notes readings of the opening that disagree', () => {
    expect(notes(changed(exampleFile(), 'survey/opening/readings/widths/0/reading', '117 in'))).toEqual([
      'survey/opening/width_mm: 3000 is larger than the smallest reading, 2971.8', // 117 * 25.4
    ])
    expect(notes(changed(exampleFile(), 'survey/opening/readings/diagonals', [3905, 3925]))[0]).toContain('out of square')
    expect(notes(changed(exampleFile(), 'survey/opening/readings/diagonals', [3955, 3956]))[0]).toContain('call for 3905') // sqrt(3000^2 + 2500^2)
  })
})
