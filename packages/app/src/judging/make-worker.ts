import { ownScript } from '../trusted.ts'
import searchingAddress from './searching-worker.ts?worker&url'
import address from './worker.ts?worker&url'

let prepared: Worker | undefined

/** Starts a judging worker before there is anything to judge: its script is read while the door is. */
export function prepareJudging(): void {
  prepared ??= judgingWorker()
}

/** A judging worker, the prepared one if there is. */
export function makeJudgingWorker(): Worker {
  const worker = prepared ?? judgingWorker()
  prepared = undefined
  return worker
}

/** As the bundler put it. */
function judgingWorker(): Worker {
  return new Worker(ownScript(address), { type: 'module', name: 'judging' })
}

/** The worker that searches, for repairs and through the wiring; made when somebody asks for something. */
export function makeSearchingWorker(): Worker {
  return new Worker(ownScript(searchingAddress), { type: 'module', name: 'searching' })
}
