import { ownScript } from './trusted.ts'

/**
 * Keeps the program itself on the device. A new version waits until the last tab of the old one is closed: nobody's work changes under
 * their hands.
 */
export function keepOffline(): void {
  if (!('serviceWorker' in navigator) || import.meta.env.DEV) return
  navigator.serviceWorker.register(ownScript('./service-worker.js'), { scope: './' }).catch(() => {
    // no offline start then: private windows and plain http refuse it, and the rest of the program works all the same
  })
}
