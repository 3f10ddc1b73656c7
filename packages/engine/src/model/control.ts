import type { Source } from './source.ts'

/** What the control does, as somebody stated it, and how that is known. Undefined where nobody said. */
export interface Control {
  /** With a presence sensor faulted or unplugged: it may still be held to run, it stays, or it closes all the same. */
  readonly sensorFault: ControlFact<'hold-to-run' | 'stays' | 'closes'> | undefined
  /** When power returns: it waits for a command, moves with its sensors awake, or moves at once. */
  readonly powerReturn:
    | (ControlFact<'waits' | 'moves-guarded' | 'moves'> & {
        /** From then until a closing can begin, at the earliest; undefined where nobody said. */
        readonly closesAfter_s?: number | undefined
      })
    | undefined
  /** Whether a function that closes in a fire heeds presence. */
  readonly fire: ControlFact<'none' | 'presence-first' | 'fire-first'> | undefined
  /** Whether a function that lets people out wins over all else. */
  readonly escape: ControlFact<'none' | 'escape-first' | 'other-first'> | undefined
  /** Whether a leaf that has to open again does so though the neighbour is open. */
  readonly interlock: ControlFact<'none' | 'reversal-first' | 'interlock-first'> | undefined
}

export interface ControlFact<Does extends string> {
  readonly does: Does
  readonly source: Source
}
