export type { Proved } from './coverage.ts'
export type { Issue } from './json.ts'
export { type VerifyResult, verifyEvidence } from './verify-evidence.ts'
export type { ProvedCase } from './worst-case.ts'
