/**
 * What is connected to what, as somebody built or proposes it. Terminals are named; a terminal is one node of the network. Volts, ohms, amperes.
 * Parts are described by what they do, whatever they are made of: a relay contact, a transistor and a test output are each a switch.
 */
export interface Wiring {
  readonly supply: Supply
  readonly sensors: readonly WiredSensor[]
  readonly control: WiredControl
  readonly cables: readonly Cable[]
}

/** Its name, and for all terminals: `device.terminal`. */
export type Terminal = string

export interface Supply {
  readonly plus: Terminal
  readonly minus: Terminal
  readonly least_V: number
  readonly largest_V: number
  readonly inner_ohm: number // > 0
}

/** What a sensor is in, as far as its outputs are concerned. */
export type SensorState = 'clear' | 'seen' | 'unpowered' | 'warming-up' | 'fault'

export interface WiredSensor {
  /** Id of the sensor of the door. */
  readonly id: string
  readonly power: PowerInput
  readonly outputs: readonly SensorSwitch[]
  readonly test: TestInput | undefined
}

export interface PowerInput {
  readonly plus: Terminal
  readonly minus: Terminal
  readonly largest_A: number
  /** It works from here to there, and is destroyed by nothing that a fault can bring: what is beyond counts as unpowered. */
  readonly least_V: number
  readonly largest_V: number
}

/** One contact of a relay, or one transistor: what it does in each state. */
export interface SensorSwitch {
  readonly name: string
  readonly acts: 'presence' | 'opening'
  readonly from: Terminal
  readonly to: Terminal
  readonly closedIn: readonly SensorState[]
  readonly on_ohm: number // > 0
  /** Leakage of an open one; Infinity for a contact. */
  readonly off_ohm: number
  /** The sensor watches the output: where it stays at voltage although switched off, it goes to fault, within this time. */
  readonly watched?: { readonly at: Terminal; readonly against: Terminal; readonly off_V: number; readonly within_s: number }
}

/** While it is asked, the sensor says "seen". */
export interface TestInput {
  readonly plus: Terminal
  readonly minus: Terminal
  readonly ohm: number
  readonly asked: 'above' | 'below'
  readonly on_V: number
  readonly off_V: number
}

export interface WiredControl {
  readonly inputs: readonly ControlInput[]
  readonly test: ControlTest | undefined
}

export interface ControlInput {
  readonly id: string
  readonly acts: 'stop' | 'open'
  readonly plus: Terminal
  readonly minus: Terminal
  readonly ohm: number
  /** A control that feeds the line itself, as for a contact without voltage of its own. */
  readonly fedFrom?: { readonly terminal: Terminal; readonly ohm: number }
  /** What a voltage between its terminals means; between two bands it may mean either. */
  readonly bands: readonly Band[]
  /** Id of the other channel; where both do not agree for so long it is a fault. */
  readonly pairedWith?: { readonly id: string; readonly discrepancy_s: number }
}

export interface Band {
  readonly from_V: number
  readonly to_V: number
  readonly means: 'clear' | 'seen' | 'fault'
}

/** Before it closes, or every so often, the control asks its sensors to say "seen", and does not close where an input does not say so. */
export interface ControlTest {
  readonly from: Terminal
  readonly to: Terminal
  readonly on_ohm: number
  readonly off_ohm: number
  /** Whether its switch is closed while it asks, or while it does not. */
  readonly closedWhile: 'asking' | 'resting'
  readonly expects: readonly string[] // ids of inputs
  readonly every_s: number
}

export interface Cable {
  readonly id: string
  readonly length_mm: number
  readonly cores: readonly Core[]
}

export interface Core {
  readonly id: string
  readonly from: Terminal
  readonly to: Terminal
  readonly ohm: number // of its whole length, > 0
}
