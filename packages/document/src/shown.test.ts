import { describe, expect, it } from 'vitest'
import { pathOf, shown, shownText } from './shown.ts'

describe('shown', () => {
  it('says what was got in few words', () => {
    expect([-3, 'x', null, true, undefined, [], [1, 2], [1, 2, 3, 4], {}, Number.POSITIVE_INFINITY].map(shown)).toEqual([
      '-3',
      '"x"',
      'null',
      'true',
      'nothing',
      '[]',
      '[1, 2]',
      'a list of 4',
      'an object',
      'a number too large to hold',
    ])
  })

  it('cuts long texts and spells out what a terminal or an editor would obey', () => {
    expect(shownText('x'.repeat(100))).toBe(`"${'x'.repeat(60)}..."`)
    expect(shownText('\u001b[31m\u202eab\u2028')).toBe('"\\u001b[31m\\u202eab\\u2028"')
    expect(pathOf(['a', 0, 'b\n'])).toBe('a/0/b\\u000a')
    expect(pathOf([])).toBe('file')
  })
})
