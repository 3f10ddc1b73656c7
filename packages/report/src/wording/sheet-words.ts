import type { Door, Judgement, Pocket, ZoneCoverage } from '@sillsight/engine'
import type { Units } from '../options.ts'
import { postureOf, postureWords } from './bodies.ts'
import { causeWords } from './causes.ts'
import { place } from './places.ts'
import { capital, plain } from './plain.ts'
import { tally } from './tally.ts'

/** What the signs of a drawing mean. */
export const legendWords = {
  body: 'worst case: the test body where it lies',
  zone: (name: string) => `zone: ${plain(name)}`,
  trace: 'scan plane: its line on the floor, single beams above',
  more: (count: number) => `and ${count} more in the findings`,
} as const

/** What hatching means in this answer; undefined where nothing is hatched. */
export function hatchWords({ exact, pockets, counts }: ZoneCoverage): string | undefined {
  if (exact ? exact.regions.length === 0 : counts.blind === 0) return undefined
  const lettered = new Set(pockets.flatMap((pocket) => pocket.exact?.regions ?? []))
  const isAllKnown = exact === undefined || lettered.size === exact.regions.length
  return `here the middle of a test body goes unseen${isAllKnown ? '' : ', or without a letter: is not proved to be seen'}`
}

/** One pocket in the key: the body, where its middle lies by tape, why it goes unseen. */
export function keyWords(door: Door, coverage: ZoneCoverage, pocket: Pocket, units: Units): string {
  const { worstCase } = pocket
  const posture = postureOf(door, worstCase)
  const yaw_rad = coverage.postures[pocket.worstPosture]?.yaw_rad ?? worstCase.yaw_rad
  const body = posture ? postureWords(posture, units, yaw_rad) : plain(worstCase.body)
  const cause = pocket.causes[0]
  const why = cause ? `. ${capital(causeWords(door, cause))}` : ''
  return `${body}: middle ${place(door, worstCase, units)}${why}.`
}

/** The words of the title block. */
export function titleWords(
  door: Door,
  judgement: Judgement,
  {
    state,
    zone,
    coverage,
    scales,
    sheet,
    units,
  }: {
    readonly state: string
    readonly zone: string | undefined
    readonly coverage: ZoneCoverage | undefined
    readonly scales: { readonly plan: number; readonly upright: number }
    readonly sheet: string
    readonly units: Units
  },
): {
  readonly name: string
  readonly note: string | undefined
  readonly lines: readonly (readonly [label: string, value: string])[]
  readonly verdict: string
  readonly caution: string
} {
  return {
    name: plain(door.name),
    note: inventedNote(door),
    verdict: tally(judgement, { short: true }),
    caution: cautionWords(coverage),
    lines: [
      ['Sides', `A ${plain(door.sides.a)}, B ${plain(door.sides.b)}`],
      ['Zone', zone === undefined ? 'none' : plain(zone)],
      ['State', plain(state)],
      ['Scale', `${scales.plan === scales.upright ? `1:${scales.plan}` : `1:${scales.plan} and 1:${scales.upright}`} on ${sheet}`],
      ['Lengths', units === 'feet-inches' ? 'feet and inches' : 'mm'],
      ['Rules', `edition ${plain(door.edition)}`],
    ],
  }
}

/** What the papers of a door say where anything of it is made up. */
export function inventedNote(door: Door): string | undefined {
  if (![...door.sensors, ...door.bodies].some(({ source }) => source.basis === 'invented')) return undefined
  return /invented/i.test(door.name) ? 'no such door, place or product exists' : 'with figures invented for the demonstration'
}

/** How the hatching was computed, and who decides. */
function cautionWords(coverage: ZoneCoverage | undefined): string {
  const judged =
    coverage && (coverage.exact ? 'Hatched is every place not proved to be seen. ' : 'Hatching computed on a grid, provisional. ')
  return `${judged ?? ''}A competent person decides, local rules apply.`
}
