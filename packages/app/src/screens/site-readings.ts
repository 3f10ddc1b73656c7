import { type Meter, measurable, type Observation, type Standing, USUAL_METER, type Wiring } from '@sillsight/engine'

/** What somebody measured or saw on site, as far as it is entered. */
export type SiteReading = Standing &
  (
    | { readonly kind: 'volt'; readonly plus: string; readonly minus: string; readonly volt?: number | undefined }
    | { readonly kind: 'sensor'; readonly sensor: string; readonly shows?: string | undefined }
    | { readonly kind: 'input'; readonly input: string; readonly shows?: string | undefined }
  )

/** What a sensor can show of itself, and the control of an input. */
export const SHOWN_STATES = ['clear', 'seen', 'unpowered', 'warming-up', 'fault'] as const
export const SHOWN_BELIEFS = ['clear', 'seen', 'fault'] as const

export interface OnSite {
  readonly readings: readonly SiteReading[]
  readonly meter: Meter
}

const NOTHING: OnSite = { readings: [], meter: USUAL_METER }
const KEY = 'sillsight.site-readings'

/** What was measured at a door when this device last looked for a fault there; it is kept for one door, the last. */
export function keptReadings(door: string): OnSite {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? '{}') as { door?: unknown; readings?: unknown; meter?: Partial<Meter> }
    if (kept.door !== door || !Array.isArray(kept.readings)) return NOTHING
    const { off_V, off_percent } = kept.meter ?? {}
    const meter = typeof off_V === 'number' && typeof off_percent === 'number' ? { ...USUAL_METER, off_V, off_percent } : USUAL_METER
    return { readings: kept.readings.filter(isReading), meter }
  } catch {
    return NOTHING // no storage, or somebody wrote into it: they can be measured again
  }
}

export function keepReadings(door: string, onSite: OnSite): void {
  try {
    localStorage.setItem(KEY, JSON.stringify({ door, ...onSite }))
  } catch {
    // kept for as long as the page is open
  }
}

function isReading(found: unknown): found is SiteReading {
  if (typeof found !== 'object' || found === null) return false
  const { kind, plus, minus, volt, sensor, input, shows, seenBy, asking } = found as Record<string, unknown>
  const isText = (value: unknown) => typeof value === 'string'
  if (!Array.isArray(seenBy) || !seenBy.every(isText) || typeof asking !== 'boolean') return false
  if (kind === 'volt') return isText(plus) && isText(minus) && (volt === undefined || Number.isFinite(volt))
  return (kind === 'sensor' ? isText(sensor) : kind === 'input' && isText(input)) && (shows === undefined || isText(shows))
}

/** A reading that is whole and names only what the wiring has; undefined where it is not. */
export function observationOf(wiring: Wiring, reading: SiteReading): Observation | undefined {
  const { seenBy, asking, kind } = reading
  const standing = { seenBy, asking }
  if (!isInWiring(wiring, reading)) return undefined
  if (kind === 'volt') return reading.volt === undefined ? undefined : { ...reading, volt: reading.volt }
  if (kind === 'sensor') {
    const shows = SHOWN_STATES.find((state) => state === reading.shows)
    return shows && { ...standing, kind, sensor: reading.sensor, shows }
  }
  const shows = SHOWN_BELIEFS.find((belief) => belief === reading.shows)
  return shows && { ...standing, kind, input: reading.input, shows }
}

/** Whether the wiring still has what a reading names: a terminal may have been renamed since. */
export function isInWiring(wiring: Wiring, reading: SiteReading): boolean {
  const { sensors, control } = wiring
  const isSensor = (id: string) => sensors.some((sensor) => sensor.id === id)
  if (!reading.seenBy.every(isSensor) || (reading.asking && !control.test)) return false
  if (reading.kind === 'sensor') return isSensor(reading.sensor)
  if (reading.kind === 'input') return control.inputs.some(({ id }) => id === reading.input)
  const terminals = measurable(wiring)
  return reading.plus !== reading.minus && terminals.includes(reading.plus) && terminals.includes(reading.minus)
}
