import { describe, expect, it, vi } from 'vitest'
import { answers, LACKING, needsOf, patternOf } from '../../test/lacking-doors.ts'
import { EVERY_NEED } from '../../test/needs.ts'
import { placesOn } from '../../test/places-on.ts'

vi.mock('../preferences.ts', () => ({ usePreferences: () => ({ theme: 'paper', units: 'metric', language: 'en' }) }))

describe('every need that the engine can state', () => {
  it('has a control on the sheets in which its value is entered', () => {
    const nowhere: string[] = []
    const met = new Set<string>()
    for (const file of LACKING) {
      const places = placesOn(file)
      for (const need of needsOf(file)) {
        met.add(patternOf(need))
        if (!need.startsWith('confirmations/') && !places.some((place) => answers(place, need, file)))
          nowhere.push(`${String(file['name'])}: ${need}`)
      }
    }
    expect(nowhere).toEqual([])
    expect([...met].sort()).toEqual([...EVERY_NEED].sort())
  })
})
