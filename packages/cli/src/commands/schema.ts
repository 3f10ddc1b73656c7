import { doorFileJsonSchema } from '@sillsight/document'
import { type ExitCode, exitCodes } from '../exit-codes.ts'
import { print } from '../output.ts'

export function schemaCommand(): ExitCode {
  print(`${JSON.stringify(doorFileJsonSchema(), undefined, 2)}\n`)
  return exitCodes.pass
}
