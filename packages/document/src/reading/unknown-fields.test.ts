import { describe, expect, it } from 'vitest'
import { nearest } from './unknown-fields.ts'

describe('nearest', () => {
  const known = ['width_mm', 'height_mm', 'clearance_mm', 'from_mm', 'to_mm', 'id']

  it('finds the name with its unit, and the one that a typing slip missed', () => {
    expect(nearest('width', known)).toBe('width_mm')
    expect(nearest('Height_cm', known)).toBe('height_mm')
    expect(nearest('clearence_mm', known)).toBe('clearance_mm')
    expect(nearest('hieght_mm', known)).toBe('height_mm')
    expect(nearest('widht', ['width'])).toBe('width') // neighbours swapped count as one slip
  })

  it('does not guess far', () => {
    expect(nearest('colour', known)).toBeUndefined()
    expect(nearest('x', known)).toBeUndefined()
    expect(nearest('ab', ['id'])).toBeUndefined()
  })
})
