import type { Proposal, Wiring } from '@sillsight/engine'
import { toDoor } from '../door/resolve.ts'
import { parseDocument } from '../parse.ts'
import type { DoorFile } from '../schema/door-file.ts'
import type { FileWiring } from '../schema/wiring.ts'
import { applyEdits, type FileEdit } from './repair-edits.ts'
import { sameWiring } from './same-door.ts'

type FileCable = FileWiring['cables'][number]

/**
 * How a connection that was found for the parts of a door's wiring is written into its file: other cables and resistors, what is set otherwise, and the
 * control's test left out where it is not used. A core that joins what one joined before keeps its colour.
 *
 * @returns undefined where the file cannot hold it: the file so changed would not make the wiring that was judged
 */
export function connectionEdits(
  file: DoorFile,
  { wiring: found, turned }: Pick<Proposal, 'wiring' | 'turned'>,
): readonly FileEdit[] | undefined {
  if (file.wiring === undefined) return undefined
  const before = file.wiring.cables.flatMap(({ cores }) => cores)
  const edits: readonly FileEdit[] = [
    ...turnedOutputs(file.wiring, turned),
    ...turnedInputs(file.wiring, turned),
    { kind: 'put', path: 'wiring/cables', value: found.cables.map((cable) => cableInFile(cable, before)) },
    { kind: 'put', path: 'wiring/joints', value: found.joints.length > 0 ? [...found.joints] : undefined },
    { kind: 'put', path: 'wiring/resistors', value: found.resistors.length > 0 ? structuredClone(found.resistors) : undefined },
    ...(found.control.test ? [] : [{ kind: 'put', path: 'wiring/control/test', value: undefined } as const]),
  ]
  const changed = structuredClone(file)
  applyEdits(changed, edits)
  const read = parseDocument(JSON.stringify(changed))
  const made = read.ok ? toDoor(read.document, read.catalogue).wiring : undefined
  return made && sameWiring(made, found) ? edits : undefined
}

const TURNED: Readonly<Record<string, string>> = { clear: 'seen', seen: 'clear' }
const turnedWord = (word: string) => TURNED[word] ?? word

function turnedOutputs({ sensors }: FileWiring, turned: readonly string[]): readonly FileEdit[] {
  return sensors.flatMap(({ sensor, outputs }, i) =>
    outputs.flatMap((output, k): readonly FileEdit[] => {
      if (!turned.includes(`${sensor}/${output.name}`)) return []
      const [field, states] =
        output.kind === 'contact'
          ? (['closedIn', output.closedIn] as const)
          : output.kind === 'change-over'
            ? (['energisedIn', output.energisedIn] as const)
            : (['onIn', output.onIn] as const)
      return [{ kind: 'put', path: `wiring/sensors/${i}/outputs/${k}/${field}`, value: states.map(turnedWord) }]
    }),
  )
}

function turnedInputs({ control }: FileWiring, turned: readonly string[]): readonly FileEdit[] {
  return control.inputs.flatMap(({ id, bands }, i) =>
    turned.includes(id)
      ? bands.map(
          ({ means }, k): FileEdit => ({ kind: 'put', path: `wiring/control/inputs/${i}/bands/${k}/means`, value: turnedWord(means) }),
        )
      : [],
  )
}

/** A colour stays in its cable only once: two cores of one colour would tell nobody apart. */
function cableInFile({ id, length_mm, conductor, cores }: Wiring['cables'][number], before: FileCable['cores']): FileCable {
  const taken = new Set<string>()
  return {
    id,
    length_mm,
    conductor,
    cores: cores.map(({ id: core, from, to }) => {
      const colour = before.find((each) => each.colour && !taken.has(each.colour) && joinsTheSame(each, { from, to }))?.colour
      if (colour) taken.add(colour)
      return { id: core.slice(id.length + 1), ...(colour && { colour }), from, to }
    }),
  }
}

interface Ends {
  readonly from: string
  readonly to: string
}

const joinsTheSame = (a: Ends, b: Ends) => (a.from === b.from && a.to === b.to) || (a.from === b.to && a.to === b.from)
