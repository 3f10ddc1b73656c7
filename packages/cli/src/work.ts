import type { Request } from './arguments.ts'
import type { ExitCode } from './exit-codes.ts'

export { written } from './formats.ts'
export { judgeFile } from './judging.ts'

/** Does what was asked for. Each command is loaded when it is needed. @throws Refusal for what the user can mend */
export async function work(request: Request): Promise<ExitCode> {
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
