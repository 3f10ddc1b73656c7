// node tools/run.mjs start|test|PROGRAM [ARGUMENTS]: provides a new enough Node and the dependencies, then runs the command.
import { delimiter, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Hindrance, provideDependencies, provideNode, provideTestTools, root, run, say } from './provide.mjs'

/** @param {string} command @param {string[]} args */
async function execute(command, args) {
  if (command === 'start') return run(process.execPath, ['packages/app/start.ts', ...args])
  if (command === 'test') return test(args)
  const ended = await run(command === 'node' ? process.execPath : command, args)
  if (ended.code === 127) say(`There is no program called ${command}. package.json lists the commands of this repository: npm run`)
  return ended
}

/** Style, then types, then the tests, all of them even if one fails: the runner's count closes the output. @param {string[]} args */
async function test(args) {
  await provideTestTools()
  const checks = {
    'the style check (repair most of it with: npm run format)': ['biome', 'check', '--error-on-warnings'],
    'the type check': ['tsc'],
    'the type check of the engine without platform types': ['tsc', '-p', 'packages/engine'],
    'the type check of the app': ['tsc', '-p', 'packages/app'],
  }
  const failed = []
  for (const [name, [program = '', ...rest]] of Object.entries(checks)) {
    say(`Running ${name.replace(/ \(.*/, '')}`)
    const { code, signal } = await run(program, rest)
    if (signal) return { code, signal }
    if (code !== 0) failed.push(name)
  }
  process.env['FAILED_CHECKS'] = failed.join(', ') // tools/count-reporter.ts names them above its last line
  say('Running the tests')
  const { code, signal } = await run('vitest', ['run', ...args])
  return { code: code || (failed.length > 0 ? 1 : 0), signal }
}

async function main() {
  const [command, ...args] = process.argv.slice(2)
  if (!command) throw new Hindrance('Say what to run: node tools/run.mjs start, node tools/run.mjs test, or a program and its arguments.')
  const newerNode = await provideNode()
  if (newerNode) return run(newerNode, [fileURLToPath(import.meta.url), command, ...args])
  await provideDependencies()
  process.env['PATH'] = join(root, 'node_modules', '.bin') + delimiter + process.env['PATH']
  return execute(command, args)
}

try {
  const { code, signal } = await main()
  if (signal) process.kill(process.pid, signal)
  process.exitCode = code
} catch (error) {
  if (!(error instanceof Hindrance)) throw error
  say(error.message)
  process.exitCode = 1
}
