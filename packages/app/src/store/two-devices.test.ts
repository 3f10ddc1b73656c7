import { applyEdits, connectionEdits, type DoorFile, doorFileJsonSchema, firstWiring, parseDocument, toDoor } from '@sillsight/document'
import { partsFrom, synthesis } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { devices, dice, merge, plain } from '../../test/devices.ts'
import { freeId } from '../entry/free-id.ts'
import { pushAt, putAt, takeAt } from '../entry/places.ts'
import { withOwnIds } from '../findings/own-ids.ts'
import { newCable, newCore, newInput, newJoint, newResistor, wire } from '../screens/new-wiring.ts'
import { keepEnds, terminalsOf } from '../screens/terminals.ts'
import { withoutSensor } from '../screens/without-sensor.ts'
import { withBoth } from './conflicts.ts'
import type { Deed, Draft } from './contract.ts'
import { asHandedOut } from './twins.ts'

const scanner = (id: string | undefined, x_mm: number) => ({
  ...(id !== undefined && { id }),
  use: 'demo-header-scanner',
  side: 'a',
  mountingHeight_mm: 2450,
  offset_mm: 200,
  x_mm,
})
const first = {
  sillsight: 1,
  name: 'Two devices',
  survey: { opening: { width_mm: 3000, height_mm: 2500 }, drive: { closeSpeed_m_per_s: 0.4 } },
  sensors: [scanner(undefined, 1400), scanner('other', 900), scanner('third', 2000)],
  wiring: firstWiring(['sensor-1']),
} as unknown as DoorFile

/** Things that a door has already: lists that are there are added to, others are begun. */
const furnished = () => {
  const file = structuredClone(first) as unknown as Draft
  for (const each of ['survey/lanes', 'survey/states', 'survey/obstacles', 'zones', 'bodies', 'survey/crossings', 'survey/dangers/points'])
    NEW[each]?.(file)
  pushAt(file, 'wiring/joints', 'joint.1')
  return file as unknown as DoorFile
}

const idsAt = (draft: Draft, path: string) => {
  const list = path.split('/').reduce<unknown>((here, step) => (here as Record<string, unknown> | undefined)?.[step], draft)
  return ((list ?? []) as { readonly id: string }[]).map(({ id }) => id)
}
const added = (stem: string, path: string, more: object) => (draft: Draft) =>
  pushAt(draft, path, { id: freeId(stem, idsAt(draft, path)), ...more })
const wiringIn = (draft: Draft) => JSON.parse(JSON.stringify(draft.wiring)) as NonNullable<DoorFile['wiring']>

/** Everything that can be added to a door and that other parts of the door file call by a name, as the screens add it. */
const NEW: Readonly<Record<string, (draft: Draft) => void>> = {
  'survey/lanes': added('lane', 'survey/lanes', { name: 'Lane', who: 'both', xMin_mm: 100, xMax_mm: 2900, speed_m_per_s: 1 }),
  'survey/crossings': added('way', 'survey/crossings', { name: 'Way', yMin_mm: 900, yMax_mm: 1500, speed_m_per_s: 1, perDay: 10 }),
  'survey/obstacles': added('post', 'survey/obstacles', { shape: 'post', x_mm: 300, y_mm: -600, from_mm: 0, to_mm: 1000, radius_mm: 60 }),
  'survey/states': added('state', 'survey/states', { name: 'Another way' }),
  'survey/dangers/points': added('tail', 'survey/dangers/points', { kind: 'tail' }),
  zones: added('zone', 'zones', { purpose: 'presence-at-leaf', xMin_mm: 0, xMax_mm: 3000, yMin_mm: 0, yMax_mm: 800 }),
  bodies: (draft) => pushAt(draft, 'bodies', { id: 'presence-reference-body', use: 'presence-reference-body' }),
  sensors: added('sensor', 'sensors', scanner(undefined, 1700)),
  cable: (draft) => pushAt(draft, 'wiring/cables', newCable(wiringIn(draft))),
  core: (draft) => {
    const wiring = wiringIn(draft)
    const [cable] = wiring.cables
    if (cable) pushAt(draft, 'wiring/cables/0/cores', newCore(cable, terminalsOf(wiring)))
  },
  'joint and what ends there': (draft) => {
    const joint = newJoint(terminalsOf(wiringIn(draft)))
    pushAt(draft, 'wiring/joints', joint)
    const cable = newCable(wiringIn(draft))
    pushAt(draft, 'wiring/cables', { ...cable, cores: cable.cores.map((core) => ({ ...core, to: joint })) })
  },
  resistor: (draft) => pushAt(draft, 'wiring/resistors', newResistor(wiringIn(draft))),
  input: (draft) => pushAt(draft, 'wiring/control/inputs', newInput(wiringIn(draft).control)),
  output: (draft) => {
    const name = freeId('out', wiringIn(draft).sensors[0]?.outputs.map((output) => output.name) ?? [])
    const at = `sensor-1.${name}`
    pushAt(draft, 'wiring/sensors/0/outputs', { kind: 'sourcing', name, acts: 'presence', at, onIn: ['clear'] })
  },
  'wiring of a sensor': (draft) => wire(draft, ['other']),
  'ends in the air': (draft) => {
    putAt(draft, 'wiring/sensors/0/test', undefined)
    keepEnds(draft)
  },
  'second sensor of a repair': (draft) => repaired(2100)(draft),
}

function repaired(x_mm: number): (draft: Draft) => void {
  const value = { ...scanner('other-2', x_mm), name: 'Scanner 2' }
  return (draft) =>
    applyEdits(draft as unknown as DoorFile, withOwnIds([{ kind: 'append', path: 'sensors', value }], draft as unknown as DoorFile))
}

const issues = (file: DoorFile) => {
  const read = parseDocument(JSON.stringify(asHandedOut(file)))
  return read.ok ? [] : read.issues.map(({ path, code, got }) => `${path}: ${code}, got ${got}`)
}

/** Every thing with a name in a file, and every joint, each as it is written but for the lists inside of it. */
function thingsIn(file: DoorFile): readonly string[] {
  const found: string[] = []
  const walk = (value: unknown, path: string): void => {
    if (typeof value !== 'object' || value === null) return
    if (Array.isArray(value)) {
      for (const each of value) {
        const { id, sensor, name, from, to } = Object(each)
        const called = id ?? sensor ?? name ?? each
        if (typeof called === 'string') found.push(JSON.stringify([path, called, from, to]))
        walk(each, `${path}/${typeof called === 'string' ? called : '-'}`)
      }
      return
    }
    for (const [key, each] of Object.entries(value)) walk(each, `${path}/${key}`)
  }
  walk(file, '')
  return found
}

describe('two devices that each add things to one door before they meet', () => {
  const names = Object.keys(NEW)
  it('have all of them in a door file that is taken, none twice under one name, in 30 random orders (seeds 1 to 30)', () => {
    let asked = 0
    for (let seed = 1; seed <= 30; seed++) {
      const roll = dice(seed)
      const both = devices(seed % 2 === 0 ? first : furnished())
      for (const door of both)
        for (let n = 2 + roll(4); n > 0; n--) {
          const made = names[roll(names.length)] ?? ''
          door.edit({ deed: 'added', path: made.includes(' ') ? 'wiring' : made }, NEW[made] ?? (() => {}))
        }
      const [mine, theirs] = both.map((door) => thingsIn(plain(door))) as [readonly string[], readonly string[]]
      merge(both)
      const [a, b] = both
      for (const { path, together } of a.snapshot().conflicts) {
        asked++
        expect(together, `seed ${seed}, ${path}`).toBeDefined()
        a.choose(path, 'all')
      }
      merge(both)
      expect(b.snapshot().conflicts, `seed ${seed}`).toEqual([])
      expect(plain(b)).toEqual(plain(a))
      expect(issues(plain(a)), `seed ${seed}`).toEqual([])
      const { joints = [] } = plain(a).wiring ?? {}
      expect(joints, `seed ${seed}`).toEqual([...new Set(joints)])
      const there = thingsIn(plain(a))
      expect(
        [...mine, ...theirs].filter((each) => !there.includes(each)),
        `seed ${seed}`,
      ).toEqual([])
    }
    expect(asked).toBeGreaterThan(2) // lists that both began
  })

  it('can tell apart what both called alike: it is called by its id too until somebody renames it', () => {
    const both = devices(first)
    for (const [i, door] of both.entries()) door.edit({ deed: 'mended' }, repaired(2100 + i))
    merge(both)
    const file = plain(both[0])
    const called = () => toDoor(JSON.parse(JSON.stringify(plain(both[0])))).sensors.map(({ name }) => name)
    const ids = file.sensors?.slice(3).map(({ id }) => id)
    expect(new Set(ids).size).toBe(2)
    expect(called().slice(3)).toEqual(ids?.map((id) => `Scanner 2 (${id})`))
    both[0].edit({ deed: 'set', path: 'sensors/4/name' }, (draft) => putAt(draft, 'sensors/4/name', 'at the far end'))
    expect(called().slice(3)).toEqual(['Scanner 2', 'at the far end'])
  })

  it('have what both confirmed first, each of another figure, and what both looked for and did not find', () => {
    const both = devices(first)
    const [a, b] = both
    for (const [door, value, kind] of [
      [a, 'beam-gap', 'crushing'],
      [b, 'reach', 'shearing'],
    ] as const)
      door.edit({ deed: 'set', path: 'confirmations' }, (draft) => {
        pushAt(draft, 'confirmations', { value, document: 'Page', edition: '1', clause: '2', by: 'one', on: '2026-01-02' })
        pushAt(draft, 'survey/dangers/none', kind)
      })
    merge(both)
    for (const { path } of a.snapshot().conflicts) a.choose(path, 'all')
    merge(both)
    expect(
      plain(b)
        .confirmations?.map(({ value }) => value)
        .sort(),
    ).toEqual(['beam-gap', 'reach'])
    expect([...(plain(b).survey.dangers?.none ?? [])].sort()).toEqual(['crushing', 'shearing'])
    expect(b.snapshot().conflicts).toEqual([])
  })

  it('keep a sensor without an id what it was called when one before it goes', () => {
    const file = { ...first, sensors: [scanner(undefined, 1400), scanner(undefined, 900)], wiring: firstWiring(['sensor-2']) } as never
    expect(issues(file)).toEqual([])
    const [a] = devices(file)
    a.edit({ deed: 'removed', path: 'sensors' }, (draft) => withoutSensor(draft, 0))
    expect(plain(a).sensors?.map(({ id, x_mm }) => [id, x_mm])).toEqual([['sensor-2', 900]])
    expect(issues(plain(a))).toEqual([])
  })
})

describe('two lists that both began, of which a lane names an entry', () => {
  it('are judged and handed out together until somebody chooses, what the file shows before the rest', () => {
    const both = devices({ ...first, survey: { ...first.survey, lanes: [] } } as DoorFile)
    for (const [i, door] of both.entries())
      door.edit({ deed: 'added', path: 'survey/lanes' }, (draft) => {
        pushAt(draft, 'bodies', { id: `body-${i}`, use: 'presence-reference-body' })
        NEW['survey/lanes']?.(draft)
        const { lanes = [] } = draft.survey
        putAt(draft, `survey/lanes/${lanes.length - 1}/bodies`, [`body-${i}`])
      })
    merge(both)
    for (const each of both) {
      expect(issues(plain(each)).length).toBeGreaterThan(0)
      const file = withBoth(plain(each), each.snapshot().conflicts)
      expect(issues(file)).toEqual([])
      expect(file.bodies?.length).toBe(2)
      expect(file.bodies?.[0]).toEqual(plain(each).bodies?.[0])
      expect(each.snapshot().conflicts.map(({ path }) => path)).toEqual(['bodies'])
    }
  })
})

describe('a list whose last entry goes on one device', () => {
  const lists = ['survey/states', 'survey/lanes', 'survey/crossings', 'survey/obstacles', 'zones', 'bodies', 'survey/dangers/points']

  it.each(lists)('keeps what another device adds to it meanwhile, and is not in the door file where nobody does: %s', (path) => {
    const both = devices(furnished())
    const [a, b] = both
    for (let left = idsAt(plain(a) as Draft, path).length; left > 0; left--)
      a.edit({ deed: 'removed', path }, (draft) => takeAt(draft, path, 0))
    expect(issues(plain(a))).toEqual([])
    const before = idsAt(plain(b) as Draft, path)
    const made = path === 'bodies' ? { id: 'presence-lying', use: 'presence-lying' } : undefined
    b.edit({ deed: 'added', path }, made ? (draft) => pushAt(draft, path, made) : (NEW[path] ?? (() => {})))
    const added = idsAt(plain(b) as Draft, path).filter((id) => !before.includes(id))
    expect(added.length).toBe(1)
    merge(both)
    for (const each of both) expect(idsAt(plain(each) as Draft, path)).toEqual(added)
    a.undo()
    merge(both)
    expect(idsAt(plain(b) as Draft, path)).toContain(added[0])
    expect(idsAt(plain(b) as Draft, path).length).toBeGreaterThan(1)
  })

  it('is never handed out empty where the door file wants it full or not at all', () => {
    type Json = Readonly<Record<string, unknown>>
    const found = new Set<string>()
    const walk = (schema: Json, path: string, isOptional: boolean): void => {
      for (const each of (schema['anyOf'] ?? schema['oneOf'] ?? []) as readonly Json[]) walk(each, path, isOptional)
      if (schema['type'] === 'array') {
        if (isOptional && Number(schema['minItems'] ?? 0) > 0) found.add(path)
        if (schema['items']) walk(schema['items'] as Json, `${path}/0`, false)
      }
      for (const [name, each] of Object.entries((schema['properties'] ?? {}) as Record<string, Json>))
        walk(each, path === '' ? name : `${path}/${name}`, !((schema['required'] ?? []) as readonly string[]).includes(name))
    }
    walk(doorFileJsonSchema(), '', false)
    const emptied = [...found].filter((path) => {
      const file = structuredClone(first) as unknown as Draft
      putAt(file, path, [])
      return JSON.stringify(asHandedOut(file as unknown as DoorFile)).includes(`"${path.split('/').at(-1)}":[]`)
    })
    // what the screens never take the last entry of, and lists that are written whole
    expect(emptied.filter((path) => !/^(sensors|survey\/drive\/stoppingCurve|survey\/lanes\/0\/directions|bodies\/)/.test(path))).toEqual(
      [],
    )
    expect(found.size).toBeGreaterThan(8)
  })
})

describe('what has its name from elsewhere and comes twice', () => {
  it('is one thing where both say the same: what is done with it on both is kept', () => {
    const both = devices(furnished())
    const [a, b] = both
    for (const door of both) {
      door.edit({ deed: 'added', path: 'wiring' }, (draft) => wire(draft, ['other']))
      door.edit({ deed: 'mended' }, repaired(2100))
    }
    const mine = plain(a)
    merge(both)
    for (const each of both) {
      expect(each.snapshot().conflicts).toEqual([])
      expect(plain(each)).toEqual(mine) // sensor, wiring, input, cable and what the test expects: each is there once
      expect(issues(plain(each))).toEqual([])
    }
    a.edit({ deed: 'set', path: 'wiring/sensors/1/power/largest_A' }, (draft) => putAt(draft, 'wiring/sensors/1/power/largest_A', 0.7))
    expect(a.snapshot().conflicts).toEqual([])
    b.edit({ deed: 'set', path: 'wiring/sensors/1/power/inrush_A' }, (draft) => putAt(draft, 'wiring/sensors/1/power/inrush_A', 2))
    merge(both)
    expect(plain(b)).toEqual(plain(a))
    expect(a.snapshot().conflicts).toEqual([])
    expect(plain(a).wiring?.sensors[1]).toMatchObject({ sensor: 'other', power: { largest_A: 0.7, inrush_A: 2 } })
  })

  it('is two values to choose from where one says something else, and the choice is whole', () => {
    const both = devices(furnished())
    for (const [i, door] of both.entries()) {
      door.edit({ deed: 'added', path: 'wiring' }, (draft) => wire(draft, ['other']))
      door.edit({ deed: 'set' }, (draft) => putAt(draft, 'wiring/sensors/1/power/largest_A', i))
    }
    merge(both)
    const [a, b] = both
    const [conflict] = a.snapshot().conflicts
    expect([conflict?.path, conflict?.values.map(({ author }) => author).sort()]).toEqual(['wiring/sensors/1', ['a', 'b']])
    const [, other] = conflict?.values ?? []
    a.choose('wiring/sensors/1', 1)
    merge(both)
    expect(plain(b)).toEqual(plain(a))
    expect(plain(a).wiring?.sensors[1]).toEqual(other?.value)
    expect([a, b].flatMap((each) => each.snapshot().conflicts)).toEqual([])
  })
})

describe('a better wiring that is taken on one device', () => {
  const file = first
  const door = toDoor(JSON.parse(JSON.stringify(file)))
  const search = synthesis(partsFrom(door.wiring as NonNullable<typeof door.wiring>), { mostTried: 400, mostJudged: 40, most: 3 })
  let step = search.next()
  while (!step.done) step = search.next()
  const proposals = step.value.proposals.map((proposal) => connectionEdits(file, proposal))
  const taken: Deed = { deed: 'mended', path: 'wiring' }
  const take = (which: number) => (draft: Draft) => applyEdits(draft as unknown as DoorFile, proposals[which] ?? [])

  it('is one wiring where both take the same, and both are kept where each takes another', () => {
    expect(proposals.filter((edits) => edits !== undefined).length).toBeGreaterThan(1)
    const alike = devices(file)
    for (const each of alike) each.edit(taken, take(0))
    const [mine] = alike.map(plain)
    merge(alike)
    expect(alike[0].snapshot().conflicts).toEqual([])
    expect(plain(alike[0])).toEqual(mine)
    const [alone] = devices(file)
    for (const change of [take(0), NEW['resistor'], take(1), NEW['cable']]) alone.edit(taken, change ?? (() => {}))
    expect(alone.snapshot().conflicts).toEqual([]) // who goes on from one is not asked about it
    const apart = devices(file)
    for (const [i, each] of apart.entries()) each.edit(taken, take(i))
    const wirings = apart.map((each) => plain(each).wiring)
    merge(apart)
    const { conflicts } = apart[0].snapshot()
    expect(conflicts.map(({ path }) => path)).toEqual(['wiring'])
    for (const each of wirings) expect(conflicts[0]?.values.map(({ value }) => value)).toContainEqual(each)
    for (const each of apart)
      for (const { value, author } of each.snapshot().conflicts[0]?.values ?? []) expect(value).toEqual(wirings['ab'.indexOf(author)])
  })

  it('does not take what the other did to the wiring meanwhile: both are kept, and whichever is chosen is whole', () => {
    for (const name of Object.keys(NEW).filter(
      (each) => !(each.includes('/') || ['zones', 'bodies', 'sensors', 'second sensor of a repair'].includes(each)),
    )) {
      const both = devices(file)
      both[0].edit(taken, take(0))
      both[1].edit({ deed: 'added', path: 'wiring/cables' }, NEW[name] ?? (() => {}))
      const [mine, theirs] = both.map((each) => plain(each).wiring)
      merge(both)
      const conflict = both[0].snapshot().conflicts.find(({ path }) => path === 'wiring')
      expect(conflict?.values[1]?.value, name).toEqual(theirs)
      expect(mine).not.toEqual(theirs)
      both[0].choose('wiring', 1)
      both[0].undo()
      expect(
        both[0].snapshot().conflicts.map(({ path }) => path),
        name,
      ).toContain('wiring')
      both[0].redo()
      merge(both)
      expect(plain(both[1]).wiring, name).toEqual(theirs)
      expect(
        both.flatMap((each) => each.snapshot().conflicts),
        name,
      ).toEqual([])
      expect(issues(plain(both[1])), name).toEqual([])
    }
  })
})
