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
  /** Revision that was asked for last. */
  readonly asked: number
}

export interface Judging {
  readonly answers: () => Answers
  readonly subscribe: (listener: () => void) => () => void
  /** Asks for the grid answer now and for the exact one when nothing has changed for a while. */
  readonly ask: (revision: number, file: DoorFile, disputed: readonly string[]) => void
  readonly close: () => void
}

/** So long nothing may change before the exact answer is computed. */
const QUIET_MS = 250

/**
 * Two workers: one answers by the grid while something is dragged, one answers exactly afterwards and is ended when its question is
 * overtaken. Only one grid question is ever under way; those that pile up behind it are dropped but for the last. An answer older than
 * the one shown is dropped.
 */
export function startJudging(makeWorker: () => Worker): Judging {
  let state: Answers = { shown: undefined, trouble: undefined, progress: undefined, asked: -1 }
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
  let timer: ReturnType<typeof setTimeout> | undefined

  const take = (message: FromWorker) => {
    if (message.kind === 'progress') {
      if (message.revision === state.asked) set({ progress: { done: message.done, of: message.of } })
      return
    }
    if (message.kind === 'judged') {
      const { revision, depth, answer } = message
      const { shown } = state
      const older = shown !== undefined && (revision < shown.revision || (revision === shown.revision && shown.depth === 'exact'))
      if (!older) set({ shown: { ...answer, revision, depth }, trouble: undefined, ...(depth === 'exact' && { progress: undefined }) })
    } else if (message.revision === state.asked) set({ trouble: message, progress: undefined })
  }
  const broken = (event: ErrorEvent) => set({ trouble: { kind: 'crashed', revision: state.asked, message: event.message } })
  const sendGrid = (question: ToWorker) => {
    gridBusy = true
    grid.postMessage(question)
  }
  grid.onerror = broken
  grid.onmessage = ({ data }: MessageEvent<FromWorker>) => {
    gridBusy = false
    const next = waiting
    waiting = undefined
    if (next) sendGrid(next)
    take(data)
  }

  const dropExact = () => {
    clearTimeout(timer)
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
      set({ asked: revision, progress: undefined })
      const question: ToWorker = { kind: 'judge', revision, file, disputed, depth: 'grid' }
      if (gridBusy) waiting = question
      else sendGrid(question)
      timer = setTimeout(() => sendExact({ ...question, depth: 'exact' }), QUIET_MS)
    },
    close() {
      clearTimeout(timer)
      grid.terminate()
      exact?.terminate()
      listeners.clear()
    },
  }
}
