import type { Door, Finding, Judgement, Verdict } from '@sillsight/engine'
import type { Reader } from './wording/language.ts'

/** How lengths are said: `metric` in mm and m, `feet-inches` as a tape in feet, inches and sixteenths. */
export type Units = 'metric' | 'feet-inches'

/** Puts colour or weight on a piece of text that is already complete. The identity where colour is off. */
export type Paint = (text: string) => string

/** What a terminal may colour. The words say everything without it. */
export interface Palette {
  readonly verdict: Readonly<Record<Verdict, Paint>>
  readonly strong: Paint
  readonly quiet: Paint
}

export interface TextOptions extends Reader {
  /** Columns of the terminal. */
  readonly width: number
  readonly palette: Palette
  /** Only ASCII characters, for terminals that have no others. */
  readonly ascii: boolean
}

export interface PlanOptions extends Reader {
  readonly width: number
  readonly ascii: boolean
  /** Id of a door state; the state with the most unseen cells if left out. */
  readonly state?: string | undefined
  /** Id of a zone; the zone with the most unseen cells if left out. */
  readonly zone?: string | undefined
  readonly palette?: Palette | undefined
}

export interface SheetOptions extends Reader {
  readonly state?: string | undefined
  readonly zone?: string | undefined
  /** 25 for a scale of 1:25; the largest that fits on A4 or A3 if left out. */
  readonly scale?: number | undefined
}

/** One judged door, and the file that it came from as a pipeline should name it. */
export interface JudgedFile {
  readonly file: string
  readonly door: Door
  readonly judgement: Judgement
}

/** A file that could not be read or understood. */
export interface RefusedFile {
  readonly file: string
  readonly issues: readonly { readonly code: string; readonly path: string; readonly expected: string; readonly got: string }[]
}

export type FileResult = JudgedFile | RefusedFile

export type FindingOf<V extends Verdict> = Extract<Finding, { readonly verdict: V }>

/** A palette without any colour. */
export const plainPalette: Palette = {
  verdict: { pass: same, fail: same, undetermined: same, 'not-applicable': same },
  strong: same,
  quiet: same,
}

function same(text: string): string {
  return text
}
