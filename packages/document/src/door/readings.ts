import { readLength } from '../lengths/read-length.ts'
import type { Remarks } from '../remarks.ts'
import type { Survey } from '../schema/survey.ts'
import { shownText } from '../shown.ts'

type Opening = Survey['opening']
type Reading = number | string

/** How far readings of one thing may differ before somebody should look again: a tape read in a hurry. Our decision; it only makes a note. */
const HURRIED_TAPE_MM = 3

/** Notes readings that disagree with the clear opening or with each other; a text that is no length is an issue. */
export function noteReadings({ width_mm, height_mm, tolerance_mm = HURRIED_TAPE_MM, readings }: Opening, remarks: Remarks): void {
  if (readings === undefined) return
  const path = 'survey/opening/readings'
  const widths = (readings.widths ?? []).map(({ reading }, i) => inMm(reading, `${path}/widths/${i}/reading`, remarks))
  const heights = (readings.heights ?? []).map(({ reading }, i) => inMm(reading, `${path}/heights/${i}/reading`, remarks))
  const diagonals = (readings.diagonals ?? []).map((reading, i) => inMm(reading, `${path}/diagonals/${i}`, remarks))
  for (const [what, smallest_mm, of] of [
    ['width', width_mm, widths],
    ['height', height_mm, heights],
  ] as const) {
    const least = Math.min(...of.filter((each) => each !== undefined))
    if (least < smallest_mm - tolerance_mm)
      remarks.note({
        code: 'readings-disagree',
        path: `survey/opening/${what}_mm`,
        text: `${smallest_mm} is larger than the smallest reading, ${least}`,
      })
  }
  noteDiagonals(diagonals, Math.sqrt(width_mm * width_mm + height_mm * height_mm), tolerance_mm, remarks)
}

function noteDiagonals(diagonals: readonly (number | undefined)[], expected_mm: number, tolerance_mm: number, remarks: Remarks): void {
  const [first, second] = diagonals
  const path = 'survey/opening/readings/diagonals'
  if (first === undefined || second === undefined) return
  if (Math.abs(first - second) > 2 * tolerance_mm)
    remarks.note({
      code: 'readings-disagree',
      path,
      text: `${first} and ${second} differ: the opening is out of square, or one is misread`,
    })
  else if (Math.abs((first + second) / 2 - expected_mm) > 2 * tolerance_mm)
    remarks.note({ code: 'readings-disagree', path, text: `width and height call for ${Math.round(expected_mm)}: one of them is misread` })
}

function inMm(reading: Reading, path: string, remarks: Remarks): number | undefined {
  if (typeof reading === 'number') return reading
  const read = readLength(reading)
  if (!read.ok) remarks.issue({ ...read.issue, path })
  else if (read.mm <= 0) remarks.issue({ code: 'out-of-range', path, expected: 'a length above 0', got: shownText(reading) })
  return read.ok ? read.mm : undefined
}
