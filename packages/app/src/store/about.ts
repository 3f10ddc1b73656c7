import { type Database, FORMAT } from './database.ts'

/** Who edits on this device, as far as its database knows. */
export async function authorOf(database: Database): Promise<{ readonly id: string | undefined; readonly name: string }> {
  const { store, done } = database.transaction('about')
  const [id, name] = await Promise.all([store.get('author'), store.get('authorName')])
  await done
  return { id: typeof id === 'string' ? id : undefined, name: typeof name === 'string' ? name : '' }
}

/**
 * Keeps the format of the database and its author, whom another tab may just have named.
 *
 * @returns the author's id; undefined where a device that is full refuses both: doors are made all the same, and when the first finds room, so do these
 */
export async function keptAbout(database: Database, fresh: string): Promise<string | undefined> {
  const { store, done } = database.transaction('about', 'readwrite')
  try {
    const found: unknown = await store.get('author')
    const id = typeof found === 'string' ? found : fresh
    await Promise.all([store.put(id, 'author'), store.put(FORMAT, 'format')])
    await done
    return id
  } catch {
    done.catch(() => undefined) // the same failure
    return undefined
  }
}
