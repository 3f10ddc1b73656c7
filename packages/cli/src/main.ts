#!/usr/bin/env node
// Decides what was asked for. Help, version and completion end here; everything else is loaded only when it is needed.
import { readFileSync } from 'node:fs'
import { enableCompileCache } from 'node:module'
import { join } from 'node:path'
import { decide } from './arguments.ts'
import { completionScript } from './completion.ts'
import { demoDoorForHelp } from './demo-doors.ts'
import { type ExitCode, exitCodes } from './exit-codes.ts'
import { helpText } from './help.ts'
import { print } from './output.ts'
import { program } from './program.ts'
import { reported } from './reported.ts'
import { terminalWidth } from './terminal.ts'

async function main(): Promise<ExitCode> {
  const decision = decide(process.argv.slice(2))
  if (decision.kind === 'version') print(`${version()}\n`)
  else if (decision.kind === 'help')
    print(helpText(decision.command, { demoDoor: demoDoorForHelp(), program: program(), width: Math.min(terminalWidth(), 100) }))
  else if (decision.request.command === 'completion') print(completionScript(decision.request.words[0] ?? ''))
  else {
    enableCompileCache() // the second start need not compile the engine again
    return (await import('./work.ts')).work(decision.request)
  }
  return exitCodes.pass
}

function version(): string {
  const manifest: unknown = JSON.parse(readFileSync(join(import.meta.dirname, '..', 'package.json'), 'utf8'))
  return typeof manifest === 'object' && manifest && 'version' in manifest ? String(manifest.version) : 'unknown'
}

main()
  .catch(reported)
  .then((code) => {
    process.exitCode = code
  })
