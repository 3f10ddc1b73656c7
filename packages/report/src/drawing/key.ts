import type { Pocket, ZoneCoverage } from '@sillsight/engine'
import { keyWords, legendWords } from '../wording/sheet-words.ts'
import { hatchLines } from './hatch.ts'
import { letterInCircle } from './labels.ts'
import { lettering, paragraph } from './lettering.ts'
import { type Box, corners, LETTERING_MM, type Mark } from './model.ts'
import type { Scene } from './scene.ts'

const LINE_MM = 4.7 // from baseline to baseline
const SIGN_MM = 11 // room for a sign before its words
const PARAGRAPH_MM = 2.2

/** What the letters and signs of the drawing mean, in a column. */
export interface Key {
  readonly marks: readonly Mark[]
  /** The letters that are explained. */
  readonly told: readonly string[]
}

/** Signs first, then the pockets, largest first, as many as the column holds. */
export function drawKey(scene: Scene, column: Box): Key {
  const marks: Mark[] = []
  let top_mm = column.top_mm
  for (const entry of entriesOf(scene, column.right_mm - column.left_mm - SIGN_MM)) {
    if (top_mm + entry.height_mm > column.bottom_mm) break
    marks.push(...entry.draw(column.left_mm, top_mm))
    top_mm += entry.height_mm + PARAGRAPH_MM
  }
  const pockets = pocketEntries(scene, column, top_mm)
  return { marks: [...marks, ...pockets.marks], told: pockets.told }
}

interface Entry {
  readonly height_mm: number
  readonly draw: (left_mm: number, top_mm: number) => readonly Mark[]
}

function entriesOf(scene: Scene, width_mm: number): readonly Entry[] {
  const { coverage, bodies, traces, zone, counted } = scene
  const signs: readonly (readonly [shown: boolean, words: string, sign: (box: Box) => readonly Mark[]])[] = [
    [(coverage?.counts.blind ?? 0) > 0, legendWords.unseen, hatchSign],
    [bodies.length > 0, legendWords.body, (box) => [{ kind: 'area', layer: 'body', fill: 'paper', rings: [corners(box)] }]],
    [zone !== undefined, legendWords.zone(zone ? zone.name : ''), (box) => [{ kind: 'area', layer: 'dimension', fill: 'none', dash: 'zone', rings: [corners(box)] }]],
    [traces.some(({ sensor }) => counted.has(sensor)), legendWords.trace, (box) => [lineSign(box)]],
  ]
  return signs.filter(([shown]) => shown).map(([, words, sign]) => signEntry(words, sign, width_mm))
}

function signEntry(words: string, sign: (box: Box) => readonly Mark[], width_mm: number): Entry {
  const lines = paragraph(words, LETTERING_MM.note, width_mm)
  return {
    height_mm: lines.length * LINE_MM,
    draw: (left_mm, top_mm) => [
      ...sign({ left_mm, right_mm: left_mm + SIGN_MM - 3, top_mm: top_mm + 0.6, bottom_mm: top_mm + 4 }), ...textLines(lines, left_mm + SIGN_MM, top_mm),
    ],
  }
}

function textLines(lines: readonly string[], x_mm: number, top_mm: number): readonly Mark[] {
  return lines.map((line, i) => lettering(line, { x_mm, y_mm: top_mm + 3.6 + i * LINE_MM }, LETTERING_MM.note))
}

function hatchSign(box: Box): readonly Mark[] {
  const ring = corners(box)
  return [
    { kind: 'area', layer: 'unseen', fill: 'unseen', outline: false, rings: [ring] },
    ...hatchLines([ring]).map((points): Mark => ({ kind: 'line', layer: 'hatch', points })),
    { kind: 'area', layer: 'unseen', fill: 'none', rings: [ring] },
  ]
}

function lineSign({ left_mm, right_mm, top_mm, bottom_mm }: Box): Mark {
  const y_mm = (top_mm + bottom_mm) / 2
  return { kind: 'line', layer: 'help', points: [{ x_mm: left_mm, y_mm }, { x_mm: right_mm, y_mm }] }
}

function pocketEntries(scene: Scene, column: Box, from_mm: number): Key {
  const { coverage, door, units } = scene
  const width_mm = column.right_mm - column.left_mm - SIGN_MM
  const pockets = coverage?.pockets ?? []
  const entries = pockets.map((pocket) => ({ pocket, lines: paragraph(keyWords(door, coverage as ZoneCoverage, pocket, units), LETTERING_MM.note, width_mm) }))
  const told = asManyAsFit(entries, column.bottom_mm - from_mm)
  let top_mm = from_mm
  const marks: Mark[] = []
  for (const { pocket, lines } of entries.slice(0, told)) {
    marks.push(...letterInCircle(pocket.letter, { x_mm: column.left_mm + 3.2, y_mm: top_mm + 3.1 }), ...textLines(lines, column.left_mm + SIGN_MM, top_mm))
    top_mm += heightOf(lines) + PARAGRAPH_MM
  }
  if (told < pockets.length && top_mm + LINE_MM <= column.bottom_mm) marks.push(...textLines([legendWords.more(pockets.length - told)], column.left_mm + SIGN_MM, top_mm))
  return { marks, told: pockets.slice(0, told).map(({ letter }) => letter) }
}

function heightOf(lines: readonly string[]): number {
  return Math.max(6.4, lines.length * LINE_MM)
}

function asManyAsFit(entries: readonly { readonly pocket: Pocket; readonly lines: readonly string[] }[], room_mm: number): number {
  let used_mm = 0
  let fit = 0
  for (const { lines } of entries) {
    used_mm += heightOf(lines) + PARAGRAPH_MM
    const forMore_mm = fit + 1 < entries.length ? LINE_MM : 0
    if (used_mm + forMore_mm - PARAGRAPH_MM > room_mm) break
    fit++
  }
  return fit
}
