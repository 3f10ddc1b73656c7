/** Door files for tests of the command line: small, and with a verdict that the test has to find. All values are invented. */

const source = { basis: 'measured', note: 'invented, for tests' } as const

/**
 * A doorway one metre wide with a light beam across its zone and a body 700 mm high: in order where the beam meets the body, a fail where
 * it passes above. Drive, purpose and control are such that no other rule asks for more.
 */
export function beamDoor({ beam_mm, name = 'test door' }: { readonly beam_mm: number; readonly name?: string }) {
  return {
    sillsight: 1,
    name,
    survey: {
      opening: { width_mm: 1000, height_mm: 2000 },
      leaf: { travel: 'down', thickness_mm: 20, bulge_mm: 0, parked: 'none' },
      walls: 'none',
      floor: { profile_mm: [[0, 0]], slopeX_percent: 0, tolerance_mm: 0 },
      visibility_m: 'clear',
      control: {
        sensorFault: { does: 'stays', source },
        powerReturn: { does: 'waits', source },
        fire: { does: 'none', source },
        escape: { does: 'none', source },
        interlock: { does: 'none', source },
      },
    },
    concept: { people: 'trained', drive: 'hold-to-run', closingEdge: 'none' },
    sensors: [
      {
        id: 'beam',
        device: 'segments',
        source,
        planes: [
          {
            id: 'p',
            segments_mm: [
              [
                [-100, 120, beam_mm],
                [1100, 120, beam_mm],
              ],
            ],
          },
        ],
        fields: [{ id: 'f', output: 'OUT 1', function: 'opening', presenceTime_s: 'for-ever' }],
        spotRadius_mm: 0,
      },
    ],
    bodies: [{ id: 'box', name: '300 x 300 x 700', reflectance: 0.5, source, postures: [{ shape: 'box', size_mm: [300, 300, 700] }] }],
    zones: [{ id: 'line', purpose: 'opening', xMin_mm: 0, xMax_mm: 1000, yMin_mm: 20, yMax_mm: 220, bodies: ['box'], pitch_mm: 50 }],
  }
}

/** The same, with nobody having said who passes: not settled. */
export function unsettledDoor() {
  const { concept: _, ...door } = beamDoor({ beam_mm: 400, name: 'unsettled door' })
  return door
}

export function text(door: object): string {
  return `${JSON.stringify(door, undefined, 2)}\n`
}
