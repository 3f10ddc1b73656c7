import { describe, expect, it } from 'vitest'
import { parseDocument, toDoor } from '../index.ts'

const hinged = { hinge: 'at-zero', opensTo: 'a', length_mm: 2000, openAngle_deg: 90 }
const read = (changes: object, leaf: object = {}) =>
  parseDocument(
    JSON.stringify({
      sillsight: 1,
      survey: {
        opening: { width_mm: 2000, height_mm: 2100 },
        leaf: { travel: 'turning', thickness_mm: 40, hinged: { ...hinged, ...changes }, ...leaf },
      },
    }),
  )
const wrong = (changes: object, leaf: object = {}) => {
  const result = read(changes, leaf)
  return result.ok ? [] : result.issues.map(({ path, expected }) => `${path}: ${expected}`)
}

describe('survey/leaf/hinged', () => {
  it('is read with its angle in radians', () => {
    const result = read({})
    expect(result.ok && toDoor(result.document).leaf?.hinged).toEqual({
      hinge: 'at-zero',
      opensTo: 'a',
      length_mm: 2000,
      secondPanel_mm: undefined,
      openAngle_rad: Math.PI / 2,
    })
  })

  it('refuses leaves that do not fill the opening, no angle, a short second panel, one folded over, and a leaf that does not turn', () => {
    expect(wrong({ length_mm: 990 })).toEqual([
      'survey/leaf/hinged/length_mm: a length with which all panels together fill the opening (2000 wide): from half of it to a quarter more',
    ])
    expect(wrong({ hinge: 'both' })).toHaveLength(1)
    expect(wrong({ hinge: 'both', length_mm: 1000 })).toEqual([])
    expect(wrong({ openAngle_deg: 0 })[0]).toMatch(/^survey\/leaf\/hinged\/openAngle_deg: /)
    expect(wrong({ openAngle_deg: 181 })).toHaveLength(1)
    expect(wrong({ length_mm: 1000, secondPanel_mm: 900 })).toEqual([
      'survey/leaf/hinged/secondPanel_mm: at least the length of the panel on the hinge (1000)',
    ])
    expect(wrong({ length_mm: 1000, secondPanel_mm: 1000, openAngle_deg: 95 })).toEqual([
      'survey/leaf/hinged/openAngle_deg: at most 90 for a folding leaf',
    ])
    expect(wrong({}, { travel: 'down' })).toEqual(['survey/leaf/travel: "turning" for a leaf on a hinge'])
  })
})
