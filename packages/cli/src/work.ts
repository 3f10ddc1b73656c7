import type { Request } from './arguments.ts'
import { connectCommand } from './commands/connect.ts'
import { demoCommand } from './commands/demo.ts'
import { drawCommand } from './commands/draw.ts'
import { evidenceCommand } from './commands/evidence.ts'
import { judgeCommand } from './commands/judge.ts'
import { mendCommand } from './commands/mend.ts'
import { migrateCommand } from './commands/migrate.ts'
import { newCommand } from './commands/new.ts'
import { schemaCommand } from './commands/schema.ts'
import { traceCommand } from './commands/trace.ts'
import { verifyCommand } from './commands/verify.ts'
import { whyCommand } from './commands/why.ts'
import type { ExitCode } from './exit-codes.ts'
import { reported } from './reported.ts'

export { written } from './formats.ts'
export { judgeFile } from './judging.ts'

/** Does what was asked for, or tells why not. */
export async function work(request: Request): Promise<ExitCode> {
  return start(request).catch(reported) // here, not in main: in the bundle each of the two has a Refusal of its own
}

/** @throws Refusal for what the user can mend */
async function start(request: Request): Promise<ExitCode> {
  switch (request.command) {
    case 'judge':
      return judgeCommand(request)
    case 'why':
      return whyCommand(request)
    case 'mend':
      return mendCommand(request)
    case 'connect':
      return connectCommand(request)
    case 'trace':
      return traceCommand(request)
    case 'draw':
      return drawCommand(request)
    case 'evidence':
      return evidenceCommand(request)
    case 'new':
      return newCommand(request)
    case 'migrate':
      return migrateCommand(request)
    case 'verify':
      return verifyCommand(request)
    case 'schema':
      return schemaCommand()
    case 'demo':
      return demoCommand(request)
    default:
      throw new Error(`no command is called ${request.command}`)
  }
}
