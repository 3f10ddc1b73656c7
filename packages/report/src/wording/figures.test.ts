import { describe, expect, it } from 'vitest'
import { FEET, METRIC } from '../../test/readers.ts'
import { count, dimensionFigure, figure, figureAgainst, size, tape } from './figures.ts'

const mm = (value: number): { value: number; unit: 'mm' } => ({ value, unit: 'mm' })

// All figures: hand calculation, with 1 in = 25.4 mm and 1 ft = 12 in by definition.
describe('figures', () => {
  it('rounds a length to its unfavourable side', () => {
    expect(figure(mm(200.04), METRIC, 'larger-is-worse')).toBe('200.1 mm')
    expect(figure(mm(199.96), METRIC, 'smaller-is-worse')).toBe('199.9 mm')
    expect(figure(mm(-0.04), METRIC, 'smaller-is-worse')).toBe('-0.1 mm')
    expect(figure(mm(199.96), METRIC, 'larger-is-worse')).toBe('200 mm')
  })

  it('leaves out what binary arithmetic leaves behind', () => {
    expect(figure(mm(0.1 + 0.2), METRIC, 'larger-is-worse')).toBe('0.3 mm')
    expect(figure({ value: 1.1 - 0.9, unit: 'm' }, METRIC, 'larger-is-worse')).toBe('200 mm')
    expect(figure(mm(4999.999999999999), METRIC, 'smaller-is-worse')).toBe('5000 mm')
  })

  it('rounds feet and inches to the unfavourable sixteenth', () => {
    expect(figure(mm(200), FEET, 'larger-is-worse')).toBe('7 7/8"') // 7.874 in = 125.98 sixteenths -> 126
    expect(figure(mm(200), FEET, 'smaller-is-worse')).toBe('7 13/16"') // -> 125
    expect(figure(mm(304.8), FEET, 'larger-is-worse')).toBe("1'")
    expect(figure(mm(-25.4), FEET, 'smaller-is-worse')).toBe('-1"')
  })

  it('reads a tape to the nearest millimetre, in metres from one metre on', () => {
    expect(tape(640.4, METRIC)).toBe('640 mm')
    expect(tape(3550, METRIC)).toBe('3.55 m')
    expect(tape(3555.2, METRIC)).toBe('3.555 m')
    expect(tape(4000, METRIC)).toBe('4.00 m')
    expect(tape(999.6, METRIC)).toBe('1.00 m')
    expect(tape(2400.3, FEET)).toBe('7\' 10 1/2"') // 94.5 in
    expect(tape(3.175, FEET)).toBe('1/8"')
    expect(tape(0, FEET)).toBe('0"')
  })

  it('keeps a figure beyond its limit apart from the limit', () => {
    expect(figureAgainst(mm(200.04), mm(200), METRIC, 'larger-is-worse')).toEqual({ measured: '200.1 mm', limit: '200 mm' })
    expect(figureAgainst(mm(200.00004), mm(200), METRIC, 'larger-is-worse')).toEqual({ measured: '200.1 mm', limit: '200 mm' })
    expect(figureAgainst(mm(199.94), mm(200), METRIC, 'smaller-is-worse')).toEqual({ measured: '199.9 mm', limit: '200 mm' })
  })

  it('takes more decimals until a figure within its limit reads so', () => {
    expect(figureAgainst(mm(199.96), mm(199.98), METRIC, 'larger-is-worse')).toEqual({ measured: '199.96 mm', limit: '199.98 mm' })
    expect(figureAgainst(mm(200), mm(200), METRIC, 'larger-is-worse')).toEqual({ measured: '200 mm', limit: '200 mm' })
  })

  it('says areas, angles, times and counts in their own words', () => {
    expect(figure({ value: 160000, unit: 'mm2' }, METRIC, 'larger-is-worse')).toBe('0.16 m\u00b2')
    expect(figure({ value: 12500, unit: 'mm2' }, METRIC, 'larger-is-worse')).toBe('125 cm\u00b2')
    expect(figure({ value: 92903.04, unit: 'mm2' }, FEET, 'larger-is-worse')).toBe('1 sq ft')
    expect(figure({ value: Math.PI / 6, unit: 'rad' }, METRIC)).toBe('30\u00b0')
    expect(figure({ value: 0.125, unit: 's' }, METRIC, 'larger-is-worse')).toBe('0.13 s')
    expect(figure({ value: Number.POSITIVE_INFINITY, unit: 's' }, METRIC)).toBe('without end')
    expect(count(24000)).toBe('24 000')
  })

  it('names a body by its sides', () => {
    expect(size([700, 300, 200], METRIC)).toBe('700 \u00d7 300 \u00d7 200 mm')
    expect(size([304.8, 25.4], FEET)).toBe('1\' \u00d7 1"')
    expect(dimensionFigure(4000.4, METRIC)).toBe('4000')
  })
})
