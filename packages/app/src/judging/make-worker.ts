/** The judging worker as the bundler finds it. */
export function makeJudgingWorker(): Worker {
  return new Worker(new URL('./worker.ts', import.meta.url), { type: 'module', name: 'judging' })
}
