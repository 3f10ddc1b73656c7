import type { Dangers, Guard } from '@sillsight/engine'
import type { Remarks } from '../remarks.ts'
import type { FileDangers } from '../schema/dangers.ts'
import { shown, shownText } from '../shown.ts'
import { reportTwins } from './states.ts'

interface Around {
  readonly obstacles: readonly string[]
  readonly zones: readonly string[]
  readonly sensors: readonly string[]
}
type FilePoint = NonNullable<FileDangers['points']>[number]

/** The danger points, each with its guards; undefined where nobody looked. */
export function dangersOf(dangers: FileDangers | undefined, around: Around, remarks: Remarks): Dangers | undefined {
  if (dangers === undefined) return undefined
  const { points = [], none = [] } = dangers
  reportTwins(
    points.map(({ id }) => id),
    (i) => `survey/dangers/points/${i}/id`,
    remarks,
  )
  for (const [i, kind] of none.entries())
    if (points.some((point) => point.kind === kind))
      remarks.issue({
        code: 'contradiction',
        path: `survey/dangers/none/${i}`,
        expected: 'a kind that no listed point has',
        got: shownText(kind),
      })
  return { points: points.map((point, i) => pointOf(point, around, `survey/dangers/points/${i}`, remarks)), none }
}

function pointOf(point: FilePoint, around: Around, path: string, remarks: Remarks): Dangers['points'][number] {
  const { id, name = id, kind, obstacle, gap_mm, part, from_mm, x_mm, y_mm, guards = [] } = point
  if (obstacle !== undefined) known(obstacle, around.obstacles, 'an obstacle', `${path}/obstacle`, remarks)
  if ((x_mm === undefined) !== (y_mm === undefined)) {
    const [there, missing] = x_mm === undefined ? ['y_mm', 'x_mm'] : ['x_mm', 'y_mm']
    remarks.issue({
      code: 'contradiction',
      path: `${path}/${missing}`,
      expected: `both x_mm and y_mm, or neither`,
      got: `${there} ${shown(x_mm ?? y_mm)} alone`,
    })
  }
  const place = x_mm === undefined || y_mm === undefined ? undefined : { x_mm, y_mm }
  return {
    id,
    name,
    kind,
    obstacle,
    gap_mm,
    part,
    from_mm,
    place,
    guards: guards.map((guard, g) => guardOf(guard, around, `${path}/guards/${g}`, remarks)),
  }
}

function guardOf(guard: NonNullable<FilePoint['guards']>[number], { zones, sensors }: Around, path: string, remarks: Remarks): Guard {
  switch (guard.how) {
    case 'cover':
      return { ...guard, shape: guard.shape ?? 'slot' }
    case 'presence':
      known(guard.zone, zones, 'a zone', `${path}/zone`, remarks)
      return { how: guard.how, id: guard.zone, stops: yes(guard.stops) }
    case 'edge':
      known(guard.sensor, sensors, 'a sensor', `${path}/sensor`, remarks)
      return { how: guard.how, id: guard.sensor, stops: yes(guard.stops) }
    default:
      return { how: guard.how }
  }
}

function yes(word: 'yes' | 'no' | undefined): boolean | undefined {
  return word === undefined ? undefined : word === 'yes'
}

function known(id: string, ids: readonly string[], what: string, path: string, remarks: Remarks): void {
  if (!ids.includes(id))
    remarks.issue({
      code: 'unknown-id',
      path,
      expected: `${what} (${ids.slice(0, 10).map(shownText).join(', ')})`,
      got: shownText(id),
    })
}
