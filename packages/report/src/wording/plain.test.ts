import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { english } from './english.ts'
import { asAscii, columns, plain, unbrokenWords, wrapped } from './plain.ts'

describe('plain text', () => {
  it('takes out what would steer a terminal or turn the reading direction', () => {
    expect(plain('gate\u001b[2J\u0007 \u202e4\nred')).toBe('gate [2J 4 red')
    expect(plain('\ud83d\ude00 \ud83d x')).toBe('\ud83d\ude00 \ufffd x')
  })

  it('leaves no control character in any text (seed 11)', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        for (const sign of plain(text)) expect(sign < ' ' || (sign >= '\u007f' && sign <= '\u009f')).toBe(false)
      }),
      { seed: 11 },
    )
  })

  it('writes any text in ASCII (seed 12)', () => {
    expect(asAscii('700 \u00d7 300 mm, 30\u00b0, Skj\u00f8lden \u201cn\u00e9\u201d')).toBe('700 x 300 mm, 30 deg, Skjolden "ne"')
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(asAscii(plain(text))).toMatch(/^[ -~]*$/)
      }),
      { seed: 12 },
    )
  })

  it('breaks no line wider than asked, and loses no word (seed 13)', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc
            .string({ unit: 'grapheme', minLength: 1, maxLength: 12 })
            .map((word) => plain(word).replaceAll(' ', ''))
            .filter(Boolean),
        ),
        fc.integer({ min: 12, max: 60 }),
        (words, width) => {
          const lines = wrapped(words.join(' '), width)
          for (const line of lines) expect(columns(line)).toBeLessThanOrEqual(width)
          expect(lines.join(' ').replaceAll(' ', '')).toBe(words.join(''))
        },
      ),
      { seed: 13 },
    )
  })

  it('cuts a word that is longer than a line', () => {
    expect(wrapped('a abcdefghijklmnop', 8)).toEqual(['a', 'abcdefgh', 'ijklmnop'])
  })

  it('keeps a figure and its unit, its thousands and the sides of a body together', () => {
    expect(unbrokenWords('at 3.55 m from 24 000 of 700 \u00d7 300 \u00d7 200 mm here')).toEqual([
      'at',
      '3.55 m',
      'from',
      '24 000',
      'of',
      '700 \u00d7 300 \u00d7 200 mm',
      'here',
    ])
    expect(unbrokenWords('is 7\' 10 1/2" wide')).toEqual(['is', '7\' 10 1/2"', 'wide'])
  })

  it('counts two columns for wide characters', () => {
    expect(columns('\u6771\u4eac gate')).toBe(9)
    expect(columns('a\u0301 \u20d7\u2192')).toBe(3) // marks that stand on what is before them count nothing
  })

  it('lists words as people do', () => {
    expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(english.listed)).toEqual(['', 'a', 'a and b', 'a, b and c'])
  })
})
