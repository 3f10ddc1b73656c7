import { describe, expect, it } from 'vitest'
import { isPhotoEntry, photoOf } from './photo-entry.ts'

const PIN = { across: 0.5, down: 0, text: 'terminal 5', setAt_ms: 2 }
const ENTRY = { id: 'a', takenAt_ms: 1, caption: 'left jamb', width_px: 1600, height_px: 1200 }

describe('a photo from elsewhere', () => {
  it('is taken as this program writes it, with and without pins, and with what two devices set together', () => {
    const many = Object.fromEntries(Array.from({ length: 198 }, (_, i) => [`pin ${i}`, PIN]))
    for (const more of [
      {},
      { 'pin 0a': PIN },
      { takenWhere: '48.13710° N, 11.57540° E' },
      { onDrawing: { view: 'plan', u_mm: 1, v_mm: -2 } },
      many,
    ])
      expect(isPhotoEntry('a', { ...ENTRY, ...more })).toBe(true)
  })
  it.each<[string, unknown]>([
    ['under another name', { ...ENTRY, id: 'b' }],
    ['that is a list', [ENTRY]],
    ['that is nothing', null],
    ['with a caption that is no text', { ...ENTRY, caption: 7 }],
    ['with a caption that is too long', { ...ENTRY, caption: 'x'.repeat(201) }],
    ['without size', { ...ENTRY, width_px: undefined }],
    ['taken at a place of two lines', { ...ENTRY, takenWhere: '48.1\n11.5' }],
    ['that is on no drawing there is', { ...ENTRY, onDrawing: { view: 'section', u_mm: 1, v_mm: 2 } }],
    ['that is nowhere on it', { ...ENTRY, onDrawing: { view: 'plan', u_mm: 1 } }],
    ['with a pin beside the picture', { ...ENTRY, 'pin 0a': { ...PIN, across: 1.01 } }],
    ['with a pin above it', { ...ENTRY, 'pin 0a': { ...PIN, down: -0.01 } }],
    ['with a pin whose place is no number', { ...ENTRY, 'pin 0a': { ...PIN, down: '0.5' } }],
    ['with a pin that is a text', { ...ENTRY, 'pin 0a': 'here' }],
    ['with a pin set at no time', { ...ENTRY, 'pin 0a': { ...PIN, setAt_ms: Number.NaN } }],
    ['with a word that is too long', { ...ENTRY, 'pin 0a': { ...PIN, text: 'x'.repeat(201) } }],
    ['with a word that turns the writing direction', { ...ENTRY, 'pin 0a': { ...PIN, text: 'a\u202eb' } }],
    ['with pins beyond number', { ...ENTRY, ...Object.fromEntries(Array.from({ length: 2001 }, (_, i) => [`pin ${i}`, PIN])) }],
  ])('is refused %s', (_what, found) => {
    expect(isPhotoEntry('a', found)).toBe(false)
  })
})

describe('the pins of a photo', () => {
  it('are numbered in the order in which they were set; those of one moment by their id', () => {
    const { pins } = photoOf({
      ...ENTRY,
      'pin c': { ...PIN, setAt_ms: 1 },
      'pin b': { ...PIN, setAt_ms: 5 },
      'pin a': { ...PIN, setAt_ms: 5 },
    })
    expect(pins.map(({ id }) => id)).toEqual(['c', 'a', 'b'])
  })
})
