import { describe, expect, it } from 'vitest'
import { bold, dim, safe } from './plain-text.ts'

describe('text for a terminal', () => {
  it('cannot steer the terminal, whatever names a door file holds', () => {
    expect(safe('a\u001b[2Jb\u0007c\rd\u009b31me')).toBe('a?[2Jb?c?d?31me')
    expect(safe('door \u202egnp.exe')).toBe('door ?gnp.exe')
  })

  it('keeps lines, words and weights', () => {
    const text = `${bold('Größe')} ${dim('2400 mm')}\n`
    expect(safe(text)).toBe(text)
  })
})
