import type { StorageHealth } from './contract.ts'

/** Said before there is no room left: about a hundred photos. */
const LOW_BYTES = 50_000_000

export const NOTHING_KNOWN: StorageHealth = {
  persistent: 'unknown',
  used_bytes: undefined,
  free_bytes: undefined,
  low: false,
  private: false,
  newerVersion: false,
}

/** How much room there is, where that is news. */
export async function roomNow(known: StorageHealth): Promise<Partial<StorageHealth> | undefined> {
  const estimate = await navigator.storage?.estimate?.().catch(() => undefined)
  const persisted = await navigator.storage?.persisted?.().catch(() => undefined)
  if (!estimate) return undefined
  const { usage, quota } = estimate
  const free_bytes = quota !== undefined && usage !== undefined ? quota - usage : undefined
  const low = free_bytes !== undefined && free_bytes < LOW_BYTES
  const persistent = persisted === true ? 'granted' : known.persistent
  if (low === known.low && persistent === known.persistent && known.free_bytes !== undefined) return undefined
  return { used_bytes: usage, free_bytes, low, persistent }
}

/** Asks the browser not to make room by throwing the doors away. */
export async function askedToPersist(): Promise<StorageHealth['persistent']> {
  const granted = await navigator.storage?.persist?.().catch(() => undefined)
  return granted === undefined ? 'unknown' : granted ? 'granted' : 'refused'
}
