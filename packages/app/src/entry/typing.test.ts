import { describe, expect, it } from 'vitest'
import { readFigure } from './kinds.ts'
import { erased, type Key, pressed } from './typing.ts'

const keys = (...names: Key[]) => names.reduce((text, key) => pressed(text, key, '.'), '')

describe('the number pad', () => {
  it.each<[Key[], string, number]>([
    [['2', '4', '0', '0'], '2400', 2400],
    [['2', 'point', '4', 'm'], '2.4 m', 2400],
    [['9', '4', 'half', 'in'], '94 1/2"', 2400.3],
    [['1', '3', 'ft', '1', 'half', 'in'], '13\' 1 1/2"', 4000.5],
    [['9', '4', 'sixteenth', 'sixteenth', 'sixteenth', 'in'], '94 3/16"', 2392.3625],
    [['5', 'mm', 'm'], '5 m', 5000],
    [['point', '5', 'm'], '0.5 m', 500],
  ])('types %j as %s', (pressedKeys, text, mm) => {
    expect(keys(...pressedKeys).trim()).toBe(text)
    expect(readFigure(text, 'length', 'metric')).toMatchObject({ ok: true, value: mm })
  })
  it('writes the decimal sign of the language', () => {
    expect(pressed('2', 'point', ',')).toBe('2,')
    expect(readFigure('2,4 m', 'length', 'metric')).toMatchObject({ ok: true, value: 2400 })
  })
  it('counts fractions on and stops before the whole', () => {
    expect(keys('1', 'quarter', 'quarter', 'quarter', 'quarter')).toBe('1 3/4')
    expect(keys('half', 'half')).toBe('1/2')
  })
  it('steps back over a unit or a fraction at once, and ends in nothing', () => {
    expect(erased('13\' 1 1/2"')).toBe("13' 1 1/2")
    expect(erased("13' 1 1/2")).toBe("13' 1")
    expect(erased('2.4 m')).toBe('2.4')
    let text = '13\' 1 1/2"'
    for (let i = 0; i < 12; i++) text = erased(text)
    expect(text).toBe('')
  })
  it('never grows past what a door file keeps', () => {
    expect(Array.from({ length: 100 }).reduce<string>((text) => pressed(text, '9', '.'), '').length).toBe(40)
  })
})

describe('a figure that is no length', () => {
  it.each(['', '1e9', 'abc', '1 000', '--1', '1234567890', '0.1234567'])('is refused as %j', (text) => {
    expect(readFigure(text, 'angle', 'metric').ok).toBe(false)
  })
  it('keeps sign, decimals and unit apart', () => {
    expect(readFigure('-2,5°', 'angle', 'metric')).toMatchObject({ value: -2.5 })
    expect(readFigure('43 s', 'seconds', 'metric')).toMatchObject({ value: 43 })
    expect(readFigure('1.5', 'count', 'metric').ok).toBe(false)
  })
})
