import type { Air, Crossing } from '@sillsight/engine'
import type { Remarks } from '../remarks.ts'
import type { Survey } from '../schema/survey.ts'
import { shown, shownText } from '../shown.ts'
import { reportTwins } from './states.ts'

const MM = 1000
/** Wider, a way past the door is a yard; on the grid of 25 mm its map stays small. */
const WIDEST_MM = 20_000

/** Ways past the door with the bodies that use them: all of the door where one names none. */
export function crossingsOf({ crossings = [] }: Survey, bodies: readonly string[], remarks: Remarks): readonly Crossing[] {
  reportTwins(
    crossings.map(({ id }) => id),
    (i) => `survey/crossings/${i}/id`,
    remarks,
  )
  return crossings.map((crossing, i) => {
    const path = `survey/crossings/${i}`
    const { yMin_mm, yMax_mm, slowest_m_per_s, fastest_m_per_s } = crossing
    const wrong = (name: string, expected: string, got: string) =>
      remarks.issue({ code: 'contradiction', path: `${path}/${name}`, expected, got })
    if (yMin_mm >= yMax_mm) wrong('yMax_mm', `a number above yMin_mm (${yMin_mm})`, shown(yMax_mm))
    else if (yMax_mm - yMin_mm > WIDEST_MM) wrong('yMax_mm', `at most ${yMin_mm + WIDEST_MM}`, shown(yMax_mm))
    if (slowest_m_per_s !== undefined && fastest_m_per_s !== undefined && slowest_m_per_s > fastest_m_per_s)
      wrong('fastest_m_per_s', `at least slowest_m_per_s (${slowest_m_per_s})`, shown(fastest_m_per_s))
    for (const [n, body] of (crossing.bodies ?? []).entries())
      if (!bodies.includes(body))
        remarks.issue({
          code: 'unknown-id',
          path: `${path}/bodies/${n}`,
          expected: `a body (${bodies.slice(0, 10).map(shownText).join(', ')})`,
          got: shownText(body),
        })
    return {
      id: crossing.id,
      name: crossing.name ?? crossing.id,
      yMin_mm,
      yMax_mm,
      slowest_mm_per_s: slowest_m_per_s === undefined ? undefined : slowest_m_per_s * MM,
      fastest_mm_per_s: fastest_m_per_s === undefined ? undefined : fastest_m_per_s * MM,
      bodies: [...new Set(crossing.bodies ?? bodies)],
      perDay: crossing.perDay,
      mostPerDay: crossing.mostPerDay,
    }
  })
}

export function airOf({ air }: Survey): Air | undefined {
  return air && { ...air, mostPerDay_m3: air.mostPerDay_m3 }
}
