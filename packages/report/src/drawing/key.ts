import type { Judgement, Verdict } from '@sillsight/engine'
import { grouped } from '../wording/groups.ts'
import { called } from '../wording/plain.ts'
import { sentence, waitingWords } from '../wording/sentence.ts'
import { hatchWords, keyWords } from '../wording/sheet-words.ts'
import { hatchLines } from './hatch.ts'
import { letterInCircle } from './labels.ts'
import { lettering, paragraph } from './lettering.ts'
import { type Box, corners, LETTERING_MM, type Mark, type Spot } from './model.ts'
import type { Scene } from './scene.ts'

const LINE_MM = 4.7 // from baseline to baseline
const SIGN_MM = 11 // room for a sign before its words
const APART_MM = 2.4
const GUTTER_MM = 8
const COLUMN_MM = 84 // a wider key is set in columns of at least this width
const LEAST_ENTRY_MM = 6.4
const ALWAYS_TOLD = 3 // pockets that the key tells of on every sheet
const MOST_TOLD = 60 // more never fit

/** What the letters and signs of the drawing mean, and what is not in order. */
export interface Key {
  readonly marks: readonly Mark[]
  /** The letters that are explained. */
  readonly told: readonly string[]
}

interface Entry {
  readonly lines: readonly string[]
  readonly sign: (box: Box) => readonly Mark[]
  readonly letter?: string
}

/** Signs first, then the pockets, largest first, then the findings, worst first: as many as there is room for. */
export function drawKey(scene: Scene, judgement: Judgement, box: Box): Key {
  const columns = columnsOf(box)
  const width_mm = (columns[0]?.right_mm ?? 0) - (columns[0]?.left_mm ?? 0) - SIGN_MM
  const pockets = pocketEntries(scene, width_mm, MOST_TOLD)
  const entries = [...signEntries(scene, width_mm), ...pockets, ...findingEntries(scene, judgement, width_mm)]
  const { marks, set } = inColumns(
    entries,
    columns,
    width_mm,
    scene.language.sheet.more,
    Math.max(0, (scene.coverage?.pockets.length ?? 0) - MOST_TOLD),
  )
  return { marks, told: entries.slice(0, set).flatMap(({ letter }) => (letter === undefined ? [] : [letter])) }
}

/** The height that a key of this width takes with its signs, the largest pockets and the worst finding; whatever there is more room for comes on top. */
export function leastKeyHeight_mm(scene: Scene, judgement: Judgement, width_mm: number): number {
  const columns = columnsOf({ left_mm: 0, right_mm: width_mm, top_mm: 0, bottom_mm: 0 })
  const words_mm = (columns[0]?.right_mm ?? width_mm) - SIGN_MM
  const worst = findingEntries(scene, judgement, words_mm).slice(0, 1)
  const entries = [...signEntries(scene, words_mm), ...pocketEntries(scene, words_mm, ALWAYS_TOLD), ...worst]
  const tallest_mm = Math.max(0, ...entries.map(heightOf))
  const all_mm = entries.reduce((sum, entry) => sum + heightOf(entry) + APART_MM, LINE_MM + APART_MM)
  return columns.length === 1 ? all_mm : all_mm / columns.length + tallest_mm
}

function columnsOf({ left_mm, right_mm, top_mm, bottom_mm }: Box): readonly Box[] {
  const count = Math.max(1, Math.floor((right_mm - left_mm + GUTTER_MM) / (COLUMN_MM + GUTTER_MM)))
  const width_mm = (right_mm - left_mm + GUTTER_MM) / count - GUTTER_MM
  return Array.from({ length: count }, (_, i) => {
    const start_mm = left_mm + i * (width_mm + GUTTER_MM)
    return { left_mm: start_mm, right_mm: start_mm + width_mm, top_mm, bottom_mm }
  })
}

/** Sets entries one under the other, column by column; the last line says how many did not fit. */
function inColumns(
  entries: readonly Entry[],
  columns: readonly Box[],
  width_mm: number,
  more: (count: number) => string,
  untold: number,
): { readonly marks: readonly Mark[]; readonly set: number } {
  const marks: Mark[] = []
  let at = 0
  columns.forEach((column, i) => {
    const reserve_mm = i === columns.length - 1 ? LINE_MM + APART_MM : 0
    let top_mm = column.top_mm
    for (let entry = entries[at]; entry; entry = entries[at]) {
      const left = entries.length - at - 1
      if (top_mm + heightOf(entry) > column.bottom_mm - (left > 0 ? reserve_mm : 0)) break
      marks.push(...entryMarks(entry, { x_mm: column.left_mm, y_mm: top_mm }))
      top_mm += heightOf(entry) + APART_MM
      at++
    }
    if (i === columns.length - 1 && at < entries.length && top_mm + LINE_MM <= column.bottom_mm) {
      marks.push(
        ...textLines(
          paragraph(more(entries.length - at + untold), LETTERING_MM.note, width_mm).slice(0, 1),
          column.left_mm + SIGN_MM,
          top_mm,
        ),
      )
    }
  })
  return { marks, set: at }
}

function heightOf({ lines }: Entry): number {
  return Math.max(LEAST_ENTRY_MM, lines.length * LINE_MM)
}

function entryMarks({ lines, sign }: Entry, { x_mm, y_mm }: Spot): readonly Mark[] {
  return [
    ...sign({ left_mm: x_mm, right_mm: x_mm + SIGN_MM - 3, top_mm: y_mm + 0.7, bottom_mm: y_mm + 4.1 }),
    ...textLines(lines, x_mm + SIGN_MM, y_mm),
  ]
}

function textLines(lines: readonly string[], x_mm: number, top_mm: number): readonly Mark[] {
  return lines.map((line, i) => lettering(line, { x_mm, y_mm: top_mm + 3.6 + i * LINE_MM }, LETTERING_MM.note))
}

function signEntries(scene: Scene, width_mm: number): readonly Entry[] {
  const { coverage, bodies, traces, zone, language } = scene
  const { sheet } = language
  const hatched = coverage && hatchWords(coverage, scene)
  const signs: readonly (readonly [shown: boolean, words: string, sign: Entry['sign']])[] = [
    [hatched !== undefined, hatched ?? '', hatchSign],
    [bodies.length > 0, sheet.body, (box) => [{ kind: 'area', layer: 'body', fill: 'paper', rings: [corners(box)] }]],
    [
      zone !== undefined,
      sheet.zone(called(zone?.name ?? '', scene)),
      (box) => [{ kind: 'area', layer: 'dimension', fill: 'none', dash: 'zone', rings: [corners(box)] }],
    ],
    [traces.length > 0, sheet.trace, lineSign],
  ]
  return signs.filter(([shown]) => shown).map(([, words, sign]) => ({ sign, lines: paragraph(words, LETTERING_MM.note, width_mm) }))
}

function hatchSign(box: Box): readonly Mark[] {
  const ring = corners(box)
  return [
    { kind: 'area', layer: 'unseen', fill: 'unseen', outline: false, rings: [ring] },
    ...hatchLines([ring]).map((points): Mark => ({ kind: 'line', layer: 'hatch', points })),
    { kind: 'area', layer: 'unseen', fill: 'none', rings: [ring] },
  ]
}

function lineSign({ left_mm, right_mm, top_mm, bottom_mm }: Box): readonly Mark[] {
  const y_mm = (top_mm + bottom_mm) / 2
  return [
    {
      kind: 'line',
      layer: 'help',
      points: [
        { x_mm: left_mm, y_mm },
        { x_mm: right_mm, y_mm },
      ],
    },
  ]
}

function pocketEntries(scene: Scene, width_mm: number, most: number): readonly Entry[] {
  const { coverage, door } = scene
  if (!coverage) return []
  return coverage.pockets.slice(0, most).map((pocket) => ({
    letter: pocket.letter,
    lines: paragraph(keyWords(door, coverage, pocket, scene), LETTERING_MM.note, width_mm),
    sign: (box) => letterInCircle(pocket.letter, { x_mm: box.left_mm + 3.2, y_mm: box.top_mm + 2.4 }),
  }))
}

/** What fails or is not settled, apart from the pockets, which stand above. */
function findingEntries(scene: Scene, judgement: Judgement, width_mm: number): readonly Entry[] {
  const { door, coverage, language } = scene
  const told = judgement.findings.filter(
    ({ rule, verdict, subject }) =>
      (verdict === 'fail' || verdict === 'undetermined') && !(rule === 'blind-pocket' && subject.id.startsWith(`${coverage?.zone}/`)),
  )
  return grouped(told).map((group) => {
    const [first] = group.findings
    const words =
      group.waitsFor === undefined || group.findings.length === 1 ? sentence(door, first, scene) : waitingWords(door, group, scene)
    return {
      lines: paragraph(`${language.verdicts[first.verdict]}: ${words}`, LETTERING_MM.note, width_mm),
      sign: (box) => verdictSign(first.verdict, box),
    }
  })
}

/** A filled square with a cross, or a circle that is half filled. */
function verdictSign(verdict: Verdict, { left_mm, top_mm }: Box): readonly Mark[] {
  const half_mm = 1.7
  const centre = { x_mm: left_mm + 3.2, y_mm: top_mm + 1.5 }
  const around = {
    left_mm: centre.x_mm - half_mm,
    right_mm: centre.x_mm + half_mm,
    top_mm: centre.y_mm - half_mm,
    bottom_mm: centre.y_mm + half_mm,
  }
  if (verdict !== 'fail') {
    const right = Array.from(
      { length: 13 },
      (_, i): Spot => ({
        x_mm: centre.x_mm + half_mm * Math.sin((i * Math.PI) / 12),
        y_mm: centre.y_mm - half_mm * Math.cos((i * Math.PI) / 12),
      }),
    )
    return [
      { kind: 'circle', layer: 'thing', centre, radius_mm: half_mm, fill: 'paper' },
      { kind: 'area', layer: 'thing', fill: 'ink', rings: [right] },
    ]
  }
  return [{ kind: 'area', layer: 'thing', fill: 'ink', rings: [corners(around)] }, ...crossOn(centre)]
}

/** A cross in the colour of the paper: four thin diamonds, so that it needs no second colour of line. */
function crossOn({ x_mm, y_mm }: Spot): readonly Mark[] {
  const arm = 1
  const thin = 0.22
  return [1, -1].map(
    (way): Mark => ({
      kind: 'area',
      layer: 'thing',
      fill: 'paper',
      outline: false,
      rings: [
        [
          { x_mm: x_mm - arm - thin, y_mm: y_mm - way * (arm - thin) },
          { x_mm: x_mm - arm + thin, y_mm: y_mm - way * (arm + thin) },
          { x_mm: x_mm + arm + thin, y_mm: y_mm + way * (arm - thin) },
          { x_mm: x_mm + arm - thin, y_mm: y_mm + way * (arm + thin) },
        ],
      ],
    }),
  )
}
