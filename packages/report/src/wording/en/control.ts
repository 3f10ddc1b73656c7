import { type RuleWording, type Say, sentenceOf } from '../rule-wording.ts'
import { type Told, word } from '../told.ts'
import { mendOr, unsettled } from './unsettled.ts'

/** For each fact the question, what the control may do, and what would mend it. */
const FACTS: Readonly<
  Record<string, { readonly question: string; readonly does: Readonly<Record<string, string>>; readonly mend: string }>
> = {
  sensorFault: {
    question: 'the control lets no unguarded leaf close while a presence sensor is faulted',
    does: {
      'hold-to-run': 'with a presence sensor faulted, the door can only be held to run',
      stays: 'with a presence sensor faulted, the door stays',
      closes: 'with a presence sensor faulted, the door closes all the same, and nobody is guarded',
    },
    mend: 'Set the control so that with a faulted sensor the door can only be held to run, or stays. Until then take it out of service.',
  },
  powerReturn: {
    question: 'the leaf surprises nobody when power returns',
    does: {
      waits: 'when power returns, the door waits for a command',
      'moves-guarded': 'when power returns, the door moves only once its sensors are awake',
      moves: 'when power returns, the door moves at once, before its sensors are awake',
    },
    mend: 'Set the control so that it waits for a command, or for its sensors, after a loss of power.',
  },
  fire: {
    question: 'a function that closes in a fire strikes nobody',
    does: {
      none: 'no function closes the door in a fire',
      'presence-first': 'in a fire, presence still stops the closing door',
      'fire-first': 'in a fire, the door closes whether or not somebody is seen',
    },
    mend: 'Let presence stop the door in a fire too, or limit the force of the closing edge; whoever is responsible for fire protection decides whether that may be.',
  },
  escape: {
    question: 'a function that lets people out wins over all else',
    does: {
      none: 'no way out in an emergency leads through the door',
      'escape-first': 'the function that lets people out wins over all else',
      'other-first': 'something else wins over the function that lets people out',
    },
    mend: 'Let the function that lets people out win, or lead the way out elsewhere.',
  },
  interlock: {
    question: 'an interlock keeps no leaf from opening again',
    does: {
      none: 'no neighbour interlocks with the door',
      'reversal-first': 'a leaf that has to open again does so though the neighbour is open',
      'interlock-first': 'while the neighbour is open, a leaf that has to open again may not, and whoever is under it stays there',
    },
    mend: 'Let a leaf that has to open again do so, whatever the neighbour does.',
  },
}

function fact(told: Told) {
  return FACTS[word(told, 'fact') ?? '']
}

const stated: Say = (told) => sentenceOf([fact(told)?.does[word(told, 'does') ?? ''] ?? 'what the control does endangers nobody'])

export const controlFact: RuleWording = {
  name: 'What the control does',
  pass: (told) => stated(told).replace(/\.$/, ': nobody is endangered.'),
  fail: (told) => (told.finding.facts['does'] === undefined ? 'What the control does endangers somebody.' : stated(told)),
  undetermined: unsettled((told) => fact(told)?.question ?? 'what the control does endangers nobody', stated),
  notApplicable: {
    'no-subject': () => 'There is no control.',
    'not-required-by-concept': () => 'The door moves only while a button is held, so a faulted sensor lets nothing close by itself.',
  },
  mend: mendOr((told) => fact(told)?.mend ?? 'Set the control otherwise.'),
}
