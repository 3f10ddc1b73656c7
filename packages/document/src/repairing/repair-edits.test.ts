import { type Pose, type RepairStep, repaired } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { exampleFile } from '../../test/example-files.ts'
import { toDoor } from '../door/resolve.ts'
import { parseDocument } from '../parse.ts'
import type { DoorFile } from '../schema/door-file.ts'
import { applyEdits, repairEdits } from './repair-edits.ts'
import { sameDoor } from './same-door.ts'

function read(file: unknown) {
  const parsed = parseDocument(JSON.stringify(file))
  if (!parsed.ok) throw new Error(parsed.issues.map(({ path, got }) => `${path}: ${got}`).join('; '))
  return { document: parsed.document, catalogue: parsed.catalogue, door: toDoor(parsed.document, parsed.catalogue) }
}

/** The file with the repair written into it, read again; it must make the door that the repair makes. */
function written(file: unknown, steps: readonly RepairStep[]): DoorFile {
  const { document, catalogue, door } = read(file)
  const edits = repairEdits(document, door, steps, catalogue)
  if (edits === undefined) throw new Error('the file must hold the repair')
  const changed = structuredClone(document)
  applyEdits(changed, edits)
  const again = read(changed)
  expect(sameDoor(again.door, repaired(door, steps))).toBe(true)
  return again.document
}

const move = (part: keyof Pose, from: number, to: number): RepairStep => ({ kind: 'move-sensor', sensor: 'one', part, from, to })

const shortForm = {
  sillsight: 1,
  survey: { opening: { width_mm: 3000, height_mm: 2500 } },
  sensors: [{ id: 'one', use: 'demo-header-scanner', side: 'b', mountingHeight_mm: 2300, offset_mm: 200, x_mm: 1400, tilt_deg: 3 }],
}

describe('a repair in the door file', () => {
  it('keeps the short form of a pose where it can say it, with offsets from the leaf on the own side', () => {
    expect(written(shortForm, [move('z_mm', 2300, 2400)]).sensors?.[0]).toMatchObject({ mountingHeight_mm: 2400, offset_mm: 200 })
    expect(written(shortForm, [move('y_mm', -200, -250)]).sensors?.[0]).toMatchObject({ offset_mm: 250, side: 'b' })
    expect(written(shortForm, [move('x_mm', 1400, 1500)]).sensors?.[0]).toMatchObject({ x_mm: 1500 })
    expect(written(shortForm, [move('tilt_rad', Math.PI / 60, Math.PI / 90)]).sensors?.[0]).toMatchObject({ tilt_deg: 2 })
  })

  it('goes over to the long form where the short one has no word for a turn', () => {
    const [sensor] = written(shortForm, [move('roll_rad', 0, Math.PI / 180)]).sensors ?? []
    expect(sensor?.pose).toEqual({ x_mm: 1400, y_mm: -200, z_mm: 2300, yaw_deg: 180, tilt_deg: 3, roll_deg: 1 })
    expect(sensor).not.toHaveProperty('side')
  })

  it('copies the fields of a library into the file when one of them is set', () => {
    const { door } = read(shortForm)
    const [sensor] = door.sensors
    const field = sensor?.kind === 'ranging' ? sensor.fields[0] : undefined
    const set: RepairStep = { kind: 'set-field', sensor: 'one', field: field?.id ?? '', part: 'clearance_mm', from: 0, to: 35 }
    expect(written(shortForm, [set]).sensors?.[0]?.fields?.[0]).toMatchObject({ id: field?.id, clearance_mm: 35 })
  })

  it('adds a sensor with the values of the other one, and several steps one after the other', () => {
    const pose = { x_mm: 1600, y_mm: -200, z_mm: 2300, yaw_rad: Math.PI, tilt_rad: Math.PI / 60, roll_rad: 0 }
    const steps: RepairStep[] = [
      { kind: 'add-sensor', like: 'one', id: 'one-2', pose },
      { kind: 'move-sensor', sensor: 'one-2', part: 'z_mm', from: 2300, to: 2250 },
    ]
    const file = written(shortForm, steps)
    expect(file.sensors?.length).toBe(2)
    expect(file.sensors?.[1]).toMatchObject({ id: 'one-2', use: 'demo-header-scanner', pose: { z_mm: 2250, yaw_deg: 180 } })
  })

  it('sets outputs of several sensors, copied out of a library where they have to be, and the drive in its own units', () => {
    const sensors = [shortForm.sensors[0], { ...shortForm.sensors[0], id: 'two', side: 'a' }]
    const file = { ...shortForm, survey: { ...shortForm.survey, drive: { closeSpeed_m_per_s: 0.5 } }, sensors }
    const { door } = read(file)
    const fields = door.sensors.flatMap((sensor) =>
      sensor.kind === 'ranging' ? sensor.fields.map(({ id }) => ({ sensor: sensor.id, field: id })) : [],
    )
    expect(fields.length).toBeGreaterThan(1)
    const after = written(file, [
      { kind: 'set-outputs', part: 'response_s', fields, from: 0.2, to: 0.06 },
      { kind: 'set-drive', part: 'closeSpeed_mm_per_s', from: 500, to: 430 },
    ])
    expect(after.sensors?.flatMap((sensor) => sensor.fields?.map(({ response_s }) => response_s))).toEqual(fields.map(() => 0.06))
    expect(after.survey.drive?.closeSpeed_m_per_s).toBe(0.43)
  })

  it('takes an obstacle away, out of the states that name it too', () => {
    const file = written(exampleFile(), [{ kind: 'remove-obstacle', obstacle: 'bollard' }])
    expect(file.survey.obstacles?.map(({ id }) => id)).toEqual(['rack'])
    expect(file.survey.states?.[1]?.removeObstacles).toEqual([])
  })

  it('is undefined where the file cannot hold it: an obstacle that only one state has, one that the survey implies', () => {
    const { document, catalogue, door } = read(exampleFile())
    const there = new Set(door.states.flatMap(({ obstacles }) => obstacles.map(({ id }) => id)))
    for (const obstacle of ['trailer', 'lintel']) {
      expect(there.has(obstacle)).toBe(true)
      expect(repairEdits(document, door, [{ kind: 'remove-obstacle', obstacle }], catalogue)).toBeUndefined()
    }
  })
})

describe('two doors are the same', () => {
  const { door } = read(exampleFile())
  it('where they differ by what binary leaves, in names of sensors, or in what was assumed', () => {
    const opening = { ...door.opening, width_mm: door.opening.width_mm + 1e-9 }
    expect(
      sameDoor(door, { ...door, opening, assumed: ['x'], sensors: door.sensors.map((sensor) => ({ ...sensor, name: 'other' })) }),
    ).toBe(true)
  })
  it('and are not where a measure, an id, or a number of things differs', () => {
    expect(sameDoor(door, { ...door, opening: { ...door.opening, width_mm: door.opening.width_mm + 0.01 } })).toBe(false)
    expect(sameDoor(door, { ...door, sensors: door.sensors.map((sensor) => ({ ...sensor, id: 'other' })) })).toBe(false)
    expect(sameDoor(door, { ...door, zones: door.zones.slice(1) })).toBe(false)
  })
})

describe('a repair that the file cannot hold as it was judged', () => {
  it('is refused: here the door was not made from the file', () => {
    const { document, catalogue, door } = read(shortForm)
    const elsewhere = { ...door, opening: { ...door.opening, width_mm: door.opening.width_mm + 100 } }
    expect(repairEdits(document, elsewhere, [move('z_mm', 2300, 2400)], catalogue)).toBeUndefined()
  })
})
