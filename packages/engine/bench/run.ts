// Seeded by construction: the reference job is fixed data. `npm run bench` prints this table; nothing here asserts a time.

import { fortyCoreDoor } from '../cases/forty-core-door.ts'
import { TOLERANCES } from '../cases/tolerant-pass.ts'
import { blindOutlines } from '../src/coverage/blind-outline.ts'
import { remedies } from '../src/coverage/causes.ts'
import { exactTrees } from '../src/coverage/exact-trees.ts'
import { emptySet, gridOf } from '../src/coverage/grid.ts'
import { gridCoverage } from '../src/coverage/grid-coverage.ts'
import { coverageMaps, drawStance } from '../src/coverage/maps.ts'
import { openRegion } from '../src/coverage/open-region.ts'
import { countedFields, fieldSight, stancesOf } from '../src/coverage/scene.ts'
import { newEasel, stripsOf } from '../src/coverage/seen-map.ts'
import { judge } from '../src/judge/judge.ts'
import type { Door } from '../src/model/door.ts'
import { floorPieces } from '../src/space/floor.ts'
import { faultEffects } from '../src/wiring/fault-effects.ts'
import { bruteForceLoop, predicateMaps } from './brute-force.ts'
import { heading, line, machine, time } from './measure.ts'
import { type ReferenceChange, referenceJob } from './reference-job.ts'
import { sweepOfAll } from './sweep.ts'
import { bothRules, trafficDoor } from './traffic-job.ts'

const quick = process.argv.includes('--quick')

/** The parts of a job that are timed apart. */
function job(change: Partial<ReferenceChange> = {}) {
  const door: Door = referenceJob(change)
  const zone = door.zones[0] as Door['zones'][number]
  const state = door.states[0] as Door['states'][number]
  const grid = gridOf(zone)
  const easel = newEasel(grid)
  const strips = stripsOf(grid, floorPieces(state.floor))
  const counted = countedFields(door, zone)
  const sights = counted.map((c) => fieldSight(door, state, c))
  const { stances } = stancesOf(door, zone)
  const sets = stances.map(() => emptySet(grid))
  const drawMaps = () => {
    for (const [s, stance] of stances.entries()) {
      const set = sets[s] as Int32Array
      set.fill(0)
      drawStance(set, easel, strips, counted, sights, stance)
    }
  }
  return { door, zone, state, grid, counted, stances, sets, drawMaps }
}

function differing(fast: readonly Int32Array[], slow: readonly Int32Array[]): number {
  let bits = 0
  for (const [s, set] of fast.entries())
    for (const [w, word] of set.entries())
      for (let other = word ^ ((slow[s] as Int32Array)[w] as number); other !== 0; other &= other - 1) bits++
  return bits
}

console.log(machine())
console.log(heading)
const runs = quick ? 20 : 300
const plain = job()
const plainTime = time(plain.drawMaps, runs)
console.log(line('seen maps, reference job', plainTime, 'aim 0.6'))
const loop = () => bruteForceLoop(plain.door, plain.grid, plain.counted, plain.stances)
const slow = time(loop, quick ? 1 : 7, 1)
const loopOff = differing(plain.sets, loop())
const off = differing(plain.sets, predicateMaps(plain.door, plain.grid, plain.counted, plain.stances))
const ratio = (slow.median_ms / plainTime.median_ms).toFixed(0)
console.log(
  line('the same by brute force', slow, `${ratio} times slower (aim 400); cells that differ: ${loopOff}, from the predicate: ${off}`),
)
const { door, zone, state } = plain
const maps = coverageMaps(door, zone, state)
// timed by itself: the difference of the two below is smaller than what either spreads
const noCauses = time(() => gridCoverage(door, zone, state, { causes: false }), runs)
const whole = time(() => gridCoverage(door, zone, state), quick ? 5 : 40)
const causes = time(() => remedies(door, state, maps), quick ? 5 : 40)
console.log(
  line(
    'beams, backgrounds, free masks, maps',
    time(() => coverageMaps(door, zone, state), runs),
  ),
)
console.log(line('grid answer with pockets', noCauses, 'aim 4'))
console.log(line('causes of all pockets', causes, 'aim 40'))
console.log(line('grid answer with pockets and causes', whole))
console.log(
  line(
    'judgement by the grid, all rules',
    time(() => judge(door, { depth: 'grid' }), runs),
  ),
)

const exact = time(() => exactTrees(door, zone, state), quick ? 3 : 20)
console.log(line('exact answer with its trees', exact, 'aim 150, reach 60'))
const tolerant = () => {
  const trees = exactTrees(door, zone, state, TOLERANCES)
  return openRegion(trees, blindOutlines(trees))
}
console.log(line('the same over tolerances, with the open region', time(tolerant, quick ? 2 : 8), 'aim 3000'))

for (const reaches of ['near', 'far'] as const) {
  const traffic = trafficDoor(reaches)
  const verdicts = bothRules(traffic)
    .map(({ verdict }) => verdict)
    .join(', ')
  // a door of its own each time: what is prepared is kept with the door
  const took = time(() => bothRules({ ...traffic }), quick ? 3 : 40, 10)
  console.log(line('closing leaf, both rules, 54 passages', took, `aim 50; ${verdicts}`))
  const sweep = sweepOfAll(traffic, 54)
  const times = (sweep.took_ms / took.median_ms).toExponential(1)
  console.log(`${''.padEnd(44)}a sweep of 1 ms: ${(sweep.took_ms / 3.6e6).toFixed(0)} h, ${times} times slower (aim 1000); ${sweep.said}`)
}

for (const cables of [4, 1] as const) {
  const wiring = fortyCoreDoor({ cables })
  const took = time(() => faultEffects(wiring), quick ? 3 : 40)
  console.log(line(`every fault, 4 sensors, 40 cores, ${cables} cables`, took, `aim 100; ${faultEffects(wiring).length} faults`))
}

const variants: readonly [string, Partial<ReferenceChange>][] = [
  ['body yawed 30 degrees', { yaw_deg: 30 }],
  ['cylinders', { cylinder: true }],
  ['floor of three pieces, sloping 2 % across', { slopeX_percent: 2 }],
  ['fog, 20 m visibility', { visibility_m: 20 }],
  ['clusters of 3 beams', { clusterBeams: 3 }],
]
for (const [name, change] of variants) {
  const variant = job(change)
  const took = time(variant.drawMaps, runs)
  const different = differing(variant.sets, predicateMaps(variant.door, variant.grid, variant.counted, variant.stances))
  console.log(
    line(`seen maps, ${name}`, took, `${(took.median_ms / plainTime.median_ms).toFixed(2)} of plain (aim 3), ${different} cells differ`),
  )
}
for (const times of [4, 16]) {
  const beams = time(job({ beamsTimes: times }).drawMaps, Math.ceil(runs / times))
  console.log(line(`seen maps, ${times} times the beams`, beams, `${(beams.median_ms / plainTime.median_ms).toFixed(1)} of plain`))
}
for (const times of [4, 16]) {
  const rows = time(job({ rowsTimes: times }).drawMaps, Math.ceil(runs / times))
  console.log(
    line(`seen maps, ${times} times the rows`, rows, `${(rows.median_ms / plainTime.median_ms).toFixed(1)} of plain; columns grow alike`),
  )
}
