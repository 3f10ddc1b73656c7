import type { Source } from './source.ts'

/**
 * What is connected to what, as somebody built or proposes it. Terminals are named; a terminal is one node of the network. Volts, ohms, amperes.
 * Parts are described by what they do, whatever they are made of: a relay contact, a transistor and a test output are each a switch.
 */
export interface Wiring {
  readonly supply: Supply
  readonly sensors: readonly WiredSensor[]
  readonly control: WiredControl
  readonly cables: readonly Cable[]
  /** End-of-line resistors and the like. */
  readonly resistors: readonly Resistor[]
  /** Terminals of junction boxes: there cores only meet. */
  readonly joints: readonly Terminal[]
  /** What says how often somebody tests by hand; undefined where nobody said anything of it. */
  readonly handTest?: HandTestFigures | undefined
  /** How cold and how hot the copper of its cables gets; undefined where nobody said. */
  readonly copper?: { readonly coldest_degC?: number | undefined; readonly hottest_degC: number } | undefined
}

/** Mean years to dangerous failure of what is no sensor, and for how large a share of the time a hidden fault may stand. */
export interface HandTestFigures {
  readonly mostHidden_percent?: number | undefined
  readonly cable_y?: number | undefined
  readonly supply_y?: number | undefined
  readonly resistor_y?: number | undefined
  readonly control_y?: number | undefined
  readonly source: Source
}

/** Its name, and for all terminals: `device.terminal`. */
export type Terminal = string

export interface Supply {
  readonly plus: Terminal
  readonly minus: Terminal
  readonly least_V: number
  readonly largest_V: number
  readonly inner_ohm: number // > 0
  /** What it can give; undefined where nobody said. */
  readonly largest_A: number | undefined
  /** The rail that is bonded to earth, so that a core on earthed metal meets it. */
  readonly earthed: 'plus' | 'minus' | 'none'
  /** What it is declared to be: an energy-limited source, one that is separated and of extra-low voltage, or neither; undefined where nobody said. */
  readonly limited?: 'class-2' | 'extra-low' | 'no' | undefined
  /** Of the fuse that these sensors hang on; undefined where there is none, or nobody said. */
  readonly fuse_A?: number | undefined
  readonly source: Source
}

/** What a sensor is in, as far as its outputs are concerned. */
export const SENSOR_STATES = ['clear', 'seen', 'unpowered', 'warming-up', 'fault'] as const
export type SensorState = (typeof SENSOR_STATES)[number]

export interface WiredSensor {
  /** Id of the sensor of the door. */
  readonly id: string
  readonly power: PowerInput
  readonly outputs: readonly SensorSwitch[]
  readonly test: TestInput | undefined
  /** It watches itself: a fault inside it sends it to "fault" within so long; undefined where nobody said. */
  readonly ownFaults_s: number | undefined
  readonly source: Source
}

export interface PowerInput {
  readonly plus: Terminal
  readonly minus: Terminal
  /** At most, with its heater where it has one. */
  readonly largest_A: number
  /** For a moment when power comes; undefined where nobody said. */
  readonly inrush_A: number | undefined
  /** It works from here to there, and is destroyed by nothing that a fault can bring: what is beyond counts as unpowered. */
  readonly least_V: number
  readonly largest_V: number
}

/** One contact of a relay, or one transistor: what it does in each state. */
export interface SensorSwitch {
  /** Unique in its sensor. */
  readonly name: string
  /** What moves it: contacts of one relay share this. */
  readonly output: string
  readonly acts: 'presence' | 'opening'
  readonly from: Terminal
  readonly to: Terminal
  readonly closedIn: readonly SensorState[]
  readonly on_ohm: number // > 0
  /** Leakage of an open one; Infinity for a contact. */
  readonly off_ohm: number
  /** Short interruptions by which the sensor sees that its output can switch off: where it stays above `off_V` then, the sensor goes to fault. */
  readonly pulsed: TestPulses | undefined
  readonly rating: ContactRating | undefined
  /** What moves it can be set the other way round: "clear" and "seen" change places, all other states stay. */
  readonly turns?: boolean | undefined
}

/** The output is looked at between `at` and `against`, and a fault is known within `within_s`. */
export interface TestPulses {
  readonly at: Terminal
  readonly against: Terminal
  readonly off_V: number
  readonly within_s: number
}

/** What a contact may switch: above it welds, below the least current it does not clean itself. */
export interface ContactRating {
  readonly largest_V: number | undefined
  readonly largest_A: number | undefined
  readonly least_A: number | undefined
}

/** While it is asked, the sensor says "seen". */
export interface TestInput {
  readonly plus: Terminal
  readonly minus: Terminal
  readonly ohm: number
  readonly asked: 'above' | 'below'
  readonly on_V: number
  readonly off_V: number
  /** From the question to the output that says "seen", at the latest. */
  readonly answers_s: number | undefined
}

export interface WiredControl {
  readonly inputs: readonly ControlInput[]
  readonly test: ControlTest | undefined
  readonly source: Source
}

export interface ControlInput {
  readonly id: string
  /** `stop` and `reverse` protect; `open` and `hold` serve. */
  readonly acts: 'stop' | 'reverse' | 'open' | 'hold'
  readonly plus: Terminal
  readonly minus: Terminal
  readonly ohm: number
  /** Where the control feeds the line itself, through a resistor, as for a contact to minus. */
  readonly fedFrom: { readonly terminal: Terminal; readonly ohm: number } | undefined
  /** What a voltage between its terminals means; between two bands it may mean either. */
  readonly bands: readonly Band[]
  /** The resistor that its manual wants at the end of the line, so that it knows a line from a short and from a break. */
  readonly endOfLine_ohm?: number | undefined
  /** It can be set the other way round: what says "clear" says "seen", and what says "seen" says "clear". */
  readonly turns?: boolean | undefined
  /** The other channel; where both do not agree for so long it is a fault. */
  readonly pairedWith: { readonly id: string; readonly discrepancy_s: number } | undefined
}

export interface Band {
  readonly from_V: number
  readonly to_V: number
  readonly means: 'clear' | 'seen' | 'fault'
}

/** Before it closes, or every so often, the control asks its sensors to say "seen"; what it does where an input does not say so. */
export interface ControlTest {
  readonly from: Terminal
  readonly to: Terminal
  readonly on_ohm: number
  readonly off_ohm: number
  /** Whether its switch is closed while it asks, or while it does not. */
  readonly closedWhile: 'asking' | 'resting'
  readonly expects: readonly string[] // ids of inputs
  readonly every_s: number
  /** How long it waits for the answer; undefined where nobody said. */
  readonly waits_s: number | undefined
  readonly whenFailed: 'does-not-close' | 'nothing'
}

export interface Cable {
  readonly id: string
  readonly length_mm: number
  readonly conductor: Conductor
  readonly cores: readonly Core[]
}

export type Conductor = { readonly area_mm2: number } | { readonly awg: number }

export interface Core {
  /** Unique in the wiring, as `W1.3`. */
  readonly id: string
  /** By the letters of the colour standard, as `BN` or `RDBU`. */
  readonly colour: string | undefined
  readonly from: Terminal
  readonly to: Terminal
  readonly ohm: number // of its whole length at 20 °C, > 0
}

export interface Resistor {
  readonly id: string
  readonly from: Terminal
  readonly to: Terminal
  readonly ohm: number // > 0
}
