/** What is connected to what. */
export const wiring = {
  title: 'Wiring',
  none: 'Nobody has said yet how the sensors are wired. Begin with a usual wiring and put right what is otherwise: every single fault of it is then tried.',
  begin: 'Begin with a usual wiring',
  beginToo: 'Wire the other sensors too, in the usual way',
  name: 'wiring',
  remembered: 'Its figures are remembered ones. Nothing passes on them until somebody has held them against the data sheets.',
  cautions: [
    'Disconnect the door from its supply before you open the control or touch a terminal.',
    'Work on mains is for qualified electricians.',
  ],
}
