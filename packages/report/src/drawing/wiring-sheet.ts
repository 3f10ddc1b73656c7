import { type Door, EFFECTS, type FaultEffect, faultEffects, faultFacts, type Judgement, type Wiring } from '@sillsight/engine'
import type { SheetOptions } from '../options.ts'
import type { Reader } from '../wording/language.ts'
import { capital } from '../wording/plain.ts'
import { titleWords } from '../wording/sheet-words.ts'
import { lettering, letteringBox, paragraph, shortened } from './lettering.ts'
import { type Box, LETTERING_MM, type Mark, type Sheet } from './model.ts'
import { svg } from './svg.ts'
import { TITLE_BLOCK_MM, titleBlock } from './title-block.ts'
import { drawWiring, leastWiringWidth_mm } from './wiring-diagram.ts'

const EDGE_MM = 10
const LINE_MM = 4.7
const NARROW_MM = 210
const LEAST_HEIGHT_MM = 297
/** Faults of one effect that are named; the rest is counted. */
const MOST_NAMED = 60

/** Diagram, terminal table and fault table of a door's wiring on one sheet. The same door gives the same bytes. */
export function wiringSvg(door: Door, wiring: Wiring, judgement: Judgement, options: SheetOptions): string {
  return svg(drawWiringSheet(door, wiring, judgement, options).sheet)
}

export function drawWiringSheet(
  door: Door,
  wiring: Wiring,
  judgement: Judgement,
  options: SheetOptions,
): { readonly sheet: Sheet; readonly texts: readonly Box[] } {
  const words = options.language.wiring
  const left_mm = EDGE_MM + 2
  const width_mm = Math.max(NARROW_MM - 2 * left_mm, leastWiringWidth_mm(wiring, options))
  let y_mm = EDGE_MM + LETTERING_MM.heading + 1
  const heading = (text: string) => lettering(text, { x_mm: left_mm, y_mm }, LETTERING_MM.heading, { bold: true })
  const title = heading(words.title)
  y_mm += LINE_MM
  const note = lettering(words.drawnFor, { x_mm: left_mm, y_mm }, LETTERING_MM.note)
  y_mm += 3
  const diagram = drawWiring(wiring, width_mm, options)
  const drawn = diagram.marks.map((mark) => moved(mark, left_mm, y_mm))
  y_mm += diagram.height_mm + 8
  const table = tableMarks(terminalRows(wiring, options), left_mm, y_mm, width_mm)
  y_mm = table.bottom_mm + 8
  const effects = faultEffects(wiring)
  const faultsTitle = heading(capital(words.faults(effects.length)))
  y_mm += LINE_MM + 1
  const told = faultLines(effects, options).flatMap(({ effect, text }) => {
    const head = lettering(effect, { x_mm: left_mm, y_mm }, LETTERING_MM.note, { bold: true })
    const lines = paragraph(text, LETTERING_MM.note, width_mm).map((line, i) =>
      lettering(line, { x_mm: left_mm, y_mm: y_mm + (i + 1) * LINE_MM }, LETTERING_MM.note),
    )
    y_mm += (lines.length + 1) * LINE_MM + 2
    return [head, ...lines]
  })
  const foot_mm = Math.max(LEAST_HEIGHT_MM - EDGE_MM - TITLE_BLOCK_MM, y_mm + 3)
  const strip = { left_mm: EDGE_MM, right_mm: left_mm + width_mm + 2, top_mm: foot_mm, bottom_mm: foot_mm + TITLE_BLOCK_MM }
  const height_mm = strip.bottom_mm + EDGE_MM
  const block = titleWords(
    door,
    judgement,
    { state: door.states[0]?.name ?? '', zone: undefined, coverage: undefined, scales: undefined, sheet: undefined },
    options,
  )
  const marks = [title, note, ...drawn, ...table.marks, faultsTitle, ...told, ...titleBlock(block, strip, undefined)]
  return {
    texts: marks.flatMap((mark) => (mark.kind === 'text' ? [letteringBox(mark)] : [])),
    sheet: {
      width_mm: strip.right_mm + EDGE_MM,
      height_mm,
      title: door.name,
      description: [door.name, words.title, ...faultLines(effects, options).map(({ effect, text }) => `${effect}: ${text}`)].join('. '),
      marks,
    },
  }
}

/** What each fault does, those of one effect together, the worst first. */
export function faultLines(
  effects: readonly FaultEffect[],
  { language }: Reader,
): readonly { readonly effect: string; readonly text: string }[] {
  const words = language.wiring
  return EFFECTS.flatMap((effect) => {
    const those = effects.filter((each) => each.effect === effect)
    if (those.length === 0) return []
    const named = those.slice(0, MOST_NAMED).flatMap(({ fault }) => words.fault(faultFacts(fault)) ?? [])
    const more = those.length > MOST_NAMED ? [words.more(those.length - MOST_NAMED)] : []
    return [{ effect: `${words.effects[effect]}: ${those.length}`, text: `${capital([...named, ...more].join('; '))}.` }]
  })
}

/** One row for each core: where it begins, its name, colour, where it ends, and what for. */
export function terminalRows(wiring: Wiring, { language }: Reader): readonly (readonly string[])[] {
  const { columns, parts } = language.wiring
  const role = new Map<string, string>()
  for (const { power, outputs, test } of wiring.sensors) {
    role.set(power.plus, `${parts.power} +`)
    role.set(power.minus, `${parts.power} \u2212`)
    for (const { acts, from, to } of outputs) for (const at of [from, to]) if (!role.has(at)) role.set(at, parts[acts])
    if (test && !role.has(test.plus)) role.set(test.plus, parts.test)
    else if (test && !role.has(test.minus)) role.set(test.minus, parts.test)
  }
  return [
    [columns.from, columns.core, columns.colour, columns.to, columns.function],
    ...wiring.cables.flatMap(({ cores }) =>
      cores.map(({ id, colour, from, to }) => [from, id, colour ?? '', to, role.get(to) ?? role.get(from) ?? '']),
    ),
  ]
}

const SHARES = [0.27, 0.12, 0.12, 0.27, 0.22]

function tableMarks(rows: readonly (readonly string[])[], left_mm: number, top_mm: number, width_mm: number) {
  const starts = SHARES.map((_, i) => left_mm + width_mm * SHARES.slice(0, i).reduce((sum, share) => sum + share, 0))
  const marks = rows.flatMap((row, i): Mark[] => {
    const y_mm = top_mm + i * (LINE_MM + 0.9)
    const texts = row.map((text, k) =>
      lettering(shortened(text, LETTERING_MM.note, width_mm * (SHARES[k] ?? 0) - 2), { x_mm: starts[k] ?? 0, y_mm }, LETTERING_MM.note, {
        bold: i === 0,
      }),
    )
    const rule: Mark = {
      kind: 'line',
      layer: i === 0 ? 'thing' : 'help',
      points: [
        { x_mm: left_mm, y_mm: y_mm + 1.6 },
        { x_mm: left_mm + width_mm, y_mm: y_mm + 1.6 },
      ],
    }
    return [...texts, rule]
  })
  return { marks, bottom_mm: top_mm + rows.length * (LINE_MM + 0.9) }
}

function moved(mark: Mark, x_mm: number, y_mm: number): Mark {
  const by = (at: { readonly x_mm: number; readonly y_mm: number }) => ({ x_mm: at.x_mm + x_mm, y_mm: at.y_mm + y_mm })
  switch (mark.kind) {
    case 'line':
      return { ...mark, points: mark.points.map(by) }
    case 'area':
      return { ...mark, rings: mark.rings.map((ring) => ring.map(by)) }
    case 'circle':
      return { ...mark, centre: by(mark.centre) }
    case 'text':
      return { ...mark, at: by(mark.at) }
  }
}
