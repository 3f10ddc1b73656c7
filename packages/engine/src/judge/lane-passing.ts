import { type CountedField, fieldName } from '../coverage/scene.ts'
import { type Along, seenAlong } from '../coverage/seen-along.ts'
import type { Door, DoorState } from '../model/door.ts'
import type { Step } from '../model/finding.ts'
import type { InputPath } from '../model/source.ts'
import type { Drive, Lane } from '../model/traffic.ts'
import type { SensingFunction } from '../model/zone.ts'
import { closingSpeedAt, kineticEnergy_J, type LeafDrive } from '../motion/leaf-run.ts'
import { turningEnergy_J, turningLeaf } from '../motion/turning-leaf.ts'
import { type ContactEvidence, contactEvidence } from '../passing/contact-evidence.ts'
import { type LaneContact, type LaneQuestion, type LaneVerdict, laneVerdict, type TimedField } from '../passing/lane-verdict.ts'
import { leafPlane } from '../passing/leaf-plane.ts'
import { type PassageEvidence, passageEvidence } from '../passing/passage-evidence.ts'
import { stateFacts } from './coverage-drafts.ts'
import { quantity, step } from './drafts.ts'
import { fieldsOfFunction } from './fields.ts'
import {
  bodyPath,
  DRIVE,
  fieldPath,
  HINGED,
  LEAF,
  lanePath,
  OPENING_HEIGHT,
  OPENING_WIDTH,
  SURROUNDINGS,
  sensorPath,
  VISIBILITY,
} from './paths.ts'
import type { Context, Draft, RestsOn } from './rule.ts'

const BY = 'passing/lane-verdict'

/** What can be said about one lane in one state of the door. */
export type LanePassing =
  | { readonly kind: 'missing'; readonly needs: readonly InputPath[] }
  | { readonly kind: 'not-computable' }
  | { readonly kind: 'found'; readonly verdict: LaneVerdict; readonly blanked: boolean }

const answers = new WeakMap<Context, Map<string, LanePassing>>()

/** Computed at most once in a judgement: both rules about a lane ask the same. */
export function lanePassing(context: Context, lane: Lane, state: DoorState): LanePassing {
  const known = answers.get(context) ?? new Map<string, LanePassing>()
  answers.set(context, known)
  const key = `${lane.id}@${state.id}`
  const answer = known.get(key) ?? answerOf(context.door, lane, state)
  known.set(key, answer)
  return answer
}

function answerOf(door: Door, lane: Lane, state: DoorState): LanePassing {
  const needs = missingInputs(door, lane)
  const question = questionOf(door, lane, state)
  if (question === undefined) return { kind: 'missing', needs }
  return { kind: 'found', verdict: laneVerdict(question), blanked: question.fields.length < timedFields(door, lane, state).length }
}

/** Undefined where something is missing. */
function questionOf(door: Door, lane: Lane, state: DoorState): LaneQuestion | undefined {
  const plane = turningLeaf(door) ?? leafPlane(door, state)
  const drive = door.drive && plane && leafDrive(door.drive, plane.way_mm)
  const { slowest_mm_per_s: slowest, fastest_mm_per_s: fastest } = lane
  if (missingInputs(door, lane).length > 0 || !plane || !drive || slowest === undefined || fastest === undefined) return undefined
  const fields = timedFields(door, lane, state).filter(({ counted }) => counted.field.blanking.length === 0)
  const openings_mm = [plane.way_mm, ...(door.drive?.partialOpenings_mm ?? []).filter((way_mm) => way_mm < plane.way_mm)]
  return { door, state, lane, drive, plane, speeds_mm_per_s: [slowest, fastest], fields, openings_mm }
}

/** Evidence of every lane and state: that nobody is struck, or a case in which somebody is; neither where it cannot be shown in this form. */
export function lanesEvidence(door: Door): {
  readonly passages: readonly PassageEvidence[]
  readonly contacts: readonly ContactEvidence[]
} {
  const questions = (door.lanes ?? []).flatMap((lane) => door.states.flatMap((state) => questionOf(door, lane, state) ?? []))
  const proved = questions.map((question) => passageEvidence(question))
  return {
    passages: proved.flatMap((each) => each ?? []),
    contacts: questions.flatMap((question, i) => (proved[i] === undefined ? (contactEvidence(question) ?? []) : [])),
  }
}

/** A field with blanking windows does not act at some positions of the leaf: none of it is counted on. */
function timedFields(door: Door, lane: Lane, state: DoorState): readonly TimedField[] {
  return fieldsOfFunction(door, 'presence').map((counted) => {
    const { response_s = 0, hold_s = 0, presenceTime_s } = counted.field
    const holds = presenceTime_s === undefined || lane.longestStay_s === undefined || presenceTime_s >= lane.longestStay_s
    return { counted, along: alongOf(door, counted, state), response_s, hold_s, holds }
  })
}

const alongs = new WeakMap<Door, Map<string, Along>>()

/** Prepared once for all lanes. */
function alongOf(door: Door, counted: CountedField, state: DoorState): Along {
  const known = alongs.get(door) ?? new Map<string, Along>()
  alongs.set(door, known)
  const key = `${fieldName(counted)}@${state.id}`
  const along = known.get(key) ?? seenAlong(door, state, counted)
  known.set(key, along)
  return along
}

function missingInputs(door: Door, lane: Lane): readonly InputPath[] {
  const { drive, leaf } = door
  const needs: InputPath[] = leaf === undefined ? [LEAF] : leaf.travel === 'turning' && leaf.hinged === undefined ? [HINGED] : []
  if (drive === undefined) needs.push(DRIVE)
  else needs.push(...missingOfDrive(drive).map((name) => `${DRIVE}/${name}`))
  if (lane.slowest_mm_per_s === undefined) needs.push(`${lanePath(door, lane)}/slowest_m_per_s`)
  if (lane.fastest_mm_per_s === undefined) needs.push(`${lanePath(door, lane)}/fastest_m_per_s`)
  if (lane.falls === true)
    for (const body of door.bodies)
      if (lane.bodies.includes(body.id) && !body.postures.some(({ lies }) => lies === true)) needs.push(`${bodyPath(door, body)}/postures`)
  for (const { sensor, field } of fieldsOfFunction(door, 'presence')) {
    if (field.response_s === undefined) needs.push(`${fieldPath(door, sensor, field)}/response_s`)
    if (field.hold_s === undefined) needs.push(`${fieldPath(door, sensor, field)}/hold_s`)
  }
  return needs
}

function missingOfDrive(drive: Drive): readonly string[] {
  const unknown: string[] = []
  if (drive.closeSpeed_mm_per_s === undefined) unknown.push('closeSpeed_m_per_s')
  if (drive.closeAccel_mm_per_s2 === undefined) unknown.push('closeAccel_m_per_s2')
  if (drive.stoppingCurve.length === 0) {
    if (drive.stopDelay_s === undefined) unknown.push('stopDelay_s')
    if (drive.stopDecel_mm_per_s2 === undefined) unknown.push('stopDecel_m_per_s2')
  }
  if (drive.afterStop === undefined) unknown.push('afterStop')
  if (drive.afterStop === 'reverse') {
    if (drive.reverseDelay_s === undefined) unknown.push('reverseDelay_s')
    if (drive.openSpeed_mm_per_s === undefined) unknown.push('openSpeed_m_per_s')
    if (drive.openAccel_mm_per_s2 === undefined) unknown.push('openAccel_m_per_s2')
  }
  return unknown
}

function leafDrive(drive: Drive, way: number): LeafDrive | undefined {
  const { closeSpeed_mm_per_s: speed, closeAccel_mm_per_s2: accel, closeJerk_mm_per_s3: jerk, stoppingCurve, afterStop } = drive
  if (speed === undefined || accel === undefined || missingOfDrive(drive).length > 0) return undefined
  return {
    way,
    close: { speed, accel, jerk },
    // a leaf that stays never opens: any motion will do
    open: { speed: drive.openSpeed_mm_per_s ?? speed, accel: drive.openAccel_mm_per_s2 ?? accel },
    stopDelay_s: drive.stopDelay_s ?? 0,
    stopDecel: drive.stopDecel_mm_per_s2 ?? accel,
    reverseDelay_s: afterStop === 'reverse' ? drive.reverseDelay_s : undefined,
    stoppingCurve: stoppingCurve.length > 0 ? stoppingCurve.map(({ at_s, way_mm }) => ({ at_s, way: way_mm })) : undefined,
  }
}

/** `lane`, `laneName`, `who`, [`followGap_mm`], [`falls`], `stateFacts`: the facts that every finding about a lane has. */
export function laneFacts(lane: Lane, state: DoorState) {
  const { followGap_mm, falls } = lane
  const more = { ...(followGap_mm === undefined ? {} : { followGap_mm }), ...(falls === true ? { falls } : {}) }
  return { lane: lane.id, laneName: lane.name, who: lane.who, ...more, ...stateFacts(state) }
}

/**
 * Facts of a contact or of the least gap: `from` (side), `body_mm_per_s`, `leaf_mm_per_s`, `way_mm` (of the edge, still to go), of a leaf that turns [`angle_deg`] (from shut), `opening_mm`, `stands`, `isSeen`, of a body of
 * several parts [`part`] (the name of what is met),
 * and where somebody said what moves `energy_J`.
 */
export function contactFacts(door: Door, contact: LaneContact): Draft['facts'] {
  const mass_kg = door.drive?.movingMass_kg
  const turning = turningLeaf(door)
  const edge = closingSpeedAt(contact.run, contact.at_s)
  return {
    from: contact.from,
    body_mm_per_s: contact.bodySpeed,
    leaf_mm_per_s: Math.abs(contact.leafSpeed),
    way_mm: contact.way,
    opening_mm: contact.opening_mm,
    stands: contact.stands,
    isSeen: contact.stop_s !== undefined,
    ...(contact.part === undefined ? {} : { part: contact.part }),
    ...(contact.company === undefined ? {} : { company: contact.company }),
    ...(turning ? { angle_deg: (contact.way / turning.arm_mm) * (180 / Math.PI) } : {}),
    ...(mass_kg === undefined
      ? {}
      : { energy_J: turning ? turningEnergy_J(turning, mass_kg, contact.way, edge) : kineticEnergy_J(mass_kg, contact.leafSpeed) }),
  }
}

export function worstCaseOf(
  { stance, x_mm, from, place_mm }: Pick<LaneContact, 'stance' | 'x_mm' | 'from' | 'place_mm'>,
  state: DoorState,
  z_mm: (x_mm: number, y_mm: number) => number,
) {
  const y_mm = from === 'b' ? place_mm : -place_mm
  return { body: stance.body.id, posture: stance.index, x_mm, y_mm, z_mm: z_mm(x_mm, y_mm), yaw_rad: stance.yaw_rad, state: state.id }
}

/** The chain of times since the closing began, and the speeds at its end. */
export function chainOf(door: Door, lane: Lane, contact: LaneContact): readonly Step[] {
  const { seen_s, stop_s, run, enters_s, at_s, opening_mm } = contact
  const at = (name: string, value: number, from: Parameters<typeof step>[3], formula?: string) =>
    step(name, quantity(value, 's'), BY, from, formula)
  const steps: Step[] = [
    step('leaf begins to close from', quantity(opening_mm, 'mm'), BY, { inputs: [OPENING_HEIGHT, OPENING_WIDTH, LEAF] }),
  ]
  if (seen_s !== undefined && stop_s !== undefined) {
    steps.push(at('body becomes visible', seen_s, { inputs: [lanePath(door, lane)] }))
    steps.push(at('output changes', stop_s, { steps: ['body becomes visible'] }, 'becomes visible + response'))
    if (at_s >= run.brake_s)
      steps.push(at('braking begins', run.brake_s, { inputs: [DRIVE], steps: ['output changes'] }, 'output changes + delay of the control'))
    if (at_s >= run.rest_s) steps.push(at('leaf at rest', run.rest_s, { inputs: [DRIVE], steps: ['braking begins'] }))
    if (at_s >= run.opens_s)
      steps.push(at('leaf opens again', run.opens_s, { inputs: [DRIVE], steps: ['leaf at rest'] }, 'at rest + dwell'))
  }
  if (Number.isFinite(enters_s)) steps.push(at("body enters the leaf's plane", enters_s, { inputs: [lanePath(door, lane)] }))
  steps.push(at('nearest', at_s, {}))
  steps.push(step('way still to go', quantity(contact.way, 'mm'), 'motion/leaf-run', { inputs: [DRIVE], steps: ['nearest'] }))
  return steps
}

/** The chain, and the two speeds that make the relative one. */
export function contactSteps(door: Door, lane: Lane, contact: LaneContact): readonly Step[] {
  const speed = (name: string, value: number, by: string, inputs: readonly InputPath[]) =>
    step(name, quantity(value, 'mm_per_s'), by, { inputs, steps: ['nearest'] })
  return [
    ...chainOf(door, lane, contact),
    speed('speed of the body', contact.bodySpeed, BY, [lanePath(door, lane)]),
    speed('speed of the leaf', Math.abs(contact.leafSpeed), 'motion/leaf-run', [DRIVE]),
    step(
      'relative speed',
      quantity(contact.relativeSpeed, 'mm_per_s'),
      BY,
      { steps: ['speed of the body', 'speed of the leaf'] },
      turningLeaf(door) ? 'length of the difference of both velocities where they touch' : 'sqrt(body^2 + leaf^2)',
    ),
  ]
}

export function laneRestsOn({ door, values }: Context, lane: Lane, functions: readonly SensingFunction[] = ['presence']): RestsOn {
  const counted = functions.flatMap((each) => fieldsOfFunction(door, each))
  const bodies = door.bodies.filter(({ id }) => lane.bodies.includes(id))
  const sensors = [...new Set(counted.map(({ sensor }) => sensor))]
  const inputs = [
    ...SURROUNDINGS,
    VISIBILITY,
    LEAF,
    DRIVE,
    lanePath(door, lane),
    ...bodies.map((body) => bodyPath(door, body)),
    ...sensors.map((sensor) => sensorPath(door, sensor)),
  ]
  return { inputs, values: door.extinction_per_mm > 0 ? [values.koschmiederContrast] : [], bodies, sensors }
}
