import { choice, number, optional, type Plain, record } from './parts.ts'
import { sourceSchema } from './source.ts'

const fact = <const V extends readonly [string, ...string[]]>(values: V, means: string) =>
  optional(record({ does: choice(values, 'What the control does.'), source: sourceSchema }, means))

export const controlSchema = record(
  {
    sensorFault: fact(
      ['hold-to-run', 'stays', 'closes'],
      'With a presence sensor faulted or unplugged: the door can still be held to run, stays, or closes all the same.',
    ),
    powerReturn: optional(
      record(
        {
          does: choice(['waits', 'moves-guarded', 'moves'], 'What the control does.'),
          closesAfter_s: optional(
            number({ from: 0, upTo: 3600 }, 'From the return of power until a closing can begin, at the earliest, whoever commands it.'),
          ),
          source: sourceSchema,
        },
        'When power returns: it waits for a command, moves only once its sensors are awake, or moves at once.',
      ),
    ),
    fire: fact(
      ['none', 'presence-first', 'fire-first'],
      'A function that closes in a fire: there is none, presence still stops it, or it closes regardless.',
    ),
    escape: fact(
      ['none', 'escape-first', 'other-first'],
      'A function that lets people out: there is none, it wins over all else, or something else wins.',
    ),
    interlock: fact(
      ['none', 'reversal-first', 'interlock-first'],
      'An interlock with a neighbour: there is none, a leaf that must open again does, or it may not while the neighbour is open.',
    ),
  },
  'What the control does, each with where that is known from. What is absent is asked for by the findings.',
)

export type FileControl = Plain<typeof controlSchema>
