import { describe, expect, it } from 'vitest'
import { conductorOhm_per_km, copperAt, gaugeResistance, STANDARD_AREAS, STANDARD_GAUGES } from './conductors.ts'

describe('the resistance of a conductor', () => {
  it('by cross-section is that of the table of the conductor standard, class 5 at 20 °C', () => {
    // el-r0.5 to el-r2.5 of the collection of check values: IEC 60228, 2004
    const table = { '0.5': 39.0, '0.75': 26.0, '1': 19.5, '1.5': 13.3, '2.5': 7.98 }
    expect(Object.fromEntries(STANDARD_AREAS.map((each) => ['area_mm2' in each && each.area_mm2, conductorOhm_per_km(each)]))).toEqual(
      table,
    )
  })

  it('by gauge is that of a wire whose diameter follows the formula of the gauge, in resistivity 17.241', () => {
    // el-awg12 to el-awg24: 0.127 mm x 92^((36 - n) / 39), ASTM B258; computed here a second time
    for (let i = 0; i < gaugeResistance.value.length; i += 3) {
      const [awg = 0, area_mm2 = 0, ohm_per_km = 0] = gaugeResistance.value.slice(i, i + 3)
      const diameter_mm = 0.127 * 92 ** ((36 - awg) / 39)
      const area = (Math.PI * diameter_mm * diameter_mm) / 4
      expect(Math.abs(area_mm2 / area - 1), `area of ${awg}`).toBeLessThan(2e-4)
      expect(Math.abs(ohm_per_km / (17.241 / area) - 1), `resistance of ${awg}`).toBeLessThan(2e-4)
    }
    expect(STANDARD_GAUGES).toEqual([24, 22, 20, 18, 16, 14, 12].map((awg) => ({ awg })))
  })

  it('by gauge is never below that of stranded wire in the table of the electrical code', () => {
    // el-14: NEC, Chapter 9, table 8, stranded uncoated, ohm/kft at 75 °C; el-15 brings one of them to 20 °C: 8.47 ohm/km of 14
    const perKm = (ohm_per_kft: number) => (ohm_per_kft / 0.3048) * (1 + 0.00323 * (20 - 75))
    expect(perKm(3.14)).toBeCloseTo(8.47, 2)
    for (const [awg, ohm_per_kft] of [
      [18, 7.95],
      [16, 4.99],
      [14, 3.14],
      [12, 1.98],
    ] as const) {
      const ours = conductorOhm_per_km({ awg })
      expect(ours, `${awg}`).toBeGreaterThanOrEqual(perKm(ohm_per_kft))
      expect(ours / perKm(ohm_per_kft), `${awg}`).toBeLessThan(1.01)
    }
  })

  it('by a gauge that the table lacks follows the formula too', () => {
    for (let awg = 0; awg <= 30; awg++) {
      const diameter_mm = 0.127 * 92 ** ((36 - awg) / 39)
      const formula = (17.241 * 4) / (Math.PI * diameter_mm * diameter_mm)
      expect(Math.abs(conductorOhm_per_km({ awg }) / (1.03 * formula) - 1), `${awg}`).toBeLessThan(2e-4)
    }
  })

  it('by a cross-section that the table lacks is no less, by its area, than that of any in it', () => {
    for (const each of STANDARD_AREAS) {
      const area_mm2 = 'area_mm2' in each ? each.area_mm2 : 0
      expect(conductorOhm_per_km({ area_mm2: area_mm2 * 1.001 })).toBeGreaterThanOrEqual(conductorOhm_per_km(each) / 1.001)
    }
    expect(conductorOhm_per_km({ area_mm2: 0.25 })).toBe(80)
  })
})

describe('copper', () => {
  it('at the temperatures of the table has the inverse of its factors, and at 20 °C that of 20 °C', () => {
    // el-06: IEC 60228, 2004, annex A
    for (const [at_degC, factor] of [
      [5, 1.064],
      [10, 1.042],
      [20, 1],
      [30, 0.962],
      [40, 0.926],
      [50, 0.893],
    ] as const) {
      expect(copperAt(at_degC).factor).toBeCloseTo(1 / factor, 12)
      expect(copperAt(at_degC).value.source.basis).toBe('published')
    }
  })
  it('between them lies within 0.3 % of what the coefficient says', () => {
    // el-16: 0.00393 for each kelvin at 20 °C
    for (let at_degC = 5; at_degC <= 50; at_degC += 0.5)
      expect(Math.abs(copperAt(at_degC).factor / (1 + 0.00393 * (at_degC - 20)) - 1)).toBeLessThan(0.003)
  })
  it('beyond the table goes on by the coefficient, which is only remembered', () => {
    for (const at_degC of [-30, 4.9, 50.1, 80]) {
      const [end_degC, factor] = at_degC < 20 ? [5, 1.064] : [50, 0.893]
      expect(copperAt(at_degC).factor).toBeCloseTo(1 / factor + 0.00393 * (at_degC - end_degC), 12)
      expect(copperAt(at_degC).value.source.basis).toBe('from memory')
    }
  })
  it('grows with temperature, the ends of the table included', () => {
    let last = 0
    for (let at_degC = -40; at_degC <= 90; at_degC += 0.25) {
      expect(copperAt(at_degC).factor).toBeGreaterThan(last)
      last = copperAt(at_degC).factor
    }
  })
})
