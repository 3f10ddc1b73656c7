import { ownScript } from '../trusted.ts'
import address from './worker.ts?worker&url'

/** The judging worker as the bundler put it. */
export function makeJudgingWorker(): Worker {
  return new Worker(ownScript(address), { type: 'module', name: 'judging' })
}
