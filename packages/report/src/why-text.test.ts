import { judge, type Posture } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { loadingDoor } from '../test/doors.ts'
import { FEET, GERMAN, METRIC } from '../test/readers.ts'
import { plainPalette } from './options.ts'
import { whyText } from './why-text.ts'
import { columns } from './wording/plain.ts'

const judgement = judge(loadingDoor)
const plainly = { width: 90, palette: plainPalette, ...METRIC, ascii: false } as const
const lying = loadingDoor.bodies[0]?.postures[0] as Posture
const why = (id: string): string => whyText(loadingDoor, judgement, id, plainly) ?? ''

describe('why', () => {
  it('knows only findings of this judgement', () => {
    expect(whyText(loadingDoor, judgement, 'zone-covered:nowhere', plainly)).toBeUndefined()
  })

  it('shows every step of every finding with its number, its figure and its module', () => {
    for (const { id, steps } of judgement.findings) {
      const text = why(id)
      steps.forEach((step, i) => {
        expect(text).toContain(`${i + 1}. ${step.name}`)
        expect(text).toContain(`by ${step.by}`)
      })
    }
  })

  it('names no module and no id to whoever stands at the door', () => {
    for (const { id, steps } of judgement.findings) {
      const text = whyText(loadingDoor, judgement, id, { ...plainly, hasModules: false }) ?? ''
      expect(text).not.toContain(id)
      for (const { name, by } of steps) {
        expect(text).toContain(name)
        expect(text).not.toContain(by)
      }
    }
  })

  it('shows inputs with their values in the words of the door file', () => {
    const text = why('zone-covered:leaf-yard')
    expect(text).toContain('zones/0/allowedPocket_mm = 0 mm')
    expect(text).toContain('zones/0 (zone \u201cat the leaf, yard\u201d)')
    expect(why('guarded-height:leaf-yard')).toContain('survey/opening/height_mm = 4200 mm')
  })

  it('names inputs in words, not by their places in the door file, to whoever stands at the door', () => {
    const said = (id: string) => whyText(loadingDoor, judgement, id, { ...plainly, hasModules: false }) ?? ''
    expect(said('guarded-height:leaf-yard')).toContain('from the clear height = 4200 mm')
    expect(said('zone-covered:leaf-yard')).toContain('the largest blind pocket that may stay (zone \u201cat the leaf, yard\u201d) = 0 mm')
    for (const { id } of judgement.findings) expect(said(id), id).not.toMatch(/\b(survey|zones|sensors|bodies)\/|_mm\b/)
  })

  it('says in German how the body lies of which an area is unseen, and names the fields that counted', () => {
    const postures = ['lying along the leaf', 'lying across', 'standing'].map((name) => ({ ...lying, name }))
    const door = { ...loadingDoor, bodies: loadingDoor.bodies.map((body) => ({ ...body, postures })) }
    const found = judge(door)
    const zone = found.findings.find(({ steps }) => steps.some(({ name }) => name.startsWith('open area of')))
    const text = whyText(door, found, zone?.id ?? '', { ...plainly, ...GERMAN, hasModules: false })
    for (const each of ['längs des Flügels liegend', 'quer liegend', 'stehend'])
      expect(text?.replace(/\s+/g, ' ')).toMatch(new RegExp(`offene Fläche von [^=]*, ${each} =`))
    expect(text).not.toMatch(/lying a|standing/)
    expect(text).toMatch(/Felder, die zählten: Feld „.+“ von Sensor „.+“/)
  })

  it('shows outside values with source, edition, clause, basis and whether somebody confirmed them', () => {
    expect(why('guarded-height:leaf-yard').replace(/\s+/g, ' ')).toMatch(
      /the value guarded-height = 2\.5 m[\s\S]*DGUV Information 208-022, edition 2017, clause 6\(1\) \(published\)/,
    )
    expect(why('zone-covered:leaf-yard').replace(/\s+/g, ' ')).toContain(
      'test body lying: EXAMPLE-STD 1, edition 2024, clause 5.2 (from memory, not confirmed)',
    )
  })

  it('names who confirmed a value from memory, and where', () => {
    const door = {
      ...loadingDoor,
      confirmations: [{ value: 'lying', document: 'EXAMPLE-STD 1', edition: '2025', clause: '5.3', by: 'R. Reader', on: '2026-10-01' }],
    }
    const text = whyText(door, judge(door), 'zone-covered:leaf-yard', plainly) ?? ''
    expect(text.replace(/\s+/g, ' ')).toContain('EXAMPLE-STD 1, edition 2025, clause 5.3 (confirmed by R. Reader on 2026-10-01)')
  })

  it('ranks the causes of a pocket and says where its worst case lies by tape', () => {
    const text = why('blind-pocket:leaf-yard/A')
    const [coverage] = judgement.coverages
    const [pocket] = coverage?.pockets ?? []
    expect(text).toContain('Pocket A:')
    pocket?.causes.forEach((_, i) => {
      expect(text).toContain(`${i + 1}. `)
    })
    expect(text).toMatch(/Worst case, to try on site\nTest body of [\s\S]*\nIts middle [\s\S]* from the (left|right) jamb edge/)
  })

  it('keeps to the width, and to ASCII where that is asked for', () => {
    for (const { id } of judgement.findings) {
      for (const line of why(id).split('\n').slice(1)) expect(columns(line)).toBeLessThanOrEqual(90)
      expect(whyText(loadingDoor, judgement, id, { ...plainly, ascii: true, ...FEET })).toMatch(/^[\n -~]*$/)
    }
  })
})
