import type { Worker } from 'node:worker_threads'
import type { Format, Written } from './formats.ts'
import type { Look } from './terminal.ts'

/** The closed set of messages between the pool and its threads. */
export interface Ask {
  readonly kind: 'judge'
  readonly index: number
  readonly file: string
  /** For standard input, which only the main thread can read. */
  readonly text: string | undefined
}
export type Reply =
  | { readonly kind: 'judged'; readonly index: number; readonly written: Written }
  | { readonly kind: 'crashed'; readonly index: number; readonly message: string }

/** What every thread is told once. */
export interface Orders {
  readonly format: Format
  readonly look: Look
}

export interface PoolJob {
  /** The program of one thread: worker.ts. */
  readonly thread: string
  readonly files: readonly { readonly file: string; readonly text: string | undefined }[]
  readonly orders: Orders
  readonly workers: number
  /** Called once per file, in the order of the files. */
  readonly take: (written: Written) => void
  /** What stands in for a file on which a thread died. */
  readonly crashed: (file: string, message: string) => Written
}

interface Hand {
  readonly worker: Worker
  busyWith: number | undefined
}

/** No file is started further ahead than this of the first one not yet taken: behind a slow file, the rest must not fill memory. */
const furthestAhead = 64

/** Judges many files on several threads. A thread that dies costs the file it had, and is replaced. */
export class Pool {
  /** Ends when every file is taken. */
  readonly done: Promise<void>
  readonly #job: PoolJob
  readonly #hands = new Set<Hand>()
  readonly #waiting = new Map<number, Written>() // judged, but a file before it is not
  #started = 0
  #taken = 0
  #finish: () => void = () => {}

  constructor(job: PoolJob) {
    this.#job = job
    this.done = new Promise((resolve) => {
      this.#finish = resolve
    })
    for (let i = 0; i < Math.min(job.workers, job.files.length); i++) this.#hire()
    this.#feed()
    if (job.files.length === 0) this.#finish()
  }

  get taken(): number {
    return this.#taken
  }

  /** Ends all threads now; `done` stays open when files are left. */
  stop(): void {
    for (const { worker } of this.#hands) void worker.terminate()
    this.#hands.clear()
  }

  #hire(): void {
    const { Worker } = process.getBuiltinModule('node:worker_threads') // loaded only now: one file needs no threads
    const hand: Hand = { worker: new Worker(this.#job.thread, { workerData: this.#job.orders }), busyWith: undefined }
    this.#hands.add(hand)
    hand.worker.on('message', (reply: Reply) => {
      hand.busyWith = undefined
      this.#keep(reply.index, reply.kind === 'judged' ? reply.written : this.#crashed(reply.index, reply.message))
    })
    hand.worker.on('error', (problem) => this.#bury(hand, problem instanceof Error ? problem.message : String(problem)))
    hand.worker.on('exit', (code) => this.#bury(hand, `the thread ended with ${code}`))
  }

  #bury(hand: Hand, message: string): void {
    if (!this.#hands.delete(hand)) return // ended by `stop`, or its error came first
    const index = hand.busyWith ?? this.#started++ // a thread that dies before its first file must not be replaced for ever
    if (index >= this.#job.files.length) return
    this.#hire()
    this.#keep(index, this.#crashed(index, message))
  }

  #feed(): void {
    for (const hand of this.#hands) {
      const next = this.#job.files[this.#started]
      if (!next || this.#started >= this.#taken + furthestAhead) return
      if (hand.busyWith !== undefined) continue
      hand.busyWith = this.#started++
      hand.worker.postMessage({ kind: 'judge', index: hand.busyWith, ...next } satisfies Ask)
    }
  }

  #keep(index: number, written: Written): void {
    this.#waiting.set(index, written)
    for (let next = this.#waiting.get(this.#taken); next; next = this.#waiting.get(this.#taken)) {
      this.#waiting.delete(this.#taken++)
      this.#job.take(next)
    }
    this.#feed()
    if (this.#taken < this.#job.files.length) return
    this.stop()
    this.#finish()
  }

  #crashed(index: number, message: string): Written {
    return this.#job.crashed(this.#job.files[index]?.file ?? '', message)
  }
}
