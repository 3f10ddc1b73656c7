import { sha256 } from '@sillsight/document'
import type { DoorId, Saving } from './contract.ts'
import type { CardRecord, Database, Sealed } from './database.ts'

/** What waits to be written: everything in one transaction, or nothing. */
export interface Write {
  readonly changes?: readonly { readonly door: DoorId; readonly hash: string; readonly bytes: Uint8Array }[]
  readonly card?: CardRecord
  readonly photo?: { readonly id: string; readonly bytes: Uint8Array }
}

/**
 * Writes in the order in which it was asked to, one transaction after the other, and says how it stands. What could not be written stays
 * in the queue and is tried again with the next edit.
 */
export class Storage {
  readonly #database: Database | undefined
  readonly #queue: Write[] = []
  readonly #told: (saving: Saving) => void
  #running: Promise<void> | undefined
  #saving: Saving

  constructor(database: Database | undefined, told: (saving: Saving) => void, now_ms: number) {
    this.#database = database
    this.#told = told
    this.#saving = database ? { kind: 'saved', at_ms: now_ms } : PRIVATE
  }

  get saving(): Saving {
    return this.#saving
  }

  write(write: Write): void {
    this.#queue.push(write)
    if (!this.#database) return this.#tell(PRIVATE)
    this.#tell({ kind: 'saving' })
    this.#running ??= this.#drain(this.#database).finally(() => {
      this.#running = undefined
    })
  }

  /** All that was asked for so far is written, or could not be. */
  async settled(): Promise<void> {
    while (this.#running) await this.#running
  }

  async #drain(database: Database): Promise<void> {
    while (this.#queue.length > 0) {
      const all = [...this.#queue]
      try {
        await writeAll(database, all)
      } catch (problem) {
        return this.#tell(failure(problem))
      }
      this.#queue.splice(0, all.length)
    }
    this.#tell({ kind: 'saved', at_ms: Date.now() })
  }

  #tell(saving: Saving): void {
    this.#saving = saving
    this.#told(saving)
  }
}

const PRIVATE: Saving = { kind: 'not-saved', reason: 'private', message: 'this browser keeps nothing' }

function failure(problem: unknown): Saving {
  const message = problem instanceof Error ? problem.message : String(problem)
  const full = problem instanceof DOMException && problem.name === 'QuotaExceededError'
  return { kind: 'not-saved', reason: full ? 'full' : 'failed', message }
}

/** `strict`: on the disk before it counts as done, where the browser offers that. */
async function writeAll(database: Database, writes: readonly Write[]): Promise<void> {
  const transaction = database.transaction(['changes', 'cards', 'photos'], 'readwrite', { durability: 'strict' })
  try {
    const puts = writes.flatMap(({ changes = [], card, photo }) => [
      ...changes.map(({ door, hash, bytes }) => transaction.objectStore('changes').put({ door, hash, ...sealed(bytes) })),
      ...(card ? [transaction.objectStore('cards').put(card)] : []),
      ...(photo ? [transaction.objectStore('photos').put(sealed(photo.bytes), photo.id)] : []),
    ])
    await Promise.all([...puts, transaction.done])
  } catch (problem) {
    transaction.done.catch(() => undefined) // its failure is the one that is thrown below
    try {
      transaction.abort() // what went before it in this transaction must not stay
    } catch {
      // it has ended already
    }
    throw problem
  }
}

function sealed(bytes: Uint8Array): Sealed {
  return { bytes, sha256: sha256(bytes) }
}

/** The bytes if they are as they were written. */
export function unsealed(found: unknown): Uint8Array | undefined {
  if (typeof found !== 'object' || found === null) return undefined
  const { bytes, sha256: seal } = found as Partial<Sealed>
  return bytes instanceof Uint8Array && sha256(bytes) === seal ? bytes : undefined
}
