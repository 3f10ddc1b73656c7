import { tell } from './output.ts'
import { isTerminal } from './terminal.ts'

/** How far many files are, on standard error: one line that renews itself on a terminal, else a line every few seconds. */
export class Progress {
  readonly #total: number
  readonly #onTerminal = isTerminal(2)
  readonly #start_ms = performance.now()
  #done = 0
  #last_ms = this.#start_ms + 400 // before that nobody can tell how long it takes
  #visible = false
  #cleared = false

  constructor(total: number) {
    this.#total = total
  }

  /** One file more is done. */
  count(): void {
    this.#done++
    const now_ms = performance.now()
    const isDue = this.#cleared || now_ms - this.#last_ms >= (this.#onTerminal ? 100 : 5000)
    if (this.#done === this.#total || !isDue) return
    this.#last_ms = now_ms
    this.#cleared = false
    const rate_per_s = (this.#done / (now_ms - this.#start_ms)) * 1000
    const line = `${this.#done} of ${this.#total} files, about ${Math.ceil((this.#total - this.#done) / rate_per_s)} s to go`
    tell(this.#onTerminal ? `\r${line}\u001b[K` : `sillsight: ${line}\n`)
    this.#visible = this.#onTerminal
  }

  /** Takes the line away, so that results can stand there. */
  clear(): void {
    if (!this.#visible) return
    tell('\r\u001b[K')
    this.#visible = false
    this.#cleared = true
  }
}
