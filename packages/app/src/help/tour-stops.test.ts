import { describe, expect, it } from 'vitest'
import { help as german } from '../words/de-help.ts'
import { en } from '../words/en.ts'
import { STOPS, said, tourTime_s } from './tour-stops.ts'

describe('the tour', () => {
  it('has six to eight stops of one or two sentences', () => {
    expect(STOPS.length).toBeGreaterThanOrEqual(6)
    expect(STOPS.length).toBeLessThanOrEqual(8)
    for (const stop of STOPS) expect(said(stop, en).split(/[.?!]\s+/).length, stop.name).toBeLessThanOrEqual(2)
  })
  it('takes less than two minutes at 200 words a minute and 5 s for each thing to do, in English and in German', () => {
    expect(tourTime_s(en)).toBeLessThan(120)
    expect(tourTime_s({ ...en, help: german })).toBeLessThan(120)
  })
  it('names what is to be touched as the screen does', () => {
    for (const stop of STOPS.filter(({ name }) => name !== 'figure')) expect(said(stop, en)).toContain(stop.thing(en))
    expect(STOPS.map((stop) => said(stop, en)).join()).not.toContain('{')
  })
})
