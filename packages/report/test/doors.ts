import type { Body, Cause, Door, Finding, Judgement, Obstacle, Pocket, RangingSensor, Source, Zone, ZoneCoverage } from '@sillsight/engine'

// Doors placed by hand, for tests of words and drawings. Nothing here was computed by the engine, nobody's door is meant, and no
// sensor of these figures exists.

const invented: Source = { basis: 'invented', note: 'placed by hand for a test' }

export const lyingBody: Body = {
  id: 'lying',
  name: 'lying body',
  reflectance: 0.1,
  source: { basis: 'from memory', document: 'EXAMPLE-STD 1', edition: '2024', clause: '5.2' },
  postures: [
    { shape: 'box', name: 'lying along', a_mm: 700, b_mm: 300, c_mm: 200, yawFrom_rad: 0, yawTo_rad: 0 },
    { shape: 'box', name: 'lying across', a_mm: 300, b_mm: 700, c_mm: 200, yawFrom_rad: 0, yawTo_rad: 0 },
    { shape: 'box', name: 'standing', a_mm: 200, b_mm: 300, c_mm: 700, yawFrom_rad: 0, yawTo_rad: 0 },
  ],
}

export const scanner: RangingSensor = {
  kind: 'ranging',
  id: 'scanner',
  name: 'sensor',
  source: invented,
  planes: [-6, -2, 2, 6].map((deg, i) => ({
    kind: 'fan',
    id: `plane-${i + 1}`,
    offset_rad: (deg * Math.PI) / 180,
    fovMin_rad: -0.3,
    fovMax_rad: 0.9,
    beamCount: 181,
  })),
  pose: { x_mm: 300, y_mm: 180, z_mm: 4300, yaw_rad: 0, tilt_rad: 0.2, roll_rad: 0 },
  maxRange_mm: 9000,
  rangeRef_mm: 9000,
  reflectanceRef: 0.1,
  backgroundMargin_mm: 60,
  spotRadius_mm: 0,
  learnedIn: 'as-surveyed',
  fields: [
    {
      id: 'front',
      name: 'front field',
      planes: ['plane-1', 'plane-2', 'plane-3', 'plane-4'],
      xMin_mm: 0,
      xMax_mm: 4000,
      yMin_mm: Number.NEGATIVE_INFINITY,
      yMax_mm: Number.POSITIVE_INFINITY,
      clearance_mm: 50,
      top_mm: 2500,
      clusterBeams: 1,
      output: 'out 1',
      function: 'presence',
      presenceTime_s: Number.POSITIVE_INFINITY,
      blanking: [],
    },
  ],
}

export const leafZone: Zone = {
  id: 'leaf-yard',
  name: 'at the leaf, yard',
  purpose: 'presence-at-leaf',
  function: 'presence',
  xMin_mm: 0,
  xMax_mm: 4000,
  yMin_mm: 0,
  yMax_mm: 1200,
  bodies: ['lying'],
  allowedPocket_mm: 0,
  pitch_mm: 25,
  longestStay_s: 60,
  family: undefined,
}

const walls: readonly Obstacle[] = [
  {
    shape: 'box',
    id: 'wall-zero',
    name: 'wall',
    implied: true,
    x_mm: -1000,
    y_mm: -90,
    from_mm: 0,
    to_mm: 5200,
    size_mm: [2000, 300],
    yaw_rad: 0,
  },
  {
    shape: 'box',
    id: 'wall-width',
    name: 'wall',
    implied: true,
    x_mm: 5000,
    y_mm: -90,
    from_mm: 0,
    to_mm: 5200,
    size_mm: [2000, 300],
    yaw_rad: 0,
  },
  {
    shape: 'box',
    id: 'lintel',
    name: 'lintel',
    implied: true,
    x_mm: 2000,
    y_mm: -90,
    from_mm: 4200,
    to_mm: 5200,
    size_mm: [4000, 300],
    yaw_rad: 0,
  },
]
const things: readonly Obstacle[] = [
  {
    shape: 'box',
    id: 'rack',
    name: 'pallet rack',
    implied: false,
    x_mm: 420,
    y_mm: 930,
    from_mm: 0,
    to_mm: 1600,
    size_mm: [540, 240],
    yaw_rad: 0.35,
  },
  { shape: 'post', id: 'bollard', name: 'bollard', implied: false, x_mm: 3250, y_mm: 640, from_mm: 0, to_mm: 900, radius_mm: 90 },
]

/** A tall loading door with a bollard and a pallet rack on the yard side, and a dock edge on the hall side. */
export const loadingDoor: Door = {
  name: 'North dock 4',
  sides: { a: 'yard', b: 'hall' },
  opening: { width_mm: 4000, height_mm: 4200 },
  leaf: { travel: 'down', thickness_mm: 40, bulge_mm: 30 },
  states: [
    {
      id: 'as-surveyed',
      name: 'as surveyed',
      obstacles: [...walls, ...things],
      floor: {
        profile: [
          { y_mm: -900, z_mm: -60 },
          { y_mm: -300, z_mm: 0 },
          { y_mm: 400, z_mm: 0 },
          { y_mm: 1500, z_mm: -45 },
        ],
        slopeX: 0,
        tolerance_mm: 10,
      },
    },
  ],
  sensors: [scanner],
  bodies: [lyingBody],
  zones: [leafZone],
  concept: { people: 'public', drive: 'impulse-out-of-view', closingEdge: 'presence-aid' },
  extinction_per_mm: 0,
  edition: '2026-11',
  confirmations: [],
  assumed: [],
}

/** Which cells are blind: asked with the middle of each cell in mm. */
export type IsBlind = (x_mm: number, y_mm: number) => boolean

/** A coverage with the blind cells that the test wants; pockets are found by flooding, over edges and corners. */
export function coverageOf(
  door: Door,
  zone: Zone,
  isBlind: IsBlind,
  causes: (letter: string) => readonly Cause[] = someCause,
): ZoneCoverage {
  const pitch_mm = zone.pitch_mm
  const columns = Math.ceil((zone.xMax_mm - zone.xMin_mm) / pitch_mm)
  const rows = Math.ceil((zone.yMax_mm - zone.yMin_mm) / pitch_mm)
  const grid = { x0_mm: zone.xMin_mm, y0_mm: zone.yMin_mm, pitch_mm, columns, rows }
  const blind = Array.from({ length: rows }, (_, j) =>
    Array.from({ length: columns }, (_, i) => isBlind(grid.x0_mm + (i + 0.5) * pitch_mm, grid.y0_mm + (j + 0.5) * pitch_mm)),
  )
  const groups = flooded(blind).sort((a, b) => b.length - a.length)
  const state = door.states[0]?.id ?? ''
  const pockets = groups.map((cells, index): Pocket => pocketOf(cells, index, grid, zone, state, causes))
  const blindCount = groups.reduce((sum, cells) => sum + cells.length, 0)
  return {
    zone: zone.id,
    state,
    grid,
    yawSampled: false,
    counts: { seen: rows * columns - blindCount, blind: blindCount, notFree: 0 },
    postures: zone.bodies.flatMap((body) => [0, 1, 2].map((posture) => ({ body, posture, yaw_rad: 0 }))),
    blindRuns: runsOf(groups.flat()),
    notFreeRuns: [],
    pockets,
    countedFields: ['scanner/front'],
  }
}

function someCause(letter: string): readonly Cause[] {
  return letter === 'B'
    ? [{ kind: 'hidden-behind', obstacle: 'bollard', cells: 4 }]
    : [
        { kind: 'no-plane-here', cells: 40 },
        { kind: 'between-beams', cells: 3 },
      ]
}

type Cell = readonly [row: number, column: number]

function flooded(blind: readonly (readonly boolean[])[]): Cell[][] {
  const taken = blind.map((row) => row.map(() => false))
  const groups: Cell[][] = []
  for (const [j, row] of blind.entries()) {
    for (const i of row.keys()) {
      const group = groupAt([j, i], blind, taken)
      if (group.length > 0) groups.push(group)
    }
  }
  return groups
}

function groupAt(start: Cell, blind: readonly (readonly boolean[])[], taken: boolean[][]): Cell[] {
  const group: Cell[] = []
  const open: Cell[] = [start]
  while (open.length > 0) {
    const [r, c] = open.pop() as Cell
    if (!blind[r]?.[c] || taken[r]?.[c]) continue
    ;(taken[r] as boolean[])[c] = true
    group.push([r, c])
    for (const dr of [-1, 0, 1]) for (const dc of [-1, 0, 1]) open.push([r + dr, c + dc])
  }
  return group
}

function runsOf(cells: readonly Cell[]): (readonly [number, number, number])[] {
  const runs: [number, number, number][] = []
  for (const [row, column] of [...cells].sort((a, b) => a[0] - b[0] || a[1] - b[1])) {
    const last = runs[runs.length - 1]
    if (last && last[0] === row && last[2] === column - 1) last[2] = column
    else runs.push([row, column, column])
  }
  return runs
}

function pocketOf(
  cells: readonly Cell[],
  index: number,
  grid: ZoneCoverage['grid'],
  zone: Zone,
  state: string,
  causes: (letter: string) => readonly Cause[],
): Pocket {
  const letter = letterOf(index)
  const rows = cells.map(([row]) => row)
  const columns = cells.map(([, column]) => column)
  const extent = {
    xMin_mm: grid.x0_mm + Math.min(...columns) * grid.pitch_mm,
    xMax_mm: grid.x0_mm + (Math.max(...columns) + 1) * grid.pitch_mm,
    yMin_mm: grid.y0_mm + Math.min(...rows) * grid.pitch_mm,
    yMax_mm: grid.y0_mm + (Math.max(...rows) + 1) * grid.pitch_mm,
  }
  const [row, column] = cells[Math.floor(cells.length / 2)] as Cell
  const worstPosture = index % 3
  return {
    letter,
    cells: cells.length,
    area_mm2: cells.length * grid.pitch_mm * grid.pitch_mm,
    extent,
    runs: runsOf(cells),
    worstPosture,
    causes: causes(letter),
    diameter_mm: Math.sqrt((extent.xMax_mm - extent.xMin_mm) ** 2 + (extent.yMax_mm - extent.yMin_mm) ** 2),
    worstCase: {
      body: zone.bodies[0] ?? '',
      posture: worstPosture,
      x_mm: grid.x0_mm + (column + 0.5) * grid.pitch_mm,
      y_mm: grid.y0_mm + (row + 0.5) * grid.pitch_mm,
      z_mm: 0,
      yaw_rad: 0,
      state,
    },
  }
}

function letterOf(index: number): string {
  const last = String.fromCharCode(65 + (index % 26))
  return index < 26 ? last : letterOf(Math.floor(index / 26) - 1) + last
}

export function judgementOf(door: Door, coverages: readonly ZoneCoverage[], findings: readonly Finding[] = []): Judgement {
  return { door: door.name, edition: door.edition, findings, crashes: [], coverages }
}

/** The loading door with a strip at the leaf, a spot behind the bollard and a ragged far edge. */
export const loadingDoorJudged: Judgement = judgementOf(loadingDoor, [
  coverageOf(
    loadingDoor,
    leafZone,
    (x_mm, y_mm) =>
      y_mm < 50 ||
      (x_mm > 3500 && x_mm < 3620 && y_mm > 560 && y_mm < 680 && x_mm - 3500 > y_mm - 600) ||
      (x_mm > 800 && x_mm < 2000 && y_mm > 1160) ||
      (x_mm < 500 && y_mm > 1200 - x_mm / 5),
  ),
])

/** Numbers in [0, 1) that are the same on every run: mulberry32, public domain. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}
