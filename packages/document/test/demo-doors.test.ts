import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Judgement, judge, type Pocket } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { parseDocument, serialise, toDoor } from '../src/index.ts'
import { changed } from './example-files.ts'

const folder = join(import.meta.dirname, '../../cli/demo')
const names = readdirSync(folder).filter((name) => name.endsWith('.json'))
const text = (name: string) => readFileSync(join(folder, name), 'utf8')

function judged(file: unknown): Judgement {
  const result = parseDocument(JSON.stringify(file))
  if (!result.ok) throw new Error(JSON.stringify(result.issues))
  return judge(toDoor(result.document, result.catalogue))
}
const demo = (name: string): unknown => JSON.parse(text(`${name}.json`))
const pockets = (judgement: Judgement, zone: string, state = 'as-surveyed'): readonly Pocket[] =>
  judgement.coverages.find((coverage) => coverage.zone === zone && coverage.state === state)?.pockets ?? []
const causes = (pocket: Pocket | undefined) =>
  pocket?.causes.map(({ kind, obstacle }) => (obstacle === undefined ? kind : `${kind} ${obstacle}`)) ?? []

describe('the demo doors', () => {
  it.each(names)('%s is canonical, says that it is invented, and makes the parser say nothing', (name) => {
    const result = parseDocument(text(name))
    expect(result.ok && result.notes).toEqual([])
    expect(result.ok && serialise(result.document)).toBe(text(name))
    expect(result.ok && result.document.name).toContain('invented')
    expect(result.ok && result.document.note).toMatch(/^Invented .*What it tells: /s)
    const sources = result.ok ? (result.document.sensors ?? []).map((sensor) => sensor.source?.basis) : []
    expect(new Set(sources)).toEqual(new Set(['invented']))
  })

  // Each story as its note tells it, and what happens when its reason is taken away

  it('loading-door: the bollard hides a corner, and a strip is lost when the leveller is raised', () => {
    const file = demo('loading-door')
    const asIs = judged(file)
    expect(causes(pockets(asIs, 'hall-leaf', 'level')[0])[0]).toBe('hidden-behind bollard')
    expect(pockets(asIs, 'hall-leaf', 'level')).toHaveLength(1)
    const [strip, corner] = pockets(asIs, 'hall-leaf', 'raised')
    expect(causes(strip)).toEqual(['no-plane-here'])
    expect(strip?.extent.yMin_mm).toBe(-1250)
    expect(causes(corner)[0]).toBe('hidden-behind bollard')
    const without = judged(
      changed(file, 'survey/obstacles/0', {
        id: 'bollard',
        shape: 'post',
        x_mm: -2000,
        y_mm: -390,
        radius_mm: 110,
        from_mm: 0,
        to_mm: 1150,
      }),
    )
    expect(pockets(without, 'hall-leaf', 'level')).toEqual([])
    expect(pockets(without, 'hall-leaf', 'raised')).toHaveLength(1)
  })

  it('sloping-gate: the slope lifts the level beam over a lying body, from a third of the way on', () => {
    const file = demo('sloping-gate')
    const [pocket] = pockets(judged(file), 'street-line')
    expect(pocket?.worstCase.posture).toBeLessThan(2) // lying
    expect(pocket?.extent.xMin_mm).toBeGreaterThan(5180 / 4)
    expect(pocket?.extent.xMin_mm).toBeLessThan((5180 * 2) / 5)
    expect(pockets(judged(file), 'yard-leaf')).toEqual([])
    // Along the slope: 2.4 % of 5320 mm is 128 mm lower at the far end
    const along = changed(file, 'sensors/0/planes/0/segments_mm', [
      [
        [-70, 190, 150],
        [5250, 190, 22],
      ],
    ])
    expect(pockets(judged(along), 'street-line')).toEqual([])
  })

  it('freezer-door: mist, and nothing else, keeps the far low corner unseen', () => {
    const file = demo('freezer-door')
    const [pocket] = pockets(judged(file), 'freezer-leaf')
    expect(causes(pocket)).toContain('fog')
    expect(pocket?.extent.xMax_mm).toBeLessThan(1390 / 2) // the sensor hangs at the other end
    expect(pockets(judged(changed(file, 'survey/visibility_m', 'clear')), 'freezer-leaf')).toEqual([])
  })

  it('traffic-passage: an opening field sees everybody and guards nobody', () => {
    const file = demo('traffic-passage')
    const asIs = judged(file)
    expect(pockets(asIs, 'approach')).toEqual([])
    // both ends, joined by a strip a few mm wide that lies between the rows of the grid: the predicate finds it blind every 40 mm along
    const [pocket, ...others] = pockets(asIs, 'foundry-leaf')
    expect(others).toEqual([])
    expect(pocket?.extent).toMatchObject({ xMin_mm: 0, xMax_mm: 3240 })
    expect(pockets(asIs, 'yard-leaf')).toEqual([])
    // its planes reach the floor 3.4 m out, half a metre and more into the aisle: so many of the 64 tracks there are seen
    expect(asIs.findings.find(({ id }) => id === 'needless-openings:casting-aisle')).toMatchObject({
      verdict: 'fail',
      facts: { seenTracks: 30, tracks: 64 },
    })
    // the same scanner calls: too late for a fork-lift at 3.1 m/s, and in time at the pace that the finding names
    const late = asIs.findings.filter(({ verdict, rule }) => verdict === 'fail' && ['opening-in-time', 'stops-if-shut'].includes(rule))
    expect(late.map(({ id }) => id).sort()).toEqual(['opening-in-time:trucks', 'stops-if-shut:trucks'])
    const paces = late.map(({ facts }) => Number(facts['slower_mm_per_s']))
    const slower = judged(changed(file, 'survey/lanes/0/fastest_m_per_s', Math.floor(Math.min(...paces)) / 1000)).findings
    expect(late.map(({ id }) => slower.find((each) => each.id === id)?.verdict)).toEqual(['pass', 'pass'])
    const guarding = changed(changed(file, 'sensors/0/fields/0/function', 'presence'), 'sensors/0/fields/0/presenceTime_s', 'for-ever')
    const both = pockets(judged(guarding), 'foundry-leaf').reduce((sum, pocket) => sum + pocket.cells, 0)
    expect(both).toBeLessThan(pockets(asIs, 'foundry-leaf').reduce((sum, pocket) => sum + pocket.cells, 0))
  })

  it('parcel-hatch: the grid hangs too high for a lying body, and 90 mm lower it does not', () => {
    const file = demo('parcel-hatch') as { sensors: { planes: { heights_mm: number[] }[] }[]; zones: { id: string }[] }
    const unseen = (judgement: Judgement) => file.zones.reduce((sum, { id }) => sum + pockets(judgement, id).length, 0)
    expect(unseen(judged(file))).toBeGreaterThan(0)
    for (const { planes } of file.sensors)
      for (const plane of planes) plane.heights_mm = plane.heights_mm.map((height_mm) => height_mm - 90)
    expect(unseen(judged(file))).toBe(0)
  })

  it('box-hatch: everything is seen, and the output comes too late; a faster one is in time', () => {
    const struck = (response_s: number) => {
      const fields = (file: { sensors: { fields: { response_s: number }[] }[] }) => file.sensors.flatMap((sensor) => sensor.fields)
      const file = JSON.parse(text('box-hatch.json'))
      for (const field of fields(file)) field.response_s = response_s
      return judged(file).findings
    }
    expect(
      struck(0.15)
        .filter(({ verdict }) => verdict === 'fail')
        .map(({ id }) => id),
    ).toEqual(['struck-by-leaf:boxes'])
    expect(struck(0.03).filter(({ verdict }) => verdict === 'fail')).toEqual([])
  })

  it('swing-gate: it strikes somebody in its quarter circle after the far grid has let go, and nobody where level beams watch all of that', () => {
    const file = demo('swing-gate')
    const struck = (of: unknown) => judged(of).findings.find(({ rule }) => rule === 'struck-by-leaf')
    const found = struck(file)
    expect(found?.verdict).toBe('fail')
    expect(found?.facts['angle_deg']).toBeGreaterThan(45)
    const planes = Array.from({ length: 29 }, (_, i) => ({
      id: `p${i}`,
      segments_mm: [
        [
          [200, 150 * i + 80, 450],
          [3060, 150 * i + 80, 450],
        ],
      ],
    }))
    const watched = changed(file, 'sensors/1/planes', planes)
    expect(struck(watched)?.verdict).toBe('pass')
  })

  it('folding-door: it is seen 0.45 s before the leaf and stops in 0.51 s; a slower joint is in time, and so are beams that reach farther out', () => {
    const file = demo('folding-door') as { sensors: { planes: { segments_mm: unknown[] }[] }[] }
    const struck = (of: unknown) => judged(of).findings.find(({ rule }) => rule === 'struck-by-leaf')
    const asIs = judged(file).findings
    expect(asIs.filter(({ verdict }) => verdict === 'fail').map(({ id }) => id)).toEqual(['struck-by-leaf:walk'])
    expect(struck(file)?.facts).toMatchObject({ from: 'b', isSeen: true })
    // Hand calculation: (760 - 32.5) / 1600 = 0.455 s of sight; 0.06 + 0.1 + 0.28 / 1 = 0.44 s at 0.28 m/s
    expect(struck(changed(file, 'survey/drive/closeSpeed_m_per_s', 0.28))?.verdict).toBe('pass')
    const level = file.sensors[0]?.planes[0]?.segments_mm ?? []
    const farther = [-860, -820].map((y_mm) => [
      [-40, y_mm, 70],
      [2440, y_mm, 70],
    ])
    expect(struck(changed(file, 'sensors/0/planes/0/segments_mm', [...farther, ...level]))?.verdict).toBe('pass')
  })
})
