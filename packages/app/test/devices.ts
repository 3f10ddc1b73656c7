import * as A from '@automerge/automerge'
import type { DoorFile } from '@sillsight/document'
import type { DoorId, OpenDoor } from '../src/store/contract.ts'
import { newDocument } from '../src/store/door-document.ts'
import { type LiveDoor, liveDoor } from '../src/store/open-door.ts'

function device(doc: ReturnType<typeof newDocument>, name: string): LiveDoor {
  const door = liveDoor('0123456789abcdef' as DoorId, A.clone(doc), {
    automerge: A as never,
    author: () => ({ id: name, name }),
    saving: () => ({ kind: 'saved', at_ms: 0 }),
    readOnly: () => undefined,
    exportedHeads: () => '',
    onChanges: () => {},
    keepPhoto: () => {},
    forgetPhoto: () => {},
    photoBytes: async () => undefined,
    settled: async () => {},
    onClosed: () => {},
  })
  return door
}

/** One door on two devices, `a` and `b`, without a database; of one name they are tabs of one device. */
export function devices(file: DoorFile, [one, two]: readonly [string, string] = ['a', 'b']): readonly [LiveDoor, LiveDoor] {
  const doc = newDocument(A as never, { file, typed: {} }, { deed: 'made' }, { id: 'a', name: 'A' }, 1)
  return [device(doc, one), device(doc, two)]
}

export function changesOf(door: LiveDoor): readonly Uint8Array[] {
  return A.getAllChanges(door.document())
}

/** By file both ways: what each had, all of it, to the other. */
export function merge([a, b]: readonly [LiveDoor, LiveDoor]): void {
  const [ofA, ofB] = [changesOf(a), changesOf(b)]
  a.receive(ofB)
  b.receive(ofA)
}

export function plain(door: OpenDoor): DoorFile {
  return JSON.parse(JSON.stringify(door.snapshot().file))
}

/** Numbers below a bound, in an order that the seed gives. */
export function dice(seed: number): (below: number) => number {
  let state = seed * 2_654_435_761
  return (below) => {
    state = (Math.imul(state ^ (state >>> 15), 2_246_822_519) + 1) | 0
    return (state >>> 1) % below
  }
}
