import { type DoorFile, firstWired, firstWiring } from '@sillsight/document'
import { freeId, freeNumber } from '../entry/free-id.ts'
import { pushAt, putAt } from '../entry/places.ts'
import type { Draft } from '../store/contract.ts'

type FileWiring = NonNullable<DoorFile['wiring']>
type FileCable = FileWiring['cables'][number]

const PATH = 'wiring'
/** To begin with: what many lines end in. */
const END_OHM = 8200

/** The usual wiring of these sensors: the whole of it where there is none, else each on an input and a cable of its own, the same ones on each device. */
export function wire(draft: Draft, sensors: readonly string[]): void {
  const { wiring } = draft
  if (wiring === undefined) return putAt(draft, PATH, firstWiring(sensors))
  for (const each of sensors) {
    const taken = [...wiring.control.inputs, ...wiring.cables].map(({ id }) => id)
    const { sensor, input, cable } = structuredClone(firstWired(each, freeNumber(['W', 'stop'], taken, each)))
    pushAt(draft, `${PATH}/sensors`, sensor)
    pushAt(draft, `${PATH}/control/inputs`, input)
    if (wiring.control.test) pushAt(draft, `${PATH}/control/test/expects`, input.id)
    pushAt(draft, `${PATH}/cables`, cable)
  }
}

export function newCable({ cables, supply, sensors }: FileWiring): FileCable {
  const taken = cables.map(({ id }) => id)
  const core = { id: '1', from: supply.plus, to: sensors[0]?.power.plus ?? supply.minus }
  return { id: `W${freeNumber(['W'], taken)}`, length_mm: 5000, conductor: { area_mm2: 0.5 }, cores: [core] }
}

/** @param terminals of the wiring: the first two are joined until somebody says better */
export function newCore({ cores }: FileCable, [from = '', to = '']: readonly string[]): FileCable['cores'][number] {
  const taken = cores.map(({ id }) => id)
  return { id: freeNumber([''], taken), from, to }
}

export function newJoint(terminals: readonly string[]): string {
  return `joint.${freeNumber(['joint.'], terminals)}`
}

/** Across the first input: there a line that is watched ends. */
export function newResistor({ resistors = [], control, supply }: FileWiring): NonNullable<FileWiring['resistors']>[number] {
  const taken = resistors.map(({ id }) => id)
  const { plus, minus } = control.inputs[0] ?? supply
  return { id: freeId('R', taken), from: plus, to: minus, ohm: END_OHM }
}

export function newInput({ inputs }: FileWiring['control']): FileWiring['control']['inputs'][number] {
  const [first] = inputs
  const device = first?.plus.split('.')[0] ?? 'control'
  const taken = inputs.map((input) => input.id)
  const id = freeId('in', taken)
  const bands = structuredClone(first?.bands ?? [{ from_V: 11, to_V: 50, means: 'clear' as const }])
  return { id, acts: 'stop', plus: `${device}.${id}`, minus: first?.minus ?? `${device}.0V`, ohm: 3000, bands }
}
