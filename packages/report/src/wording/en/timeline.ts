/** What a timeline says. A time comes as it is shown, without its unit on the axis. */
export const timeline = {
  title: (finding: string): string => `In time: ${finding}`,
  /** Along the upright axis. */
  way: (unit: string): string => `edge of the leaf, still to go until shut, ${unit}`,
  angle: 'angle of the leaf, from shut',
  axis: 's since the leaf began to close',
  phases: { warns: 'warns', closes: 'closes', delay: 'delay', brakes: 'brakes', rests: 'rests', opens: 'opens' },
  inPlane: 'body in the plane of the leaf',
  body: 'body',
  instants: {
    warns: 'closing is commanded and the warning begins',
    begins: 'the leaf begins to close',
    visible: 'the body becomes visible',
    output: 'the output changes',
    brakes: 'the leaf begins to brake',
    rests: 'the leaf is at rest',
    opens: 'the leaf opens again',
    enters: 'the body enters the plane of the leaf',
    leaves: 'the body has left the plane of the leaf',
    contact: (way: string): string => `contact: the edge has ${way} to go`,
    nearest: (way: string): string => `nearest: the edge has ${way} to go`,
  },
  at: (time: string, what: readonly string[]): string => `${time}: ${what.join('; ')}`,
  field: (sensor: string, output: string): string => `${sensor}: unseen or seen, below it ${output}`,
  keys: {
    unseen: 'the body is unseen',
    output: 'the output forbids closing',
    after: 'dashed: without the contact',
  },
  moreFields: (count: number): string => `and ${count} more that see it`,
  atContact: (time: string): string => `the body as it lies ${time} after the leaf began to close`,
  nothing: 'Nothing moves here: the finding has no course in time.',
}
