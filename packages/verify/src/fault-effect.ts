import type { Belief, Outcome } from './fault-course.ts'
import type { Input, Wired } from './wired.ts'
import type { WiringFault } from './wiring-faults.ts'

export const EFFECTS = [
  'hidden-and-dangerous',
  'found-by-test',
  'stops-the-door',
  'keeps-from-closing',
  'fails-to-open',
  'no-effect',
] as const

export interface Effect {
  readonly effect: (typeof EFFECTS)[number]
  readonly sensor: string | undefined
  readonly within_s: number | undefined
  readonly hidden: boolean
}

/** What inputs say at one supply: with nobody there, with somebody before each sensor, while the control asks. */
export interface Said {
  readonly nobody: Outcome
  readonly before: readonly Outcome[]
  readonly asking: Outcome | undefined
}

/** The worse of the effects at each supply; the first where they are alike. */
export function effectOf(wired: Wired, fault: WiringFault, supplies: readonly Said[]): Effect {
  const effects = supplies.map((said) => effectAt(wired, fault, said))
  return effects.reduce((worst, each) => (EFFECTS.indexOf(each.effect) < EFFECTS.indexOf(worst.effect) ? each : worst))
}

function effectAt({ sensors, inputs, test }: Wired, { sensorStuck }: WiringFault, { nobody, before, asking }: Said): Effect {
  const plain = (effect: Effect['effect'], sensor?: string): Effect => ({ effect, sensor, within_s: undefined, hidden: false })
  const isMissed = test !== undefined && inputs.some(({ id }, i) => test.expects.includes(id) && asking?.beliefs[i] === 'c')
  const says = (outcome: Outcome | undefined) => outcome?.beliefs ?? []
  const unheeded = sensors.find(({ acts }, i) => acts.includes('presence') && !heeds(inputs, says(before[i])))
  if (unheeded) {
    const own_s = sensorStuck?.id === unheeded.id ? unheeded.ownFaults_s : undefined
    const within_s = own_s ?? (isMissed && test?.keepsFromClosing ? test.every_s : undefined)
    if (within_s !== undefined) return { ...plain('found-by-test', unheeded.id), within_s }
    return { ...plain('hidden-and-dangerous', unheeded.id), hidden: true }
  }
  const resting = nobody.beliefs
  if (disagree(inputs, resting) || inputs.some(({ protects }, i) => protects && resting[i] === 'f')) return plain('stops-the-door')
  if (resting.some((belief) => belief !== 'c')) return plain('keeps-from-closing')
  const opensNothing = sensors.find(
    ({ acts }, i) => acts.includes('opening') && !inputs.some(({ opens }, k) => opens && says(before[i])[k] === 's'),
  )
  if (opensNothing && inputs.some(({ opens }) => opens)) return plain('fails-to-open', opensNothing.id)
  if (isMissed) return plain('keeps-from-closing')
  return { ...plain('no-effect'), hidden: !before.some(({ beliefs }) => disagree(inputs, beliefs)) }
}

function heeds(inputs: readonly Input[], beliefs: readonly Belief[]): boolean {
  return disagree(inputs, beliefs) || inputs.some(({ protects }, i) => protects && (beliefs[i] === 's' || beliefs[i] === 'f'))
}

function disagree(inputs: readonly Input[], beliefs: readonly Belief[]): boolean {
  return inputs.some(({ pairedWith }, i) => {
    const [one, other] = [beliefs[i], beliefs[inputs.findIndex(({ id }) => id === pairedWith)]]
    return one !== undefined && other !== undefined && one !== 'e' && other !== 'e' && one !== other
  })
}
