import { describe, expect, it } from 'vitest'
import { parseDocument, toDoor } from '../index.ts'

const file = (declares: unknown) => ({
  sillsight: 1,
  survey: { opening: { width_mm: 3000, height_mm: 3000 } },
  sensors: [{ id: 'row', use: 'demo-header-row', side: 'a', mountingHeight_mm: 2900, offset_mm: 100, ...(declares ? { declares } : {}) }],
})
const parsed = (declares: unknown) => parseDocument(JSON.stringify(file(declares)))

describe('what a maker declares', () => {
  it('comes to the sensor as it stands, and what is absent is unknown', () => {
    const read = parsed({ device: 'electro-sensitive', performanceLevel: 'd', mttfd_y: 80, source: { basis: 'datasheet' } })
    if (!read.ok) throw new Error('must parse')
    expect(toDoor(read.document).sensors[0]?.declares).toEqual({
      device: 'electro-sensitive',
      performanceLevel: 'd',
      category: undefined,
      testedBy: undefined,
      listedFor: undefined,
      mttfd_y: 80,
      b10d: undefined,
      operations_per_y: undefined,
      diagnosticCoverage_percent: undefined,
      commonCause: undefined,
      source: { basis: 'datasheet' },
    })
    const silent = parsed(undefined)
    expect(silent.ok && toDoor(silent.document).sensors[0]?.declares).toBeUndefined()
  })
  it('is refused without a source, and with words and figures that are none', () => {
    const paths = (declares: unknown) => {
      const read = parsed(declares)
      return read.ok ? [] : read.issues.map(({ path }) => path.replace('sensors/0/declares/', ''))
    }
    expect(paths({ device: 'electro-sensitive' })).toEqual(['source'])
    const source = { basis: 'datasheet' }
    expect(paths({ performanceLevel: 'f', source })).toEqual(['performanceLevel'])
    expect(paths({ category: 2, source })).toEqual(['category'])
    expect(paths({ diagnosticCoverage_percent: 101, mttfd_y: 0, source })).toEqual(['mttfd_y', 'diagnosticCoverage_percent'])
  })
})
