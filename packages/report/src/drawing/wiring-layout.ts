import type { Cable, Core, SensorSwitch, Terminal, Wiring } from '@sillsight/engine'

/** Where everything of a wiring lies, in rows from the top: the control on the left, the sensors on the right, one core in a row between them. */
export interface WiringLayout {
  readonly rows: number
  readonly cables: readonly { readonly cable: Cable; readonly row: number }[]
  readonly cores: readonly PlacedCore[]
  readonly left: readonly PlacedTerminal[]
  readonly right: readonly PlacedTerminal[]
  /** Outlines of devices: the control alone on the left. */
  readonly devices: readonly { readonly name: string; readonly side: Side; readonly from: number; readonly to: number }[]
  /** Junctions in the middle, each over the rows that meet there. */
  readonly joints: readonly { readonly terminal: Terminal; readonly lane: number; readonly rows: readonly number[] }[]
  readonly links: readonly Link[]
  readonly lanes: Readonly<Record<Side, number>>
}

export type Side = 'left' | 'right'

/** A core runs along its row from end to end; `uTurn` where both ends are on one side. */
export interface PlacedCore {
  readonly core: Core
  readonly cable: Cable
  readonly row: number
  readonly from: CoreEnd
  readonly to: CoreEnd
  readonly uTurn: { readonly side: Side; readonly row: number } | undefined
}
type CoreEnd = { readonly side: Side } | { readonly joint: number }

export interface PlacedTerminal {
  readonly terminal: Terminal
  readonly device: string
  readonly row: number
}

/** What joins rows inside of a device: the ties of a terminal that several cores share, and switches. */
export interface Link {
  readonly side: Side
  readonly lane: number
  readonly rows: readonly number[]
  readonly what:
    | { readonly kind: 'tie' }
    | { readonly kind: 'switch'; readonly sensor: string; readonly each: SensorSwitch }
    | { readonly kind: 'test' }
    | { readonly kind: 'resistor'; readonly each: Wiring['resistors'][number] }
}

const deviceOf = (terminal: Terminal) => terminal.slice(0, terminal.indexOf('.'))

/** Cores keep the order of their cables, so that none crosses another; what shares a terminal is tied inside of the device. */
export function wiringLayout(wiring: Wiring): WiringLayout {
  const ofSensor = new Map<string, string>()
  for (const { id, power, outputs, test } of wiring.sensors)
    for (const terminal of [
      power.plus,
      power.minus,
      ...outputs.flatMap(({ from, to }) => [from, to]),
      ...(test ? [test.plus, test.minus] : []),
    ])
      ofSensor.set(terminal, id)
  const joints = new Map([...new Set(wiring.joints)].map((terminal, lane) => [terminal, { terminal, lane, rows: [] as number[] }]))
  const sideOf = (terminal: Terminal): Side => (ofSensor.has(terminal) ? 'right' : 'left')
  const left: PlacedTerminal[] = []
  const right: PlacedTerminal[] = []
  const put = (terminal: Terminal, row: number): CoreEnd => {
    const joint = joints.get(terminal)
    if (joint) {
      joint.rows.push(row)
      return { joint: joint.lane }
    }
    const side = sideOf(terminal)
    const device = side === 'right' ? (ofSensor.get(terminal) ?? '') : deviceOf(terminal)
    ;(side === 'right' ? right : left).push({ terminal, device, row })
    return { side }
  }
  let row = 0
  const cables: WiringLayout['cables'][number][] = []
  const cores: PlacedCore[] = []
  const spare = spareIn(wiring)
  /** What no core ends at, after a row left free: what stands there has its name above it. */
  const putSpare = (device: string) => {
    const ofDevice = spare.filter((terminal) => (ofSensor.get(terminal) ?? '') === device)
    if (ofDevice.length > 0) row++
    for (const terminal of ofDevice) put(terminal, row++)
  }
  const inOneBox = new Set<string>()
  for (const [i, cable] of wiring.cables.entries()) {
    cables.push({ cable, row: row++ })
    for (const core of cable.cores) {
      const from = put(core.from, row)
      const turns = 'side' in from && !joints.has(core.to) && sideOf(core.to) === from.side
      const to = put(core.to, turns ? row + 1 : row)
      cores.push({ core, cable, row, from, to, uTurn: turns ? { side: from.side, row: row + 1 } : undefined })
      row += turns ? 2 : 1
    }
    const device = right.at(-1)?.device
    const goesOn = wiring.cables
      .slice(i + 1)
      .some((later) => later.cores.some(({ from, to }) => [from, to].some((end) => ofSensor.get(end) === device)))
    if (device === undefined || goesOn || inOneBox.has(device)) continue
    inOneBox.add(device)
    putSpare(device) // beside its others, or it would be drawn in two pieces with the next sensor between them
  }
  for (const device of [...wiring.sensors.map(({ id }) => id), '']) if (!inOneBox.has(device)) putSpare(device)
  const links = laned([...ties(left, 'left'), ...ties(right, 'right'), ...switches(wiring, [...left, ...right], sideOf)])
  return {
    rows: row,
    cables,
    cores,
    left,
    right,
    devices: [...outlines(right, 'right'), ...(left.length > 0 ? [{ name: '', side: 'left' as const, from: 0, to: row - 1 }] : [])],
    joints: [...joints.values()].filter(({ rows }) => rows.length > 0),
    links: links.placed,
    lanes: links.lanes,
  }
}

/** Terminals of devices at which no core ends. */
function spareIn(wiring: Wiring): readonly Terminal[] {
  const met = new Set([...wiring.cables.flatMap(({ cores }) => cores.flatMap(({ from, to }) => [from, to])), ...wiring.joints])
  return [...terminalsOfParts(wiring)].filter((terminal) => !met.has(terminal))
}

function terminalsOfParts({ supply, sensors, control, resistors }: Wiring): ReadonlySet<Terminal> {
  return new Set([
    ...sensors.flatMap(({ power, outputs, test }) => [
      power.plus,
      power.minus,
      ...outputs.flatMap(({ from, to }) => [from, to]),
      ...(test ? [test.plus, test.minus] : []),
    ]),
    supply.plus,
    supply.minus,
    ...control.inputs.flatMap(({ plus, minus }) => [plus, minus]),
    ...(control.test ? [control.test.from, control.test.to] : []),
    ...resistors.flatMap(({ from, to }) => [from, to]),
  ])
}

function outlines(placed: readonly PlacedTerminal[], side: Side): WiringLayout['devices'] {
  const names = [...new Set(placed.map(({ device }) => device))]
  // a sensor on several cables is drawn as often as its rows are apart
  return names.flatMap((name) => {
    const rows = placed.filter(({ device }) => device === name).map(({ row }) => row)
    const others = placed.filter(({ device }) => device !== name).map(({ row }) => row)
    const runs: { from: number; to: number }[] = []
    for (const row of rows) {
      const last = runs[runs.length - 1]
      if (last && !others.some((other) => other > last.to && other < row)) last.to = row
      else runs.push({ from: row, to: row })
    }
    return runs.map((run) => ({ name, side, ...run }))
  })
}

type Unplaced = Omit<Link, 'lane'>

function ties(placed: readonly PlacedTerminal[], side: Side): readonly Unplaced[] {
  const names = [...new Set(placed.map(({ terminal }) => terminal))]
  return names.flatMap((name) => {
    const rows = placed.filter(({ terminal }) => terminal === name).map(({ row }) => row)
    return rows.length > 1 ? [{ side, rows, what: { kind: 'tie' as const } }] : []
  })
}

function switches(wiring: Wiring, placed: readonly PlacedTerminal[], sideOf: (terminal: Terminal) => Side): readonly Unplaced[] {
  // the row of a terminal that several cores share: the one nearest to the other end
  const between = (a: Terminal, b: Terminal): readonly number[] => {
    const rowsOf = (name: Terminal) => placed.filter(({ terminal }) => terminal === name).map(({ row }) => row)
    const pairs = rowsOf(a).flatMap((x) => rowsOf(b).map((y) => [x, y] as const))
    return pairs.sort((p, q) => Math.abs(p[0] - p[1]) - Math.abs(q[0] - q[1]))[0] ?? []
  }
  const { test } = wiring.control
  // one between both sides is told in words alone
  const oneSided = wiring.resistors.filter(({ from, to }) => sideOf(from) === sideOf(to))
  return [
    ...wiring.sensors.flatMap(({ id, outputs }) =>
      outputs.map((each): Unplaced => ({ side: 'right', rows: between(each.from, each.to), what: { kind: 'switch', sensor: id, each } })),
    ),
    ...oneSided.map((each): Unplaced => ({ side: sideOf(each.to), rows: between(each.from, each.to), what: { kind: 'resistor', each } })),
    ...(test ? [{ side: sideOf(test.to), rows: between(test.from, test.to), what: { kind: 'test' as const } }] : []),
  ].filter(({ rows }) => rows.length > 1)
}

/** Lanes so that no two links of one lane share a row; short links come first, nearest to the terminals. */
function laned(links: readonly Unplaced[]): { readonly placed: readonly Link[]; readonly lanes: Readonly<Record<Side, number>> } {
  const taken: { side: Side; lane: number; from: number; to: number }[] = []
  const lanes = { left: 0, right: 0 }
  const span = ({ rows }: Unplaced) => Math.max(...rows) - Math.min(...rows)
  const placed = [...links]
    .sort((a, b) => span(a) - span(b) || Math.min(...a.rows) - Math.min(...b.rows))
    .map((link): Link => {
      const [from, to] = [Math.min(...link.rows), Math.max(...link.rows)]
      let lane = 0
      while (taken.some((each) => each.side === link.side && each.lane === lane && each.from <= to && from <= each.to)) lane++
      taken.push({ side: link.side, lane, from, to })
      lanes[link.side] = Math.max(lanes[link.side], lane + 1)
      return { ...link, lane }
    })
  return { placed, lanes }
}
