import { readFileSync } from 'node:fs'
import { firstWiring, parseDocument, toDoor } from '@sillsight/document'
import { type Fault, played, type Wiring } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { english } from '../wording/english.ts'
import { german } from '../wording/german.ts'
import { overlap } from './model.ts'
import { drawWiring, leastWiringWidth_mm } from './wiring-diagram.ts'
import { wiringLayout } from './wiring-layout.ts'
import { leastNarrowWidth_mm } from './wiring-narrow.ts'

const demo = (name: string) => JSON.parse(readFileSync(new URL(`../../../cli/demo/${name}.json`, import.meta.url), 'utf8'))

const PX_PER_MM = 96 / 25.4
/** What a phone of 360 px leaves between the edges of its sheet. */
const PHONE_MM = 328 / PX_PER_MM
const hasJoint = ({ joints }: Wiring) => joints.length > 0

function wiringOf(file: object): Wiring {
  const result = parseDocument(JSON.stringify(file))
  if (!result.ok) throw new Error(JSON.stringify(result.issues))
  const { wiring } = toDoor(result.document, result.catalogue)
  if (!wiring) throw new Error('the door must have a wiring')
  return wiring
}

/** A hatch whose cores meet in a box, and one of whose cores bridges two terminals of a grid. */
function withBox(): Wiring {
  const wiring = wiringOf(demo('box-hatch'))
  const [first, ...others] = wiring.cables
  if (!first) throw new Error('the hatch must have a cable')
  const [plus, ...rest] = first.cores
  if (!plus) throw new Error('the cable must have a core')
  const cores = [
    { ...plus, to: 'box.1' },
    { ...plus, id: 'W1.9', from: 'box.1' },
    { ...plus, id: 'W1.8', from: 'grid.plus', to: 'grid.test' },
    ...rest,
  ]
  return { ...wiring, joints: ['box.1'], cables: [{ ...first, cores }, ...others] }
}

/** A line that ends in a resistor on the sensor's side. */
function withResistor(): Wiring {
  const wiring = wiringOf(demo('freezer-door'))
  return { ...wiring, resistors: [{ id: 'R-1', from: 'over-leaf.3', to: 'over-leaf.4', ohm: 8200 }] }
}

const WIRINGS: readonly (readonly [string, Wiring])[] = [
  ['box hatch', wiringOf(demo('box-hatch'))],
  ['freezer door', wiringOf(demo('freezer-door'))],
  ['a box and a bridge', withBox()],
  ['a line that ends in a resistor', withResistor()],
  ['a wiring to begin with', wiringOf({ ...demo('freezer-door'), wiring: firstWiring(['over-leaf']) })],
  ['two sensors, each on a cable of its own', wiringOf({ ...demo('traffic-passage'), wiring: firstWiring(['aisle', 'header']) })],
  ['three sensors', wiringOf({ ...demo('traffic-passage'), wiring: firstWiring(['aisle', 'header', 'header-yard']) })],
]
const FAULTS: readonly (Fault | undefined)[] = [
  undefined,
  { kind: 'core-open', core: 'W1.3' },
  { kind: 'cores-shorted', cores: ['W1.1', 'W1.3'] },
]

describe.each(WIRINGS)('the drawing of %s', (_, wiring) => {
  const cores = wiring.cables.flatMap(({ cores }) => cores)

  it.each([english, german])(
    'writes nothing over anything else and nothing outside, with a fault played and without ($tag)',
    (language) => {
      const reader = { units: 'metric', language } as const
      for (const fault of FAULTS) {
        const playing = { fault, played: played(wiring, fault ? [fault] : [], { seenBy: [], asking: false }) }
        const width_mm = leastWiringWidth_mm(wiring, reader, playing)
        const { texts, height_mm } = drawWiring(wiring, width_mm, reader, playing)
        const clashes = texts.flatMap((a, i) => texts.slice(i + 1).filter((b) => overlap(a, b)))
        if (fault === undefined) expect(clashes).toEqual([])
        for (const { left_mm, right_mm, top_mm, bottom_mm } of texts)
          expect(left_mm >= 0 && right_mm <= width_mm && top_mm >= 0 && bottom_mm <= height_mm).toBe(true)
      }
    },
  )

  it.each([english, german])(
    'fits a phone in letters of 14 px where its names are short, and even then writes nothing over anything else nor outside ($tag)',
    (language) => {
      const reader = { units: 'metric', language } as const
      for (const fault of FAULTS) {
        const playing = { fault, played: played(wiring, fault ? [fault] : [], { seenBy: [], asking: false }) }
        const least_mm = leastNarrowWidth_mm(wiring, reader)
        if (!hasJoint(wiring)) expect(least_mm).toBeLessThanOrEqual(PHONE_MM)
        const width_mm = Math.max(least_mm, PHONE_MM)
        const { texts, height_mm, marks } = drawWiring(wiring, width_mm, reader, playing)
        for (const mark of marks) if (mark.kind === 'text') expect(mark.size_mm * PX_PER_MM).toBeGreaterThanOrEqual(14)
        const clashes = texts.flatMap((a, i) => texts.slice(i + 1).filter((b) => overlap(a, b)))
        if (fault === undefined) expect(clashes).toEqual([])
        for (const { left_mm, right_mm, top_mm, bottom_mm } of texts)
          expect(left_mm >= 0 && right_mm <= width_mm && top_mm >= 0 && bottom_mm <= height_mm).toBe(true)
      }
    },
  )

  it('names every terminal at every width', () => {
    const names = (width_mm: number) =>
      drawWiring(wiring, width_mm, { units: 'metric', language: english })
        .marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
        .filter((text) => cores.some(({ from, to }) => [from, to].some((terminal) => terminal.endsWith(`.${text}`))))
        .sort()
    const reader = { units: 'metric', language: english } as const
    expect(names(leastNarrowWidth_mm(wiring, reader))).toEqual(names(leastWiringWidth_mm(wiring, reader)))
  })

  it('gives each core a row of its own, so that none crosses another, and each end its terminal', () => {
    const layout = wiringLayout(wiring)
    expect(layout.cores.map(({ core }) => core.id)).toEqual(cores.map(({ id }) => id))
    const rows = layout.cores.flatMap(({ row, uTurn }) => (uTurn ? [row, uTurn.row] : [row]))
    expect(new Set(rows).size).toBe(rows.length)
    const placed = new Set([...layout.left, ...layout.right, ...layout.joints].map(({ terminal }) => terminal))
    for (const { from, to } of cores) expect([placed.has(from), placed.has(to)]).toEqual([true, true])
  })

  it('draws each sensor in one piece, with what no core ends at, and leaves the row above it to its name', () => {
    const sensors = wiringLayout(wiring).devices.filter(({ side }) => side === 'right')
    expect(sensors.map(({ name }) => name)).toEqual(wiring.sensors.map(({ id }) => id))
    for (const [i, { from }] of sensors.entries()) expect(from).toBeGreaterThan((sensors[i - 1]?.to ?? -1) + 1)
  })

  it('puts no two links of one lane beside each other', () => {
    const { links } = wiringLayout(wiring)
    for (const [i, a] of links.entries())
      for (const b of links.slice(i + 1)) {
        const isApart = Math.max(...a.rows) < Math.min(...b.rows) || Math.max(...b.rows) < Math.min(...a.rows)
        expect(a.side !== b.side || a.lane !== b.lane || isApart).toBe(true)
      }
  })
})

describe('what a drawing offers to be touched', () => {
  const reader = { units: 'metric', language: english } as const
  it('has joints among the terminals, where a core may end too', () => {
    const { terminals, cores } = drawWiring(withBox(), 250, reader)
    const at = terminals.filter(({ terminal }) => terminal === 'box.1').map((each) => each.at)
    expect(at.length).toBeGreaterThan(1)
    expect(at).toContainEqual(cores.find(({ core }) => core === 'W1.9')?.from)
  })
  it('shows a resistor between the terminals of one side, with its size, and a ring where it is broken', () => {
    const wiring = withResistor()
    const fault: Fault = { kind: 'resistor-open', resistor: 'R-1' }
    const playing = { fault, played: played(wiring, [fault], { seenBy: [], asking: false }) }
    const [whole, broken] = [drawWiring(wiring, 250, reader), drawWiring(wiring, 250, reader, playing)]
    expect(whole.marks).toContainEqual(expect.objectContaining({ text: 'R-1, 8200 \u03a9' }))
    const rings = (marks: typeof whole.marks) => marks.filter(({ kind, layer }) => kind === 'circle' && layer === 'body').length
    expect([rings(whole.marks), rings(broken.marks)]).toEqual([0, 1])
  })
})

describe('a fault that is played', () => {
  const wiring = wiringOf(demo('box-hatch'))
  const reader = { units: 'metric', language: english } as const
  const words = (faults: readonly Fault[], seenBy: readonly string[]) => {
    const [fault] = faults
    const playing = { fault, played: played(wiring, faults, { seenBy, asking: false }) }
    return drawWiring(wiring, 250, reader, playing).marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
  }
  it('changes what is believed and read: a stop line that touches plus says that nobody is there', () => {
    expect(words([], ['grid'])).toContain('stop and reverse: somebody there')
    const shorted = words([{ kind: 'core-to-rail', core: 'W1.3', rail: 'plus' }], ['grid'])
    expect(shorted.filter((text) => text === 'stop and reverse: nobody there')).toHaveLength(2)
    expect(shorted).toContain('plus')
  })
  it('reads nothing where nothing is connected', () => {
    expect(words([{ kind: 'cable-off', cable: 'W1' }], [])).toContain('\u2013')
  })
})
