import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type LengthUnits, readLength } from './read-length.ts'
import { showLength } from './show-length.ts'

const mm = (text: string, units: LengthUnits = 'metric') => {
  const result = readLength(text, { units })
  return result.ok ? result.mm : `${result.issue.expected} | ${result.issue.repair}`
}

describe('readLength', () => {
  // hand calculation with 1 in = 25.4 mm exactly (international yard and pound agreement, 1959)
  it.each([
    ['2400', 2400],
    ['2400 mm', 2400],
    ['2400mm', 2400],
    ['2 400 mm', 2400],
    ['2.4 m', 2400],
    ['2,4 m', 2400],
    ['2.400 m', 2400],
    ['240 cm', 2400],
    ['94 1/2 in', 2400.3],
    ['94.5 in', 2400.3],
    ['94,5 in', 2400.3],
    ['94-1/2"', 2400.3],
    ['94½"', 2400.3],
    ['94 1⁄2 inches', 2400.3],
    ['7\' 10 1/2"', 2400.3],
    ['7\'-10 1/2"', 2400.3],
    ['7 ft 10 1/2 in', 2400.3],
    ['7′ 10½″', 2400.3],
    ['7’ 10 1/2”', 2400.3],
    ["7' 10 1/2", 2400.3],
    ["7'", 2133.6],
    ['7 ft', 2133.6],
    ['7.5 ft', 2286],
    ['1/16 in', 1.5875],
    ['0', 0],
    ['-15', -15],
    ['−15 mm', -15],
    ['- 1/2 in', -12.7],
    ['0.1 mm', 0.1],
    ['.5 in', 12.7],
  ])('reads %s as %d mm', (text, expected) => {
    expect(mm(text)).toBe(expected)
  })

  it('takes a bare number for inches where people measure in feet and inches', () => {
    expect(mm('94 1/2', 'feet-inches')).toBe(2400.3)
    expect(mm('2400 mm', 'feet-inches')).toBe(2400)
  })

  it('says in which system a length was typed', () => {
    expect(readLength(' 94 1/2 in ')).toEqual({ ok: true, mm: 2400.3, typed: { text: '94 1/2 in', units: 'feet-inches' } })
    expect(readLength('2,4 m', { units: 'feet-inches' })).toMatchObject({ typed: { units: 'metric' } })
  })

  it('asks back instead of guessing', () => {
    expect(mm('2,400')).toContain('thousands or decimals | write 2400 mm or 2.4 mm')
    expect(mm('2.400 mm')).toContain('thousands or decimals')
    expect(mm('94,500 in')).toContain('thousands or decimals')
    expect(mm('94 1/2')).toContain('halves and quarters')
    expect(mm('7\' 14"')).toContain('fewer than 12 inches')
    expect(mm('7.5\' 2"')).toContain('whole feet')
    expect(mm('94.5 1/2 in')).toContain('not both')
    expect(mm('2000 m')).toContain('at most 1000 m')
  })

  it.each([
    '',
    'abc',
    '2400 km',
    '1e3',
    '0x10',
    'Infinity',
    '2400 mm 3',
    '2..4 m',
    "7'' 3'",
    '1/2/3 in',
    '9'.repeat(100),
    '2 40 mm',
    '94 1/0 in',
  ])('refuses %s', (text) => {
    expect(mm(text)).toContain('a length')
  })

  it('answers in linear time, whatever is typed (seed 2)', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom(...'0123456789 .,/\'"-ftinmc½'), maxLength: 60 }),
        fc.constantFrom<LengthUnits>('metric', 'feet-inches'),
        (text, units) => {
          const result = readLength(text, { units })
          if (result.ok) expect(Number.isFinite(result.mm)).toBe(true)
        },
      ),
      { seed: 2, numRuns: 20_000 },
    )
  })
})

describe('showLength', () => {
  it('shows tenths of a millimetre, or feet and inches in sixteenths', () => {
    expect(showLength(2400, 'metric')).toBe('2400 mm')
    expect(showLength(2400.04, 'metric')).toBe('2400 mm')
    expect(showLength(2400.3, 'feet-inches')).toBe('7\' 10 1/2"')
    expect(showLength(2133.6, 'feet-inches')).toBe('7\' 0"')
    expect(showLength(1.5875, 'feet-inches')).toBe('1/16"')
    expect(showLength(-12.7, 'feet-inches')).toBe('-1/2"')
    expect(showLength(-0.01, 'metric')).toBe('0 mm')
    expect(showLength(304.79, 'feet-inches')).toBe('1\' 0"')
  })

  it('rounds to the side that is asked for', () => {
    expect(showLength(200.04, 'metric', { round: 'up' })).toBe('200.1 mm')
    expect(showLength(200.06, 'metric', { round: 'down' })).toBe('200 mm')
    expect(showLength(200, 'feet-inches', { round: 'up' })).toBe('7 7/8"') // 125.98 sixteenths
    expect(showLength(200, 'feet-inches', { round: 'down' })).toBe('7 13/16"')
    expect(showLength(2400.3, 'feet-inches', { round: 'up' })).toBe('7\' 10 1/2"')
  })

  it('is read back within half of its last digit, and exactly where it is shown exactly (seed 3)', () => {
    fc.assert(
      fc.property(fc.double({ min: -500_000, max: 500_000, noNaN: true }), (length_mm) => {
        expect(Math.abs(Number(mm(showLength(length_mm, 'metric'))) - length_mm)).toBeLessThanOrEqual(0.05 + 1e-6)
        expect(Math.abs(Number(mm(showLength(length_mm, 'feet-inches'))) - length_mm)).toBeLessThanOrEqual(25.4 / 32 + 1e-6)
      }),
      { seed: 3, numRuns: 5000 },
    )
    fc.assert(
      fc.property(fc.integer({ min: -100_000, max: 100_000 }), fc.integer({ min: -300_000, max: 300_000 }), (tenths, sixteenths) => {
        expect(mm(showLength(tenths / 10, 'metric'))).toBe(tenths / 10 + 0)
        const length_mm = (sixteenths * 127) / 80
        expect(mm(showLength(length_mm, 'feet-inches'))).toBe(length_mm + 0)
      }),
      { seed: 4, numRuns: 5000 },
    )
  })
})
