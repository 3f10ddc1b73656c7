import { aboutOf, keptAbout } from './about.ts'
import { type Automerge, automerge } from './automerge.ts'
import { looksLikeBackup, readBackup, writeBackup } from './backup.ts'
import { isBegunPlace } from './begun.ts'
import { withBoth } from './conflicts.ts'
import type { Deed, DoorCard, DoorId, Doors, ImportResult, OpenDoor, StorageHealth } from './contract.ts'
import { type CardRecord, cardsOf, type Database, emptyCard, FORMAT, OF_NEWER, openDatabase, unsealed } from './database.ts'
import { type Author, type DoorDoc, type DoorDocument, newDocument } from './door-document.ts'
import { inspected } from './foreign.ts'
import { askedToPersist, NOTHING_KNOWN, roomNow } from './health.ts'
import { newId } from './new-id.ts'
import { headsOf, type LiveDoor, listed, liveDoor } from './open-door.ts'
import { OtherTabs, type Told } from './other-tabs.ts'
import { pack } from './pack.ts'
import { Storage } from './storage.ts'
import { lacks, mend, setAside, storedDoor } from './stored.ts'
import { asHandedOut } from './twins.ts'

/** A door that somebody works on, and how many. */
interface Live {
  readonly door: LiveDoor
  users: number
}

/**
 * The doors that this browser keeps, in a database of the given name. Answers at once with none; the list follows as soon as the database
 * is open. Other tabs hear of every change and are heard.
 */
export function openDoors(name: string): Doors {
  const listeners = new Set<() => void>()
  const live = new Map<DoorId, Live>()
  /** Doors that are being loaded: whoever asks meanwhile gets the same one. */
  const opening = new Map<DoorId, Promise<Live | undefined>>()
  const records = new Map<DoorId, CardRecord>()
  const thrown = new Set<DoorId>()
  let cards: readonly DoorCard[] = []
  let author: Author = { id: newId(), name: '' }
  let named: string | undefined
  let health = NOTHING_KNOWN
  let storage: Storage

  const tell = () => {
    cards = cardsOf([...records.values()])
    for (const listener of listeners) listener()
  }
  const setHealth = (change: Partial<StorageHealth>) => {
    health = { ...health, ...change }
    for (const { door } of live.values()) door.refresh()
    tell()
  }
  const outdated = () => setHealth({ newerVersion: true })
  let isAboutKept = false
  const keepAbout = async (database: Database) => {
    const id = await keptAbout(database, author.id)
    isAboutKept = id !== undefined
    author = { ...author, id: id ?? author.id }
  }

  const ready = openDatabase(name, outdated).then(async (database) => {
    storage = new Storage(
      database,
      (saving) => {
        for (const { door } of live.values()) door.refresh()
        if (saving.kind !== 'saving') void look()
        if (saving.kind === 'saved' && database && !isAboutKept && !health.newerVersion) void keepAbout(database)
      },
      () => health.newerVersion,
      Date.now(),
    )
    if (!database) {
      setHealth({ private: !health.newerVersion })
      return undefined
    }
    const kept = await aboutOf(database)
    if (kept.format > FORMAT) outdated()
    tabs.enter(FORMAT)
    author = { id: kept.id ?? author.id, name: named ?? kept.name }
    isAboutKept = kept.id !== undefined && kept.format === FORMAT
    if (!isAboutKept && !health.newerVersion) await keepAbout(database)
    await readCards(database)
    void look()
    return database
  })

  const readCards = async (database: Database) => {
    const found = storage.cardsAfter(await database.getAll('cards'))
    records.clear()
    for (const record of found) records.set(record.id, { ...record, ...live.get(record.id)?.door.listed() })
    tell()
  }

  const look = async () => {
    const room = await roomNow(health)
    if (room) setHealth(room)
  }

  /** What other tabs wrote comes into a door that is open here, and into its line of the list. */
  const bringIn = (door: LiveDoor, changes: readonly Uint8Array[]) => {
    door.receive(changes)
    const record = records.get(door.id)
    if (record) records.set(door.id, { ...record, ...door.listed() })
    tell()
  }

  const hear = async (told: Told) => {
    if (told.kind === 'format' && told.format > FORMAT) outdated()
    if (told.kind === 'changes') {
      const held = live.get(told.door) ?? (await opening.get(told.door))
      if (held) bringIn(held.door, told.changes)
      if (held && !(await isComplete(held.door))) bringIn(held.door, (await stored(told.door)).changes())
    }
    if (told.kind === 'thrown') await keepWhole(told.door)
    if (told.kind === 'cards' || told.kind === 'thrown') {
      const database = await ready
      if (database) await readCards(database)
    }
  }

  /** What a tab that has gone wrote or threw away, and could not tell any more. */
  const lookAgain = async () => {
    for (const id of [...live.keys(), ...opening.keys()]) {
      const held = live.get(id) ?? (await opening.get(id))
      const found = await stored(id)
      if (held) bringIn(held.door, found.changes())
      if (!found.whole && !health.newerVersion) await keepWhole(id)
    }
    const database = await ready
    if (database) await readCards(database)
  }

  const tabs = new OtherTabs(name, hear, lookAgain)

  const writeCard = (id: DoorId, change: Partial<CardRecord>) => {
    const record = { ...emptyCard(id), ...records.get(id), ...change }
    records.set(id, record)
    if (!health.newerVersion) storage.write({ card: record, written: () => tabs.tell({ kind: 'cards' }) })
    tell()
  }

  /**
   * At once, so that a door never counts as saved while its newest change waits to be asked for. Other tabs hear of a change only when it
   * is in the database: what they write next rests on it, and must not rest on what may yet be lost.
   */
  const keep = (A: Automerge, id: DoorId, doc: DoorDoc, changes: readonly Uint8Array[]) => {
    if (thrown.has(id)) return // a field on its closing screen gave its value
    const record: CardRecord = {
      ...emptyCard(id),
      ...records.get(id),
      ...listed(A, doc),
      changedAt_ms: Date.now(),
      damaged: false,
    }
    records.set(id, record)
    storage.write({
      card: record,
      changes: changes.map((bytes) => ({ door: id, hash: A.decodeChange(bytes as never).hash ?? '', bytes })),
      written: () => {
        tabs.tell({ kind: 'changes', door: id, changes })
        tabs.tell({ kind: 'cards' })
      },
    })
    tell()
  }

  /** A door that another tab threw away while somebody works on it here stays, with all of its history. */
  const keepWhole = async (id: DoorId) => {
    const [A] = await Promise.all([automerge(), ready, opening.get(id)])
    const doc = live.get(id)?.door.document()
    if (doc) keep(A, id, doc, A.getAllChanges(doc))
    await storage.settled()
  }

  const photoBytes = async (id: string) => {
    const database = await ready
    return storage.waitingPhoto(id) ?? (database && unsealed(await database.get('photos', id)))
  }

  const enter = (A: Automerge, id: DoorId, doc: DoorDoc): Live => {
    const door: LiveDoor = liveDoor(id, doc, {
      automerge: A,
      author: () => author,
      saving: () => storage.saving,
      readOnly: () => (health.newerVersion ? 'newer-version' : undefined),
      exportedHeads: () => records.get(id)?.exportedHeads ?? '',
      onChanges(next, changes) {
        keep(A, id, next, changes)
        const now = live.get(id)?.door // another one if this was closed, and a field on its screen gave its value only then
        if (now !== door) now?.receive(changes)
      },
      keepPhoto: (photo, bytes) => storage.write({ photo: { id: photo, bytes } }),
      forgetPhoto: (photo) => storage.forgetPhoto(photo),
      photoBytes,
      settled: () => storage.settled(),
      onClosed: () => {
        if (--held.users <= 0 && live.get(id) === held) live.delete(id)
      },
    })
    const held: Live = { door, users: 0 }
    live.set(id, held)
    return held
  }

  /** What there is of a door. Where it is not whole, its card says so, and what is spoiled is copied aside. */
  const stored = async (id: DoorId) => {
    const [database, A] = await Promise.all([ready, automerge()])
    const found = await storedDoor(A, database, id, records.get(id)?.heads ?? '', () => storage.waiting(id))
    const isGone = !found.whole && database && !(await database.get('cards', id)) // another tab threw it away, and could not tell
    if (isGone && !live.has(id)) await readCards(database)
    if (found.whole || isGone || !records.has(id)) return found
    if (database && !health.newerVersion) await setAside(database, found.spoiled).catch(() => undefined)
    if (!records.get(id)?.damaged) writeCard(id, { damaged: true })
    return found
  }

  /** Lists a door as it was read; what was written or thrown away meanwhile stays as it is listed. */
  const list = (A: Automerge, id: DoorId, doc: DoorDoc, more: Partial<CardRecord> = {}) => {
    const card = records.get(id)
    if (card) writeCard(id, { ...(lacks(A, doc, card.heads) ? {} : listed(A, doc)), ...more })
  }

  const isComplete = async (door: LiveDoor) => (await automerge()).getMissingDeps(door.document(), []).length === 0

  const load = async (id: DoorId): Promise<Live | undefined> => {
    const [database, { doc, whole, packing }] = await Promise.all([ready, stored(id)])
    if (!doc || !whole) return undefined
    const A = await automerge()
    // two tabs that wrote at the same time each listed the door without what the other had written
    if (headsOf(A, doc) !== records.get(id)?.heads) list(A, id, doc)
    // nobody waits for it, and where it fails all is as it was: the next opening tries again
    if (database && packing && !health.newerVersion) void pack(database, packing).catch(() => undefined)
    return enter(A, id, doc)
  }

  const open = async (id: DoorId): Promise<LiveDoor | undefined> => {
    await ready
    thrown.delete(id)
    if (!live.has(id) && !opening.has(id))
      opening.set(
        id,
        load(id).finally(() => opening.delete(id)),
      )
    const held = live.get(id) ?? (await opening.get(id))
    if (!held) return undefined
    held.users++
    live.set(id, held) // somebody else may have closed it meanwhile
    return held.door
  }

  const mustOpen = async (id: DoorId, purpose: string): Promise<LiveDoor> => {
    const door = await open(id)
    if (!door) throw new Error(`a door must be there to be ${purpose}, got ${id}`)
    return door
  }

  /** Brings foreign changes in, which were inspected. A damaged door is whole again afterwards: what did not fit was moved aside. */
  const take = async (id: DoorId, changes: readonly Uint8Array[], away: boolean) => {
    thrown.delete(id)
    const [database, A] = await Promise.all([ready, automerge()])
    const known = records.has(id)
    const door = (live.get(id) ?? (await opening.get(id)))?.door
    const found = door ? undefined : await stored(id)
    const before = door?.document() ?? A.applyChanges(A.init<DoorDocument>(), [...(found?.changes() ?? [])])[0]
    const broken = known && found?.whole === false
    const [after] = A.applyChanges(A.clone(before), [...changes])
    if (headsOf(A, before) === headsOf(A, after) && !broken) return { id, how: 'same' as const }
    keep(A, id, after, A.getChanges(before, after))
    live.get(id)?.door.receive(changes)
    if (!known) writeCard(id, { away })
    if (broken && database) {
      await storage.settled()
      const parts = new Set(A.getChangesMetaSince(after, []).map(({ hash }) => hash))
      if (storage.saving.kind === 'saved') await mend(database, id, (hash) => parts.has(hash))
    }
    return { id, how: known ? ('merged' as const) : ('new' as const) }
  }

  /** Doors with history and photos; of damaged ones, what can be read. */
  const gathered = async (ids: readonly DoorId[]) => {
    const A = await automerge()
    await storage.settled()
    const found = []
    for (const id of ids) {
      const { doc, changes, whole } = await stored(id)
      if (doc) found.push({ id, doc, changes: changes(), whole, away: records.get(id)?.away ?? false })
    }
    const pictures = [...new Set(found.flatMap(({ doc }) => Object.keys(doc.photos)))]
    const photos = await Promise.all(pictures.map(async (photo) => ({ id: photo, bytes: await photoBytes(photo) })))
    const bytes = writeBackup({
      doors: found.map(({ id, changes, away }) => ({ id, changes, away })),
      photos: photos.flatMap(({ id, bytes }) => (bytes ? [{ id, bytes }] : [])),
    })
    for (const { id, doc, whole } of found) if (whole) list(A, id, doc, { exportedHeads: headsOf(A, doc) })
    return { bytes, count: found.length }
  }

  const made = async (first: Omit<DoorDocument, 'photos'>, deed: Deed): Promise<OpenDoor> => {
    await ready
    const A = await automerge()
    const id = newId() as DoorId
    const doc = newDocument(A, first, deed, author, Date.now())
    const held = enter(A, id, doc)
    held.users++
    keep(A, id, doc, A.getAllChanges(doc))
    return held.door
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
      if (health.newerVersion) return
      named = given.trim().slice(0, 100)
      author = { ...author, name: named }
      void ready.then((database) => database?.put('about', author.name, 'authorName')).catch(() => undefined)
      tell()
    },
    open,
    make: (file, deed, typed = {}) => made({ file, typed }, deed),
    async copy(id, called) {
      const door = await mustOpen(id, 'copied')
      const { photos, ...kept } = door.document()
      const copy = await made({ ...kept, file: { ...kept.file, name: called } }, { deed: 'copied', name: called })
      copy.close()
      door.close()
      return copy.id
    },
    putAway(id, away) {
      if (!health.newerVersion) writeCard(id, { away })
    },
    async throwAway(id) {
      await ready
      if (health.newerVersion) return
      thrown.add(id)
      records.delete(id)
      storage.write({ thrown: id, written: () => tabs.tell({ kind: 'thrown', door: id }) })
      tell()
      await storage.settled()
    },
    async read(bytes): Promise<ImportResult> {
      await ready
      if (health.newerVersion) return OF_NEWER
      if (!looksLikeBackup(bytes)) {
        const { parseDocument } = await import('@sillsight/document')
        const parsed = parseDocument(new TextDecoder().decode(bytes))
        if (!parsed.ok) return { ok: false, issues: parsed.issues }
        const door = await made({ file: parsed.document, typed: {} }, { deed: 'imported', name: parsed.document.name ?? '' })
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
      return (await gathered([id])).bytes
    },
    async exportFile(id) {
      const door = await mustOpen(id, 'exported')
      door.close()
      const card = door.listed()
      // what is only begun is not in the door file: it is on this device alone until a backup holds it
      if (!Object.keys(door.document()).some(isBegunPlace)) writeCard(id, { ...card, exportedHeads: card.heads })
      const { serialise } = await import('@sillsight/document')
      return serialise(JSON.parse(JSON.stringify(asHandedOut(withBoth(door.snapshot().file, door.snapshot().conflicts)))))
    },
    async backup() {
      return (await gathered([...records.keys()])).bytes
    },
    async rescue() {
      await ready
      const { bytes, count } = await gathered([...records.keys()])
      return count > 0 ? bytes : undefined
    },
    async askToPersist() {
      const persistent = await askedToPersist()
      setHealth({ persistent })
      return persistent
    },
  }
}
