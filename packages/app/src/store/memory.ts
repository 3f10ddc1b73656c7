import type { DoorFile } from '@sillsight/document'
import type { DoorCard, DoorId, DoorSnapshot, Doors, OpenDoor, StorageHealth } from './contract.ts'

/** A store that keeps doors until the page is closed: for tests of screens, where storage is not what is looked at. */
const NONE: readonly DoorCard[] = []
const HEALTH: StorageHealth = {
  persistent: 'unknown',
  used_bytes: undefined,
  free_bytes: undefined,
  low: false,
  private: true,
  newerVersion: false,
}
const EMPTY = new Uint8Array()

export function memoryDoors(): Doors {
  const doors = new Map<DoorId, OpenDoor>()
  return {
    cards: () => NONE,
    subscribe: () => () => {},
    open: async (id) => doors.get(id),
    make: async (file) => {
      const id = String(doors.size + 1) as DoorId
      const door = memoryDoor(id, file)
      doors.set(id, door)
      return door
    },
    health: () => HEALTH,
    author: () => '',
    setAuthor() {},
    copy: async (id) => id,
    putAway() {},
    read: async () => ({ ok: true, doors: [] }),
    exportDoor: async () => EMPTY,
    exportFile: async () => '',
    backup: async () => EMPTY,
    rescue: async () => undefined,
    askToPersist: async () => 'unknown',
  }
}

function memoryDoor(id: DoorId, first: DoorFile): OpenDoor {
  let snapshot: DoorSnapshot = {
    id,
    revision: 0,
    file: first,
    typed: {},
    photos: [],
    conflicts: [],
    saving: { kind: 'saved', at_ms: Date.now() },
    readOnly: undefined,
    undo: undefined,
    redo: undefined,
    onlyHere: true,
  }
  const listeners = new Set<() => void>()
  return {
    id,
    snapshot: () => snapshot,
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    edit(_deed, change) {
      const draft = structuredClone(snapshot.file)
      change(draft as never)
      snapshot = { ...snapshot, file: draft, revision: snapshot.revision + 1 }
      for (const listener of listeners) listener()
      return true
    },
    undo() {},
    redo() {},
    choose() {},
    history: () => [],
    fileAt: () => snapshot.file,
    addPhoto: async () => {},
    changePhoto() {},
    removePhoto() {},
    photoBytes: async () => undefined,
    settled: async () => {},
    close() {},
  }
}
