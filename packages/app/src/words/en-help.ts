/** The tour, the words of the trade, and the cautions. */
export const help = {
  tour: {
    offer: 'New here? A tour on an invented door takes less than two minutes. It works on a copy that is thrown away.',
    take: 'Take the tour',
    again: 'Take the tour, two minutes',
    notNow: 'Not now',
    waiting: 'A tour was begun and left standing.',
    goOn: 'Go on with it',
    label: 'Tour',
    count: (at: number, of: number) => `Stop ${at} of ${of}.`,
    show: 'Show me',
    next: 'Next',
    leave: 'Leave',
    /** `{thing}` is what the thing to touch is called on the screen. */
    stops: {
      tape: 'The whole job lies along this tape, and no part is locked. Touch {thing}.',
      figure: 'What is underlined can be changed, on the drawing too. Touch the clear width and enter another.',
      place: 'Next, where the sensor hangs and how it looks. Touch {thing}.',
      body: 'Touch “{thing}” and push it about. Below the drawing stands what sees it, or why nothing does.',
      why: 'What fails stands first. Touch “{thing}” and close it again: every figure says where it comes from.',
      repairs: 'Touch “{thing}”. Only what makes nothing else worse is offered; you need not wait.',
      undo: 'All of it was saved as you entered it. Touch {thing}; the clock beside it keeps who did what.',
      later: 'What comes after judging stands farther along the tape. Touch {thing}.',
    },
    end: 'That was the way through the job. This door was a copy: keep it only if you want to.',
    throwAway: 'Throw it away',
    keep: 'Keep it',
  },
  words: {
    open: 'words?',
    label: 'Words on this sheet, explained',
    title: 'Words on this sheet',
    none: 'No word of the trade stands here.',
  },
  cautions: {
    title: 'Before you touch it',
    practice:
      'Each of these is common practice of the trade; none is cited from a source here. Local codes and the makers’ instructions rule.',
    opening: [
      'Isolate the drive and lock it off before you stand in the opening. Block the leaf so that it cannot come down, whatever holds it: springs, ropes, brake.',
      'Set the ladder on firm, level ground and have it held. Never lean it on the leaf, never stand it under a leaf that is not blocked.',
      'Never look into a beam, that of a measuring laser included.',
    ],
    leaf: [
      'Where the leaf must move for a reading, hold it to run and keep it in view; tape, hands and ladder are out of its way first, and the lane is cordoned off.',
    ],
    place: [
      'Drive isolated and locked off, leaf blocked; springs and suspension are under tension.',
      'Cordon off the lane; nobody enters while the lift moves. Work at height as the rules for it say.',
      'Find out what runs in the wall before you drill.',
      'Feed the sensor alone while aiming. Never look into a beam.',
    ],
    judge: [
      'Test with a body, not with a person, where the leaf can strike.',
      'In order here means computed: before anybody relies on it, it is tested at the door.',
    ],
  },
}

export type Help = typeof help
