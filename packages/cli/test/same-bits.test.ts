import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { Worker } from 'node:worker_threads'
import { build } from 'esbuild'
import { type Browser, chromium } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { builtProgram } from './program.ts'
import { judged } from './same-bits.entry.ts'

const { run, demo, folder } = await builtProgram()
const names = readdirSync(demo).filter((name) => name.endsWith('.json'))
const texts = names.map((name) => readFileSync(join(demo, name), 'utf8'))
const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex')

/** What every other way of computing has to reproduce: the sources as they stand, in this process. */
const expected = texts.map((text) => sha256(judged(text)))

const entry = join(import.meta.dirname, 'same-bits.entry.ts')
/** The engine with the door file's reader as one script that sets `sillsight`. */
async function script(minify: boolean): Promise<string> {
  const { outputFiles } = await build({ entryPoints: [entry], bundle: true, format: 'iife', globalName: 'sillsight', minify, write: false })
  return outputFiles[0]?.text ?? ''
}
const scripts = { plain: await script(false), minified: await script(true) }

/** What a minifier rewrites and what threads share have nothing to do with each other: each form and each number of threads once. */
const ways = [
  { form: 'plain', workers: 2 },
  { form: 'minified', workers: 1 },
] as const

describe(`the result hashes of the demonstration doors (${names.length})`, () => {
  it('differ from door to door', () => {
    expect(new Set(expected).size).toBe(names.length)
  })

  it.each(ways)('are the same in Node, $form, with $workers threads', async ({ form, workers }) => {
    const answer = `require('node:worker_threads').parentPort.on('message', (text) => require('node:worker_threads').parentPort.postMessage(sillsight.judged(text)))`
    const threads = Array.from({ length: workers }, () => new Worker(`${scripts[form]}\n${answer}`, { eval: true }))
    const ask = (thread: Worker, text: string) =>
      new Promise<string>((resolve, reject) => thread.once('message', resolve).once('error', reject).postMessage(text))
    const shares = await Promise.all(
      threads.map(async (thread, i) => {
        const share: (readonly [number, string])[] = []
        for (const [k, text] of texts.entries()) if (k % workers === i) share.push([k, sha256(await ask(thread, text))])
        return share
      }),
    )
    await Promise.all(threads.map((thread) => thread.terminate()))
    expect(inOrder(shares)).toEqual(expected)
  })

  it.each([1, 2])('are the same from the command line as it ships, minified, with %d threads', (workers) => {
    const { out } = run(['judge', '--jsonl', '--workers', String(workers), ...names.map((name) => join(demo, name))])
    expect(
      out
        .trimEnd()
        .split('\n')
        .map((line) => JSON.parse(line).sha256),
    ).toEqual(expected)
  })
})

describe('in Chromium', () => {
  let browser: Browser
  beforeAll(async () => {
    const args = ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update', '--disable-sync']
    browser = await chromium.launch({ executablePath: '/usr/bin/chromium', headless: true, args })
  })
  afterAll(() => browser?.close())

  it.each(ways)('the hashes are the same as in Node, $form, with $workers workers', async ({ form, workers }) => {
    const page = await browser.newPage()
    await page.goto(pathToFileURL(folder).href)
    const shares = await page.evaluate(inBrowser, { script: scripts[form], texts, workers })
    await page.close()
    expect(inOrder(shares.map((share) => share.map(([k, text]) => [k, sha256(text)] as const)))).toEqual(expected)
  })
})

function inOrder(shares: readonly (readonly (readonly [number, string])[])[]): readonly string[] {
  return shares
    .flat()
    .sort(([a], [b]) => a - b)
    .map(([, hash]) => hash)
}

interface BrowserWorker {
  onmessage: (message: { data: string }) => void
  onerror: (problem: { message: string }) => void
  postMessage(text: string): void
  terminate(): void
}

/** Runs in the page: shares the doors out over web workers. */
async function inBrowser({ script, texts, workers }: { script: string; texts: readonly string[]; workers: number }) {
  const answer = 'onmessage = ({ data }) => postMessage(sillsight.judged(data))'
  const address = URL.createObjectURL(new Blob([`${script}\n${answer}`], { type: 'text/javascript' }))
  const { Worker } = globalThis as unknown as Record<string, new (address: string) => BrowserWorker>
  if (!Worker) throw new Error('no workers here')
  const threads = Array.from({ length: workers }, () => new Worker(address))
  return Promise.all(
    threads.map(async (thread, i) => {
      const share: [number, string][] = []
      for (const [k, text] of texts.entries()) {
        if (k % workers !== i) continue
        const canonical = await new Promise<string>((resolve, reject) => {
          thread.onmessage = ({ data }) => resolve(data)
          thread.onerror = ({ message }) => reject(new Error(message))
          thread.postMessage(text)
        })
        share.push([k, canonical])
      }
      thread.terminate()
      return share
    }),
  )
}
