import type { DoorId, Saving } from './contract.ts'
import { type CardRecord, type Database, sealed } from './database.ts'

/** What waits to be written: everything in one transaction, or nothing. */
export interface Write {
  readonly changes?: readonly { readonly door: DoorId; readonly hash: string; readonly bytes: Uint8Array }[]
  readonly card?: CardRecord
  readonly photo?: { readonly id: string; readonly bytes: Uint8Array }
  /** A door of which nothing stays. */
  readonly thrown?: DoorId
  /** Called when it is in the database. */
  readonly written?: () => void
}

/** After this long, what found no room is tried again even if nobody edits. */
const RETRY_MS = 3000

/**
 * Writes in the order in which it was asked to, one transaction after the other, and says how it stands. What could not be written stays
 * in the queue, can be read there, and is tried again.
 */
export class Storage {
  readonly #database: Database | undefined
  #queue: readonly Write[] = []
  readonly #told: (saving: Saving) => void
  readonly #outdated: () => boolean
  #running: Promise<void> | undefined
  #retry: ReturnType<typeof setTimeout> | undefined
  #saving: Saving

  /** @param outdated whether a newer program owns the database: then nothing is written any more */
  constructor(database: Database | undefined, told: (saving: Saving) => void, outdated: () => boolean, now_ms: number) {
    this.#database = database
    this.#told = told
    this.#outdated = outdated
    this.#saving = database ? { kind: 'saved', at_ms: now_ms } : PRIVATE
  }

  get saving(): Saving {
    return this.#saving
  }

  write(write: Write): void {
    this.#queue = [...this.#queue, write]
    if (!this.#database) return this.#tell(PRIVATE)
    if (this.#outdated()) return this.#tell(OUTDATED)
    this.#tell({ kind: 'saving' })
    this.#start(this.#database)
  }

  /** Changes of a door that are not in the database yet. */
  waiting(door: DoorId): readonly Uint8Array[] {
    return this.#queue.flatMap(({ changes = [] }) => changes.filter((each) => each.door === door).map(({ bytes }) => bytes))
  }

  /** The cards as they are once all that waits is written. */
  cardsAfter(found: readonly CardRecord[]): readonly CardRecord[] {
    const cards = new Map<string, CardRecord>(found.map((card) => [card.id, card]))
    for (const { card, thrown } of this.#queue) {
      if (card) cards.set(card.id, card)
      if (thrown) cards.delete(thrown)
    }
    return [...cards.values()]
  }

  waitingPhoto(id: string): Uint8Array | undefined {
    return this.#queue.find(({ photo }) => photo?.id === id)?.photo?.bytes
  }

  /** A photo that was taken away need not be written any more. */
  forgetPhoto(id: string): void {
    this.#queue = this.#queue.filter(({ photo }) => photo?.id !== id)
  }

  /** All that was asked for so far is written, or could not be. */
  async settled(): Promise<void> {
    while (this.#running) await this.#running
  }

  #start(database: Database): void {
    if (this.#queue.length > 0 && !this.#outdated()) this.#running ??= this.#drain(database)
  }

  async #drain(database: Database): Promise<void> {
    let problem: unknown
    while (this.#queue.length > 0 && problem === undefined) {
      const all = this.#queue
      problem = await this.#attempt(database, all)
      if (problem === undefined) continue
      const edits = all.filter(({ photo }) => photo === undefined) // a photo that finds no room must not hold up what comes after it
      if (edits.length > 0 && edits.length < all.length) await this.#attempt(database, edits)
    }
    this.#running = undefined // before anybody is told, who may write again at once
    if (problem === undefined) return this.#tell({ kind: 'saved', at_ms: Date.now() })
    this.#retry ??= setTimeout(() => {
      this.#retry = undefined
      this.#start(database)
    }, RETRY_MS)
    this.#tell(failure(problem))
  }

  /** @returns what went wrong; then all of it stays in the queue */
  async #attempt(database: Database, writes: readonly Write[]): Promise<unknown> {
    try {
      await writeAll(database, writes)
    } catch (problem) {
      return problem
    }
    const done = new Set(writes)
    this.#queue = this.#queue.filter((each) => !done.has(each))
    for (const { written } of writes) written?.()
    return undefined
  }

  #tell(saving: Saving): void {
    this.#saving = saving
    this.#told(saving)
  }
}

const PRIVATE: Saving = { kind: 'not-saved', reason: 'private', message: 'this browser keeps nothing' }
const OUTDATED: Saving = { kind: 'not-saved', reason: 'failed', message: 'a newer version of this program owns the database' }

function failure(problem: unknown): Saving {
  const message = problem instanceof Error ? problem.message : String(problem)
  const full = problem instanceof DOMException && problem.name === 'QuotaExceededError'
  return { kind: 'not-saved', reason: full ? 'full' : 'failed', message }
}

/** `strict`: on the disk before it counts as done, where the browser offers that. */
async function writeAll(database: Database, writes: readonly Write[]): Promise<void> {
  const transaction = database.transaction(['changes', 'cards', 'photos'], 'readwrite', { durability: 'strict' })
  try {
    const puts = writes.flatMap(({ changes = [], card, photo, thrown }): Promise<unknown>[] => [
      ...changes.map(({ door, hash, bytes }) => transaction.objectStore('changes').put({ door, hash, ...sealed(bytes) })),
      ...(card ? [transaction.objectStore('cards').put(card)] : []),
      ...(thrown
        ? [
            transaction.objectStore('changes').delete(IDBKeyRange.bound([thrown], [thrown, []])), // every hash is less than a list
            transaction.objectStore('cards').delete(thrown),
          ]
        : []),
      ...(photo ? [transaction.objectStore('photos').put(sealed(photo.bytes), photo.id)] : []),
    ])
    // at once, not after the last answer: a page that goes away has then asked for all that it had to
    transaction.commit()
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
