import { BOUNDS } from '../bounds.ts'
import { choice, list, number, optional, record, size_mm, wholeNumber } from './parts.ts'
import { saying, tuplePart } from './schema.ts'
import { sourceSchema } from './source.ts'

const speed_m_per_s = (means: string) => number({ from: 0.001, upTo: 20 }, means)
const accel_m_per_s2 = (means: string) => number({ from: 0.001, upTo: 100 }, means)
const time_s = (means: string) => number({ from: 0, upTo: 60 }, means)

const stopTimesSchema = record(
  {
    readings_s: list(
      number({ above: 0, upTo: 60 }, 'Seconds.'),
      { upTo: BOUNDS.stoppingReadings },
      'Times from the stop command at full speed to rest, one for each stop. From the first one on they count instead of delay and braking; a bound takes three.',
    ),
    share_percent: optional(number({ from: 75, upTo: 99.9 }, 'Share of all stops that may take no longer than the bound.')),
    confidence_percent: optional(number({ from: 75, upTo: 99.9 }, 'With which confidence.')),
  },
  'Measured stopping times: their one-sided tolerance bound stands for delay and braking in the separation distance.',
)

const cycleSchema = record(
  {
    holdOpenFrom: optional(
      choice(
        ['opened', 'clear'],
        'The hold-open time runs from the end of opening, or anew from each time that the last presence output lets go.',
      ),
    ),
    closesOnlyByTimer: optional(
      choice(
        ['yes', 'no'],
        'Whether no closing is ever commanded but by the end of the hold-open time (attempts after a reversal included): no button, no other control. Only "yes" narrows when a closing may begin.',
      ),
    ),
    preWarning_s: optional(time_s('Light or sound between the command and the beginning of every closing, whatever commanded it.')),
    outputInWarning: optional(
      choice(
        ['cancels', 'waits'],
        'A presence output during the warning: the closing is off and has to be commanded anew, or the output is looked at again when the warning ends. As if "waits" if absent.',
      ),
    ),
    attempts: optional(
      wholeNumber({ from: 0, upTo: BOUNDS.closingAttempts }, 'How often the leaf closes again after a reversal before it stays open.'),
    ),
    attemptPause_s: optional(
      number({ from: 0, upTo: 3600 }, 'Before each attempt, counted as the hold-open time is; the hold-open time itself if absent.'),
    ),
    attemptWhileHeld: optional(
      choice(
        ['waits', 'starts'],
        'An attempt whose time has come while an output forbids closing: it waits, or begins and is stopped at once. As if "waits" if absent.',
      ),
    ),
    afterAttempts: optional(
      choice(['stays-open', 'partial'], 'After the last reversal the leaf opens fully and stays, or opens to the lowest partial opening.'),
    ),
  },
  'What the control does around a closing. Nothing is concluded from what is absent: then a closing may begin whenever no output forbids it.',
)

export const driveSchema = record(
  {
    closeSpeed_m_per_s: optional(speed_m_per_s('Largest speed of the closing edge.')),
    closeAccel_m_per_s2: optional(accel_m_per_s2('How fast it speeds up, and slows down before it is shut.')),
    closeJerk_m_per_s3: optional(number({ from: 0.001, upTo: 10_000 }, 'How fast that acceleration sets in; at once if absent.')),
    stopDelay_s: optional(time_s('From the input of the control until braking begins; the leaf keeps its motion so long.')),
    stopDecel_m_per_s2: optional(accel_m_per_s2('How fast it brakes after a stop command.')),
    brake: optional(
      choice(['brakes', 'none'], 'Whether a brake, or the drive itself, slows the leaf after a stop command; with "none" it coasts.'),
    ),
    coastDecel_m_per_s2: optional(accel_m_per_s2('Without a brake: how fast friction slows the leaf after the delay.')),
    coastWay_mm: optional(
      size_mm('The same, measured as the way from the end of the delay at full closing speed to rest; even slowing is concluded from it.'),
    ),
    stoppingCurve: optional(
      list(
        tuplePart(
          [number({ above: 0, upTo: 60 }, 'seconds'), number({ from: 0, upTo: BOUNDS.length_mm }, 'mm')],
          'two numbers [seconds, mm]',
          '',
        ),
        { from: 1, upTo: BOUNDS.stoppingReadings },
        'Measured instead of delay and braking: since the stop command at full speed, how far the edge went on, `[[seconds, mm], ...]`, until it rested.',
      ),
    ),
    stopTimes: optional(stopTimesSchema),
    afterStop: optional(choice(['reverse', 'stay'], 'What the leaf does after a stop by a presence output: open again, or stay.')),
    reverseDelay_s: optional(time_s('Rest before it opens again.')),
    openSpeed_m_per_s: optional(speed_m_per_s('Largest speed while it opens.')),
    openAccel_m_per_s2: optional(accel_m_per_s2('How fast it speeds up and slows down while it opens.')),
    openDelay_s: optional(time_s('From the input of the control until a shut leaf begins to open; a warning before it counts with it.')),
    holdOpen_s: optional(number({ from: 0, upTo: 3600 }, 'How long the leaf stays open before it closes.')),
    partialOpenings_mm: optional(
      list(size_mm('Clear way.'), { upTo: BOUNDS.partialOpenings }, 'Clear ways from which it may close, beside the full opening.'),
    ),
    cycle: optional(cycleSchema),
    movingMass_kg: optional(number({ above: 0, upTo: 100_000 }, 'Mass of all that moves with the edge; for the energy at contact.')),
    source: optional(saying(sourceSchema, 'Where these figures come from.')),
  },
  'How the leaf is driven. What is absent is asked for by the findings that need it.',
)
