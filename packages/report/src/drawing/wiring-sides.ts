import type { Wiring } from '@sillsight/engine'
import type { Reader } from '../wording/language.ts'
import { textWidth_mm } from './lettering.ts'
import { LETTERING_MM } from './model.ts'
import type { Link, Side, WiringLayout } from './wiring-layout.ts'
import type { PlayedFault } from './wiring-marks.ts'

export const SIZE_MM = LETTERING_MM.label
export const SMALL_MM = 2.9

/** What stands inside of a side: names of terminals, and words at rows and at switches. */
export interface SideWords {
  readonly names_mm: number
  readonly words: readonly { readonly row: number; readonly lines: readonly string[]; readonly link: Link | undefined }[]
  readonly words_mm: number
}

/** @param isNarrow long words at the rows take two lines */
export function sidesOf(
  layout: WiringLayout,
  wiring: Wiring,
  reader: Reader,
  playing: PlayedFault | undefined,
  isNarrow: boolean,
): Readonly<Record<Side, SideWords>> {
  const side = (which: Side) => sideOf(layout, which, wiring, reader, playing, isNarrow ? twoLines : (text) => [text])
  return { left: side('left'), right: side('right') }
}

/** Broken at the space that leaves the longer line shortest; what is short stays whole. */
function twoLines(text: string): readonly string[] {
  const width_mm = (line: string) => textWidth_mm(line, SMALL_MM)
  if (width_mm(text) < 14) return [text]
  const parts = text.split(' ')
  const broken = parts.slice(1).map((_, i) => [parts.slice(0, i + 1).join(' '), parts.slice(i + 1).join(' ')])
  const longest = (lines: readonly string[]) => Math.max(...lines.map(width_mm))
  const readable = broken.filter((lines) => lines.every((line) => line.length > 1)) // a sign stays with its word
  return readable.sort((a, b) => longest(a) - longest(b))[0] ?? [text]
}

/** What is said at a row, or of the switch or resistor that is drawn over several. */
export interface RowWords {
  readonly row: number
  readonly text: string
  readonly link: Link | undefined
}

/** The words of one side in the order of its rows. */
export function wordsOf(
  layout: WiringLayout,
  side: Side,
  wiring: Wiring,
  reader: Reader,
  playing: PlayedFault | undefined,
): readonly RowWords[] {
  const { parts, closedWhen, openWhen, never, states, beliefs } = reader.language.wiring
  const said = (acts: 'presence' | 'opening', closedIn: readonly string[]) => {
    const all = Object.keys(states) as (keyof typeof states)[]
    const list = (those: readonly (keyof typeof states)[]) => those.map((state) => states[state]).join(', ') || never
    const [closed, open] = [true, false].map((is) => all.filter((state) => closedIn.includes(state) === is)) as [typeof all, typeof all]
    return `${parts[acts]}, ${open.length > 0 && open.length < closed.length ? openWhen(list(open)) : closedWhen(list(closed))}`
  }
  const ofLinks = layout.links
    .filter((link) => link.side === side)
    .flatMap((link) => {
      const row = (Math.min(...link.rows) + Math.max(...link.rows)) / 2
      if (link.what.kind === 'switch') return [{ row, text: said(link.what.each.acts, link.what.each.closedIn), link }]
      if (link.what.kind === 'resistor') return [{ row, text: resistorWords(link.what.each, reader), link }]
      return link.what.kind === 'test' ? [{ row, text: parts.test, link }] : []
    })
  const role = new Map<string, string>()
  for (const { power, test } of wiring.sensors) {
    role.set(power.plus, `${parts.power} +`)
    role.set(power.minus, `${parts.power} \u2212`)
    if (test) role.set(test.asked === 'below' || test.minus === power.minus ? test.plus : test.minus, parts.test)
  }
  role.set(wiring.supply.plus, `${parts.supply} +`)
  role.set(wiring.supply.minus, `${parts.supply} \u2212`)
  for (const { id, acts, plus } of wiring.control.inputs) {
    const belief = playing?.played.beliefs.get(id)
    role.set(plus, `${parts[acts]}${belief ? `: ${beliefs[belief]}` : ''}`)
  }
  const seen = new Set<string>()
  const ofRows = layout[side].flatMap(({ terminal, row }) => {
    const text = role.get(terminal)
    if (text === undefined || seen.has(terminal)) return []
    seen.add(terminal)
    return [{ row, text, link: undefined }]
  })
  return [...ofLinks, ...ofRows].sort((a, b) => a.row - b.row)
}

function sideOf(
  layout: WiringLayout,
  side: Side,
  wiring: Wiring,
  reader: Reader,
  playing: PlayedFault | undefined,
  inLines: (text: string) => readonly string[],
): SideWords {
  const words = wordsOf(layout, side, wiring, reader, playing).map(({ text, ...at }) => ({ ...at, lines: inLines(text) }))
  const widest_mm = (texts: readonly string[]) => Math.max(0, ...texts.map((text) => textWidth_mm(text, SMALL_MM)))
  // room for whatever may be believed, so that nothing moves while faults are played
  const believed = wiring.control.inputs.flatMap((input) => believable(input, reader).flatMap(inLines))
  return {
    names_mm: Math.max(0, ...layout[side].map(({ terminal }) => textWidth_mm(shortName(terminal), SIZE_MM))),
    words,
    words_mm: widest_mm([...words.flatMap(({ lines }) => lines), ...(playing && side === 'left' ? believed : [])]),
  }
}

/** All that an input may be said to believe. */
export function believable({ acts }: Wiring['control']['inputs'][number], { language }: Reader): readonly string[] {
  return Object.values(language.wiring.beliefs).map((belief) => `${language.wiring.parts[acts]}: ${belief}`)
}

function resistorWords({ id, ohm }: Wiring['resistors'][number], { language }: Reader): string {
  return `${id}, ${`${ohm}`.replace('.', language.decimal)} \u03a9`
}

/** The terminal without its device, which stands above. */
export const shortName = (terminal: string) => terminal.slice(terminal.indexOf('.') + 1)
