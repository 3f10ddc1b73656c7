import { parseDocument, toDoor } from '@sillsight/document'
import { describe, expect, it } from 'vitest'
import type { Draft } from '../store/contract.ts'
import { gripsOf, move } from './moving.ts'

const file = {
  sillsight: 1,
  survey: {
    opening: { width_mm: 3000, height_mm: 2500 },
    obstacles: [{ id: 'post', shape: 'post', x_mm: 200, y_mm: -500, radius_mm: 60, from_mm: 0, to_mm: 1000 }],
  },
  sensors: [
    { id: 'short', use: 'demo-header-scanner', side: 'b', mountingHeight_mm: 2500, offset_mm: 150 },
    { id: 'long', use: 'demo-header-scanner', pose: { x_mm: 2900, y_mm: 100, z_mm: 2400 } },
  ],
  zones: [{ id: 'z', purpose: 'presence-at-leaf', xMin_mm: 0, xMax_mm: 3000, yMin_mm: -1000, yMax_mm: 0 }],
}

function doorOf(draft: unknown) {
  const parsed = parseDocument(JSON.stringify(draft))
  if (!parsed.ok) throw new Error(`the file must be a door, got ${JSON.stringify(parsed.issues)}`)
  return toDoor(parsed.document, parsed.catalogue)
}

describe('what is taken hold of', () => {
  it('moves in the judged door by as much as the hand moved it, in every projection, and nothing else moves', () => {
    for (const projection of ['plan', 'elevation', 'section'] as const) {
      const before = gripsOf(doorOf(file), { projection, zone: 'z' })
      expect(before.length).toBeGreaterThan(1)
      for (const grip of before) {
        const by = { u_mm: grip.along ? 40 : 0, v_mm: grip.up ? -30 : 0 }
        const draft = structuredClone(file)
        expect(move(draft as unknown as Draft, grip.hold, projection, by)).toBe(true)
        const after = gripsOf(doorOf(draft), { projection, zone: 'z' })
        const moved = after.find(({ id }) => id === grip.id)
        const [u, v] = [(moved?.at.u_mm ?? Number.NaN) - grip.at.u_mm, (moved?.at.v_mm ?? Number.NaN) - grip.at.v_mm]
        expect({ id: grip.id, projection, u, v }).toEqual({ id: grip.id, projection, u: by.u_mm, v: by.v_mm })
        const sensors = (grips: typeof after) =>
          grips.filter(({ id }) => id.startsWith('sensor') && id !== grip.id).map(({ id, at }) => ({ id, at }))
        if (grip.hold.kind !== 'opening') expect(sensors(after)).toEqual(sensors(before))
      }
    }
  })
  it('leaves the edges of zones alone that are not drawn', () => {
    const ids = (zone: string | undefined) => gripsOf(doorOf(file), { projection: 'plan', zone }).map(({ id }) => id)
    expect(ids('z').filter((id) => id.startsWith('zone/'))).toHaveLength(4)
    expect(ids(undefined).filter((id) => id.startsWith('zone/'))).toEqual([])
  })
  it('stays as it is where the file does not hold its place', () => {
    const draft = structuredClone(file)
    expect(move(draft as unknown as Draft, { kind: 'obstacle', id: 'of-one-state-only' }, 'plan', { u_mm: 10, v_mm: 0 })).toBe(false)
    expect(draft).toEqual(file)
  })
  it('never shrinks an opening to nothing', () => {
    const draft = structuredClone(file)
    move(draft as unknown as Draft, { kind: 'opening', side: 'width' }, 'elevation', { u_mm: -1e6, v_mm: 0 })
    expect(draft.survey.opening.width_mm).toBe(100)
  })
})
