import type { DoorFile } from '@sillsight/document'
import type { Part } from '../parts.ts'
import type { Words } from '../words/en.ts'

/** What a stop looks at to know that its thing was done. */
export interface Seen {
  readonly part: Part
  /** The door when the stop began, and now. */
  readonly before: DoorFile
  readonly file: DoorFile
  /** Whether something was taken back that could be brought back. */
  readonly undone: boolean
  readonly isThere: (selector: string) => boolean
}

export interface Stop {
  readonly name: keyof Words['help']['tour']['stops']
  /** The part of the job that it stands on. */
  readonly part: Part
  /** What it points at: the first of these that is there. */
  readonly at: readonly string[]
  /** What that is called on the screen. */
  readonly thing: (words: Words) => string
  /** How often it asks for a hand: a touch, a drag, a figure typed. */
  readonly actions: number
  readonly isDone: (seen: Seen) => boolean
}

/** The way through the job on one door, in the order in which the door itself is worked on. */
export const STOPS: readonly Stop[] = [
  {
    name: 'tape',
    part: 'judge',
    at: ['.tape a[href$="/measure"]'],
    thing: ({ parts }) => parts.measure,
    actions: 1,
    isDone: ({ part }) => part === 'measure',
  },
  {
    name: 'figure',
    part: 'measure',
    at: ['[data-figure="opening/width"] .figure-rule', '.entries .figure'],
    thing: ({ drawing }) => drawing.opening.width,
    actions: 2,
    isDone: ({ before, file }) => before.survey.opening.width_mm !== file.survey.opening.width_mm,
  },
  {
    name: 'place',
    part: 'measure',
    at: ['.tape a[href$="/place"]'],
    thing: ({ parts }) => parts.place,
    actions: 1,
    isDone: ({ part }) => part === 'place',
  },
  {
    name: 'body',
    part: 'place',
    at: ['.test-body .body-outline', '[data-stop="body"]'],
    thing: ({ drawing }) => drawing.body,
    actions: 2,
    isDone: ({ isThere }) => isThere('.test-body[data-moved]'),
  },
  {
    name: 'why',
    part: 'judge',
    at: ['.finding [data-stop="why"]'],
    thing: ({ findings }) => findings.why,
    actions: 2,
    isDone: ({ isThere }) => isThere('.why-text'),
  },
  {
    name: 'repairs',
    part: 'judge',
    at: ['.finding [data-stop="repairs"]', '.finding .finding-tools'],
    thing: ({ repairs }) => repairs.search,
    actions: 1,
    isDone: ({ isThere }) => isThere('.repairs-trying, .repairs'),
  },
  {
    name: 'undo',
    part: 'judge',
    at: ['[data-stop="undo"]:enabled', '.head-saved'],
    thing: ({ undo }) => undo,
    actions: 1,
    isDone: ({ undone }) => undone,
  },
  {
    name: 'later',
    part: 'judge',
    at: ['.tape a[href$="/fit"]'],
    thing: ({ parts }) => parts.fit,
    actions: 1,
    isDone: ({ part }) => part !== 'measure' && part !== 'place' && part !== 'judge',
  },
]

/** What is said at a stop. */
export function said({ name, thing }: Stop, words: Words): string {
  return words.help.tour.stops[name].replace('{thing}', () => thing(words))
}

/** What a tour takes whoever reads 200 words a minute and needs 5 s for each thing that is asked for. */
export function tourTime_s(words: Words): number {
  const texts = [...STOPS.map((stop) => said(stop, words)), words.help.tour.end]
  const count = texts.flatMap((text) => text.split(/\s+/)).length
  const actions = STOPS.reduce((sum, stop) => sum + stop.actions, 1) // and one to end it
  return (count / 200) * 60 + actions * 5
}
