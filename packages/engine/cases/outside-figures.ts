import type { Source } from '../src/model/source.ts'

/** A figure that did not come from our code, to hold our code against. `id` is that of the collection of check values it was retyped from. */
export interface OutsideFigure<T> {
  readonly id: string
  readonly says: string
  readonly value: T
  readonly source: Source
}

export const meteorologicalRange: OutsideFigure<{ readonly contrast: number; readonly constant: number }> = {
  id: 'op-04',
  says: 'the meteorological range ends where 2 % of the contrast are left, 3.912 over the extinction',
  value: { contrast: 0.02, constant: 3.912 },
  source: {
    basis: 'published',
    document: 'Glossary of Meteorology (American Meteorological Society)',
    edition: 'web',
    clause: 'meteorological range',
    note: 'glossary.ametsoc.org/w/index.php?title=Meteorological_range&oldid=12112',
  },
}

export const transmission: OutsideFigure<{
  readonly path_m: number
  readonly visibility_m: number
  readonly oneWay: number
  readonly twoWay: number
}> = {
  id: 'op-06',
  says: 'over 10 m at a visibility of 50 m (constant 3.912) air lets 0.4573 pass one way and 0.2091 there and back',
  value: { path_m: 10, visibility_m: 50, oneWay: 0.4573, twoWay: 0.2091 },
  source: { basis: 'common practice', document: 'Beer and Lambert', note: 'computed: exp(-3.912 * 10 / 50) and its square' },
}

export const lambertRatio: OutsideFigure<{ readonly dark: number; readonly bright: number; readonly ratio: number }> = {
  id: 'op-10',
  says: 'a diffuse target of 1.8 % is seen 0.1414 times as far as one of 90 %',
  value: { dark: 0.018, bright: 0.9, ratio: 0.1414 },
  source: {
    basis: 'common practice',
    document: 'inverse-square law for a diffuse target',
    note: 'computed: root of the ratio of reflectances',
  },
}

export const beamSpacings: OutsideFigure<readonly { readonly distance_m: number; readonly step_deg: number; readonly gap_mm: number }[]> = {
  id: 'op-12',
  says: 'beams a step apart in angle are 2 R tan(step / 2) apart at the distance R',
  value: [
    { distance_m: 4, step_deg: 0.25, gap_mm: 17.45 },
    { distance_m: 4, step_deg: 0.36, gap_mm: 25.13 },
    { distance_m: 5, step_deg: 0.5, gap_mm: 43.63 },
  ],
  source: { basis: 'common practice', document: 'plane geometry', note: 'computed: 2 R tan(a / 2)' },
}

export const presenceBody: OutsideFigure<readonly [number, number, number]> = {
  id: 'door-14',
  says: 'the reference body for presence detection at powered doors has sides of 700, 300 and 200 mm',
  value: [700, 300, 200],
  source: {
    basis: 'from memory',
    document: 'EN 12445 / EN 12453',
    edition: '2000 / 2017',
    clause: 'presence detection test',
    note: 'no page was seen',
  },
}
