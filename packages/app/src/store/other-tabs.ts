import type { DoorId } from './contract.ts'
import { newId } from './new-id.ts'

/** What tabs of one browser tell each other. */
export type Told =
  | { readonly kind: 'changes'; readonly door: DoorId; readonly changes: readonly Uint8Array[] }
  | { readonly kind: 'cards' }
  | { readonly kind: 'thrown'; readonly door: DoorId }
  | { readonly kind: 'format'; readonly format: number; readonly tab?: string }

/**
 * The tabs that have the same database open. Each holds a lock for as long as it lives, which the browser frees however it ends, and the
 * others wait for it: what a tab wrote as it went, it can no longer tell.
 *
 * @param hear called with what another tab tells
 * @param onGone called when one has gone, for the others to look what it left
 */
export class OtherTabs {
  readonly #channel: BroadcastChannel
  readonly #name: string
  readonly #onGone: () => void
  readonly #tab: string = newId()
  readonly #known = new Set<string>([this.#tab])

  constructor(name: string, hear: (told: Told) => void, onGone: () => void) {
    this.#name = name
    this.#onGone = onGone
    this.#channel = new BroadcastChannel(name)
    this.#channel.onmessage = ({ data }: MessageEvent<Told>) => {
      if (data.kind === 'format' && data.tab !== undefined) this.#meet(data.tab)
      hear(data)
    }
  }

  tell(told: Told): void {
    this.#channel.postMessage(told)
  }

  /**
   * Says what this tab writes, at once: an older program must hear of it before it writes again. That it is here it says when it holds its
   * lock: somebody who waited for it sooner would get it at once.
   */
  enter(format: number): void {
    this.tell({ kind: 'format', format })
    const { locks } = navigator // only where the page came safely
    if (!locks) return
    const entered = async () => {
      const { held = [] } = await locks.query()
      const start = this.#lock('')
      for (const { name = '' } of held) if (name.startsWith(start)) this.#meet(name.slice(start.length))
      this.tell({ kind: 'format', format, tab: this.#tab })
      await new Promise(() => {})
    }
    void locks.request(this.#lock(this.#tab), entered)
  }

  #lock(tab: string): string {
    return `${this.#name}/${tab}`
  }

  #meet(tab: string): void {
    if (this.#known.has(tab)) return
    this.#known.add(tab)
    void navigator.locks?.request(this.#lock(tab), { mode: 'shared' }, () => this.#onGone())
  }
}
