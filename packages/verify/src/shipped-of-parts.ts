import type { Json } from './json.ts'

/** A box by its size, or a cylinder by radius and height; where its middle and its bottom are. mm */
function solid(size: readonly number[], at_mm: readonly number[], from_mm: number, reflectance?: number): Json {
  const place = { at_mm, from_mm, ...(reflectance === undefined ? {} : { reflectance }) }
  if (size.length === 3) return { shape: 'box', size_mm: size, ...place }
  return { shape: 'cylinder', radius_mm: size[0], height_mm: size[1], ...place }
}

function ofParts(parts: readonly Json[]): Json {
  return { reflectance: 0.05, postures: [{ shape: 'parts', parts }] }
}

/** Bodies of several parts that ship with the program, retyped: a test holds them against what does ship. Invented sizes. */
export const SHIPPED_OF_PARTS: Readonly<Record<string, Json>> = {
  'passing-walker': ofParts([
    solid([500, 300, 1700], [0, -250], 0),
    solid([14, 850], [-280, 50], 0),
    solid([14, 850], [-280, 520], 0),
    solid([14, 850], [280, 50], 0),
    solid([14, 850], [280, 520], 0),
    solid([590, 30, 40], [0, 500], 600),
  ]),
  'passing-wheelchair': ofParts([
    solid([60, 600, 600], [-290, -50], 0),
    solid([60, 600, 600], [290, -50], 0),
    solid([480, 480, 130], [0, 0], 430),
    solid([460, 300, 720], [0, -120], 560),
    solid([360, 300, 100], [0, 550], 120),
  ]),
  'passing-pram': ofParts([
    solid([500, 300, 1700], [0, -700], 0),
    solid([420, 780, 330], [0, 250], 580),
    solid([50, 800, 240], [-260, 250], 0),
    solid([50, 800, 240], [260, 250], 0),
    solid([480, 30, 30], [0, -330], 1000),
  ]),
  'passing-cyclist': ofParts([
    solid([45, 670, 670], [0, -540], 0, 0.018),
    solid([45, 670, 670], [0, 540], 0, 0.018),
    solid([60, 900, 250], [0, 0], 500),
    solid([600, 60, 50], [0, 380], 1010),
    solid([450, 550, 900], [0, -100], 900),
  ]),
  'passing-pallet-truck': ofParts([
    solid([500, 300, 1700], [0, 900], 0),
    solid([60, 450, 60], [0, 450], 800),
    solid([540, 1300, 200], [0, -450], 0),
    solid([800, 1200, 900], [0, -550], 200),
  ]),
  'passing-fork-lift-low': ofParts([
    solid([1150, 2000, 1050], [0, -450], 60),
    solid([1000, 1150, 60], [0, -350], 2040),
    solid([30, 930], [-470, -900], 1110),
    solid([30, 930], [-470, 200], 1110),
    solid([30, 930], [470, -900], 1110),
    solid([30, 930], [470, 200], 1110),
    solid([800, 220, 2120], [0, 660], 0),
    solid([110, 1150, 60], [-280, 1330], 50),
    solid([110, 1150, 60], [280, 1330], 50),
  ]),
  'passing-fork-lift-high': ofParts([
    solid([1150, 2000, 1050], [0, -450], 60),
    solid([1000, 1150, 60], [0, -350], 2040),
    solid([30, 930], [-470, -900], 1110),
    solid([30, 930], [-470, 200], 1110),
    solid([30, 930], [470, -900], 1110),
    solid([30, 930], [470, 200], 1110),
    solid([800, 220, 3850], [0, 660], 0),
    solid([110, 1150, 60], [-280, 1330], 2300),
    solid([110, 1150, 60], [280, 1330], 2300),
  ]),
  'passing-fork-lift-black': ofParts([
    solid([1150, 2000, 1050], [0, -450], 60),
    solid([1000, 1150, 60], [0, -350], 2040),
    solid([30, 930], [-470, -900], 1110),
    solid([30, 930], [-470, 200], 1110),
    solid([30, 930], [470, -900], 1110),
    solid([30, 930], [470, 200], 1110),
    solid([800, 220, 2120], [0, 660], 0),
    solid([110, 1150, 60], [-280, 1330], 50),
    solid([110, 1150, 60], [280, 1330], 50),
    solid([1200, 1000, 1350], [0, 1300], 170, 0.018),
  ]),
  'passing-fork-lift-shiny': ofParts([
    solid([1150, 2000, 1050], [0, -450], 60),
    solid([1000, 1150, 60], [0, -350], 2040),
    solid([30, 930], [-470, -900], 1110),
    solid([30, 930], [-470, 200], 1110),
    solid([30, 930], [470, -900], 1110),
    solid([30, 930], [470, 200], 1110),
    solid([800, 220, 2120], [0, 660], 0),
    solid([110, 1150, 60], [-280, 1330], 50),
    solid([110, 1150, 60], [280, 1330], 50),
    solid([1200, 1000, 1350], [0, 1300], 170, 0.01),
  ]),
  'passing-truck': ofParts([
    solid([2450, 1900, 2800], [0, 3850], 250),
    solid([2550, 7400, 2850], [0, -1100], 1050),
    solid([900, 9000, 250], [0, 100], 800),
    solid([2450, 1000, 1000], [0, -2900], 0, 0.018),
    solid([2450, 1000, 1000], [0, 3500], 0, 0.018),
  ]),
  'passing-tractor-trailer': ofParts([
    solid([1900, 2600, 1500], [0, 4150], 250),
    solid([1600, 1300, 1900], [0, 3550], 850),
    solid([90, 2300, 110], [0, 1700], 430),
    solid([2300, 6000, 700], [0, -2450], 850),
    solid([2200, 1900, 850], [0, -3300], 0, 0.018),
  ]),
}
