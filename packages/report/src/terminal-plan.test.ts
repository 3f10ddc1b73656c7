import { describe, expect, it } from 'vitest'
import { coverageOf, judgementOf, leafZone, loadingDoor, loadingDoorJudged } from '../test/doors.ts'
import { randomDoor } from '../test/random-doors.ts'
import { METRIC } from '../test/readers.ts'
import { terminalPlan } from './terminal-plan.ts'
import { columns } from './wording/plain.ts'

const rowsOf = (text: string): readonly string[] =>
  text.split('\n').slice(
    1,
    text.split('\n').findIndex((line) => /^ *[|\u251c][-\u2500]+ /.test(line)),
  )

describe('a plan in characters', () => {
  it('keeps to its width and height (doors 1 to 60)', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const { door, judgement } = randomDoor(seed)
      for (const width of [40, 80, 300]) {
        const lines = terminalPlan(door, judgement, { ...METRIC, width, ascii: seed % 2 === 0 }).split('\n')
        expect(Math.max(...lines.slice(1).map(columns))).toBeLessThanOrEqual(Math.min(width, 100))
        expect(lines.length).toBeLessThan(45)
      }
    }
  })

  it('uses ASCII alone where that is asked for', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const { door, judgement } = randomDoor(seed)
      expect(terminalPlan(door, judgement, { ...METRIC, width: 70, ascii: true })).toMatch(/^[\n -~]*$/)
    }
  })

  it('puts side A at the top: what is unseen there stands above the leaf', () => {
    for (const [side, zone] of [
      ['a', leafZone],
      ['b', { ...leafZone, yMin_mm: -1200, yMax_mm: 0 }],
    ] as const) {
      const judgement = judgementOf(loadingDoor, [
        { ...coverageOf(loadingDoor, zone, (x_mm, y_mm) => x_mm > 1000 && Math.abs(y_mm) > 500), pockets: [] },
      ])
      const rows = rowsOf(terminalPlan({ ...loadingDoor, zones: [zone] }, judgement, { ...METRIC, width: 80, ascii: true }))
      const leaf = rows.findIndex((row) => row.includes('===='))
      const hatched = rows.flatMap((row, i) => (row.includes('///') ? [i] : []))
      expect(hatched.length).toBeGreaterThan(3)
      expect(hatched.every((row) => (side === 'a' ? row < leaf : row > leaf))).toBe(true)
    }
  })

  it('never loses a narrow strip: one row of cells right at the leaf is hatched along its whole length', () => {
    const judgement = judgementOf(loadingDoor, [{ ...coverageOf(loadingDoor, leafZone, (_, y_mm) => y_mm < 25), pockets: [] }])
    const rows = rowsOf(terminalPlan(loadingDoor, judgement, { ...METRIC, width: 80, ascii: true }))
    const leaf = rows.findIndex((row) => row.includes('===='))
    expect(rows[leaf - 1]?.replaceAll(' ', '')).toMatch(/^[#:]*\/{60,}[#:]*$/)
  })

  it('draws x = 0 at the left and the opening to scale', () => {
    const judgement = judgementOf(loadingDoor, [
      { ...coverageOf(loadingDoor, leafZone, (x_mm, y_mm) => x_mm < 1000 && y_mm < 300), pockets: [] },
    ])
    const rows = rowsOf(terminalPlan(loadingDoor, judgement, { ...METRIC, width: 92, ascii: true }))
    // 4000 + 2 * 300 mm of wall on 92 columns are 50 mm a column: the opening takes 80, the unseen quarter 20
    expect(rows.find((row) => row.includes('===='))?.match(/=+/)?.[0]).toHaveLength(80)
    expect(rows.find((row) => row.includes('///'))?.match(/\/+/)?.[0]).toHaveLength(20)
  })

  it('draws the worst case as a body with the letter of its pocket, and explains its signs', () => {
    const text = terminalPlan(loadingDoor, loadingDoorJudged, { ...METRIC, width: 80, ascii: false })
    expect(text).toMatch(/\u250f\u2501+\u2513/)
    for (const letter of ['A', 'B', 'C', 'D']) expect(rowsOf(text).join('')).toContain(letter)
    for (const words of ['here the middle of a test body goes unseen', 'worst case', 'sensor, 4.30 m up', 'pallet rack and bollard'])
      expect(text.replace(/\n/g, ' ')).toContain(words)
  })

  it('keeps letters off hatching (doors 1 to 40)', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const { door, judgement } = randomDoor(seed)
      for (const row of rowsOf(terminalPlan(door, judgement, { ...METRIC, width: 80, ascii: true })))
        expect(row).not.toMatch(/\/[A-Z]|[A-Z]\//)
    }
  })

  it('draws a door that has no answer yet', () => {
    const text = terminalPlan(loadingDoor, judgementOf(loadingDoor, []), { ...METRIC, width: 80, ascii: true })
    expect(text).not.toContain('//')
    expect(text).toContain('4.00 m')
  })
})
