import { readFileSync } from 'node:fs'
import { parseDocument, toDoor } from '@sillsight/document'
import { judge, type WiringEvidence, wiringEvidence } from '@sillsight/engine'
import { type VerifyResult, verifyEvidence } from '../src/index.ts'
import { whole } from './passing-doors.ts'
import { sha256 } from './random-door-files.ts'
import type { Dice } from './random-numbers.ts'

type Loose<T> = T extends readonly (infer U)[] ? Loose<U>[] : T extends object ? { -readonly [K in keyof T]: Loose<T[K]> } : T
/** Evidence of a wiring that JSON has carried, to be changed at will. */
export type Changeable = Loose<WiringEvidence>

export function demoText(name: string): string {
  return readFileSync(new URL(`../../cli/demo/${name}.json`, import.meta.url), 'utf8')
}

/** @param isJudged with the counts of the findings, which take a judgement */
export function wiringEvidenceOf(doorText: string, { isJudged }: { readonly isJudged: boolean }): Changeable {
  const parsed = parseDocument(doorText)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  const door = toDoor(parsed.document, parsed.catalogue)
  const evidence = door.wiring && wiringEvidence(door.wiring, isJudged ? judge(door, { depth: 'grid' }).findings : [])
  if (evidence === undefined) throw new Error('doorText must have a wiring that is not too large')
  return JSON.parse(JSON.stringify(evidence))
}

export function verifiedWiring(doorText: string, wiring: unknown): VerifyResult {
  const evidenceText = JSON.stringify({ sillsightEvidence: 1, doorSha256: sha256(doorText), coverages: [], wiring })
  return whole(verifyEvidence({ doorText, evidenceText, sha256 }))
}

/** The box hatch with a wiring of its two sensors in which everything that the page names can occur, and is often wrong. */
export function randomWiredFile(dice: Dice): string {
  const file = JSON.parse(demoText('box-hatch'))
  const { supply } = file.wiring
  const sensors = ['grid', 'grid-belt'].slice(0, dice.chance(0.7) ? 2 : 1)
  const inputs = sensors.flatMap((id, i) => inputsOf(`in-${i + 1}`, dice).map((input) => ({ ...input, sensor: id })))
  const conductors = [{ area_mm2: 0.5 }, { area_mm2: 0.34 }, { awg: 22 }, { awg: 19 }, { awg: 26 }]
  const cables = sensors.map((id, i) => ({
    id: `W${i + 1}`,
    length_mm: dice.pick([0, 3000, 12_000]),
    conductor: dice.pick(conductors),
    cores: [
      { id: '1', from: 'control.24V', to: `${id}.plus` },
      { id: '2', from: 'control.0V', to: `${id}.minus` },
      ...inputs.flatMap((input, k) => (input.sensor === id ? coresOf(input.id, `${k + 3}`, id, dice) : [])),
      { id: 'T', from: dice.pick(['control.test', 'control.24V']), to: `${id}.test` },
    ],
  }))
  const wiring = {
    supply: {
      ...supply,
      earthed: dice.pick(['plus', 'minus', 'none']),
      least_V: dice.pick([22.5, 26.5]),
      inner_ohm: dice.pick([0.4, 20]),
    },
    sensors: sensors.map((id) =>
      sensorOf(
        id,
        inputs.filter((input) => input.sensor === id),
        dice,
      ),
    ),
    control: {
      inputs: inputs.map(({ sensor: _, ...input }) => input),
      test: {
        from: 'control.24V',
        to: 'control.test',
        closedWhile: dice.pick(['resting', 'asking']),
        expects: [inputs[0]?.id],
        every_s: 60,
        whenFailed: dice.pick(['does-not-close', 'nothing']),
      },
      source: supply.source,
    },
    cables,
    resistors: dice.chance(0.5) ? [{ id: 'R1', from: 'control.in-1', to: dice.pick(['control.0V', 'box.1']), ohm: 4700 }] : [],
    // an output without a contact has no terminal that could be fed
    joints: ['box.1', ...inputs.map((input) => `${input.sensor}.x${input.id}`)],
  }
  return JSON.stringify({ ...file, wiring })
}

interface FileInput {
  readonly id: string
  readonly [name: string]: unknown
}

/** Mostly "seen" below and "clear" above, or the other way round where the input opens. */
function inputsOf(id: string, dice: Dice): readonly FileInput[] {
  const acts = dice.pick(['stop', 'reverse', 'open'])
  const [least, most] = acts === 'open' ? ['clear', 'seen'] : ['seen', 'clear']
  const low = { from_V: -50, to_V: 5, means: dice.chance(0.8) ? least : 'fault' }
  const high = { from_V: 11, to_V: 50, means: most }
  const input = { id, acts, plus: `control.${id}`, minus: 'control.0V', ohm: 3300, bands: [low, high] }
  const fed = dice.chance(0.2) ? { ...input, fedFrom: { terminal: 'control.24V', ohm: 2200 } } : input
  if (acts === 'open' || !dice.chance(0.3)) return [fed]
  const other = { ...fed, id: `${id}b`, plus: `control.${id}b`, pairedWith: { id, discrepancy_s: 0.5 } }
  return [{ ...fed, pairedWith: { id: other.id, discrepancy_s: 0.5 } }, other]
}

/** The output's terminals are the same whatever its kind: `x` fed where it is a contact, `y` to the input. */
function coresOf(input: string, id: string, sensor: string, dice: Dice) {
  const feed = { id: `${id}f`, from: dice.pick(['control.24V', 'control.24V', 'control.0V']), to: `${sensor}.x${input}` }
  return [feed, { id, from: `control.${input}`, to: `${sensor}.y${input}` }]
}

function sensorOf(id: string, inputs: readonly FileInput[], dice: Dice) {
  return {
    sensor: id,
    power: { plus: `${id}.plus`, minus: `${id}.minus`, least_V: dice.pick([11, 21.5]), largest_V: 31, largest_A: dice.pick([0.05, 0.3]) },
    outputs: inputs.map((input, i) => {
      const opens = input['acts'] === 'open'
      const onIn = dice.chance(0.8) ? [opens ? 'seen' : 'clear'] : dice.pick([['seen'], ['clear', 'warming-up']])
      return outputOf(`P${i}`, { id, name: input.id, onIn, acts: opens ? 'opening' : 'presence' }, dice)
    }),
    test: { plus: `${id}.test`, minus: `${id}.minus`, ohm: 4200, asked: dice.pick(['below', 'above']), on_V: 13, off_V: 6 },
    ...(dice.chance(0.3) ? { ownFaults_s: 2 } : {}),
    source: { basis: 'invented', note: 'of no sensor' },
  }
}

interface Wanted {
  readonly id: string
  readonly name: string
  readonly onIn: readonly string[]
  readonly acts: string
}

function outputOf(name: string, { id, name: input, onIn, acts }: Wanted, dice: Dice) {
  const [x, y] = [`${id}.x${input}`, `${id}.y${input}`]
  const pulsed = dice.chance(0.5) ? { pulsed: { off_V: dice.pick([3, 15]), within_s: 0.1 } } : {}
  const kind = dice.pick(['contact', 'change-over', 'sourcing', 'sinking'])
  if (kind === 'contact') return { kind, name, acts, from: x, to: y, closedIn: onIn }
  if (kind === 'change-over') return { kind, name, acts, common: x, energised: y, released: `${id}.z${input}`, energisedIn: onIn }
  return { kind, name, acts, at: y, onIn, off_ohm: dice.pick([100_000, 4000]), ...pulsed }
}
