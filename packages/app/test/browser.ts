import { type Browser, chromium } from 'playwright-core'

/** Debian's Chromium without a screen. */
export const EXECUTABLE = process.env['CHROMIUM'] ?? '/usr/bin/chromium'
export const ARGUMENTS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

export function launch(): Promise<Browser> {
  return chromium.launch({ executablePath: EXECUTABLE, args: ARGUMENTS })
}
