import { ownScript } from '../trusted.ts'
import mendingAddress from './mending-worker.ts?worker&url'
import address from './worker.ts?worker&url'

/** The judging worker as the bundler put it. */
export function makeJudgingWorker(): Worker {
  return new Worker(ownScript(address), { type: 'module', name: 'judging' })
}

/** The worker that searches for repairs; made when somebody asks for some. */
export function makeMendingWorker(): Worker {
  return new Worker(ownScript(mendingAddress), { type: 'module', name: 'mending' })
}
