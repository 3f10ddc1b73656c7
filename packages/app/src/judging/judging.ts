import type { DoorFile, Issue } from '@sillsight/document'
import type { Depth } from '@sillsight/engine'
import type { FromWorker, Judged, ToWorker } from './messages.ts'

/** What is known of a door's findings at this moment. */
export interface Answers {
  /** The newest answer, of whatever revision; the screen says when it is old. */
  readonly shown: (Judged & { readonly revision: number; readonly depth: Depth }) | undefined
  /** Why the newest revision has no answer. */
  readonly trouble:
    | { readonly kind: 'refused'; readonly revision: number; readonly issues: readonly Issue[] }
    | { readonly kind: 'crashed'; readonly revision: number; readonly message: string }
    | undefined
  readonly progress: { readonly done: number; readonly of: number } | undefined
}

export const NO_ANSWERS: Answers = { shown: undefined, trouble: undefined, progress: undefined }

export interface Judging {
  readonly answers: () => Answers
  readonly subscribe: (listener: () => void) => () => void
  /** Asks for the grid answer now, and for the exact one when that is there and nothing has changed for a while. */
  readonly ask: (revision: number, file: DoorFile, disputed: readonly string[]) => void
  readonly close: () => void
}

/** So long nothing may change before the exact answer is computed. */
const QUIET_MS = 250

/**
 * Two workers: one answers by the grid while something is dragged, one answers exactly afterwards and is ended when its question is
 * overtaken. It begins when the grid has answered, or it would take its time from that answer and from the picture of it. Only one grid question is ever under way; those that pile up behind it are dropped but for the last. An answer older than
 * the one shown is dropped.
 */
export function startJudging(makeWorker: () => Worker): Judging {
  let state = NO_ANSWERS
  let asked = -1
  const listeners = new Set<() => void>()
  const set = (change: Partial<Answers>) => {
    state = { ...state, ...change }
    for (const listener of listeners) listener()
  }

  const grid = makeWorker()
  let exact: Worker | undefined
  let exactBusy = false
  let gridBusy = false
  let waiting: ToWorker | undefined
  /** Asked exactly as soon as the grid has answered. */
  let due: ToWorker | undefined
  let timer: ReturnType<typeof setTimeout> | undefined

  const take = (message: FromWorker) => {
    if (message.kind === 'progress') {
      if (message.revision === asked) set({ progress: { done: message.done, of: message.of } })
      return
    }
    if (message.kind === 'judged') {
      const { revision, depth, answer } = message
      const { shown } = state
      const older = shown !== undefined && (revision < shown.revision || (revision === shown.revision && shown.depth === 'exact'))
      if (!older) set({ shown: { ...answer, revision, depth }, trouble: undefined, ...(depth === 'exact' && { progress: undefined }) })
    } else if (message.revision === asked) set({ trouble: message, progress: undefined })
  }
  const broken = (event: ErrorEvent) => set({ trouble: { kind: 'crashed', revision: asked, message: event.message } })
  const sendGrid = (question: ToWorker) => {
    gridBusy = true
    grid.postMessage(question)
  }
  /** The grid worker is free: what piled up is its next question. If nothing did, it is the exact answer's turn, after the picture of this one. */
  const gridDone = () => {
    gridBusy = false
    const next = waiting
    waiting = undefined
    if (next) sendGrid(next)
    const exactly = due
    if (!next && exactly) timer = setTimeout(() => sendExact(exactly))
  }
  grid.onerror = (event) => {
    gridDone()
    broken(event)
  }
  grid.onmessage = ({ data }: MessageEvent<FromWorker>) => {
    gridDone()
    take(data)
  }
  const dropExact = () => {
    clearTimeout(timer)
    due = undefined
    if (exactBusy) {
      exact?.terminate()
      exact = undefined
      exactBusy = false
    }
  }
  const sendExact = (question: ToWorker) => {
    if (exact === undefined) {
      exact = makeWorker()
      exact.onerror = broken
      exact.onmessage = ({ data }: MessageEvent<FromWorker>) => {
        if (data.kind !== 'progress') exactBusy = false
        take(data)
      }
    }
    due = undefined
    exactBusy = true
    exact.postMessage(question)
  }

  return {
    answers: () => state,
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    ask(revision, file, disputed) {
      dropExact()
      asked = revision
      if (state.progress) set({ progress: undefined })
      const question: ToWorker = { kind: 'judge', revision, file, disputed, depth: 'grid' }
      if (gridBusy) waiting = question
      else sendGrid(question)
      timer = setTimeout(() => {
        const exactly: ToWorker = { ...question, depth: 'exact' }
        if (gridBusy) due = exactly
        else sendExact(exactly)
      }, QUIET_MS)
    },
    close() {
      clearTimeout(timer)
      grid.terminate()
      exact?.terminate()
      listeners.clear()
    },
  }
}
