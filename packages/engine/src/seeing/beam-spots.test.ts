import { describe, expect, it } from 'vitest'
import { block, downward, lightGrid, plainDoor, plainState, zoneOnly } from '../../cases/plain-door.ts'
import { beamSpots } from './beam-spots.ts'

describe('where the beams of a door end (hand calculation)', () => {
  it('is the floor, an obstacle, the end of the range, or the other end of a segment', () => {
    const places = [
      { x_mm: 100, y_mm: 0, z_mm: 2000 },
      { x_mm: 500, y_mm: 0, z_mm: 2000 },
      { x_mm: 900, y_mm: 0, z_mm: 12_500 },
    ]
    const state = plainState({ obstacles: [block({ to_mm: 300 })] })
    const door = plainDoor({ states: [state], sensors: [downward(places), lightGrid([200, 400]), zoneOnly()] })
    expect(beamSpots(door, state)).toEqual([
      {
        sensor: 'sensor',
        plane: 'p0',
        beams: [
          { from: [100, 0, 2000], to: [100, 0, 0], end: 'spot' },
          { from: [500, 0, 2000], to: [500, 0, 300], end: 'spot' },
          { from: [900, 0, 12_500], to: [900, 0, 2500], end: 'range' },
        ],
      },
      {
        sensor: 'grid',
        plane: 'p0',
        beams: [
          { from: [0, 0, 200], to: [450, 0, 200], end: 'spot' },
          { from: [0, 0, 400], to: [2000, 0, 400], end: 'segment' },
        ],
      },
    ])
  })
})
