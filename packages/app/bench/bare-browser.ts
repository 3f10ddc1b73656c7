import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { ARGUMENTS, EXECUTABLE } from '../test/browser.ts'

/**
 * A browser in which nothing listens to the page. Whoever drives a page (playwright-core too) asks the browser for its console and errors, and
 * then each `Error` that a script makes, thrown or not, has that script parsed a second time: with React, which makes some while it loads, and the CPU slowed
 * four times, that was 0.3 to 0.7 s which no visitor waits for.
 */
export interface BareBrowser {
  /** A page as on a device that was never here. */
  readonly visitor: () => Promise<Visitor>
  readonly close: () => Promise<void>
}

export interface Visitor {
  /**
   * Goes to an address and waits until what is sought is there, the page is loaded, all of it is painted and the page has time for a touch.
   *
   * @param sought a CSS selector
   * @returns milliseconds since the navigation began, by the clock of the page
   */
  readonly usable: (url: string, sought: string) => Promise<number>
  readonly slow: (times: number) => Promise<void>
  /** What an expression gives in the page; promises are waited for. */
  readonly evaluate: (expression: string) => Promise<unknown>
  readonly close: () => Promise<void>
}

type Send = (method: string, params?: object, sessionId?: string) => Promise<Record<string, unknown>>

/** @throws if the browser does not start */
export async function bareBrowser(): Promise<BareBrowser> {
  const profile = mkdtempSync(join(tmpdir(), 'bare-'))
  const browser = spawn(EXECUTABLE, [...ARGUMENTS, '--remote-debugging-port=0', `--user-data-dir=${profile}`, 'about:blank'], {
    stdio: ['ignore', 'ignore', 'pipe'],
  })
  const ended = new Promise<void>((done) => browser.once('exit', () => done()))
  const address = await new Promise<string>((found, failed) => {
    let said = ''
    browser.once('error', failed)
    browser.once('exit', () => failed(new Error(`browser must start, got ${said}`)))
    browser.stderr.on('data', (bytes) => {
      said += bytes
      const [, address] = said.match(/DevTools listening on (\S+)/) ?? []
      if (address) found(address)
    })
  })
  const socket = new WebSocket(address)
  await new Promise((done, failed) => {
    socket.onopen = done
    socket.onerror = failed
  })
  const send = sender(socket)
  return {
    visitor: () => visitor(send),
    async close() {
      browser.kill()
      await ended
      rmSync(profile, { recursive: true, force: true, maxRetries: 5 })
    },
  }
}

function sender(socket: WebSocket): Send {
  interface Reply {
    readonly id?: number
    readonly result?: Record<string, unknown>
    readonly error?: { readonly message: string }
  }
  const asked = new Map<number, (reply: Reply) => void>()
  socket.onmessage = ({ data }) => {
    const reply = JSON.parse(String(data)) as Reply
    if (reply.id !== undefined) asked.get(reply.id)?.(reply)
  }
  let last = 0
  return (method, params = {}, sessionId) =>
    new Promise((done, failed) => {
      const id = ++last
      asked.set(id, ({ result = {}, error }) => {
        asked.delete(id)
        if (error) failed(new Error(`${method} must be answered, got ${error.message}`))
        else done(result)
      })
      socket.send(JSON.stringify({ id, method, params, ...(sessionId !== undefined && { sessionId }) }))
    })
}

async function visitor(send: Send): Promise<Visitor> {
  const { browserContextId } = await send('Target.createBrowserContext')
  const { targetId } = await send('Target.createTarget', { url: 'about:blank', browserContextId, width: 390, height: 740 })
  const { sessionId } = await send('Target.attachToTarget', { targetId, flatten: true })
  const ask: Send = (method, params) => send(method, params, String(sessionId))
  await ask('Page.enable')
  const evaluate = async (expression: string) => {
    const { result, exceptionDetails } = (await ask('Runtime.evaluate', { expression, awaitPromise: true, returnByValue: true })) as {
      readonly result: { readonly value?: unknown }
      readonly exceptionDetails?: { readonly text: string }
    }
    if (exceptionDetails) throw new Error(`${expression} must give a value, got ${exceptionDetails.text}`)
    return result.value
  }
  return {
    evaluate,
    async usable(url, sought) {
      const source = `(${watch})(${JSON.stringify(sought)})`
      const { identifier } = await ask('Page.addScriptToEvaluateOnNewDocument', { source })
      await ask('Page.navigate', { url })
      const at_ms = Number(await evaluate('globalThis.usable'))
      await ask('Page.removeScriptToEvaluateOnNewDocument', { identifier })
      return at_ms
    },
    slow: async (rate) => void (await ask('Emulation.setCPUThrottlingRate', { rate })),
    close: async () => void (await send('Target.disposeBrowserContext', { browserContextId })),
  }
}

/** Runs in the page before its own scripts. */
function watch(sought: string): void {
  const there = new Promise<void>((done) => {
    const look = new MutationObserver(() => {
      if (!document.querySelector(sought)) return
      look.disconnect()
      done()
    })
    look.observe(document, { subtree: true, childList: true })
  })
  const loaded = new Promise((done) => addEventListener('load', done))
  const painted = () =>
    new Promise((done) =>
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel()
        port1.onmessage = done
        port2.postMessage(undefined)
      }),
    )
  ;(globalThis as { usable?: Promise<number> }).usable = Promise.all([there, loaded])
    .then(painted)
    .then(() => performance.now())
}
