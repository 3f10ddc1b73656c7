import { firstWiring, parseDocument, toDoor } from '@sillsight/document'
import { measurable } from '@sillsight/engine'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { isInWiring, keepReadings, keptReadings, observationOf, type SiteReading } from './site-readings.ts'

const kept = new Map<string, string>()
vi.stubGlobal('localStorage', {
  getItem: (key: string) => kept.get(key) ?? null,
  setItem: (key: string, value: string) => kept.set(key, value),
})
beforeEach(() => kept.clear())

const parsed = parseDocument(
  JSON.stringify({
    sillsight: 1,
    survey: { opening: { width_mm: 3000, height_mm: 2500 } },
    sensors: [{ id: 'one', use: 'demo-header-scanner', side: 'a', mountingHeight_mm: 2300, offset_mm: 200, x_mm: 1400, tilt_deg: 3 }],
    wiring: firstWiring(['one']),
  }),
)
if (!parsed.ok) throw new Error('the door must parse')
const { wiring } = toDoor(parsed.document)
if (!wiring) throw new Error('the door must have a wiring')

const nobody = { seenBy: [], asking: false }
const volt: SiteReading = { ...nobody, kind: 'volt', plus: 'control.stop-1', minus: 'control.0V', volt: 24.1 }
const shows: SiteReading = { seenBy: ['one'], asking: false, kind: 'sensor', sensor: 'one', shows: 'seen' }
const half: SiteReading = { ...nobody, kind: 'volt', plus: 'one.common', minus: 'control.0V' }
const meter = { off_V: 0.2, off_percent: 2, ohm: 1e7 }

describe('readings on site', () => {
  it('come back as they were, half-entered ones too, for the door at which they were taken and for no other', () => {
    keepReadings('a', { readings: [volt, shows, half], meter })
    expect(keptReadings('a')).toEqual({ readings: [volt, shows, half], meter })
    expect(keptReadings('b').readings).toEqual([])
  })
  it('are none where what is kept is not what was written', () => {
    const wrong = [
      '',
      'null',
      '[]',
      '{"door":"a","readings":3}',
      '{"door":"a","readings":[null,{"kind":"volt"},{"kind":"input","input":3}]}',
    ]
    for (const text of wrong) {
      kept.set('sillsight.site-readings', text)
      expect(keptReadings('a').readings).toEqual([])
    }
  })
  it('count when they are whole and name what the wiring has', () => {
    expect(observationOf(wiring, volt)).toEqual(volt)
    expect(observationOf(wiring, shows)).toEqual(shows)
    expect(observationOf(wiring, half)).toBeUndefined()
    const gone: readonly SiteReading[] = [
      { ...volt, plus: 'control.gone' },
      { ...volt, minus: 'control.stop-1' },
      { ...volt, seenBy: ['two'] },
      { ...shows, sensor: 'two' },
      { ...nobody, kind: 'input', input: 'stop-9', shows: 'seen' },
    ]
    for (const reading of gone) expect([isInWiring(wiring, reading), observationOf(wiring, reading)]).toEqual([false, undefined])
    expect(observationOf(wiring, { ...shows, shows: 'asleep' })).toBeUndefined()
  })
  it('can be taken at every terminal of the wiring, and not at what stands for earth', () => {
    const ends = wiring.cables.flatMap(({ cores }) => cores.flatMap(({ from, to }) => [from, to]))
    expect(measurable(wiring)).toEqual(expect.arrayContaining(ends))
    expect(measurable(wiring).every((terminal) => terminal.includes('.'))).toBe(true)
  })
})
