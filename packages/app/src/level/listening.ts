import { useEffect, useState } from 'react'
import { type Hold, holdOf, type Up, upOf } from './rise.ts'

/** What is read just now. */
export type Reading = { readonly kind: 'waiting' | 'none' | 'flat' } | ({ readonly kind: 'held' } & Hold)

/** Some browsers have to be asked, and only while something is touched. */
interface Askable {
  readonly requestPermission?: () => Promise<string>
}

/** A browser with such events on a device that is held in the hand; whether a sensor answers shows only when one listens. */
export function levelMayBeThere(): boolean {
  return isSecureContext && 'DeviceOrientationEvent' in window && navigator.maxTouchPoints > 0
}

/** To be called from what a touch does. */
export async function mayListen(): Promise<boolean> {
  const { requestPermission } = DeviceOrientationEvent as unknown as Askable
  if (!requestPermission) return true
  return requestPermission.call(DeviceOrientationEvent).then(
    (answer) => answer === 'granted',
    () => false,
  )
}

/**
 * The last angle is looked at in equal steps of time rather than counted by events: browsers send one only when the angle has changed, and a
 * device that stands still would never have enough of them.
 */
const STEP_MS = 125
const KEPT_STEPS = 8
const NONE_AFTER_STEPS = 16

/** Listens to the sensor for as long as what asks is on the screen. */
export function useReading(): Reading {
  const [reading, setReading] = useState<Reading>({ kind: 'waiting' })
  useEffect(() => {
    let last: Up | undefined
    let kept: readonly Up[] = []
    let steps = 0
    const hear = ({ beta, gamma }: DeviceOrientationEvent) => {
      if (beta !== null && gamma !== null) last = upOf({ beta_deg: beta, gamma_deg: gamma })
    }
    const look = () => {
      steps++
      if (!last) {
        if (steps >= NONE_AFTER_STEPS) setReading((now) => (now.kind === 'none' ? now : { kind: 'none' }))
        return
      }
      kept = [...kept.slice(1 - KEPT_STEPS), last]
      const hold = holdOf(kept)
      setReading(hold && kept.length === KEPT_STEPS ? { kind: 'held', ...hold } : { kind: hold ? 'waiting' : 'flat' })
    }
    window.addEventListener('deviceorientation', hear)
    const timer = setInterval(look, STEP_MS)
    return () => {
      window.removeEventListener('deviceorientation', hear)
      clearInterval(timer)
    }
  }, [])
  return reading
}
