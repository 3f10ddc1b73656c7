import { evidenceOf, lanesEvidence, wiringEvidence } from '@sillsight/engine'
import type { Request } from '../arguments.ts'
import { type ExitCode, exitCodes } from '../exit-codes.ts'
import { judgedOrRefusal } from '../judging.ts'
import { print } from '../output.ts'
import { mustBeFree, writeWhole } from '../writing.ts'

/** Writes what lets a foreign program re-check coverage, lanes and wiring (docs/evidence.md): as JSON, or compressed where the name ends in `.gz`. */
export function evidenceCommand(request: Request): ExitCode {
  const [file = ''] = request.words
  const out = request.values.get('out')
  const replace = request.switches.has('force')
  if (out !== undefined && !replace) mustBeFree(out)
  const { door, document, judgement, textSha256 } = judgedOrRefusal(file)
  const coverage = evidenceOf(door, textSha256, document.tolerances ?? null, (zone, state) =>
    judgement.coverages.filter((c) => c.zone === zone.id && c.state === state.id).flatMap(({ pockets }) => pockets),
  )
  const wiring = door.wiring && wiringEvidence(door.wiring, judgement.findings)
  const evidence = { ...coverage, ...lanesEvidence(door), ...(wiring ? { wiring } : {}) }
  const text = `${JSON.stringify(evidence)}\n`
  if (out === undefined) print(text)
  else writeWhole(out, out.endsWith('.gz') ? process.getBuiltinModule('node:zlib').gzipSync(text) : text, { replace })
  return exitCodes.pass
}
