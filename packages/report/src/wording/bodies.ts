import type { Door, Posture } from '@sillsight/engine'
import type { Units } from '../options.ts'
import { figure, size } from './figures.ts'
import { plain } from './plain.ts'

/** A posture by its size: "700 × 300 × 200 mm, lying", "⌀ 400 × 1500 mm, standing". Never by whom the body stands for. */
export function postureWords(posture: Posture, units: Units, yaw_rad = 0): string {
  const name = plain(posture.name)
  const turned = Math.abs(yaw_rad) > 1e-9 ? `turned ${figure({ value: yaw_rad, unit: 'rad' }, units)}` : ''
  return [sizeWords(posture, units), name, turned].filter(Boolean).join(', ')
}

export function sizeWords(posture: Posture, units: Units): string {
  if (posture.shape === 'box') return size([posture.a_mm, posture.b_mm, posture.c_mm], units)
  return `${size([posture.radius_mm * 2], units)} across, ${size([posture.height_mm], units)} high`
}

/** The posture a worst case lies in, or undefined if the door has no such body. */
export function postureOf(door: Door, { body, posture }: { readonly body: string; readonly posture: number }): Posture | undefined {
  return door.bodies.find(({ id }) => id === body)?.postures[posture]
}
