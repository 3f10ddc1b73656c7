import type { FilePart, LibraryBody } from '../schema/body.ts'

const SOURCE = {
  basis: 'invented',
  note: 'Invented sizes and reflectances, like ones that are common in practice (no source). Measure what passes your door.',
} as const

/** Dark cloth or paint; black rubber and matt black film; what sends nearly all light elsewhere stands in as all but black. */
const DARK = 0.05
const MATT_BLACK = 0.018
const ELSEWHERE = 0.01

type Size = readonly [along_mm: number, across_mm: number, height_mm: number]
interface Place {
  readonly x_mm?: number
  /** Toward the front. */
  readonly y_mm?: number
  readonly from_mm?: number
  readonly reflectance?: number
}

function box(name: string, [a, b, c]: Size, { x_mm = 0, y_mm = 0, from_mm = 0, reflectance }: Place = {}): FilePart {
  const place = { name, at_mm: [x_mm, y_mm] as const, from_mm }
  return { shape: 'box', ...place, size_mm: [a, b, c], ...(reflectance === undefined ? {} : { reflectance }) }
}

function post(name: string, radius_mm: number, height_mm: number, { x_mm = 0, y_mm = 0, from_mm = 0 }: Place = {}): FilePart {
  return { shape: 'cylinder', name, at_mm: [x_mm, y_mm], from_mm, radius_mm, height_mm }
}

function ofParts(name: string, parts: readonly FilePart[], reflectance = DARK): LibraryBody {
  const standsFor = name.slice(name.indexOf(', ') + 2)
  return { name, reflectance, postures: [{ shape: 'parts', name: standsFor, parts }], source: SOURCE }
}

const walking = (y_mm: number) => box('person', [500, 300, 1700], { y_mm })
const tines = (from_mm: number) => [-280, 280].map((x_mm) => box('tines', [110, 1150, 60], { x_mm, y_mm: 1330, from_mm }))
const truckBody = [
  box('chassis', [1150, 2000, 1050], { y_mm: -450, from_mm: 60 }),
  box('overhead guard', [1000, 1150, 60], { y_mm: -350, from_mm: 2040 }),
  ...[-470, 470].flatMap((x_mm) => [-900, 200].map((y_mm) => post('posts', 30, 930, { x_mm, y_mm, from_mm: 1110 }))),
]
const mast = (height_mm: number) => box('mast', [800, 220, height_mm], { y_mm: 660 })
const load = (reflectance?: number) =>
  box('load', [1200, 1000, 1350], { y_mm: 1300, from_mm: 170, ...(reflectance === undefined ? {} : { reflectance }) })
const forkLift = [...truckBody, mast(2120), ...tines(50)]

/** Whoever and whatever passes, named by size and by what each stands for. All go toward +y. */
export const PASSING_BODIES: Readonly<Record<string, LibraryBody>> = {
  'passing-person': {
    name: '500 x 300 x 1700, stands for a person',
    reflectance: DARK,
    postures: [{ shape: 'box', name: 'walking', size_mm: [500, 300, 1700] }],
    source: SOURCE,
  },
  'passing-walker': ofParts('590 x 934 x 1700, stands for a person with a walking frame', [
    walking(-250),
    ...[-280, 280].flatMap((x_mm) => [50, 520].map((y_mm) => post('frame', 14, 850, { x_mm, y_mm }))),
    box('frame', [590, 30, 40], { y_mm: 500, from_mm: 600 }),
  ]),
  'passing-wheelchair': ofParts('640 x 1050 x 1280, stands for a person in a wheelchair', [
    ...[-290, 290].map((x_mm) => box('wheels', [60, 600, 600], { x_mm, y_mm: -50 })),
    box('seat', [480, 480, 130], { from_mm: 430 }),
    box('person', [460, 300, 720], { y_mm: -120, from_mm: 560 }),
    box('feet', [360, 300, 100], { y_mm: 550, from_mm: 120 }),
  ]),
  'passing-pram': ofParts('570 x 1500 x 1700, stands for a person with a pram', [
    walking(-700),
    box('pram', [420, 780, 330], { y_mm: 250, from_mm: 580 }),
    ...[-260, 260].map((x_mm) => box('wheels', [50, 800, 240], { x_mm, y_mm: 250 })),
    box('handle', [480, 30, 30], { y_mm: -330, from_mm: 1000 }),
  ]),
  'passing-cyclist': ofParts('600 x 1750 x 1800, stands for a cyclist', [
    ...[-540, 540].map((y_mm) => box('wheels', [45, 670, 670], { y_mm, reflectance: MATT_BLACK })),
    box('frame', [60, 900, 250], { from_mm: 500 }),
    box('handlebar', [600, 60, 50], { y_mm: 380, from_mm: 1010 }),
    box('rider', [450, 550, 900], { y_mm: -100, from_mm: 900 }),
  ]),
  'passing-pallet-truck': ofParts('800 x 2200 x 1700, stands for a person with a loaded pallet truck', [
    walking(900),
    box('handle', [60, 450, 60], { y_mm: 450, from_mm: 800 }),
    box('truck', [540, 1300, 200], { y_mm: -450 }),
    box('load', [800, 1200, 900], { y_mm: -550, from_mm: 200 }),
  ]),
  'passing-fork-lift-low': ofParts('1150 x 3355 x 2120, stands for a fork-lift with its tines low', forkLift),
  'passing-fork-lift-high': ofParts('1150 x 3355 x 3850, stands for a fork-lift with its mast high', [
    ...truckBody,
    mast(3850),
    ...tines(2300),
  ]),
  'passing-fork-lift-black': ofParts('1200 x 3355 x 2120, stands for a fork-lift with a matt black load', [...forkLift, load(MATT_BLACK)]),
  'passing-fork-lift-shiny': ofParts(
    '1200 x 3355 x 2120, stands for a fork-lift with a load that shines or is wrapped in film: it sends light elsewhere, and counts as all but black',
    [...forkLift, load(ELSEWHERE)],
  ),
  'passing-truck': ofParts('2550 x 9600 x 3900, stands for a truck', [
    box('cab', [2450, 1900, 2800], { y_mm: 3850, from_mm: 250 }),
    box('body', [2550, 7400, 2850], { y_mm: -1100, from_mm: 1050 }),
    box('frame', [900, 9000, 250], { y_mm: 100, from_mm: 800 }),
    ...[-2900, 3500].map((y_mm) => box('axle', [2450, 1000, 1000], { y_mm, reflectance: MATT_BLACK })),
  ]),
  'passing-tractor-trailer': ofParts('2300 x 10900 x 2750, stands for a tractor with a thin drawbar and a trailer', [
    box('tractor', [1900, 2600, 1500], { y_mm: 4150, from_mm: 250 }),
    box('cab', [1600, 1300, 1900], { y_mm: 3550, from_mm: 850 }),
    box('drawbar', [90, 2300, 110], { y_mm: 1700, from_mm: 430 }),
    box('trailer', [2300, 6000, 700], { y_mm: -2450, from_mm: 850 }),
    box('axle', [2200, 1900, 850], { y_mm: -3300, reflectance: MATT_BLACK }),
  ]),
}

/** Bodies that work in `use` in any lane: id and name of each. */
export function passingBodies(): readonly { readonly id: string; readonly name: string }[] {
  return Object.entries(PASSING_BODIES).map(([id, { name = id }]) => ({ id, name }))
}
