import type { Door, Judgement, Pocket, ZoneCoverage } from '@sillsight/engine'
import { postureOf, postureWords } from './bodies.ts'
import { causeWords } from './causes.ts'
import type { Reader } from './language.ts'
import { place } from './places.ts'
import { called, capital, plain } from './plain.ts'
import { tally } from './tally.ts'

/** What hatching means in this answer; undefined where nothing is hatched. */
export function hatchWords({ exact, pockets, counts }: ZoneCoverage, { language: { sheet } }: Reader): string | undefined {
  if (exact ? exact.regions.length === 0 : counts.blind === 0) return undefined
  const lettered = new Set(pockets.flatMap((pocket) => pocket.exact?.regions ?? []))
  const isAllKnown = exact === undefined || lettered.size === exact.regions.length
  return isAllKnown ? sheet.hatched : sheet.hatchedOrOpen
}

/** One pocket in the key: the body, where its middle lies by tape, why it goes unseen. */
export function keyWords(door: Door, coverage: ZoneCoverage, pocket: Pocket, reader: Reader): string {
  const { worstCase } = pocket
  const posture = postureOf(door, worstCase)
  const yaw_rad = coverage.postures[pocket.worstPosture]?.yaw_rad ?? worstCase.yaw_rad
  const body = posture ? postureWords(posture, reader, yaw_rad) : plain(worstCase.body)
  const cause = pocket.causes[0]
  const why = cause ? `. ${capital(causeWords(door, cause, reader))}` : ''
  return `${reader.language.sheet.middle(body, place(door, worstCase, reader))}${why}.`
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
  }: {
    readonly state: string
    readonly zone: string | undefined
    readonly coverage: ZoneCoverage | undefined
    /** Undefined for what is drawn to no scale. */
    readonly scales: { readonly plan: number; readonly upright: number } | undefined
    readonly sheet: string | undefined
  },
  reader: Reader,
): {
  readonly name: string
  readonly note: string | undefined
  readonly lines: readonly (readonly [label: string, value: string])[]
  readonly verdict: string
  readonly caution: string
  readonly scaleBar: string
  /** Round lengths for the parts of the bar, longest first, in the units of the sheet, and how a length of it is said. */
  readonly barParts_mm: readonly number[]
  readonly barLength: (length_mm: number) => string
} {
  const { language, units } = reader
  const words = language.sheet
  return {
    name: plain(door.name),
    note: inventedNote(door, reader),
    verdict: tally(judgement, reader, { short: true }),
    caution: words.caution[coverage ? (coverage.exact ? 'exact' : 'grid') : 'none'],
    scaleBar: words.scaleBar,
    ...barWords(reader),
    lines: [
      [words.labels.sides, words.sides(called(door.sides.a, reader), called(door.sides.b, reader))],
      [words.labels.zone, zone === undefined ? words.none : called(zone, reader)],
      [words.labels.state, called(state, reader)],
      ...(scales ? [[words.labels.scale, words.scale(scales.plan, scales.upright, sheet ?? words.ownSheet)] as const] : []),
      [words.labels.lengths, words.lengths[units]],
      [words.labels.rules, words.edition(plain(door.edition))],
    ],
  }
}

/** A bar in feet where lengths are in feet: a copy that was shrunk is then measured with the same tape as the door. */
function barWords({ units, language }: Reader): {
  readonly barParts_mm: readonly number[]
  readonly barLength: (length_mm: number) => string
} {
  if (units === 'metric')
    return {
      barParts_mm: [50_000, 20_000, 10_000, 5000, 2000, 1000, 500, 250, 100],
      barLength: (length_mm) => `${String(length_mm / 1000).replace('.', language.decimal)} m`,
    }
  const inch_mm = 25.4
  return {
    barParts_mm: [1200, 600, 240, 120, 60, 24, 12, 6, 3].map((inches) => inches * inch_mm),
    barLength: (length_mm) => {
      const inches = Math.round(length_mm / inch_mm)
      const [feet, rest] = [Math.floor(inches / 12), inches % 12]
      return [feet > 0 ? `${feet}'` : '', rest > 0 ? `${rest}"` : ''].filter(Boolean).join(' ')
    },
  }
}

/** What the papers of a door say where anything of it is made up. */
export function inventedNote(door: Door, { language: { sheet } }: Reader): string | undefined {
  if (![...door.sensors, ...door.bodies].some(({ source }) => source.basis === 'invented')) return undefined
  return /invented/i.test(door.name) ? sheet.noSuchDoor : sheet.figuresInvented
}
