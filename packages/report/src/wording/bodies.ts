import type { Door, Posture } from '@sillsight/engine'
import { figure, size } from './figures.ts'
import type { Reader } from './language.ts'
import { called } from './plain.ts'

/** A posture by its size: "700 × 300 × 200 mm, lying", "⌀ 400 × 1500 mm, standing". Never by whom the body stands for. */
export function postureWords(posture: Posture, reader: Reader, yaw_rad = 0): string {
  const turned = Math.abs(yaw_rad) > 1e-9 ? reader.language.bodies.turned(figure({ value: yaw_rad, unit: 'rad' }, reader)) : ''
  return [sizeWords(posture, reader), called(posture.name, reader), turned].filter(Boolean).join(', ')
}

export function sizeWords(posture: Posture, reader: Reader): string {
  if (posture.shape === 'box') return size([posture.a_mm, posture.b_mm, posture.c_mm], reader)
  return reader.language.bodies.cylinder(size([posture.radius_mm * 2], reader), size([posture.height_mm], reader))
}

/** The posture a worst case lies in, or undefined if the door has no such body. */
export function postureOf(door: Door, { body, posture }: { readonly body: string; readonly posture: number }): Posture | undefined {
  return door.bodies.find(({ id }) => id === body)?.postures[posture]
}
