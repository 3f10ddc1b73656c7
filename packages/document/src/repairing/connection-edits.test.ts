import { type Proposal, partsFrom, synthesis, type Wiring } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { toDoor } from '../door/resolve.ts'
import { firstWiring } from '../first-wiring.ts'
import { parseDocument } from '../parse.ts'
import type { DoorFile } from '../schema/door-file.ts'
import { connectionEdits } from './connection-edits.ts'
import { applyEdits } from './repair-edits.ts'
import { sameWiring } from './same-door.ts'

function read(file: unknown): { readonly document: DoorFile; readonly wiring: Wiring } {
  const parsed = parseDocument(JSON.stringify(file))
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  const { wiring } = toDoor(parsed.document, parsed.catalogue)
  if (!wiring) throw new Error('the door must have a wiring')
  return { document: parsed.document, wiring }
}

const place = { side: 'a', mountingHeight_mm: 2300, offset_mm: 200, x_mm: 1400, tilt_deg: 3 }

function doorWith(ids: readonly string[], change: (wiring: ReturnType<typeof firstWiring>) => object = (wiring) => wiring) {
  return read({
    sillsight: 1,
    survey: { opening: { width_mm: 3000, height_mm: 2500 } },
    sensors: ids.map((id) => ({ ...place, id, use: 'demo-header-scanner' })),
    wiring: change(firstWiring(ids)),
  })
}

function found(wiring: Wiring): readonly Proposal[] {
  const search = synthesis(partsFrom(wiring), { mostTried: 1000, mostJudged: 80, most: 60 })
  let step = search.next()
  while (!step.done) step = search.next()
  return step.value.proposals
}

describe('a connection that was found, in the door file', () => {
  it('makes the wiring that was judged, with links, joints and without the test of the control where that is not used', () => {
    const { document, wiring } = doorWith(['one', 'two'], (usual) => ({ ...usual, resistors: [], joints: ['box.1'] }))
    const all = found(wiring)
    expect(all.some(({ wiring: { joints } }) => joints.length > 0)).toBe(true)
    expect(all.some(({ wiring: { cables } }) => cables.some(({ length_mm }) => length_mm === 0))).toBe(true)
    for (const each of all) {
      const changed = structuredClone(document)
      const edits = connectionEdits(document, each)
      if (!edits) throw new Error('the file must hold it')
      applyEdits(changed, edits)
      const again = read(changed)
      expect(sameWiring(again.wiring, each.wiring)).toBe(true)
      expect(again.document.wiring?.control.test === undefined).toBe(each.wiring.control.test === undefined)
      expect(again.document.wiring?.control.inputs).toEqual(document.wiring?.control.inputs)
    }
  })
  it('sets outputs and inputs otherwise where that was found, and lays resistors at the end of lines', () => {
    const { document, wiring } = doorWith(['one'], (usual) => ({
      ...usual,
      handTest: { mostHidden_percent: 0.1, source: { basis: 'from memory' } },
      sensors: usual.sensors.map((sensor) => ({
        ...sensor,
        outputs: sensor.outputs.map((output) => ({ ...output, settable: 'either-way' })),
      })),
      control: {
        ...usual.control,
        inputs: usual.control.inputs.map((input) => ({ ...input, settable: 'either-way', endOfLine_ohm: 1000 })),
      },
    }))
    const all = found(wiring)
    expect(all.some(({ turned }) => turned.length > 0)).toBe(true)
    expect(all.some((each) => each.wiring.resistors.length > 0)).toBe(true)
    for (const each of all) {
      const edits = connectionEdits(document, each)
      if (!edits) throw new Error('the file must hold it')
      const changed = structuredClone(document)
      applyEdits(changed, edits)
      const again = read(changed)
      expect(sameWiring(again.wiring, each.wiring)).toBe(true)
      expect(again.document.wiring?.resistors?.length ?? 0).toBe(each.wiring.resistors.length)
    }
  })
  it('keeps the colour of a core that joins what one joined before, and takes resistors away', () => {
    const { document, wiring } = doorWith(['one'], (usual) => ({
      ...usual,
      resistors: [{ id: 'R1', from: 'one.common', to: 'one.closed-when-clear', ohm: 8200 }],
    }))
    const [best] = found({ ...wiring, resistors: [] })
    const edits = best && connectionEdits(document, best)
    if (!edits) throw new Error('the file must hold it')
    const changed = structuredClone(document)
    applyEdits(changed, edits)
    const { cables, resistors } = changed.wiring ?? { cables: [], resistors: undefined }
    expect(resistors).toBeUndefined()
    expect(cables[0]?.cores.find(({ to }) => to === 'one.plus')?.colour).toBe('BN')
  })
  it('is not offered where the file cannot hold it: a cable that would have the name of another', () => {
    const { document, wiring } = doorWith(['link1'])
    const [linked] = found(wiring).filter(({ wiring: { cables } }) => cables.some(({ id, length_mm }) => id === 'link1' && length_mm === 0))
    expect(linked && connectionEdits(document, linked)).toBeUndefined()
    expect(linked).toBeDefined()
  })
})
