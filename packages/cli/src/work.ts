import type { Request } from './arguments.ts'
import type { ExitCode } from './exit-codes.ts'
import { reported } from './reported.ts'

export { written } from './formats.ts'
export { judgeFile } from './judging.ts'

/** Does what was asked for, or tells why not. */
export async function work(request: Request): Promise<ExitCode> {
  return start(request).catch(reported) // here, not in main: in the bundle each of the two has a Refusal of its own
}

/** Each command is loaded when it is needed. @throws Refusal for what the user can mend */
async function start(request: Request): Promise<ExitCode> {
  switch (request.command) {
    case 'judge':
      return (await import('./commands/judge.ts')).judgeCommand(request)
    case 'why':
      return (await import('./commands/why.ts')).whyCommand(request)
    case 'draw':
      return (await import('./commands/draw.ts')).drawCommand(request)
    case 'new':
      return (await import('./commands/new.ts')).newCommand(request)
    case 'migrate':
      return (await import('./commands/migrate.ts')).migrateCommand(request)
    case 'schema':
      return (await import('./commands/schema.ts')).schemaCommand()
    case 'demo':
      return (await import('./commands/demo.ts')).demoCommand(request)
    default:
      throw new Error(`no command is called ${request.command}`)
  }
}
