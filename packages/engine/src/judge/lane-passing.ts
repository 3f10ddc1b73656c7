import { leafChanges } from '../coverage/leaf-sight.ts'
import { type CountedField, fieldName } from '../coverage/scene.ts'
import { type Along, seenAlong } from '../coverage/seen-along.ts'
import type { TolerantField } from '../coverage/tile-scene.ts'
import type { Door, DoorState } from '../model/door.ts'
import type { Step } from '../model/finding.ts'
import type { InputPath } from '../model/source.ts'
import type { Drive, Lane } from '../model/traffic.ts'
import type { SensingFunction } from '../model/zone.ts'
import { closingFrom, closingSpeedAt, kineticEnergy_J, type LeafDrive } from '../motion/leaf-run.ts'
import { turningEnergy_J, turningLeaf } from '../motion/turning-leaf.ts'
import { type ContactEvidence, contactEvidence } from '../passing/contact-evidence.ts'
import { type LaneContact, type LaneQuestion, type LaneVerdict, laneVerdict, type TimedField } from '../passing/lane-verdict.ts'
import { fieldsAboveLeaf } from '../passing/leaf-fields.ts'
import { leafPlane } from '../passing/leaf-plane.ts'
import { type PassageEvidence, passageEvidence } from '../passing/passage-evidence.ts'
import { NO_QUIET, quietOf, startsWhileHeld } from '../passing/start-of-closing.ts'
import { earlierMayBeWorse } from '../passing/stop-bounds.ts'
import { sightWithLeaf } from '../passing/turning-shade.ts'
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
import { slowingOf } from './slowing.ts'

const BY = 'passing/lane-verdict'
const CYCLE = `${DRIVE}/cycle`

/** What can be said about one lane in one state of the door. */
export type LanePassing =
  | { readonly kind: 'missing'; readonly needs: readonly InputPath[] }
  | { readonly kind: 'not-computable' }
  | {
      readonly kind: 'found'
      readonly verdict: LaneVerdict
      /** Where the leaf changes what some field sees, or when it acts, `verdict` counts on no more than is surely seen: this is what would be found if they saw as with the leaf away. */
      readonly atBest: LaneVerdict | undefined
    }

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
  const changed = timedFields(door, lane, state).filter(({ counted }) => leafChanges(counted.field))
  if (changed.length === 0) return { kind: 'found', verdict: laneVerdict(question), atBest: undefined }
  // attempts against an output are judged for sights that stay; weak brakes and measured curves: a stop that comes earlier may be worse, so that neither more nor less sight bounds anything
  if (question.openings_mm.some((opening_mm) => earlierMayBeWorse(closingFrom(question.drive, opening_mm))) || question.startsWhileHeld)
    return { kind: 'not-computable' }
  const verdict = lane.falls === true ? { ...laneVerdict(question), leafMatters: true } : verdictAboveLeaf(question, changed)
  return { kind: 'found', verdict, atBest: laneVerdict({ ...question, fields: [...question.fields, ...changed] }) }
}

/** For each opening by itself, as the sights depend on it. */
function verdictAboveLeaf(question: LaneQuestion, changed: readonly TimedField[]): LaneVerdict {
  const { door, state, openings_mm } = question
  const { leaf } = door
  if (leaf === undefined) throw new Error('a lane that is judged must have a leaf')
  const along = (counted: CountedField, way_mm: number) =>
    alongOf(door, counted, state, { way_mm, sight: () => sightWithLeaf({ ...door, leaf }, state, counted, way_mm) })
  const verdicts = openings_mm.map((opening_mm) => {
    const above = changed.map((timed) => fieldsAboveLeaf(timed, opening_mm, along))
    const verdict = laneVerdict({ ...question, openings_mm: [opening_mm], fields: [...question.fields, ...above.flat()] })
    return { ...verdict, leafMatters: verdict.leafMatters || above.some(({ length }) => length === 0) }
  })
  return verdicts.reduce(worseOfBoth)
}

function worseOfBoth(a: LaneVerdict, b: LaneVerdict): LaneVerdict {
  const faster = (kind: 'struck' | 'walked') => ((b[kind]?.relativeSpeed ?? -1) > (a[kind]?.relativeSpeed ?? -1) ? b[kind] : a[kind])
  const nearer = b.tally.gap < a.tally.gap ? b : a
  return {
    ...a,
    struck: faster('struck'),
    walked: faster('walked'),
    nearest: nearer.nearest,
    tally: {
      struckAtMost: Math.max(a.tally.struckAtMost, b.tally.struckAtMost),
      walkedAtMost: Math.max(a.tally.walkedAtMost, b.tally.walkedAtMost),
      gap: nearer.tally.gap,
      gapAtLeast: Math.min(a.tally.gapAtLeast, b.tally.gapAtLeast),
      unproved: {
        struck: a.tally.unproved.struck + b.tally.unproved.struck,
        walked: a.tally.unproved.walked + b.tally.unproved.walked,
      },
    },
    passages: a.passages + b.passages,
    leafMatters: a.leafMatters || b.leafMatters,
  }
}

/** Undefined where something is missing. */
function questionOf(door: Door, lane: Lane, state: DoorState): LaneQuestion | undefined {
  const plane = turningLeaf(door) ?? leafPlane(door, state)
  const drive = door.drive && plane && leafDrive(door.drive, plane.way_mm)
  const { slowest_mm_per_s: slowest, fastest_mm_per_s: fastest } = lane
  if (missingInputs(door, lane).length > 0 || !plane || !drive || slowest === undefined || fastest === undefined) return undefined
  const fields = timedFields(door, lane, state).filter(({ counted }) => !leafChanges(counted.field))
  const openings_mm = [plane.way_mm, ...(door.drive?.partialOpenings_mm ?? []).filter((way_mm) => way_mm < plane.way_mm)]
  const speeds_mm_per_s = [slowest, fastest] as const
  return { door, state, lane, drive, plane, speeds_mm_per_s, fields, openings_mm, ...startsOf(door.drive, openings_mm) }
}

/** What the control's cycle says about closings: when they begin, and how far a reversal opens. */
function startsOf(
  given: Drive | undefined,
  openings_mm: readonly number[],
): Pick<LaneQuestion, 'quiet' | 'startsWhileHeld' | 'reversals_mm'> {
  const { cycle } = given ?? {}
  return {
    quiet: given ? quietOf(given) : NO_QUIET,
    startsWhileHeld: cycle !== undefined && startsWhileHeld(cycle),
    reversals_mm: cycle?.afterAttempts === 'partial' ? [undefined, Math.min(...openings_mm)] : [undefined],
  }
}

/** Evidence of every lane and state: that nobody is struck, or a case in which somebody is; neither where it cannot be shown in this form. */
export function lanesEvidence(door: Door): {
  readonly passages: readonly PassageEvidence[]
  readonly contacts: readonly ContactEvidence[]
} {
  const questions = (door.lanes ?? []).flatMap((lane) => door.states.flatMap((state) => questionOf(door, lane, state) ?? []))
  const asked = questions.map((question) => {
    const changed = timedFields(door, question.lane, question.state).filter(({ counted }) => leafChanges(counted.field))
    if (changed.length === 0) return { ...question, atWorst: question.fields }
    // what a leaf that turns runs over is not re-checked: nothing is counted on, and no contact told, that depends on it
    if (!('met' in question.plane)) return { ...question, atWorst: question.fields, isDoubtful: true }
    return { ...question, fields: [...question.fields, ...changed], atWorst: [...question.fields, ...behindShutLeaf(question, changed)] }
  })
  const proved = asked.map(({ atWorst, ...question }) => passageEvidence({ ...question, fields: atWorst }))
  return {
    passages: proved.flatMap((each) => each ?? []),
    // who is struck although every field sees as with the leaf away is struck: a stop that comes later is no better
    contacts: asked.flatMap((question, i) => {
      const isDoubtful =
        'isDoubtful' in question ||
        (question.atWorst !== question.fields && question.openings_mm.some((way) => earlierMayBeWorse(closingFrom(question.drive, way))))
      return proved[i] === undefined && !isDoubtful ? (contactEvidence(question) ?? []) : []
    }),
  }
}

/** What these fields see behind the shut leaf, or behind all that a leaf that turns runs over, they see wherever it is; in windows of the edge they do not act. */
function behindShutLeaf({ door, state }: LaneQuestion, changed: readonly TimedField[]): readonly TimedField[] {
  const { leaf } = door
  if (leaf === undefined) return []
  return changed
    .filter(({ counted }) => counted.field.blanking.length === 0)
    .map((timed) => ({ ...timed, sight: sightWithLeaf({ ...door, leaf }, state, timed.counted, 0) }))
}

function timedFields(door: Door, lane: Lane, state: DoorState): readonly TimedField[] {
  return fieldsOfFunction(door, 'presence').map((counted) => {
    const { response_s = 0, hold_s = 0, presenceTime_s } = counted.field
    const holds = presenceTime_s === undefined || lane.longestStay_s === undefined || presenceTime_s >= lane.longestStay_s
    return { counted, along: alongOf(door, counted, state), response_s, hold_s, holds }
  })
}

const alongs = new WeakMap<Door, Map<string, Along>>()

/** Prepared once for all lanes. */
function alongOf(
  door: Door,
  counted: CountedField,
  state: DoorState,
  leaf?: { readonly way_mm: number; readonly sight: () => TolerantField },
): Along {
  const known = alongs.get(door) ?? new Map<string, Along>()
  alongs.set(door, known)
  const key = `${fieldName(counted)}@${state.id}@${leaf?.way_mm ?? ''}`
  const along = known.get(key) ?? seenAlong(door, state, counted, leaf?.sight())
  known.set(key, along)
  return along
}

function missingInputs(door: Door, lane: Lane): readonly InputPath[] {
  const { drive, leaf } = door
  const needs: InputPath[] = leaf === undefined ? [LEAF] : leaf.travel === 'turning' && leaf.hinged === undefined ? [HINGED] : []
  if (drive === undefined) needs.push(DRIVE)
  else needs.push(...missingOfDrive(drive))
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

function missingOfDrive(drive: Drive): readonly InputPath[] {
  const unknown: InputPath[] = []
  if (drive.closeSpeed_mm_per_s === undefined) unknown.push(`${DRIVE}/closeSpeed_m_per_s`)
  if (drive.closeAccel_mm_per_s2 === undefined) unknown.push(`${DRIVE}/closeAccel_m_per_s2`)
  if (drive.stoppingCurve.length === 0) {
    if (drive.stopDelay_s === undefined) unknown.push(`${DRIVE}/stopDelay_s`)
    const { decel_mm_per_s2, path } = slowingOf(drive)
    if (decel_mm_per_s2 === undefined) unknown.push(path)
  }
  if (drive.afterStop === undefined) unknown.push(`${DRIVE}/afterStop`)
  if (drive.afterStop === 'reverse') {
    if (drive.reverseDelay_s === undefined) unknown.push(`${DRIVE}/reverseDelay_s`)
    if (drive.openSpeed_mm_per_s === undefined) unknown.push(`${DRIVE}/openSpeed_m_per_s`)
    if (drive.openAccel_mm_per_s2 === undefined) unknown.push(`${DRIVE}/openAccel_m_per_s2`)
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
    stopDecel: slowingOf(drive).decel_mm_per_s2 ?? accel,
    reverseDelay_s: afterStop === 'reverse' ? drive.reverseDelay_s : undefined,
    stoppingCurve: stoppingCurve.length > 0 ? stoppingCurve.map(({ at_s, way_mm }) => ({ at_s, way: way_mm })) : undefined,
  }
}

/** How long the control warns before every closing; 0 where nobody said that it does. */
export function warningOf({ drive }: Pick<Door, 'drive'>): number {
  return drive?.cycle?.preWarning_s ?? 0
}

/**
 * `lane`, `laneName`, `who`, [`followGap_mm`], [`falls`], `stateFacts`: the facts that every finding about a lane has; of whether the leaf meets anybody also [`commandedAfter_s`] (no
 * closing is commanded sooner after an output let go), [`warning_s`] and [`attempts`].
 */
export function laneFacts(lane: Lane, state: DoorState, drive?: Drive) {
  const { followGap_mm, falls } = lane
  const { warning_s, beforeCommand_s } = drive ? quietOf(drive) : NO_QUIET
  const attempts = drive?.cycle?.attempts
  const more = {
    ...(followGap_mm === undefined ? {} : { followGap_mm }),
    ...(falls === true ? { falls } : {}),
    ...(beforeCommand_s === undefined ? {} : { commandedAfter_s: beforeCommand_s }),
    ...(warning_s > 0 ? { warning_s } : {}),
    ...(attempts === undefined ? {} : { attempts }),
  }
  return { lane: lane.id, laneName: lane.name, who: lane.who, ...more, ...stateFacts(state) }
}

/** [`leafMatters`]: what some field sees depends on where the leaf is, and only what it surely sees was counted on. */
export function leafFact({ verdict, atBest }: Extract<LanePassing, { kind: 'found' }>): Draft['facts'] {
  return atBest === undefined ? {} : { leafMatters: verdict.leafMatters }
}

/**
 * Facts of a contact or of the least gap: `from` (side), `body_mm_per_s`, `leaf_mm_per_s`, `way_mm` (of the edge, still to go), of a leaf that turns [`angle_deg`] (from shut), `opening_mm`, `stands`, `isSeen`, [`whileHeld`] (the closing begins though an output forbids it), of a body of
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
    ...(contact.whileHeld ? { whileHeld: true } : {}),
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

/** What the control's cycle says about the time before: on the same clock, 0 when the leaf begins to close. */
function beforeClosing(door: Door): readonly Step[] {
  const warning_s = warningOf(door)
  const { beforeCommand_s = 0, cancels } = door.drive ? quietOf(door.drive) : NO_QUIET
  const by = 'passing/start-of-closing'
  const formula = cancels ? '- warning; an output in it calls the closing off' : '- warning; outputs are looked at again when it ends'
  const clear = step(
    'the last output before has let go, at the latest',
    quantity(-warning_s - beforeCommand_s, 's'),
    by,
    { inputs: [CYCLE, `${DRIVE}/holdOpen_s`] },
    '- (hold-open time or pause between attempts) - warning',
  )
  const warns = step('closing is commanded, the warning begins', quantity(-warning_s, 's'), by, { inputs: [CYCLE] }, formula)
  return [...(beforeCommand_s > 0 ? [clear] : []), ...(warning_s > 0 ? [warns] : [])]
}

/** The chain of times since the closing began, and the speeds at its end. */
export function chainOf(door: Door, lane: Lane, contact: LaneContact): readonly Step[] {
  const { seen_s, stop_s, run, enters_s, at_s, opening_mm } = contact
  const at = (name: string, value: number, from: Parameters<typeof step>[3], formula?: string) =>
    step(name, quantity(value, 's'), BY, from, formula)
  const steps: Step[] = [
    ...beforeClosing(door),
    step('leaf begins to close from', quantity(opening_mm, 'mm'), BY, { inputs: [OPENING_HEIGHT, OPENING_WIDTH, LEAF] }),
  ]
  if (seen_s !== undefined && stop_s !== undefined) {
    steps.push(at('body becomes visible', seen_s, { inputs: [lanePath(door, lane)] }))
    steps.push(at('output changes', stop_s, { steps: ['body becomes visible'] }, 'becomes visible + response'))
    const slows = door.drive?.brake === 'none' ? 'coasting begins' : 'braking begins'
    if (at_s >= run.brake_s)
      steps.push(at(slows, run.brake_s, { inputs: [DRIVE], steps: ['output changes'] }, 'output changes + delay of the control'))
    if (at_s >= run.rest_s) steps.push(at('leaf at rest', run.rest_s, { inputs: [DRIVE], steps: [slows] }))
    if (at_s >= run.opens_s)
      steps.push(at('leaf opens again', run.opens_s, { inputs: [DRIVE], steps: ['leaf at rest'] }, 'at rest + dwell'))
  }
  if (Number.isFinite(enters_s))
    steps.push(
      at(turningLeaf(door) ? 'body comes within the sweep of the leaf' : "body enters the leaf's plane", enters_s, {
        inputs: [lanePath(door, lane)],
      }),
    )
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
