import type { DoorFile } from '@sillsight/document'
import { type Automerge, automerge } from './automerge.ts'
import { looksLikeBackup, readBackup, writeBackup } from './backup.ts'
import type { Deed, DoorCard, DoorId, Doors, ImportResult, StorageHealth } from './contract.ts'
import { type CardRecord, type Database, FORMAT, openDatabase } from './database.ts'
import { type Author, type DoorDoc, type DoorDocument, newDocument } from './door-document.ts'
import { inspected } from './foreign.ts'
import { headsOf, type LiveDoor, liveDoor } from './open-door.ts'
import { Storage, unsealed } from './storage.ts'

/** What tabs of one browser tell each other. */
type Told =
  | { readonly kind: 'changes'; readonly door: DoorId; readonly changes: readonly Uint8Array[] }
  | { readonly kind: 'cards' }
  | { readonly kind: 'format'; readonly format: number }

/** Said before there is no room left: about a hundred photos. */
const LOW_BYTES = 50_000_000

/**
 * The doors that this browser keeps, in a database of the given name. Answers at once with none; the list follows as soon as the database
 * is open. Other tabs hear of every change and are heard.
 */
export function openDoors(name: string): Doors {
  const listeners = new Set<() => void>()
  const live = new Map<DoorId, { readonly door: LiveDoor; users: number }>()
  const records = new Map<DoorId, CardRecord>()
  /** Without a database, the changes of this visit. */
  const unkept = new Map<DoorId, Uint8Array[]>()
  const unkeptPhotos = new Map<string, Uint8Array>()
  let cards: readonly DoorCard[] = []
  let author: Author = { id: newId(), name: '' }
  let health: StorageHealth = {
    persistent: 'unknown',
    used_bytes: undefined,
    free_bytes: undefined,
    low: false,
    private: false,
    newerVersion: false,
  }
  const channel = new BroadcastChannel(name)
  let storage: Storage

  const tell = () => {
    cards = [...records.values()]
      .map(({ heads, exportedHeads, ...card }) => ({ ...card, onlyHere: heads !== exportedHeads }))
      .sort((a, b) => b.changedAt_ms - a.changedAt_ms)
    for (const listener of listeners) listener()
  }
  const setHealth = (change: Partial<StorageHealth>) => {
    health = { ...health, ...change }
    for (const { door } of live.values()) door.refresh()
    tell()
  }
  const outdated = () => setHealth({ newerVersion: true })

  const ready = openDatabase(name, outdated).then(async (database) => {
    storage = new Storage(
      database,
      (saving) => {
        for (const { door } of live.values()) door.refresh()
        if (saving.kind !== 'saving') void look()
      },
      Date.now(),
    )
    if (!database) {
      setHealth({ private: true })
      return undefined
    }
    const found = await database.get('about', 'format')
    if (typeof found === 'number' && found > FORMAT) outdated()
    else if (found !== FORMAT) await database.put('about', FORMAT, 'format')
    channel.postMessage({ kind: 'format', format: FORMAT } satisfies Told)
    author = await authorOf(database, author)
    await readCards(database)
    void look()
    return database
  })

  const readCards = async (database: Database) => {
    records.clear()
    for (const record of await database.getAll('cards')) records.set(record.id, record)
    tell()
  }

  /** How much room there is. */
  const look = async () => {
    const estimate = await navigator.storage?.estimate?.().catch(() => undefined)
    const persisted = await navigator.storage?.persisted?.().catch(() => undefined)
    if (!estimate) return
    const { usage, quota } = estimate
    const free_bytes = quota !== undefined && usage !== undefined ? quota - usage : undefined
    const low = free_bytes !== undefined && free_bytes < LOW_BYTES
    const persistent = persisted === true ? 'granted' : health.persistent
    if (low !== health.low || persistent !== health.persistent || health.free_bytes === undefined)
      setHealth({ used_bytes: usage, free_bytes, low, persistent })
  }

  channel.onmessage = async ({ data }: MessageEvent<Told>) => {
    if (data.kind === 'format' && data.format > FORMAT) outdated()
    if (data.kind === 'changes') live.get(data.door)?.door.receive(data.changes)
    if (data.kind === 'cards') {
      const database = await ready
      if (database) await readCards(database)
    }
  }

  const writeCard = (id: DoorId, change: Partial<CardRecord>) => {
    const record = { ...emptyCard(id), ...records.get(id), ...change }
    records.set(id, record)
    storage.write({ card: record })
    void storage.settled().then(() => channel.postMessage({ kind: 'cards' } satisfies Told))
    tell()
  }

  /** At once, so that a door never counts as saved while its newest change waits to be asked for. */
  const keep = (A: Automerge, id: DoorId, doc: DoorDoc, changes: readonly Uint8Array[]) => {
    const record: CardRecord = {
      ...emptyCard(id),
      ...records.get(id),
      name: doc.file.name ?? '',
      note: doc.file.note ?? '',
      changedAt_ms: Date.now(),
      heads: headsOf(A, doc),
    }
    records.set(id, record)
    storage.write({ card: record, changes: changes.map((bytes) => ({ door: id, hash: A.decodeChange(bytes as never).hash ?? '', bytes })) })
    if (health.private) unkept.set(id, [...(unkept.get(id) ?? []), ...changes])
    channel.postMessage({ kind: 'changes', door: id, changes } satisfies Told)
    void storage.settled().then(() => channel.postMessage({ kind: 'cards' } satisfies Told))
    tell()
  }

  const photoBytes = async (id: string) => {
    const database = await ready
    return unkeptPhotos.get(id) ?? (database && unsealed(await database.get('photos', id)))
  }

  const enter = async (id: DoorId, doc: DoorDoc): Promise<LiveDoor> => {
    const A = await automerge()
    const door = liveDoor(id, doc, {
      automerge: A,
      author: () => author,
      saving: () => storage.saving,
      readOnly: () => (health.newerVersion ? 'newer-version' : undefined),
      exportedHeads: () => records.get(id)?.exportedHeads ?? '',
      onChanges: (next, changes) => keep(A, id, next, changes),
      keepPhoto: (photo, bytes) => {
        if (health.private) unkeptPhotos.set(photo, bytes)
        storage.write({ photo: { id: photo, bytes } })
      },
      photoBytes,
      settled: () => storage.settled(),
      onClosed: () => {
        const held = live.get(id)
        if (held && --held.users <= 0) live.delete(id)
      },
    })
    live.set(id, { door, users: 1 })
    return door
  }

  /** The changes of a door as they were written; undefined where one of them is not. What is spoiled is copied aside first. */
  const changesOf = async (id: DoorId): Promise<readonly Uint8Array[] | undefined> => {
    const database = await ready
    if (!database) return unkept.get(id)
    const found = await database.getAllFromIndex('changes', 'door', id)
    const whole = found.map(unsealed)
    if (whole.every((bytes) => bytes !== undefined)) return whole
    for (const [i, bytes] of whole.entries())
      if (bytes === undefined) await database.put('damaged', { found: found[i], at_ms: Date.now() }).catch(() => undefined)
    return undefined
  }

  const load = async (id: DoorId): Promise<LiveDoor | undefined> => {
    const changes = await changesOf(id)
    if (changes?.length === 0) return undefined
    const A = await automerge()
    const doc = changes && A.applyChanges(A.init<DoorDocument>(), [...changes])[0]
    // a change that rests on one that is gone waits for it for ever: the document is not whole
    if (!doc?.file || A.getMissingDeps(doc, []).length > 0) {
      if (records.has(id)) writeCard(id, { damaged: true })
      return undefined
    }
    return enter(id, doc)
  }

  const take = async (id: DoorId, changes: readonly Uint8Array[], away: boolean) => {
    const A = await automerge()
    const held = live.get(id)?.door
    const before = held ? held.document() : A.applyChanges(A.init<DoorDocument>(), [...((await changesOf(id)) ?? [])])[0]
    const [after] = A.applyChanges(A.clone(before), [...changes])
    const known = records.has(id)
    if (headsOf(A, before) === headsOf(A, after)) return { id, how: 'same' as const }
    keep(A, id, after, A.getChanges(before, after))
    held?.receive(changes)
    if (!known) writeCard(id, { away })
    return { id, how: known ? ('merged' as const) : ('new' as const) }
  }

  const photosOf = async (docs: readonly DoorDoc[]) => {
    const ids = new Set(docs.flatMap(({ photos }) => Object.keys(photos)))
    const found = await Promise.all([...ids].map(async (id) => ({ id, bytes: await photoBytes(id) })))
    return found.flatMap(({ id, bytes }) => (bytes ? [{ id, bytes }] : []))
  }

  const gathered = async (ids: readonly DoorId[]) => {
    const A = await automerge()
    await storage.settled()
    const doors = await Promise.all(
      ids.map(async (id) => ({ id, away: records.get(id)?.away ?? false, changes: (await changesOf(id)) ?? [] })),
    )
    const whole = doors.filter(({ changes }) => changes.length > 0)
    const docs = whole.map(({ changes }) => A.applyChanges(A.init<DoorDocument>(), [...changes])[0])
    const bytes = writeBackup({ doors: whole, photos: await photosOf(docs) })
    const exported = () => {
      for (const [i, { id }] of whole.entries()) writeCard(id, { exportedHeads: docs[i] ? headsOf(A, docs[i]) : '' })
    }
    return { bytes, exported }
  }

  const make = async (file: DoorFile, deed: Deed) => {
    await ready
    const A = await automerge()
    const id = newId() as DoorId
    const doc = newDocument(A, file, deed, author, Date.now())
    const door = await enter(id, doc)
    keep(A, id, doc, A.getAllChanges(doc))
    return door
  }

  return {
    cards: () => cards,
    health: () => health,
    author: () => author.name,
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    setAuthor(given) {
      author = { ...author, name: given.trim().slice(0, 100) }
      void ready.then((database) => database?.put('about', author.name, 'authorName'))
      tell()
    },
    async open(id) {
      await ready
      const held = live.get(id)
      if (!held) return load(id)
      held.users++
      return held.door
    },
    make,
    async copy(id, called) {
      const door = live.get(id)?.door ?? (await load(id))
      if (!door) throw new Error(`a door must be there to be copied, got ${id}`)
      const made = await make({ ...door.document().file, name: called }, { deed: 'copied', name: called })
      made.close()
      return made.id
    },
    putAway: (id, away) => writeCard(id, { away }),
    async read(bytes): Promise<ImportResult> {
      await ready
      if (!looksLikeBackup(bytes)) {
        const { parseDocument } = await import('@sillsight/document')
        const parsed = parseDocument(new TextDecoder().decode(bytes))
        if (!parsed.ok) return { ok: false, issues: parsed.issues }
        const door = await make(parsed.document, { deed: 'imported', name: parsed.document.name ?? '' })
        door.close()
        await storage.settled()
        return { ok: true, doors: [{ id: door.id, how: 'new' }] }
      }
      const backup = readBackup(bytes)
      if (!backup.ok) return backup
      const { doors, photos } = backup.backup
      for (const [i, { changes }] of doors.entries()) {
        const found = await inspected(changes)
        if (!found.ok) return { ok: false, issues: [{ code: 'damaged', path: `doors/${i}`, expected: 'a whole door', got: found.message }] }
      }
      for (const photo of photos) storage.write({ photo })
      const taken = []
      for (const { id, changes, away } of doors) taken.push(await take(id, changes, away))
      await storage.settled()
      return { ok: true, doors: taken }
    },
    async exportDoor(id) {
      const { bytes, exported } = await gathered([id])
      exported()
      return bytes
    },
    async exportFile(id) {
      const door = live.get(id)?.door ?? (await load(id))
      if (!door) throw new Error(`a door must be there to be exported, got ${id}`)
      const A = await automerge()
      writeCard(id, { exportedHeads: headsOf(A, door.document()) })
      const { serialise } = await import('@sillsight/document')
      return serialise(JSON.parse(JSON.stringify(door.document().file)))
    },
    async backup() {
      const { bytes, exported } = await gathered([...records.keys()])
      exported()
      return bytes
    },
    async rescue() {
      const database = await ready
      if (!database) return undefined
      const readable = []
      for (const id of await database.getAllKeys('cards')) {
        const found = (await database.getAllFromIndex('changes', 'door', id)).map(unsealed).filter((bytes) => bytes !== undefined)
        if (found.length > 0 && (await inspected(found)).ok) readable.push({ id: id as DoorId, away: false, changes: found })
      }
      return readable.length > 0 ? writeBackup({ doors: readable, photos: [] }) : undefined
    },
    async askToPersist() {
      const granted = await navigator.storage?.persist?.().catch(() => undefined)
      const persistent = granted === undefined ? 'unknown' : granted ? 'granted' : 'refused'
      setHealth({ persistent })
      return persistent
    },
  }
}

function emptyCard(id: DoorId): CardRecord {
  return { id, name: '', note: '', changedAt_ms: Date.now(), away: false, damaged: false, heads: '', exportedHeads: '' }
}

/** Made once for each browser: whose edits undo takes back. */
async function authorOf(database: Database, fresh: Author): Promise<Author> {
  const [id, name] = await Promise.all([database.get('about', 'author'), database.get('about', 'authorName')])
  if (typeof id === 'string') return { id, name: typeof name === 'string' ? name : '' }
  await database.put('about', fresh.id, 'author')
  return fresh
}

/** 128 random bits in hexadecimal digits; `randomUUID` is there only where the page came by https. */
function newId(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, '0')).join('')
}
