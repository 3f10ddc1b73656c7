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
  readonly sensors: readonly string[]
  readonly within_s: number | undefined
  readonly hidden: boolean
}

/** What inputs say at one supply: with nobody there, with somebody before each sensor, while the control asks. */
export interface Said {
  readonly nobody: Outcome
  readonly before: readonly Outcome[]
  readonly asking: Outcome | undefined
}

/** The worse of the effects at each supply, the first where they are alike; the sensors of all that are of its kind. */
export function effectOf(wired: Wired, fault: WiringFault, supplies: readonly Said[]): Effect {
  const effects = supplies.map((said) => effectAt(wired, fault, said))
  const worst = effects.reduce((worse, each) => (EFFECTS.indexOf(each.effect) < EFFECTS.indexOf(worse.effect) ? each : worse))
  const kin = effects.filter(({ effect }) => effect === worst.effect || (isUnheeded(effect) && isUnheeded(worst.effect)))
  const sensors = wired.sensors.map(({ id }) => id).filter((id) => kin.some((each) => each.sensors.includes(id)))
  const within_s = worst.within_s === undefined ? undefined : Math.max(...kin.map((each) => each.within_s ?? 0))
  return { ...worst, sensors, within_s }
}

function isUnheeded(effect: Effect['effect']): boolean {
  return effect === 'hidden-and-dangerous' || effect === 'found-by-test'
}

function effectAt({ sensors, inputs, test }: Wired, { sensorStuck }: WiringFault, { nobody, before, asking }: Said): Effect {
  const plain = (effect: Effect['effect'], named: readonly string[] = []): Effect => ({
    effect,
    sensors: named,
    within_s: undefined,
    hidden: false,
  })
  const isMissed = test !== undefined && inputs.some(({ id }, i) => test.expects.includes(id) && asking?.beliefs[i] === 'c')
  const says = (outcome: Outcome | undefined) => outcome?.beliefs ?? []
  const unheeded = sensors.filter(({ acts }, i) => acts.includes('presence') && !heeds(inputs, says(before[i])))
  if (unheeded.length > 0) {
    const named = unheeded.map(({ id }) => id)
    const own_s = unheeded.find(({ id }) => id === sensorStuck?.id)?.ownFaults_s
    if (own_s !== undefined && unheeded.length === 1) return { ...plain('found-by-test', named), within_s: own_s }
    if (isMissed && test?.keepsFromClosing) return { ...plain('found-by-test', named), within_s: Math.max(test.every_s, own_s ?? 0) }
    return { ...plain('hidden-and-dangerous', named), hidden: true }
  }
  const resting = nobody.beliefs
  if (disagree(inputs, resting) || inputs.some(({ protects }, i) => protects && resting[i] === 'f')) return plain('stops-the-door')
  if (resting.some((belief) => belief !== 'c')) return plain('keeps-from-closing')
  const opensNothing = sensors.filter(
    ({ acts }, i) => acts.includes('opening') && !inputs.some(({ opens }, k) => opens && says(before[i])[k] === 's'),
  )
  if (opensNothing.length > 0 && inputs.some(({ opens }) => opens))
    return plain(
      'fails-to-open',
      opensNothing.map(({ id }) => id),
    )
  if (isMissed && test?.keepsFromClosing) return plain('keeps-from-closing')
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
