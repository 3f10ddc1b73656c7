import type { Term } from './term.ts'

/** Words of danger points, forces, the control, and of what happens over time. */
export const dangerTerms = {
  dangerPoint: {
    word: 'danger point',
    forms: ['danger point', 'danger points', 'danger point judged', 'danger points judged'],
    says: 'A place besides the closing edge where the leaf can crush, shear, draw in or lift somebody, while it opens too.',
  },
  dangersLookedFor: {
    word: 'dangers looked for',
    forms: ['dangers looked for'],
    says: 'Every kind of danger point that such a leaf can have is listed, computed, or said not to be there.',
  },
  tail: {
    word: 'tail',
    forms: ['tail', 'tails'],
    says: 'The far end of a leaf that runs back beyond the opening.',
  },
  sweep: {
    word: 'sweep',
    forms: ['sweep'],
    says: 'What a leaf that swings passes over.',
  },
  guard: {
    word: 'guard',
    forms: ['guard', 'guards'],
    says: 'What is done against a danger point besides distance: a cover, a sensitive edge, presence detection, nothing to hold on to.',
  },
  forceRecord: {
    word: 'force record',
    forms: ['force record', 'force records'],
    says: 'A force on contact as it was measured: where, at which gap, how high and how long, with which instrument, on which day.',
  },
  lowEnergy: {
    word: 'low energy',
    forms: ['low energy'],
    says: 'A pedestrian door that may touch, because it moves with little energy.',
  },
  controlFact: {
    word: 'control fact',
    forms: ['control fact', 'control facts'],
    says: 'What the control does with a fault, after a loss of power, in a fire, for escape or with a neighbour, and where that is known from.',
  },
  controlJudged: {
    word: 'control judged',
    forms: ['control judged'],
    says: 'What the control does endangers nobody.',
  },
  forceOnContact: {
    word: 'force on contact',
    forms: ['force on contact'],
    says: 'What was measured where the edge may touch somebody stays within the limits.',
  },
  energyOnContact: {
    word: 'energy on contact',
    forms: ['energy on contact'],
    says: 'A leaf that rests on low energy has no more of it at its largest closing speed.',
  },
  gapInSight: {
    word: 'gap in sight',
    forms: ['gap in sight', 'gaps in sight'],
    says: "How long something that passes is out of sight of every output while some of it is still in the leaf's plane, or within its sweep.",
  },
  follower: {
    word: 'follower',
    forms: ['follower', 'followers'],
    says: 'A second body close ahead of or behind the first.',
  },
  fall: {
    word: 'fall',
    forms: ['fall', 'falls'],
    says: "Somebody who passes lies down in the leaf's plane, or within its sweep, and stays there.",
  },
  course: {
    word: 'course',
    forms: ['course'],
    says: 'One body and one closing over time: where the edge and the body are, when it is seen, when the output changes.',
  },
  timeline: {
    word: 'timeline',
    forms: ['timeline'],
    says: 'The drawing of one body and one closing over one axis of time.',
  },
  slips: {
    word: 'slips of the wiring',
    forms: ['slips of the wiring', 'slip in the wiring'],
    says: 'Something in the wiring that cannot be meant: an input in the air, two transistors on one line, a sensor without supply, a contact bridged by copper.',
  },
  singleFault: {
    word: 'single fault',
    forms: ['single fault', 'single faults'],
    says: 'One thing that goes wrong by itself: a core broken, two cores touching, a contact stuck. Each is tried in turn, and what the control then believes decides.',
  },
  testByHand: {
    word: 'test by hand',
    forms: ['test by hand', 'tests by hand'],
    says: 'Somebody stands before each sensor and looks whether the leaf heeds it. It finds faults that nothing else does, and until then they last.',
  },
  endOfLine: {
    word: 'end-of-line resistor',
    forms: ['end-of-line resistor', 'end-of-line resistors'],
    says: 'A resistor at the far end of a line, by which an input tells a sound line from a short and from a break.',
  },
} as const satisfies Readonly<Record<string, Term>>
