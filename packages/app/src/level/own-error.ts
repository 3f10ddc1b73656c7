import type { Edge } from './rise.ts'

/** What this device errs by when it stands on one of its edges, as it was found by turning it round. */
export interface OwnError {
  readonly error_deg: number
  readonly at_ms: number
}

/** More than this is no error of a device but a mistake in turning it round. */
export const LARGEST_ERROR_DEG = 5
const KEY = 'sillsight.level'

type Kept = Partial<Record<Edge, OwnError>>

export function ownErrorOf(edge: Edge): OwnError | undefined {
  const found = kept()[edge]
  return isOwnError(found) ? found : undefined
}

/** Kept on this device, because it is about this device. */
export function keepOwnError(edge: Edge, error: OwnError): void {
  try {
    localStorage.setItem(KEY, JSON.stringify({ ...kept(), [edge]: error }))
  } catch {
    // no storage: it will be said to be not calibrated
  }
}

function kept(): Kept {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}')
    return typeof found === 'object' && found !== null ? found : {}
  } catch {
    return {} // no storage, or somebody wrote into it: as if nobody had calibrated
  }
}

function isOwnError(found: unknown): found is OwnError {
  if (typeof found !== 'object' || found === null) return false
  const { error_deg, at_ms } = found as Partial<OwnError>
  return typeof error_deg === 'number' && Math.abs(error_deg) <= LARGEST_ERROR_DEG && Number.isFinite(at_ms)
}
