/** What is said in the view in space. */
export const solid = {
  label: 'The door in space. Arrow keys turn it, plus and minus bring it nearer or farther.',
  touch: 'Touch a thing to read what it is; drag to turn.',
  missing: 'This browser draws nothing in space here. Plan, elevation and section show the same.',
  from: (side: string) => `from ${side}`,
  fromWhere: { above: 'from above', sensor: 'from the sensor' },
  cut: 'Cut open',
  cuts: { none: 'whole', x: 'left, right', y: 'front, back', z: 'height' },
  cutAt: (at: string) => `cut at ${at}`,
  list: 'What is shown',
  names: {
    floor: () => 'floor',
    grid: () => 'lines on the floor every metre',
    building: (name: string) => name,
    fitting: (name: string) => name,
    thing: (name: string) => name,
    leaf: () => 'where the closed leaf stands',
    zone: (name: string) => `zone “${name}”`,
    unseen: (letter: string) => (letter ? `unseen place ${letter}: the middle of a test body` : 'not proved to be seen'),
    body: (letter: string) => `test body at the worst case of ${letter}`,
    sensor: (name: string) => name,
    beams: (name: string) => `beams of ${name}`,
    moving: (name: string): string => (name === 'leaf' ? 'leaf at this moment' : 'body at this moment'),
  },
}

/** What is said while repairs are searched for, and of those that were found. */
export const repairs = {
  title: 'Repairs',
  search: 'search for repairs',
  searchFor: (rule: string) => `search for repairs: ${rule}`,
  trying: (doors: number) => `Trying settings: ${doors} doors judged so far.`,
  stop: 'stop',
  none: (doors: number) => `Nothing was found that mends it and makes nothing else worse. ${doors} settings were judged.`,
  apply: 'Write it into the door',
  nearest: (left: number) => `That leaves least: ${left} % of what is missing now.`,
  rejected: (count: number) => (count === 1 ? '1 setting is not offered' : `${count} settings are not offered`),
  worsens: (rules: string) => `Makes worse: ${rules}.`,
  denied: 'By the grid it would do; not for every placement.',
  judged: (grid: number, exact: number) => `${grid} doors judged by the grid, ${exact} exactly, all findings each time.`,
}

/** What is said beside a timeline and the slider under it. */
export const inTime = {
  show: 'over time',
  showFor: (rule: string) => `over time: ${rule}`,
  title: 'Over time',
  slider: 'Time since the leaf began to close',
  play: 'Play, slowed down',
  pause: 'Pause',
  back: 'Step back',
  forward: 'Step forward',
  now: (time: string, way: string) => `${time} after the leaf began to close its edge has ${way} to go`,
  body: (out: string, side: string, inPlane: boolean) =>
    `the middle of the body is ${out} from the leaf line, toward ${side}${inPlane ? ', the body in the way of the leaf' : ''}`,
  seen: 'it is seen',
  unseen: 'it is unseen',
  forbids: 'an output forbids closing',
  allows: 'no output forbids closing',
}
