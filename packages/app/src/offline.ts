import { ownScript } from './trusted.ts'

/** A page that is never idle keeps the program all the same. */
const LATEST_MS = 5000

/**
 * Keeps the program itself on the device. That is as much work as starting was, so it begins when the page is loaded and has nothing
 * else to do: who starts to work at once does not wait for it. A new version waits until the last tab of the old one is closed: nobody's work changes under
 * their hands.
 */
export function keepOffline(): void {
  if (!('serviceWorker' in navigator) || import.meta.env.DEV) return
  if (document.readyState === 'complete') whenIdle(register)
  else addEventListener('load', () => whenIdle(register), { once: true })
}

function register(): void {
  navigator.serviceWorker.register(ownScript('./service-worker.js'), { scope: './' }).catch(() => {
    // no offline start then: private windows and plain http refuse it, and the rest of the program works all the same
  })
}

function whenIdle(work: () => void): void {
  if ('requestIdleCallback' in globalThis) requestIdleCallback(work, { timeout: LATEST_MS })
  else setTimeout(work) // Safari
}
