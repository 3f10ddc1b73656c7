/** How the leaf answers a call, how it stopped when it was timed, and where it stands open. */
export const calls = {
  words: 'Called while shut, it begins to open after {openDelay}; it stays open for {holdOpen}.',
  openDelay: 'from the call until a shut leaf begins to open',
  holdOpen: 'how long it stays open',
  braking:
    'Where it stays shut, a vehicle brakes after {reaction_s}, by {decel_m_per_s2}; the way goes down by {gradient_percent} toward the leaf.',
  reaction_s: 'from seeing the leaf stay shut until it brakes',
  decel_m_per_s2: 'how hard a vehicle brakes with its worst load',
  gradient_percent: 'fall of the way toward the leaf, below zero where it rises',
  addBraking: 'How a vehicle stops',
  falls: 'Whoever passes {falls}.',
  whetherFalls: 'Whether somebody may fall',
  fallNames: { never: 'does not fall', anywhere: 'may fall anywhere and stay' },
  fallsUnknown: 'is taken not to fall',
  follow: 'The next one follows {gap} behind at the closest.',
  followGap: 'least distance from the back of one to the front of the next',
  followUnknown: 'at any distance',
  bodies: 'It is judged with every body of this door.',
  chosen: 'It is judged with these:',
  addBody: 'Judge it with another body',
  removeBody: (body: string, lane: string): string => `Leave out ${body}, ${lane}`,
}

export const stops = {
  words: 'Timed from the command at full speed until it rested: {readings}.',
  none: 'No stop was timed yet. Three make a bound; more make it closer.',
  more: (count: number): string =>
    count === 1 ? 'One more is needed before they make a bound.' : `${count} more are needed before they make a bound.`,
  bound: 'The bound shall hold for {share} of all stops, with {confidence} confidence.',
  share: 'part of all stops that takes no longer than the bound',
  confidence: 'with which confidence',
  reading: (which: number): string => `stop ${which}`,
  add: 'Enter timed stops',
  next: 'Enter, and the next',
  done: 'Done',
}

export const parked = {
  unknown: 'Nobody has said where the open leaf stands.',
  none: 'The open leaf stands nowhere in view.',
  words: 'Open, the leaf fills {along} by {across}, from {from} up to {to}, its middle {x} along and {y} out.',
  turned: 'Open, the leaf fills {along} by {across}, turned {yaw}, from {from} up to {to}, its middle {x} along and {y} out.',
  yaw: 'turn of the open leaf in the plan',
  notThere: 'It stands nowhere in view',
  figures: {
    along: 'size of the open leaf along the opening',
    across: 'size of the open leaf across',
    from: 'underside of the open leaf',
    to: 'top of the open leaf',
    x: 'middle of the open leaf along the opening',
    y: 'how far out the open leaf stands, toward side A counted up',
  },
  name: 'Open leaf',
}

export const states = {
  lead: 'A doorway can stand in more ways than one, as with a dock leveller up or down. Each of them is judged.',
  usual: 'as surveyed',
  made: 'another way',
  add: 'Another way in which it stands',
  floorAsSurveyed: 'The floor is as surveyed.',
  ownFloor: 'The floor is another',
  floor: 'The floor then rises {slope} along the opening and may stand {tolerance} higher than surveyed.',
  allThere: 'All that stands around is there then too.',
  gone: 'Not there then:',
  onlyThere: 'There only then:',
  addGone: 'Something is not there',
  removeGone: (thing: string, state: string): string => `There after all: ${thing}, ${state}`,
}

export const hinged = {
  name: 'how the leaf hangs',
  hung: 'It hangs {hinge} and opens toward {opensTo}.',
  hinge: 'Where the leaf hangs',
  hinges: { 'at-zero': 'on the left', 'at-width': 'on the right', both: 'in two, on the left and on the right' },
  opensTo: 'Side to which the leaf opens',
  turns: 'From the hinge line it is {length_mm} long, and it opens by {openAngle_deg}.',
  length: 'length from the hinge line to the edge; where it folds, of the panel on the hinge',
  openAngle: 'angle when it is fully open',
  folds: 'Second panel, where it folds: {panel}.',
  panel: 'length of the second panel',
  noPanel: 'there is none',
}

export const readings = {
  lead: 'A tape is misread now and then: more readings than one find out. The smallest counts.',
  widths: {
    words: 'At {at_mm} up the clear width reads {reading}.',
    at: 'height of the reading above the floor',
    name: 'width read there',
    nth: (which: number): string => `width reading ${which}`,
    add: 'Another width',
  },
  heights: {
    words: 'At {at_mm} along the clear height reads {reading}.',
    at: 'where along the leaf it was read',
    name: 'height read there',
    nth: (which: number): string => `height reading ${which}`,
    add: 'Another height',
  },
}

export const note = { label: 'Anything worth saying about this door' }
