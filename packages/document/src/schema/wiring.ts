import { BOUNDS } from '../bounds.ts'
import { choice, distance_mm, id, list, name, number, optional, type Plain, record, tag, wholeNumber } from './parts.ts'
import { eitherPart, textPart } from './schema.ts'
import { sourceSchema } from './source.ts'

const terminal = (means: string) =>
  textPart(
    { form: /^[A-Za-z0-9][A-Za-z0-9_-]{0,59}\.[!-~]{1,60}$/ },
    'a terminal as "device.terminal", such as "control.24V", without spaces',
    means,
  )
const volt = (means: string) => number({ from: -BOUNDS.volt, upTo: BOUNDS.volt }, means)
const ohm = (means: string) => number({ from: 0.001, upTo: 1e9 }, means)
const ampere = (means: string) => number({ from: 0, upTo: 100 }, means)
const seconds = (means: string) => number({ from: 0, upTo: 3_600_000 }, means)

const supplySchema = record(
  {
    plus: terminal('Terminal of the plus rail.'),
    minus: terminal('Terminal of the minus rail.'),
    least_V: number({ above: 0, upTo: BOUNDS.volt }, 'The least that it gives, unloaded.'),
    largest_V: number({ above: 0, upTo: BOUNDS.volt }, 'The most that it gives.'),
    inner_ohm: ohm('How it gives way: its inner resistance.'),
    largest_A: optional(number({ above: 0, upTo: 100 }, 'The current that it can give.')),
    earthed: choice(['plus', 'minus', 'none'], 'The rail that is bonded to earth.'),
    limited: optional(
      choice(
        ['class-2', 'extra-low', 'no'],
        'What its label says: energy-limited of class 2, safely separated and of extra-low voltage, or neither.',
      ),
    ),
    fuse_A: optional(number({ above: 0, upTo: 100 }, 'Rating of the fuse that the sensors hang on.')),
    source: sourceSchema,
  },
  'Where the power comes from, direct current.',
)

const STATES = ['clear', 'seen', 'unpowered', 'warming-up', 'fault'] as const
const states = (means: string) => list(choice(STATES, 'A state of the sensor.'), { upTo: STATES.length }, means)
const acts = choice(['presence', 'opening'], 'What the output is for: presence that stops the leaf, or a call that opens.')
const outputName = id('Name inside the sensor.')
const rating = optional(
  record(
    {
      largest_V: optional(number({ above: 0, upTo: 1000 }, 'It may switch so much.')),
      largest_A: optional(number({ above: 0, upTo: 100 }, 'It may carry and switch so much.')),
      least_A: optional(ampere('Below this a contact does not keep itself clean, a transistor does not conduct for sure.')),
    },
    'What the contact or transistor may switch.',
  ),
)
const settable = optional(
  choice(
    ['as-set', 'either-way'],
    'Whether it can be set the other way round, so that "clear" and "seen" change places and all else stays; as set if absent. `connect` then tries both.',
  ),
)
const on_ohm = optional(ohm('Resistance of the closed switch; 0.1 if absent.'))
const off_ohm = optional(number({ above: 0, upTo: 1e12 }, 'Resistance of the open switch, for its leakage; 100 kilohm if absent.'))
const pulsed = optional(
  record(
    {
      off_V: volt('Above this, in an interruption, the sensor takes its output for stuck.'),
      within_s: seconds('A stuck output is known within this time.'),
    },
    'The sensor interrupts its output for moments to see that it can.',
  ),
)

const outputSchema = eitherPart(
  [
    record(
      {
        kind: tag('contact'),
        name: outputName,
        acts,
        from: terminal('One side of the contact.'),
        to: terminal('The other side.'),
        closedIn: states('The states in which the contact is closed.'),
        on_ohm,
        rating,
        settable,
      },
      'A contact without voltage of its own.',
    ),
    record(
      {
        kind: tag('change-over'),
        name: outputName,
        acts,
        common: terminal('The terminal that both contacts share.'),
        energised: terminal('The terminal that the common one meets while the relay is energised.'),
        released: terminal('The terminal that it meets otherwise.'),
        energisedIn: states('The states in which the relay is energised; never "unpowered".'),
        on_ohm,
        rating,
        settable,
      },
      'A relay contact that changes over.',
    ),
    record(
      {
        kind: tag('sourcing'),
        name: outputName,
        acts,
        at: terminal('The output, which is switched to the plus of the sensor.'),
        onIn: states('The states in which it is switched on; never "unpowered".'),
        on_ohm,
        off_ohm,
        pulsed,
        rating,
        settable,
      },
      'A transistor to plus.',
    ),
    record(
      {
        kind: tag('sinking'),
        name: outputName,
        acts,
        at: terminal('The output, which is switched to the minus of the sensor.'),
        onIn: states('The states in which it is switched on; never "unpowered".'),
        on_ohm,
        off_ohm,
        pulsed,
        rating,
        settable,
      },
      'A transistor to minus.',
    ),
  ],
  'an output, whose kind is "contact", "change-over", "sourcing" or "sinking"',
  'One output of a sensor.',
  'kind',
)

const wiredSensorSchema = record(
  {
    sensor: id('Id of the sensor in `sensors`.'),
    power: record(
      {
        plus: terminal('Plus of its supply.'),
        minus: terminal('Minus of its supply.'),
        least_V: number({ above: 0, upTo: BOUNDS.volt }, 'It works from here.'),
        largest_V: number({ above: 0, upTo: BOUNDS.volt }, 'It works up to here.'),
        largest_A: ampere('It takes at most so much, with its heater where it has one.'),
        inrush_A: optional(ampere('It takes so much for a moment when power comes.')),
      },
      'Its supply terminals and what it needs there.',
    ),
    outputs: list(outputSchema, { from: 1, upTo: BOUNDS.wiredOutputs }, 'Its outputs.'),
    test: optional(
      record(
        {
          plus: terminal('One side of the test input.'),
          minus: terminal('The other side.'),
          ohm: ohm('Its resistance.'),
          asked: choice(['above', 'below'], 'It is asked while the voltage is above `on_V`, or below `off_V`.'),
          on_V: volt('From here up the voltage counts as high.'),
          off_V: volt('From here down it counts as low.'),
          answers_s: optional(seconds('It says "seen" within this time.')),
        },
        'While it is asked, the sensor says "seen", so that the control can test the way from sensor to control.',
      ),
    ),
    ownFaults_s: optional(seconds('The sensor watches itself: a fault inside it switches its outputs as "fault" within this time.')),
    source: sourceSchema,
  },
  'How one sensor is connected inside, from its data sheet.',
)

const inputSchema = record(
  {
    id: id('Name of the input.'),
    acts: choice(
      ['stop', 'reverse', 'open', 'hold'],
      'What it makes the leaf do: stop, open again while closing, open, or stay open. The first two protect.',
    ),
    plus: terminal('One side of the input.'),
    minus: terminal('The other side.'),
    ohm: ohm('Its resistance.'),
    fedFrom: optional(
      record(
        { terminal: terminal('Where the feed comes from.'), ohm: ohm('Through which resistance.') },
        'The control feeds the line itself, as for a contact to minus.',
      ),
    ),
    bands: list(
      record(
        {
          from_V: volt('Lower end.'),
          to_V: volt('Upper end.'),
          means: choice(['clear', 'seen', 'fault'], 'What the control takes it for.'),
        },
        'A range of the voltage between both sides.',
      ),
      { from: 1, upTo: 8 },
      'What the voltage means; between two ranges it may mean either, and counts as the worse.',
    ),
    endOfLine_ohm: optional(
      ohm(
        'The resistor that its manual wants at the end of the line, by which it knows the line from a short and from a break. `connect` then tries where it goes.',
      ),
    ),
    settable,
    pairedWith: optional(
      record(
        { id: id('The other input.'), discrepancy_s: seconds('For so long the two may disagree.') },
        'The second channel: where both disagree for longer, the control takes it for a fault.',
      ),
    ),
  },
  'One input of the control.',
)

const wiredControlSchema = record(
  {
    inputs: list(inputSchema, { from: 1, upTo: BOUNDS.wiredInputs }, 'Its inputs.'),
    test: optional(
      record(
        {
          from: terminal('One side of the test output.'),
          to: terminal('The other side.'),
          on_ohm,
          off_ohm,
          closedWhile: choice(['asking', 'resting'], 'The test output is closed while the control asks, or while it does not.'),
          expects: list(id('An input.'), { from: 1, upTo: BOUNDS.wiredInputs }, 'The inputs that must say "seen" then.'),
          every_s: seconds('It asks at least so often, and before it closes.'),
          waits_s: optional(seconds('It waits so long for the answer.')),
          whenFailed: choice(['does-not-close', 'nothing'], 'What it does where an input does not say "seen".'),
        },
        'The control asks its sensors to say "seen".',
      ),
    ),
    source: sourceSchema,
  },
  'The inputs of the control, from its manual.',
)

const cableSchema = record(
  {
    id: id('Name of the cable.'),
    length_mm: distance_mm('Its length from end to end.'),
    conductor: eitherPart(
      [
        record({ area_mm2: number({ from: 0.05, upTo: 50 }, 'Cross-section of a core.') }, 'A metric core.'),
        record({ awg: wholeNumber({ from: 0, upTo: 30 }, 'Gauge of a core.') }, 'A core by gauge.'),
      ],
      'an object { area_mm2 } or { awg }',
      'The size of its cores.',
    ),
    cores: list(
      record(
        {
          id: id('Name or number of the core in the cable.'),
          colour: optional(
            textPart(
              { form: /^(BK|BN|RD|OG|YE|GN|BU|VT|GY|WH|PK|GD|TQ|SR|GNYE)(BK|BN|RD|OG|YE|GN|BU|VT|GY|WH|PK|GD|TQ|SR)?$/ },
              'a colour by its letters, as "BN" or "RDBU"',
              'Colour, by the letters of IEC 60757.',
            ),
          ),
          from: terminal('Where it begins.'),
          to: terminal('Where it ends.'),
        },
        'One core.',
      ),
      { from: 1, upTo: BOUNDS.coresOfCable },
      'Its cores that are connected.',
    ),
  },
  'A cable.',
)

const years = (means: string) => optional(number({ above: 0, upTo: 1e6 }, means))

const handTestSchema = record(
  {
    mostHidden_percent: optional(
      number({ above: 0, upTo: 50 }, 'For so large a share of the time a hidden fault may stand, on average; who decides it says so.'),
    ),
    cable_y: years('Mean years until one cable fails dangerously.'),
    supply_y: years('The same of the supply.'),
    resistor_y: years('The same of a resistor.'),
    control_y: years('The same of the test output of the control.'),
    source: sourceSchema,
  },
  'What it takes to say how often somebody has to test by hand for faults that nothing else finds. Sensors: `sensors/*/declares`.',
)

export const wiringSchema = record(
  {
    supply: supplySchema,
    sensors: list(wiredSensorSchema, { from: 1, upTo: BOUNDS.wiredSensors }, 'The sensors as the wiring meets them.'),
    control: wiredControlSchema,
    cables: list(cableSchema, { from: 0, upTo: BOUNDS.cables }, 'The cables.'),
    resistors: optional(
      list(
        record({ id: id('Its name.'), from: terminal('One side.'), to: terminal('The other side.'), ohm: ohm('Its resistance.') }, ''),
        { upTo: BOUNDS.resistors },
        'Resistors at the end of a line, and the like.',
      ),
    ),
    copper: optional(
      record(
        {
          coldest_degC: optional(number({ from: -60, upTo: 120 }, 'At its coldest; no voltage is judged by it.')),
          hottest_degC: number({ from: -60, upTo: 120 }, 'At its hottest.'),
        },
        'How cold and how hot the copper of the cables gets.',
      ),
    ),
    joints: optional(list(terminal('A terminal where cores only meet.'), { upTo: BOUNDS.joints }, 'Terminals of junction boxes.')),
    handTest: optional(handTestSchema),
    note: optional(name('Anything worth saying.')),
  },
  'What is connected to what. Volts, ohms, amperes; docs/method.md, Wiring.',
)

export type FileWiring = Plain<typeof wiringSchema>
