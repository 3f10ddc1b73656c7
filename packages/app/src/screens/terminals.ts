import type { DoorFile } from '@sillsight/document'
import { pushAt, putAt, valueAt } from '../entry/places.ts'
import type { Draft } from '../store/contract.ts'

type FileWiring = NonNullable<DoorFile['wiring']>

const FORM = /^[A-Za-z0-9][A-Za-z0-9_-]{0,59}\.[!-~]{1,60}$/
/** Fields of a wiring that hold a terminal. */
const HOLDS_ONE = new Set(['plus', 'minus', 'from', 'to', 'common', 'energised', 'released', 'at', 'terminal'])

/** Every terminal that some part has, in the order of the parts. */
export function terminalsOf({ supply, sensors, control, joints = [] }: FileWiring): readonly string[] {
  const ofOutput = (output: FileWiring['sensors'][number]['outputs'][number]) => {
    if (output.kind === 'contact') return [output.from, output.to]
    return output.kind === 'change-over' ? [output.common, output.energised, output.released] : [output.at]
  }
  return [
    ...new Set([
      supply.plus,
      supply.minus,
      ...control.inputs.flatMap(({ plus, minus, fedFrom }) => [plus, minus, ...(fedFrom ? [fedFrom.terminal] : [])]),
      ...(control.test ? [control.test.from, control.test.to] : []),
      ...joints,
      ...sensors.flatMap(({ power, outputs, test }) => [
        power.plus,
        power.minus,
        ...outputs.flatMap(ofOutput),
        ...(test ? [test.plus, test.minus] : []),
      ]),
    ]),
  ]
}

/** What somebody typed as the name of a terminal of a device, or undefined where it is none. */
export function terminalName(typed: string, device: string): string | undefined {
  const tidy = typed.trim().replace(/\s+/g, '-')
  const whole = tidy.includes('.') ? tidy : `${device}.${tidy}`
  return FORM.test(whole) ? whole : undefined
}

/** A terminal has its name wherever it stands: a core that ended there still does. */
export function renameTerminal(draft: Draft, from: string, to: string): void {
  const walk = (path: string): void => {
    const value = valueAt(draft, path)
    const name = path.slice(path.lastIndexOf('/') + 1)
    const isTerminal = HOLDS_ONE.has(name) || path.startsWith('wiring/joints/')
    if (typeof value === 'string' && isTerminal && value === from) putAt(draft, path, to)
    if (typeof value === 'object' && value !== null) for (const key of Object.keys(value)) walk(`${path}/${key}`)
  }
  walk('wiring')
}

/** Where a part goes away, the ends of its cores stay as ends in the air: a core is taken away by whoever means to. */
export function keepEnds(draft: Draft): void {
  if (draft.wiring === undefined) return
  const wiring = JSON.parse(JSON.stringify(draft.wiring)) as FileWiring // lists of a mergeable document have not all that lists have
  const known = new Set(terminalsOf(wiring))
  const ends = [...wiring.cables.flatMap(({ cores }) => cores), ...(wiring.resistors ?? [])].flatMap(({ from, to }) => [from, to])
  const loose = [...new Set(ends.filter((end) => !known.has(end)))]
  for (const end of loose) pushAt(draft, 'wiring/joints', end)
}
