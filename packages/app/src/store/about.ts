import { type Database, FORMAT } from './database.ts'

/** The format of a database, 0 where nobody said it yet, and who edits on this device, as far as it knows. */
export async function aboutOf(database: Database) {
  const { store, done } = database.transaction('about')
  const [format, id, name]: unknown[] = await Promise.all(['format', 'author', 'authorName'].map((key) => store.get(key)))
  await done
  return {
    format: typeof format === 'number' ? format : 0,
    id: typeof id === 'string' ? id : undefined,
    name: typeof name === 'string' ? name : '',
  }
}

/**
 * Keeps format and author, whom another tab may just have named; never over a newer format.
 *
 * @returns the author's id; undefined where a device that is full refuses both: doors are made all the same, and when the first finds room, so do these
 */
export async function keptAbout(database: Database, fresh: string): Promise<string | undefined> {
  const { store, done } = database.transaction('about', 'readwrite')
  try {
    const [format, found]: unknown[] = await Promise.all([store.get('format'), store.get('author')])
    const id = typeof found === 'string' ? found : fresh
    if (!(Number(format ?? 0) > FORMAT)) await Promise.all([store.put(id, 'author'), store.put(FORMAT, 'format')])
    await done
    return id
  } catch {
    done.catch(() => undefined) // the same failure
    return undefined
  }
}
