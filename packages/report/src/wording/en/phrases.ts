import type { Basis, Cause, FieldPart, ProtectionConcept, Verdict } from '@sillsight/engine'
import { timeline } from './timeline.ts'

const named = (name: string) => (/^(the|side)\b/i.test(name) ? name : `the ${name}`)
const listed = (words: readonly string[]) =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words[words.length - 1] ?? ''}`

/**
 * English, apart from the sentences of the rules. Figures, names and places come as they are shown. What another language needs in another order is one
 * phrase here, never put together outside.
 */
export const phrases = {
  decimal: '.',
  quoted: (name: string): string => `\u201c${name}\u201d`,
  listed,
  yes: 'yes',
  no: 'no',
  /** A name that the program itself gave and no person: of an implied obstacle, a built-in posture, a side without a name. */
  given: (name: string): string => name,
  verdicts: {
    fail: 'fails',
    undetermined: 'not settled',
    pass: 'in order',
    'not-applicable': 'does not apply',
  } satisfies Readonly<Record<Verdict, string>>,
  /** In a count: "2 fail, 1 not settled". */
  counted: {
    fail: (count: number): string => (count === 1 ? 'fails' : 'fail'),
    undetermined: (): string => 'not settled',
    pass: (): string => 'in order',
    'not-applicable': (count: number): string => (count === 1 ? 'does not apply' : 'do not apply'),
  } satisfies Readonly<Record<Verdict, (count: number) => string>>,
  notJudged: (count: number): string => `${count} could not be judged`,
  nothingJudged: 'nothing judged',
  units: { perMetre: 'per m', squareFeet: 'sq ft', withoutEnd: 'without end', unknown: 'unknown' },
  bodies: {
    turned: (angle: string): string => `turned ${angle}`,
    cylinder: (across: string, high: string): string => `${across} across, ${high} high`,
  },
  places: {
    /** "the yard", but "side A" without an article. */
    side: named,
    onSide: (side: string): string => `on the side of ${side}`,
    seenFrom: (side: string): string => `seen from ${side}`,
    jamb: { left: 'the left jamb edge', right: 'the right jamb edge' },
    from: (distance: string, jamb: string): string => `${distance} from ${jamb}`,
    beyond: (distance: string, jamb: string): string => `${distance} beyond ${jamb}`,
    outFromOpening: (distance: string): string => `${distance} out from the line of the opening`,
    outFromLeaf: (distance: string): string => `${distance} out from the leaf face`,
    inTheWay: 'in the way of the leaf',
  },
  things: {
    zone: (name: string): string => `zone \u201c${name}\u201d`,
    lane: (name: string): string => `lane \u201c${name}\u201d`,
    sensor: (name: string): string => `sensor \u201c${name}\u201d`,
    theSensor: 'the sensor',
    field: (name: string, sensor: string): string => `field \u201c${name}\u201d of ${sensor}`,
    /** In a sentence whose subject is the sensor. */
    itsField: (name: string | undefined): string => (name === undefined ? 'its field' : `its field \u201c${name}\u201d`),
    body: (size: string): string => `the test body ${size}`,
    value: (id: string): string => `the value ${id}`,
    obstacle: (name: string): string => `the ${name}`,
    floor: 'the floor',
  },
  causes: {
    'beyond-reach': "beyond the sensor's reach",
    'too-dark': 'too dark for the sensor at that distance and angle',
    fog: 'swallowed by the fog',
    'too-close-to-background': 'too close to what is behind it for the sensor to tell them apart',
    'outside-sides': 'outside the sides of the field',
    'below-clearance': "lower than the field's clearance above the floor",
    'above-top': 'higher than the top of the field',
    'too-few-neighbours': 'met by too few neighbouring beams',
    'between-beams': 'between two beams',
    'no-plane-here': 'where no scan plane passes',
    'several-together': 'unseen for several causes together, none of them alone',
  } satisfies Readonly<Record<Exclude<Cause['kind'], 'hidden-behind'>, string>>,
  hiddenBehind: (name: string | undefined): string => (name === undefined ? 'hidden behind something' : `hidden behind the ${name}`),
  mends: {
    'beyond-reach': 'bring the sensor nearer, or use one that reaches farther',
    'too-dark': 'bring the sensor nearer or let it look more squarely at the body, or use one that reaches farther',
    fog: 'bring the sensor nearer, or add one on the near side of the fog',
    'too-close-to-background':
      "aim the plane so that it meets the body farther above the floor, or use a smaller background margin if the sensor's values allow it",
    'outside-sides': 'widen the field',
    'below-clearance': "lower the field's clearance if the floor allows it",
    'above-top': 'raise the top of the field',
    'too-few-neighbours': 'bring the sensor nearer, or ask for fewer neighbouring beams',
    'hidden-behind': 'move what is in the way, or add a sensor that looks from the other end',
    'between-beams': 'bring the sensor nearer, or use one with beams closer together',
    'no-plane-here': 'turn the sensor so that a plane falls here, or add a plane or a sensor',
    'several-together': 'look at each cause in turn, or add a sensor that looks from another place',
  } satisfies Readonly<Record<Cause['kind'], string>>,
  concept: {
    people: { trained: 'only trained people pass', public: 'anybody may pass' } satisfies Readonly<
      Record<ProtectionConcept['people'], string>
    >,
    drive: {
      'hold-to-run': 'the door moves only while a button is held',
      'impulse-in-view': 'an impulse starts the door from where it is in view',
      'impulse-out-of-view': 'an impulse starts the door from where it is not in view',
      automatic: 'the door moves by itself',
    } satisfies Readonly<Record<ProtectionConcept['drive'], string>>,
    closingEdge: {
      'force-limited-edge': 'the closing edge is limited in force',
      'presence-aid': 'presence sensing helps to guard the closing edge',
      'contact-free': 'the closing edge is guarded without contact',
      none: 'nothing guards the closing edge',
    } satisfies Readonly<Record<ProtectionConcept['closingEdge'], string>>,
  },
  /** Places in the door file that a person would ask for by another name. */
  needs: {
    'survey/opening/width_mm': 'the clear width',
    'survey/opening/height_mm': 'the clear height',
    'survey/floor': 'the floor profile',
    'survey/floor/tolerance_mm': 'how far the floor may stand off the survey',
    'survey/obstacles': 'what stands around the opening',
    'survey/states': 'the states of the door',
    'survey/leaf': 'the leaf',
    'survey/drive': 'how the leaf is driven (speeds, accelerations, delays)',
    closeSpeed_m_per_s: 'the closing speed',
    closeAccel_m_per_s2: 'how fast the closing leaf speeds up',
    stopDelay_s: 'the delay of the control',
    stopDecel_m_per_s2: 'how fast the leaf brakes',
    afterStop: 'whether the leaf opens again after a stop',
    reverseDelay_s: 'how long the leaf rests before it opens again',
    openSpeed_m_per_s: 'the opening speed',
    openAccel_m_per_s2: 'how fast the opening leaf speeds up',
    slowest_m_per_s: 'the slowest pace',
    fastest_m_per_s: 'the fastest pace',
    response_s: 'the response time of its output',
    hold_s: 'the hold time of its output',
    openDelay_s: 'the delay before a shut leaf begins to open',
    braking: 'how vehicles of the lane brake (reaction, deceleration, fall of the way)',
    stopTimes: 'several stopping times of the leaf',
    approach: 'how people come to the field (along the floor, square, through one beam), and its detection capability',
    capability_mm: 'the detection capability',
    height_mm: 'the height of the detection zone',
    addend_mm: 'the addend of the separation distance, off the page of the standard in hand',
    supplement_mm: 'the supplement Z of the separation distance',
    survey: 'the survey',
    concept: 'the protection concept (who passes, how the door is driven, what guards the closing edge)',
    'concept/people': 'who passes: trained people or the public',
    'concept/drive': 'how the door is driven',
    'concept/closingEdge': 'what guards the closing edge',
    sensors: 'a sensor',
    edition: 'an edition of the rules that this program has',
    presenceTime_s: 'how long it holds a body that stands still',
    longestStay_s: 'how long a body may stay there',
    required_mm: 'the smallest size that has to be seen',
    allowedPocket_mm: 'the largest blind pocket that may stay',
    visibility_m: 'how far one sees in the fog',
    tolerance_mm: 'its tolerance',
    postures: 'its postures',
    tolerances: 'how far the door may be off',
    zones: 'the zones',
    confirmations: 'what was held against the page',
    name: 'the name',
    'sides/a': 'the name of side A',
    'sides/b': 'the name of side B',
  } as Readonly<Record<string, string>>,
  noWords: (rule: string): string => `Rule ${rule} has an answer that has no words yet.`,
  waiting: {
    figure: 'a figure',
    'limit-from-memory': (count: number, needed: string): string =>
      `${count > 1 ? `These ${count} are in order so far, but they rest on` : 'In order so far, but it rests on'} what is only remembered and was never held against its page: ${needed}.`,
    'rests-on-assumption': (count: number, needed: string): string =>
      `${count > 1 ? `These ${count} are in order so far, but they rest on` : 'In order so far, but it rests on'} what nobody entered: ${needed}.`,
  },
  sources: {
    basis: {
      published: 'published',
      datasheet: 'from the data sheet',
      measured: 'measured',
      'common practice': 'common practice, no source',
      'from memory': 'from memory, not confirmed',
      'our decision': 'our decision',
      invented: 'invented for the demonstration',
    } satisfies Readonly<Record<Basis, string>>,
    confirmed: (by: string, on: string): string => `confirmed by ${by} on ${on}`,
    edition: (edition: string): string => `edition ${edition}`,
    clause: (clause: string): string => `clause ${clause}`,
  },
  repairs: {
    newSensor: 'the new sensor',
    add: (like: string, up: string, along: string, out: string, side: string): string =>
      `add a second sensor like ${like}: ${up} up, ${along}, ${out}, seen from ${side}, with the same settings and on the same input`,
    remove: (thing: string): string => `take the ${thing} away`,
    along: (which: string, by: string, hand: 'left' | 'right', side: string, to: string): string =>
      `move ${which} ${by} to the ${hand}, seen from ${side}: to ${to}`,
    out: (which: string, by: string, farther: boolean, to: string): string =>
      `move ${which} ${by} ${farther ? 'farther from the leaf' : 'nearer to the leaf'}: to ${to}`,
    up: (which: string, by: string, higher: boolean, to: string): string =>
      `hang ${which} ${by} ${higher ? 'higher' : 'lower'}: ${to} above the floor`,
    tilt: (which: string, by: string, side: string, to: string): string => `lean ${which} ${by} more toward ${side}, to a tilt of ${to}`,
    roll: (which: string, by: string, hand: 'left' | 'right', side: string, to: string): string =>
      `turn the fan of ${which} ${by} in its own plane toward the ${hand} jamb, seen from ${side}: to a roll of ${to}`,
    yaw: (which: string, by: string, counterClockwise: boolean, to: string): string =>
      `turn ${which} ${by} ${counterClockwise ? 'counter-clockwise' : 'clockwise'}, seen from above: to a yaw of ${to}`,
    set: (field: string, sensor: string, part: string, from: string, to: string): string =>
      `in field \u201c${field}\u201d of ${sensor}, set ${part} from ${from} to ${to}`,
    parts: {
      clearance_mm: 'its clearance above the floor',
      top_mm: 'its top above the floor',
      xMin_mm: 'where it begins along x',
      xMax_mm: 'where it ends along x',
      yMin_mm: 'where it begins along y',
      yMax_mm: 'where it ends along y',
      clusterBeams: 'the number of neighbouring beams that must agree',
    } satisfies Readonly<Record<FieldPart, string>>,
    inOrder: 'That puts it in order.',
    waits: 'That puts it in order as far as it can be judged; what it rests on is still to be confirmed.',
    also: (rules: string): string => `It also puts in order: ${rules}.`,
  },
  sheet: {
    body: 'worst case: the test body where it lies',
    zone: (name: string): string => `zone: ${name}`,
    trace: 'scan plane: its line on the floor, single beams above',
    more: (count: number): string => `and ${count} more in the findings`,
    hatched: 'here the middle of a test body goes unseen',
    hatchedOrOpen: 'here the middle of a test body goes unseen, or without a letter: is not proved to be seen',
    middle: (body: string, place: string): string => `${body}: middle ${place}`,
    labels: { sides: 'Sides', zone: 'Zone', state: 'State', scale: 'Scale', lengths: 'Lengths', rules: 'Rules' },
    sides: (a: string, b: string): string => `A ${a}, B ${b}`,
    none: 'none',
    scale: (plan: number, upright: number, sheet: string): string =>
      `${plan === upright ? `1:${plan}` : `1:${plan} and 1:${upright}`} on ${sheet}`,
    ownSheet: 'a sheet of its own',
    lengths: { metric: 'mm', 'feet-inches': 'feet and inches' },
    edition: (edition: string): string => `edition ${edition}`,
    noSuchDoor: 'no such door, place or product exists',
    figuresInvented: 'with figures invented for the demonstration',
    caution: {
      exact: 'Hatched is every place not proved to be seen. A competent person decides, local rules apply.',
      grid: 'Hatching computed on a grid, provisional. A competent person decides, local rules apply.',
      none: 'A competent person decides, local rules apply.',
    },
    scaleBar: 'scale bar of the plan',
    plan: 'Plan',
    elevation: 'Elevation',
    section: 'Section',
    topAndBelow: (a: string, b: string): string => `${a} at the top, ${b} below`,
    onTheLeft: (side: string): string => `${side} on the left`,
    up: (name: string, height: string): string => `${name}, ${height} up`,
  },
  plan: {
    clearWidth: 'clear width',
    body: 'worst case, the body where it lies',
    edge: 'edge of the zone',
  },
  findings: {
    crashed: (rule: string, message: string): string =>
      `! Rule ${rule} broke down and gave no answer: ${message}. This is a fault of the program, please report it.`,
    provisional: (rules: string): string => `Measured on a grid only, and provisional: ${rules}.`,
    notCertified: 'Computed, not certified: a competent person decides, and local rules apply.',
  },
  why: {
    wouldMend: 'Would mend it',
    wouldSettle: 'Would settle it',
    computed: 'How it was computed',
    from: 'from',
    by: 'by',
    step: (number: number, name: string): string => `step ${number}, ${name}`,
    value: (id: string): string => `the value ${id}`,
    assumed: 'nobody entered it; a default stands in',
    against: 'Against the limit',
    againstWords: (measured: string, limit: string): string => `${measured} against ${limit}`,
    cells: (count: string, pitch: string): string => `${count} cells of ${pitch}`,
    pocket: (letter: string, area: string, exact: boolean, cells: string): string =>
      `Pocket ${letter}: ${area}, ${exact ? `exact; on the grid ${cells}` : cells}`,
    fields: (names: string): string => `Fields that counted: ${names}`,
    none: 'none',
    causes: 'Why it goes unseen, by cells of the grid, most first:',
    cause: (cause: string, cells: string, all: string): string => `${cause}: ${cells} of ${all} cells would be seen without this`,
    worst: 'Worst case, to try on site',
    body: (body: string, state: string | undefined): string => `Test body of ${body}${state === undefined ? '' : `, ${state}`}.`,
    middle: (place: string): string => `Its middle ${place}.`,
    place: (x: string, y: string, z: string): string => `x ${x}, y ${y}, underside at z ${z}`,
    basis: 'What it rests on',
    unconfirmed: 'Until somebody confirms it nothing that rests on it is in order',
    testBody: (name: string): string => `test body ${name}`,
    sensor: (name: string): string => `sensor ${name}`,
    rule: (name: string): string => `the rule ${name}`,
    edition: (edition: string): string => `Judged by edition ${edition} of the rules.`,
    provisional: 'Provisional: placements between the grid points were not computed.',
  },
  timeline,
  /** What a door file was expected to hold at a place. */
  expected: (text: string): string => text,
  /** The name or formula of a step of arithmetic, or what an outside value means or is noted to be, as the engine has it. */
  worked: (text: string): string => text,
}

export type Phrases = typeof phrases
