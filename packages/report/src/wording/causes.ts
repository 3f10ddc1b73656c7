import type { Cause, Door } from '@sillsight/engine'
import { plain } from './plain.ts'

type Kind = Cause['kind']

const why: Readonly<Record<Exclude<Kind, 'hidden-behind'>, string>> = {
  'beyond-reach': "beyond the sensor's reach",
  'too-dark': 'too dark for the sensor at that distance and angle',
  fog: 'swallowed by the fog',
  'too-close-to-background': 'too close to what is behind it for the sensor to tell them apart',
  'outside-sides': 'outside the sides of the field',
  'below-clearance': "lower than the field's clearance above the floor",
  'above-top': 'higher than the top of the field',
  'too-few-neighbours': 'met by too few neighbouring beams',
  'between-beams': 'between two beams',
  'no-plane-here': 'where no scan plane passes',
  'several-together': 'unseen for several causes together, none of them alone',
}

const mends: Readonly<Record<Kind, string>> = {
  'beyond-reach': 'bring the sensor nearer, or use one that reaches farther',
  'too-dark': 'bring the sensor nearer or let it look more squarely at the body, or use one that reaches farther',
  fog: 'bring the sensor nearer, or add one on the near side of the fog',
  'too-close-to-background':
    "aim the plane so that it meets the body farther above the floor, or use a smaller background margin if the sensor's values allow it",
  'outside-sides': 'widen the field',
  'below-clearance': "lower the field's clearance if the floor allows it",
  'above-top': 'raise the top of the field',
  'too-few-neighbours': 'bring the sensor nearer, or ask for fewer neighbouring beams',
  'hidden-behind': 'move what is in the way, or add a sensor that looks from the other end',
  'between-beams': 'bring the sensor nearer, or use one with beams closer together',
  'no-plane-here': 'turn the sensor so that a plane falls here, or add a plane or a sensor',
  'several-together': 'look at each cause in turn, or add a sensor that looks from another place',
}

/** Why a body goes unseen: "hidden behind the bollard", "between two beams". */
export function causeWords(door: Door, { kind, obstacle }: { readonly kind: Kind; readonly obstacle?: string | undefined }): string {
  if (kind !== 'hidden-behind') return why[kind]
  return obstacle === undefined ? 'hidden behind something' : `hidden behind the ${obstacleName(door, obstacle)}`
}

/** What hands can do about a cause. Not judged against the other findings. */
export function causeMend(kind: Kind): string {
  return mends[kind]
}

export function isCause(word: string | undefined): word is Kind {
  return word !== undefined && Object.hasOwn(mends, word)
}

export function obstacleName(door: Door, id: string): string {
  const found = door.states.flatMap(({ obstacles }) => obstacles).find((obstacle) => obstacle.id === id)
  return plain(found?.name ?? id)
}
