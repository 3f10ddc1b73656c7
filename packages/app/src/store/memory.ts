import type { DoorFile } from '@sillsight/document'
import type { DoorId, DoorSnapshot, Doors, OpenDoor } from './contract.ts'

/** A store that keeps doors until the page is closed: for tests of screens, where storage is not what is looked at. */
export function memoryDoors(): Pick<Doors, 'open' | 'make' | 'cards' | 'subscribe'> {
  const doors = new Map<DoorId, OpenDoor>()
  return {
    cards: () => [],
    subscribe: () => () => {},
    open: async (id) => doors.get(id),
    make: async (file) => {
      const id = String(doors.size + 1) as DoorId
      const door = memoryDoor(id, file)
      doors.set(id, door)
      return door
    },
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
